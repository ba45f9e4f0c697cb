import { mFromFt } from '../../units/conversions.ts';
import type { Briefing } from '../briefing/briefing.ts';
import { balance } from '../holds/balance.ts';
import { holdLine } from '../holds/track.ts';
import { beginPhase, type PilotMemory } from '../memory.ts';
import type { PilotView } from '../view.ts';
import { climbToCircuit } from './climbing.ts';

const FAR_M = 700; // our choice: so far beyond the planned turn it comes without the height
const SAFE_M = mFromFt(300); // our choice: but not lower than this

/** Straight ahead along the centreline, climbing; crosswind not below the custom's height nor before the end. */
export const flyUpwind = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  holdLine(b, m, v, v.yM, 0);
  climbToCircuit(b, m, v);
  balance(b, m, v);
  const high = v.heightM >= b.crosswindTurnM && v.xM >= b.runway.surfaceEndM;
  // With little climb the circuit would grow without end: round at a safe height, gently
  const far = v.xM > b.corners.crosswind.fromX + FAR_M && v.clearanceM > SAFE_M;
  if (high || far) beginPhase(m, v, 'crosswind');
};
