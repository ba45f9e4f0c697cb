import type { Briefing } from '../briefing/briefing.ts';
import { balance } from '../holds/balance.ts';
import { holdTrack, turnTo } from '../holds/track.ts';
import { beginPhase, type PilotMemory } from '../memory.ts';
import { SLOW_HANDS_S } from '../tick.ts';
import type { PilotView } from '../view.ts';
import { climbToCircuit } from './climbing.ts';

const ACROSS_RAD = Math.PI / 2;

/** Square to the runway by track, climbing on; downwind when the spacing is right. */
export const flyCrosswind = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  if (m.turning) m.turning = !turnTo(b, m, v, ACROSS_RAD, b.corners.crosswind.bankRad);
  else holdTrack(b, m, v, ACROSS_RAD);
  climbToCircuit(b, m, v);
  balance(b, m, v);
  const { fromY, toY } = b.corners.downwind;
  const turnAtY = b.plan.spacingM - (toY - fromY) - SLOW_HANDS_S * v.groundspeedMps;
  if (v.yM >= turnAtY) beginPhase(m, v, 'downwind');
};
