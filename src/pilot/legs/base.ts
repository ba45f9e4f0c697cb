import type { Briefing } from '../briefing/briefing.ts';
import { plannedSink } from '../descent.ts';
import { selectFlap } from '../flap.ts';
import { balance } from '../holds/balance.ts';
import { descendAt } from '../holds/path.ts';
import { holdTrack, turnTo } from '../holds/track.ts';
import { trimOut } from '../holds/trim.ts';
import { beginPhase, type PilotMemory } from '../memory.ts';
import { SLOW_HANDS_S } from '../tick.ts';
import type { PilotView } from '../view.ts';

const TOWARDS_RAD = -Math.PI / 2;

/** Carburettor heat, power, attitude, flap; towards the centreline by track; the turn to final is led. */
export const flyBase = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  if (m.turning) m.turning = !turnTo(b, m, v, TOWARDS_RAD, b.corners.base.bankRad);
  else holdTrack(b, m, v, TOWARDS_RAD);
  const { stage, iasMps } = b.habits.base;
  if (!m.turning && selectFlap(b, m, v, stage)) m.regime = 'base';
  descendAt(b, m, v, plannedSink(b, m, v).verticalSpeedMps, iasMps);
  trimOut(b, m, v);
  balance(b, m, v);
  if (v.yM <= b.corners.final.fromY + SLOW_HANDS_S * v.groundspeedMps) beginPhase(m, v, 'final');
};
