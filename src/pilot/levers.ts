import { mFromFt, mpsFromKt } from '../units/conversions.ts';
import type { Briefing } from './briefing/briefing.ts';
import type { PilotMemory } from './memory.ts';
import type { PilotView } from './view.ts';

/** Carburettor heat is put away on short final, ready to go around (common practice). */
const HEAT_OFF_M = mFromFt(300);
/** Wheels up with a positive climb, clear of the ground. */
const WHEELS_UP_M = mFromFt(50); // our choice: clear of the ground
const CLIMBING_MPS = 0.5; // our choice: a climb that the needle shows
/** The electric pump is off above this on the climb, and on again for the landing. */
const PUMP_OFF_M = mFromFt(300); // common practice: with the after-take-off check
const MARGIN_MPS = mpsFromKt(2); // our choice: what a needle can be misread by

/** The levers that go with the way of flying: heat, propeller, mixture, pump, wheels. */
export const setLevers = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  const { hands } = m;
  const habit = b.habits[m.regime];
  hands.carbHeat = v.heightM > HEAT_OFF_M ? habit.carbHeat : 0;
  hands.propeller = habit.propeller;
  hands.mixture = habit.mixture;
  const climbingAway = habit.gear === 0 || m.phase === 'upwind' || m.phase === 'crosswind';
  if (b.shape.aeroplane.equipment.pump) hands.pump = climbingAway && v.clearanceM > PUMP_OFF_M ? 0 : 1;
  if (b.shape.aeroplane.undercarriage.retractable) moveWheels(b, m, v);
};

const moveWheels = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  const wanted = b.habits[m.regime].gear;
  if (wanted === m.hands.gear) return;
  const limit = b.shape.aeroplane.limits.gearOperatingKt ?? 0;
  if (limit > 0 && m.iasMps > mpsFromKt(limit) - MARGIN_MPS) return;
  const clear = v.clearanceM > WHEELS_UP_M && m.verticalSpeedMps > CLIMBING_MPS;
  if (wanted === 0 && m.phase !== 'downwind' && !clear) return;
  m.hands.gear = wanted;
};
