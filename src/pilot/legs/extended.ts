import type { Briefing } from '../briefing/briefing.ts';
import { balance } from '../holds/balance.ts';
import { holdLevel } from '../holds/path.ts';
import { holdLine } from '../holds/track.ts';
import { trimOut } from '../holds/trim.ts';
import { beginPhase, type PilotMemory } from '../memory.ts';
import { SLOW_HANDS_S } from '../tick.ts';
import type { PilotView } from '../view.ts';

/** Downwind beyond the planned base turn, level at circuit height, until base is called. */
export const flyExtended = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  holdLine(b, m, v, b.plan.spacingM - v.yM, Math.PI);
  holdLevel(b, m, v, b.plan.heightM, b.habits[m.regime].iasMps);
  trimOut(b, m, v);
  balance(b, m, v);
  const turnAtX = b.corners.base.fromX - extensionM(b) + SLOW_HANDS_S * v.groundspeedMps;
  if (v.xM <= turnAtX) beginPhase(m, v, 'base');
};

const extensionM = (b: Briefing): number => {
  const asked = b.task.instructions.find(({ what }) => what === 'extend' || what === 'number-two');
  return asked !== undefined && 'byM' in asked ? asked.byM : 0;
};
