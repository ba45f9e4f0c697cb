import type { Briefing } from '../briefing/briefing.ts';
import { plannedSink } from '../descent.ts';
import { selectFlap } from '../flap.ts';
import { balance } from '../holds/balance.ts';
import { descendAt } from '../holds/path.ts';
import { holdLine, turnTo } from '../holds/track.ts';
import { trimOut } from '../holds/trim.ts';
import { beginPhase, type PilotMemory } from '../memory.ts';
import { SLOW_HANDS_S } from '../tick.ts';
import type { PilotView } from '../view.ts';
import { climbToCircuit } from './climbing.ts';

const BACK_RAD = Math.PI;
const SETTLED_S = 6; // tuned
const BELOW_M = 1; // tuned
/** Wheels and carburettor heat just before the threshold is abeam. */
const ABEAM_M = 150; // our choice: time for two hands before abeam

/** Parallel to the runway at the spacing: first flap, down from abeam where the custom says so. */
export const flyDownwind = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  if (m.turning) m.turning = !turnTo(b, m, v, BACK_RAD, b.corners.downwind.bankRad);
  else holdLine(b, m, v, b.plan.spacingM - v.yM, BACK_RAD);
  const { stage, iasMps } = b.habits.downwind;
  const settled = !m.turning && m.levelled && v.timeS - m.phaseFromS > SETTLED_S;
  if (settled && selectFlap(b, m, v, stage)) m.regime = v.xM < ABEAM_M ? 'abeam' : 'downwind';
  const descent = plannedSink(b, m, v);
  if (m.levelled && descent.heightM < b.plan.heightM - BELOW_M) {
    descendAt(b, m, v, descent.verticalSpeedMps, iasMps);
    trimOut(b, m, v);
  } else climbToCircuit(b, m, v);
  balance(b, m, v);
  if (!m.turning && v.xM <= b.corners.base.fromX + SLOW_HANDS_S * v.groundspeedMps) beginPhase(m, v, 'base');
};
