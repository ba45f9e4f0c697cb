import { mpsFromKt } from '../units/conversions.ts';
import type { Briefing } from './briefing/briefing.ts';
import type { PilotMemory } from './memory.ts';

const MARGIN_MPS = mpsFromKt(2); // our choice: what a needle can be misread by

/** Selects a stage once the speed allows it; true when the lever stands there. */
export const selectFlap = (b: Briefing, m: PilotMemory, stage: number): boolean => {
  if (m.hands.flapStage >= stage) return true;
  const limit = b.shape.aeroplane.flap.stages[stage]?.limitKt ?? 0;
  if (m.iasMps > mpsFromKt(limit) - MARGIN_MPS) return false;
  m.hands.flapStage = stage;
  return true;
};
