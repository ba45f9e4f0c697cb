import { mFromFt, mFromNmi, mpsFromFpm, mpsFromKt, radFromDeg } from '../units/conversions.ts';
import type { CircuitPlan } from './types.ts';

/**
 * What "stabilised" means, beside the speed, which the tolerance set may say: bank within 10 deg, sink not above
 * 1,000 ft/min (Flight Safety Foundation ALAR briefing note 7.1) nor 300 ft/min above the plan, with 700 ft/min
 * always allowed (common practice), within half a degree of the planned slope (the two-light picture either
 * side; common practice), within 2 deg of the centreline seen from the aim point (common practice).
 */
export const STABILISED = {
  slopeRad: radFromDeg(0.5),
  centrelineRatio: 0.035,
  bankRad: radFromDeg(10),
  /** About the approach speed, where no tolerance set says otherwise: FAA-S-ACS-6 IV.B. */
  slowerMps: mpsFromKt(5),
  fasterMps: mpsFromKt(10),
} as const;

/**
 * The gates. 500 ft is the published one in visual conditions (Flight Safety Foundation ALAR briefing note 7.1); that it
 * decides only on a final longer than this, and 300 ft in a circuit, whose final begins below it, and 200 ft for the
 * last call, are common practice. (The same note has the wings level by 300 ft of a circling approach.)
 */
export const LONG_FINAL_M = mFromNmi(1.5);
const GATE_FT = { longFinal: 500, circuit: 300, lastCall: 200 } as const;
export const GATES_M = {
  longFinal: mFromFt(GATE_FT.longFinal),
  circuit: mFromFt(GATE_FT.circuit),
  lastCall: mFromFt(GATE_FT.lastCall),
} as const;
/** The same from the highest down. */
export const GATES_FT = [GATE_FT.longFinal, GATE_FT.circuit, GATE_FT.lastCall] as const;

export const MOST_SINK_MPS = mpsFromFpm(1000);
const ALWAYS_ALLOWED_MPS = mpsFromFpm(700);
const ABOVE_PLAN_MPS = mpsFromFpm(300);

/** The quickest sink that is still stabilised on this plan's final, positive down. */
export const mostSinkMps = (plan: CircuitPlan): number =>
  Math.min(MOST_SINK_MPS, Math.max(ALWAYS_ALLOWED_MPS, -plan.legs.final.verticalSpeedMps + ABOVE_PLAN_MPS));

/** Either side of the centreline, seen from the aim point and never narrower than the runway. */
export const centrelineAllowedM = ({ runway }: CircuitPlan, toAimM: number): number =>
  Math.max(runway.widthM / 2, STABILISED.centrelineRatio * toAimM);
