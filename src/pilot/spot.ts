import { clamp } from '../maths/functions.ts';
import { mFromFt, mpsFromKt } from '../units/conversions.ts';
import type { Briefing } from './briefing/briefing.ts';
import { HALF_DENSITY_KGPM3 } from './briefing/density.ts';
import type { PilotMemory } from './memory.ts';
import type { PilotView } from './view.ts';

/** Deceleration of a held-off light single at idle, and what the round-out itself covers (common practice). */
const SLOWING_MPS2 = 1.15;
const ROUNDING_S = 1.9; // common practice, as above
const GUST_SHARE = 1.2; // tuned
const TOUCH_OVER_STALL = 1.06; // tuned
/** Near the ground there is less wind than on the way down. */
const NEAR_GROUND = 0.8; // estimate
/** Halfway through the float. */
const FLOATING_OVER_STALL = 1.2; // estimate
const ROUND_OUT_M = mFromFt(17); // our choice: within the 10 to 20 ft of FAA-H-8083-3C p. 9-8
/** A little beyond the specified point: short of it is worse. */
const BEYOND_M = 38; // tuned

/** The wings down and the feet across against the forecast crosswind slow the aeroplane sooner. */
const slowingMps2 = (b: Known): number => {
  const { stallIasMps } = b.feel;
  const slip = (NEAR_GROUND * b.crosswindMps) / (FLOATING_OVER_STALL * stallIasMps);
  const pressure = HALF_DENSITY_KGPM3 * FLOATING_OVER_STALL * FLOATING_OVER_STALL * stallIasMps * stallIasMps;
  return SLOWING_MPS2 + (pressure * b.shape.areaM2 * b.shape.cdSlip * slip * slip) / b.shape.massKg;
};

/** Through the air from the end of the slope to the touch. */
const floatAirM = (b: Known, iasMps: number): number => {
  // Gusts put the wheels down with some speed left
  const touch = TOUCH_OVER_STALL * b.feel.stallIasMps + GUST_SHARE * b.plan.gustAdditionMps;
  return Math.max(0, iasMps * iasMps - touch * touch) / (2 * slowingMps2(b)) + ROUNDING_S * iasMps;
};

/** How far short of the specified point the wheels would touch from here, at idle from now on; negative: beyond. */
export const shortOfPointM = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): number => {
  const slowed = v.groundspeedMps / Math.max(m.iasMps, 15);
  const before = Math.max(0, v.clearanceM - ROUND_OUT_M) / b.approachTangent;
  const rounding = clamp(v.clearanceM / ROUND_OUT_M, 0, 1) * ROUNDING_S * m.iasMps;
  const floats = (floatAirM(b, m.iasMps) - ROUNDING_S * m.iasMps + rounding) * slowed;
  return b.runway.specifiedM + BEYOND_M - v.xM - before - floats;
};

const MOST_SHIFT_M = 100; // tuned
const LONG_M = 45; // tuned
const SLOWER_MPS = mpsFromKt(3); // our choice: within the 5 kt below of FAA-S-ACS-6 IV.B

type Known = Omit<Briefing, 'aimShiftM' | 'fenceIasMps'>;

/** Where the wheels would touch, aiming at the painted point at a speed. */
const touchM = (b: Known, iasMps: number): number => {
  const { plan, runway } = b;
  const { groundspeedMps, tasMps } = plan.legs.final;
  const wheelsM = runway.aimM - (b.eyeHeightM + ROUND_OUT_M) / b.approachTangent;
  return wheelsM + floatAirM(b, iasMps) * (1 + NEAR_GROUND * (groundspeedMps / tasMps - 1));
};

/** Beyond the painted aim point, so that the float in today's wind ends at the specified point. */
export const aimShiftM = (b: Known): number =>
  clamp(b.runway.specifiedM + BEYOND_M - touchM(b, b.plan.approachIasMps), 0, MOST_SHIFT_M);

/** Speed over the fence: the approach speed, or up to 3 kt less where the float would end well beyond the point. */
export const fenceIasMps = (b: Known): number => {
  const fast = b.plan.approachIasMps;
  const slow = fast - SLOWER_MPS;
  const beyond = touchM(b, fast) - (b.runway.specifiedM + LONG_M);
  const gained = touchM(b, fast) - touchM(b, slow);
  return fast - SLOWER_MPS * clamp(beyond / gained, 0, 1);
};

const ROUGH_FROM_MPS = 0.15; // tuned
const ROUGH_M_PER_MPS = 90; // tuned
const MOST_ROUGH_M = 45; // tuned

/** Rough air shortens the float: aimed a little further on. */
export const roughShiftM = (m: PilotMemory): number =>
  clamp(ROUGH_M_PER_MPS * (m.roughnessMps - ROUGH_FROM_MPS), 0, MOST_ROUGH_M);

const BUMPY_MPS = 0.35; // tuned

/** Gusts reported, or a jumping needle: some power is kept until the wheels are near the ground (FAA-H-8083-3C p. 9-20). */
export const isBumpy = (b: Briefing, m: PilotMemory): boolean =>
  b.plan.gustAdditionMps > 0 || m.roughnessMps > BUMPY_MPS;
