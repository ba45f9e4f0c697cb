import { atan2 } from '../maths/functions.ts';
import { mFromFt, mFromNmi, mpsFromFpm, mpsFromKt, radFromDeg } from '../units/conversions.ts';
import type { Briefing } from './briefing.ts';
import type { PilotMemory } from './memory.ts';
import type { PilotView } from './view.ts';

/**
 * Stabilised or not: the last moment to decide is 300 ft in a circuit, 500 ft on a final longer than 1.5 NM,
 * 200 ft the last call (common practice). +10/-5 kt: FAA-S-ACS-6 IV.B; bank within 10 degrees and sink within
 * 1,000 ft/min: Flight Safety Foundation ALAR briefing note 7.1; half a degree of slope, two degrees of
 * centreline: common practice.
 */
const LONG_FINAL_M = mFromNmi(1.5);
const LONG_GATE_M = mFromFt(500);
const GATE_M = mFromFt(300);
const LAST_CALL_M = mFromFt(200);
const FAST_MPS = mpsFromKt(10);
const SLOW_MPS = mpsFromKt(5);
const SLOPE_RAD = radFromDeg(0.5);
const BANK_RAD = radFromDeg(10);
const SINK_MPS = mpsFromFpm(1000);
const CENTRELINE_RATIO = 0.035;

/** What is not as it should be, in a few words; empty when stabilised. */
export const unstable = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): string => {
  const { runway, plan } = b;
  if (m.turning) return 'not on final yet';
  const slope = atan2(v.heightM - b.aimGroundM, runway.aimM - v.xM) - plan.approachRad;
  if (slope > SLOPE_RAD) return 'high';
  if (slope < -SLOPE_RAD) return 'low';
  if (Math.abs(v.yM) > Math.max(runway.widthM / 2, CENTRELINE_RATIO * (runway.aimM - v.xM)))
    return 'off the centreline';
  if (m.settledIasMps > plan.approachIasMps + FAST_MPS) return 'fast';
  if (m.settledIasMps < plan.approachIasMps - SLOW_MPS) return 'slow';
  if (Math.abs(m.smoothBankRad) > BANK_RAD) return 'banked';
  if (-m.settledVerticalSpeedMps > SINK_MPS) return 'sinking fast';
  if (v.gear < 1) return 'wheels not down';
  if (m.hands.flapStage < b.habits.final.stage) return 'flap not as planned';
  return '';
};

const passes = (m: PilotMemory, v: Readonly<PilotView>, gateM: number): boolean =>
  m.lastHeightM >= gateM && v.heightM < gateM;

/** Looks when a gate is passed on the way down; the reason to go around, or empty. */
export const unstableAtGate = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): string => {
  const decides =
    passes(m, v, LAST_CALL_M) ||
    (passes(m, v, GATE_M) && b.plan.rollOutOnFinalHeightM > GATE_M) ||
    (passes(m, v, LONG_GATE_M) && m.finalLengthM > LONG_FINAL_M);
  if (!decides || v.xM > b.runway.aimM) return '';
  const why = unstable(b, m, v);
  return why === '' ? '' : `not stabilised: ${why}`;
};
