import { atan, tan } from '../maths/functions.ts';

/**
 * Mean angle of the way down from circuit height, for square corners and a base turn 45 degrees behind the
 * wing: the path is downwind (one spacing, when the descent begins abeam the threshold), base and final (one
 * spacing each) and the aim point's distance beyond the threshold.
 */
export const meanDescentRad = (
  spacingM: number,
  toLoseM: number,
  aimM: number,
  descentFrom: 'abeam' | 'base-turn',
): number => atan(toLoseM / ((descentFrom === 'abeam' ? 3 : 2) * spacingM + aimM));

/** Ground distance to the aim point at a height on a slope. */
export const distanceOnSlopeM = (heightM: number, slopeRad: number): number => heightM / tan(slopeRad);

/** Height on a slope at a ground distance from the aim point. */
export const heightOnSlopeM = (distanceM: number, slopeRad: number): number => distanceM * tan(slopeRad);
