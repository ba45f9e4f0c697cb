/**
 * The wind triangle. sin WCA = W sin(from - track) / TAS; GS = TAS cos WCA - W cos(from - track)
 * (FAA-H-8083-25 chapter 16).
 */
import { asin } from '../maths/functions.ts';

/** What holds a track. */
export interface Hold {
  /** Wind correction angle, heading less track: positive steers right. */
  readonly correctionRad: number;
  readonly groundspeedMps: number;
}

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
