import { clamp } from '../maths/functions.ts';
import { G0_MPS2 } from '../units/constants.ts';
import { mFromFt, mpsFromKt } from '../units/conversions.ts';
import type { Briefing } from './briefing/briefing.ts';
import { HALF_DENSITY_KGPM3 } from './briefing/density.ts';
import { lastIasMps } from './landing-attitude.ts';
import type { PilotMemory } from './memory.ts';
import type { PilotView } from './view.ts';

/** Held off at idle it slows as it would sink, less what the ground takes off the drag. */
const GROUND_SHARE = 0.8; // tuned
const ROUNDING_S = 1.9; // common practice: what the round-out itself covers
const GUST_SHARE = 0.6; // tuned
/** Of the headwind on the way down: its loss near the ground shortens the float more than the wind itself does. */
const NEAR_GROUND = 1.3; // tuned
/** Of the forecast crosswind, as the float feels it. */
const WIND_LEFT = 1.2; // tuned
/** Halfway through the float. */
const FLOATING_OVER_STALL = 1.2; // estimate
const ROUND_OUT_M = mFromFt(17); // our choice: within the 10 to 20 ft of FAA-H-8083-3C p. 9-8
/** A little beyond the specified point: short of it is worse. */
const BEYOND_M = 1; // tuned

/** The wings down and the feet across against the forecast crosswind slow the aeroplane sooner. */
const slowingMps2 = (b: Known): number => {
  const { stallIasMps } = b.feel;
  const slip = (WIND_LEFT * b.crosswindMps) / (FLOATING_OVER_STALL * stallIasMps);
  const pressure = HALF_DENSITY_KGPM3 * FLOATING_OVER_STALL * FLOATING_OVER_STALL * stallIasMps * stallIasMps;
  const { verticalSpeedsMps, iasMps } = b.habits.landing;
  const idle = (GROUND_SHARE * -(verticalSpeedsMps[0] ?? -3)) / iasMps;
  return (
    G0_MPS2 * (idle + b.runway.slope) +
    (pressure * b.shape.areaM2 * b.shape.cdSlip * slip * slip) / b.shape.massKg
  );
};

/** Through the air from the end of the slope to the touch. */
const floatAirM = (b: Known, iasMps: number): number => {
  // Gusts put the wheels down with some speed left
  const touch = lastIasMps(b, b.habits.landing) + GUST_SHARE * b.plan.gustAdditionMps;
  const thin = thinness(b);
  return (thin * Math.max(0, iasMps * iasMps - touch * touch)) / (2 * slowingMps2(b)) + ROUNDING_S * iasMps;
};

/** What one metre a second indicated is through today's air. */
const thinness = ({ plan }: Known): number => plan.legs.final.tasMps / plan.legs.final.iasMps;

/** How far short of the specified point the wheels would touch from here, at idle from now on; negative: beyond. */
export const shortOfPointM = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): number => {
  const slowed = v.groundspeedMps / Math.max(m.iasMps, 15);
  const before = Math.max(0, v.clearanceM - ROUND_OUT_M) / b.approachTangent;
  const rounding = clamp(v.clearanceM / ROUND_OUT_M, 0, 1) * ROUNDING_S * m.iasMps;
  const floats = (floatAirM(b, m.iasMps) - ROUNDING_S * m.iasMps + rounding) * slowed;
  return b.runway.specifiedM + BEYOND_M - v.xM - before - floats;
};

const MOST_SHIFT_M = 105; // tuned
const MOST_BACK_M = 25; // our choice: no lower over the threshold
const LONG_M = 45; // tuned
const SLOWER_MPS = mpsFromKt(2); // our choice: within the 5 kt below of FAA-S-ACS-6 IV.B

type Known = Omit<Briefing, 'aimShiftM' | 'fenceIasMps'>;

/** Where the wheels would touch, aiming at the painted point at a speed. */
const touchM = (b: Known, iasMps: number): number => {
  const { plan, runway } = b;
  const { groundspeedMps, tasMps } = plan.legs.final;
  const wheelsM = runway.aimM - (b.eyeHeightM + ROUND_OUT_M) / b.approachTangent;
  return wheelsM + thinness(b) * floatAirM(b, iasMps) * (1 + NEAR_GROUND * (groundspeedMps / tasMps - 1));
};

/** Beyond the painted aim point, so that the float in today's wind ends at the specified point. */
export const aimShiftM = (b: Known): number =>
  clamp(b.runway.specifiedM + BEYOND_M - touchM(b, b.plan.approachIasMps), -MOST_BACK_M, MOST_SHIFT_M);

/** Speed over the fence: the approach speed, or up to 2 kt less where the float would end well beyond the point. */
export const fenceIasMps = (b: Known): number => {
  const fast = b.plan.approachIasMps;
  const slow = fast - SLOWER_MPS;
  const beyond = touchM(b, fast) - (b.runway.specifiedM + LONG_M);
  const gained = touchM(b, fast) - touchM(b, slow);
  return fast - SLOWER_MPS * clamp(beyond / gained, 0, 1);
};

const ROUGH_FROM_MPS = 0.15; // tuned
const ROUGH_M_PER_MPS = 120; // tuned
const MOST_ROUGH_M = 60; // tuned

/** Rough air shortens the float: aimed a little further on. */
export const roughShiftM = (m: PilotMemory): number =>
  clamp(ROUGH_M_PER_MPS * (m.roughnessMps - ROUGH_FROM_MPS), 0, MOST_ROUGH_M);

const BUMPY_MPS = 0.35; // tuned

/** Gusts reported, or a jumping needle: some power is kept until the wheels are near the ground (FAA-H-8083-3C p. 9-20). */
export const isBumpy = (b: Briefing, m: PilotMemory): boolean =>
  b.plan.gustAdditionMps > 0 || m.roughnessMps > BUMPY_MPS;
