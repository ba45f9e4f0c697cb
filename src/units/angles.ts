/**
 * Angles on the compass: clockwise from north, seen from above. Radians inside, degrees for display.
 */
import { degFromRad } from './conversions.ts';

const TWO_PI = 2 * Math.PI;

/** The same angle in (-pi, pi]: the short way round. */
export function wrapPi(rad: number): number {
  if (rad > -Math.PI && rad <= Math.PI) return rad;
  const wrapped = rad - TWO_PI * Math.floor((rad + Math.PI) / TWO_PI);
  return wrapped <= -Math.PI || wrapped > Math.PI ? Math.PI : wrapped;
}

/** The same angle in [0, 2 pi). */
export function wrapTwoPi(rad: number): number {
  if (rad >= 0 && rad < TWO_PI) return rad;
  const wrapped = rad - TWO_PI * Math.floor(rad / TWO_PI);
  return wrapped < 0 || wrapped >= TWO_PI ? 0 : wrapped;
}

/** A heading as it is spoken, degrees above 0 and up to 360: north is 360. */
export function headingDeg(rad: number): number {
  const deg = degFromRad(wrapTwoPi(rad));
  return deg <= 0 ? 360 : deg;
}

/**
 * Magnetic direction from true. Variation is counted east positive
 * ("variation east, magnetic least"; common practice).
 */
export function magneticFromTrue(trueRad: number, variationEastRad: number): number {
  return wrapTwoPi(trueRad - variationEastRad);
}

/** True direction from magnetic, variation east positive. */
export function trueFromMagnetic(magneticRad: number, variationEastRad: number): number {
  return wrapTwoPi(magneticRad + variationEastRad);
}
