import { radFromDeg } from '../../units/conversions.ts';
import type { LegName } from '../names.ts';
import type { Where } from './where.ts';

const QUARTER = radFromDeg(45); // definition: half of a quarter to either side
const CLIMBING_MPS = 1; // our choice: less is level

/**
 * The straight leg that a position and a track alone look like: used when history does not say, at the start
 * of a flight in the air and after a turn that led somewhere unexpected.
 */
export const straightLegFrom = (w: Readonly<Where>, runwayLengthM: number): LegName => {
  const middleM = runwayLengthM / 2;
  const away = Math.abs(w.trackRad);
  if (away <= QUARTER) {
    return w.alongM > middleM || w.verticalSpeedMps > CLIMBING_MPS ? 'upwind' : 'final';
  }
  if (away >= 3 * QUARTER) return 'downwind';
  const goingOut = w.trackRad > 0;
  if (goingOut) return w.alongM < 0 && w.outM < 0 ? 'base' : 'crosswind';
  return w.alongM < middleM ? 'base' : 'crosswind';
};
