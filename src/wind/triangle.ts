/**
 * The wind triangle. sin WCA = W sin(from - track) / TAS; GS = TAS cos WCA - W cos(from - track)
 * (FAA-H-8083-25 chapter 16). All directions from one north, true or magnetic; speeds in one unit.
 */
import { asin, atan2, cos, hypot, sin } from '../maths/functions.ts';
import { wrapPi, wrapTwoPi } from '../units/angles.ts';

/** What is to be steered for a track, and what comes of it over the ground. */
export interface TriangleSolution {
  /** Wind correction angle, heading less track: positive steers right. */
  readonly correctionRad: number;
  readonly headingRad: number;
  readonly groundspeedMps: number;
}

/** What holds a track: correction and groundspeed. */
type Hold = Pick<TriangleSolution, 'correctionRad' | 'groundspeedMps'>;

/**
 * The triangle from the wind's parts along the track (+ from behind) and across it (+ pushes right);
 * `undefined` when the wind across is more than the airspeed.
 */
export function holdTrack(tasMps: number, tailwindMps: number, sidewaysMps: number): Hold | undefined {
  if (!(Math.abs(sidewaysMps) <= tasMps)) return undefined;
  return {
    correctionRad: -asin(sidewaysMps / tasMps),
    groundspeedMps: Math.sqrt(tasMps * tasMps - sidewaysMps * sidewaysMps) + tailwindMps,
  };
}

/** Heading and groundspeed for a track; `undefined` when the wind is too strong to make it good. */
export function headingForTrack(
  trackRad: number,
  tasMps: number,
  fromRad: number,
  windMps: number,
): TriangleSolution | undefined {
  const angleRad = fromRad - trackRad;
  const hold = holdTrack(tasMps, -windMps * cos(angleRad), -windMps * sin(angleRad));
  if (hold === undefined || !(hold.groundspeedMps > 0)) return undefined;
  return { ...hold, headingRad: wrapTwoPi(trackRad + hold.correctionRad) };
}

/** A movement over the ground. */
export interface Course {
  readonly trackRad: number;
  readonly groundspeedMps: number;
}

/** Track and groundspeed that come of a heading. */
export function trackForHeading(
  headingRad: number,
  tasMps: number,
  fromRad: number,
  windMps: number,
): Course {
  const east = tasMps * sin(headingRad) - windMps * sin(fromRad);
  const north = tasMps * cos(headingRad) - windMps * cos(fromRad);
  return { trackRad: wrapTwoPi(atan2(east, north)), groundspeedMps: hypot(east, north) };
}

/** Drift: track less heading, positive to the right. */
export const driftRad = (headingRad: number, trackRad: number): number => wrapPi(trackRad - headingRad);

/** The wind that explains a heading and a track. */
export function windFromDrift(
  headingRad: number,
  tasMps: number,
  trackRad: number,
  groundspeedMps: number,
): { readonly fromRad: number; readonly windMps: number } {
  const east = tasMps * sin(headingRad) - groundspeedMps * sin(trackRad);
  const north = tasMps * cos(headingRad) - groundspeedMps * cos(trackRad);
  return { fromRad: wrapTwoPi(atan2(east, north)), windMps: hypot(east, north) };
}
