import { eastOf, northOf, type Runway } from '../aerodrome/runway.ts';
import { cos, sin } from '../maths/functions.ts';
import { wrapTwoPi } from '../units/angles.ts';
import { holdTrack } from '../wind/triangle.ts';

/**
 * The axes in which a circuit is laid out: x along the landing direction from the landing threshold, y towards
 * the circuit. Angles run from x towards y, so that every turn of every circuit counts upwards: upwind 0,
 * crosswind 90, downwind 180, base 270, final 360 degrees. Left-hand circuits are the mirror image.
 */
export interface Place {
  readonly xM: number;
  readonly yM: number;
  /** Of the wheels above the landing threshold. */
  readonly heightM: number;
}

/** Velocity of the air in circuit axes at a height above the landing threshold. */
export type WindAt = (heightM: number) => { readonly xMps: number; readonly yMps: number };

export const toEarth = (
  runway: Runway,
  side: 1 | -1,
  xM: number,
  yM: number,
): { eastM: number; northM: number } => ({
  eastM: eastOf(runway, xM, side * yM),
  northM: northOf(runway, xM, side * yM),
});

/** True bearing of an angle of the circuit axes. */
export const bearingRadT = (runway: Runway, side: 1 | -1, angleRad: number): number =>
  wrapTwoPi(runway.headingRadT + side * angleRad);

export interface Crab {
  readonly headingRad: number;
  readonly groundspeedMps: number;
  /** Of the wind along the track, + from behind. */
  readonly tailwindMps: number;
  /** Of the wind across the track, + towards y turned by the track: the way the angles count. */
  readonly sidewaysMps: number;
}

/**
 * Heading that holds a track, by the wind triangle in the axes of the circuit.
 * Throws when the wind cannot be held.
 */
export function crabOnTrack(
  trackRad: number,
  tasMps: number,
  wind: { readonly xMps: number; readonly yMps: number },
): Crab {
  const c = cos(trackRad);
  const s = sin(trackRad);
  const sidewaysMps = wind.yMps * c - wind.xMps * s;
  const tailwindMps = wind.xMps * c + wind.yMps * s;
  const hold = holdTrack(tasMps, tailwindMps, sidewaysMps);
  if (hold === undefined || Math.abs(sidewaysMps) >= tasMps || hold.groundspeedMps <= 1)
    throw new Error('the wind must be slower than the aeroplane for a circuit to be planned');
  const { correctionRad, groundspeedMps } = hold;
  return { headingRad: trackRad + correctionRad, groundspeedMps, tailwindMps, sidewaysMps };
}
