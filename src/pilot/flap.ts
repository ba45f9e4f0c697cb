import { mpsFromKt, radFromDeg } from '../units/conversions.ts';
import type { Briefing } from './briefing/briefing.ts';
import type { PilotMemory } from './memory.ts';
import type { PilotView } from './view.ts';

const MARGIN_MPS = mpsFromKt(2); // our choice: what a needle can be misread by
const LEVEL_RAD = radFromDeg(4); // common practice: flap with the wings level, not in a turn

/** Selects a stage once the wings are level and the speed allows it; true when the lever stands there. */
export const selectFlap = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>, stage: number): boolean => {
  if (m.hands.flapStage >= stage) return true;
  if (Math.abs(v.bankRad) > LEVEL_RAD) return false;
  const limit = b.shape.aeroplane.flap.stages[stage]?.limitKt ?? 0;
  if (m.iasMps > mpsFromKt(limit) - MARGIN_MPS) return false;
  m.hands.flapStage = stage;
  return true;
};
