import { tan } from '../maths/functions.ts';

/** Ground distance to the aim point at a height on a slope. */
export const distanceOnSlopeM = (heightM: number, slopeRad: number): number => heightM / tan(slopeRad);
