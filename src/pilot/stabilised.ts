import { centrelineAllowedM, GATES_M, LONG_FINAL_M, mostSinkMps, STABILISED } from '../circuit/stabilised.ts';
import { atan2 } from '../maths/functions.ts';
import type { Briefing } from './briefing/briefing.ts';
import type { PilotMemory } from './memory.ts';
import type { PilotView } from './view.ts';

/** What is not as it should be, in a few words; empty when stabilised. */
export const unstable = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): string => {
  const { runway, plan } = b;
  if (m.turning) return 'not on final yet';
  const slope = atan2(v.heightM - b.aimGroundM, runway.aimM - v.xM) - plan.approachRad;
  if (slope > STABILISED.slopeRad) return 'high';
  if (slope < -STABILISED.slopeRad) return 'low';
  if (Math.abs(v.yM) > centrelineAllowedM(plan, runway.aimM - v.xM)) return 'off the centreline';
  if (m.settledIasMps > plan.approachIasMps + STABILISED.fasterMps) return 'fast';
  if (m.settledIasMps < plan.approachIasMps - STABILISED.slowerMps) return 'slow';
  if (Math.abs(m.smoothBankRad) > STABILISED.bankRad) return 'banked';
  if (-m.settledVerticalSpeedMps > mostSinkMps(plan)) return 'sinking fast';
  if (v.gear < 1) return 'wheels not down';
  if (m.hands.flapStage < b.habits.final.stage) return 'flap not as planned';
  return '';
};

const passes = (m: PilotMemory, v: Readonly<PilotView>, gateM: number): boolean =>
  m.lastHeightM >= gateM && v.heightM < gateM;

/** Looks when a gate is passed on the way down; the reason to go around, or empty. */
export const unstableAtGate = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): string => {
  const decides =
    passes(m, v, GATES_M.lastCall) ||
    (passes(m, v, GATES_M.circuit) && b.plan.rollOutOnFinalHeightM > GATES_M.circuit) ||
    (passes(m, v, GATES_M.longFinal) && m.finalLengthM > LONG_FINAL_M);
  if (!decides || v.xM > b.runway.aimM) return '';
  const why = unstable(b, m, v);
  return why === '' ? '' : `not stabilised: ${why}`;
};
