import { clamp } from '../maths/functions.ts';
import { mFromFt } from '../units/conversions.ts';
import type { Briefing } from './briefing.ts';
import type { PilotMemory } from './memory.ts';
import type { PilotView } from './view.ts';

/** Deceleration of a held-off light single at idle, and what the round-out itself covers (common practice). */
const SLOWING_MPS2 = 1.15;
const ROUNDING_S = 1.6;
const TOUCH_OVER_STALL = 1.06;
const ROUND_OUT_M = mFromFt(17);
/** A little beyond the specified point: short of it is worse. */
const BEYOND_M = 22;

/** Through the air from the end of the slope to the touch. */
const floatAirM = (b: Briefing, iasMps: number): number => {
  const touch = TOUCH_OVER_STALL * b.feel.stallIasMps;
  return Math.max(0, iasMps * iasMps - touch * touch) / (2 * SLOWING_MPS2) + ROUNDING_S * iasMps;
};

/** How far short of the specified point the wheels would touch from here, at idle from now on; negative: beyond. */
export const shortOfPointM = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): number => {
  const slowed = v.groundspeedMps / Math.max(m.iasMps, 15);
  const before = Math.max(0, v.clearanceM - ROUND_OUT_M) / b.approachTangent;
  const rounding = clamp(v.clearanceM / ROUND_OUT_M, 0, 1) * ROUNDING_S * m.iasMps;
  const floats = (floatAirM(b, m.iasMps) - ROUNDING_S * m.iasMps + rounding) * slowed;
  return b.runway.specifiedM + BEYOND_M - v.xM - before - floats;
};

const MOST_SHIFT_M = 80;

/** Beyond the painted aim point, so that the float in today's wind ends at the specified point. */
export const aimShiftM = (b: Omit<Briefing, 'aimShiftM'>): number => {
  const { plan, runway } = b;
  const { groundspeedMps, tasMps } = plan.legs.final;
  const wheelsM = runway.aimM - b.eyeHeightM / b.approachTangent - ROUND_OUT_M / b.approachTangent;
  // Near the ground there is less wind than on the way down
  const slowed = 1 + NEAR_GROUND * (groundspeedMps / tasMps - 1);
  const touch = wheelsM + floatAirM(b as Briefing, plan.approachIasMps) * slowed;
  return clamp(runway.specifiedM + BEYOND_M - touch, 0, MOST_SHIFT_M);
};

const NEAR_GROUND = 0.8;
