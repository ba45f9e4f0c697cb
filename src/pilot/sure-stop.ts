import { G0_MPS2 } from '../units/constants.ts';
import type { Briefing } from './briefing/briefing.ts';
import { LANDING_FACTOR } from './briefing/refusal.ts';
import { lastIasMps } from './landing-attitude.ts';
import type { PilotMemory } from './memory.ts';
import type { PilotView } from './view.ts';

/** Mean of short, firm applications of the brakes, in g (common practice; the plan's landing run has the same). */
const MEAN_BRAKING_G = 0.2;
const NOSE_DOWN_S = 2; // estimate: until the brakes may come on, where the room is wanted

/**
 * Whether the stop on what is left of the runway is sure, with the margin of the sums: from where the wheels are now,
 * at the speed over the ground that they would touch with. Asked in the round-out, and again after every hop.
 */
export const isSureToStop = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): boolean => {
  const toLose = Math.max(0, m.iasMps - lastIasMps(b, b.habits[m.regime]));
  const touchMps = Math.max(0, v.groundspeedMps - toLose);
  const brakingM = (touchMps * touchMps) / (2 * G0_MPS2 * (MEAN_BRAKING_G + b.runway.slope));
  // Before the touch the speed in hand is flown off along the runway
  const flownOffM = (0.5 * (v.groundspeedMps + touchMps) * toLose) / SLOWING_MPS2;
  const neededM = flownOffM + NOSE_DOWN_S * touchMps + LANDING_FACTOR * brakingM;
  return v.xM + neededM < b.runway.surfaceEndM;
};

const SLOWING_MPS2 = 1.3; // estimate: held off at idle
