import type { Briefing } from '../../../pilot/briefing/briefing.ts';
import { beginPhase, type PilotMemory } from '../../../pilot/memory.ts';
import type { PhaseName } from '../../../pilot/phase-name.ts';
import { SLOW_HANDS_S } from '../../../pilot/tick.ts';
import type { PilotView } from '../../../pilot/view.ts';
import type { Style, StyleLeg } from './style.ts';

/** How far past the place where the model pilot would begin the turn. */
type Past = (b: Briefing, v: Readonly<PilotView>) => number;
const PAST: Readonly<Record<StyleLeg, { readonly from: PhaseName; readonly past: Past }>> = {
  downwind: {
    from: 'crosswind',
    past: (b, v) =>
      v.yM -
      (b.plan.spacingM -
        (b.corners.downwind.toY - b.corners.downwind.fromY) -
        SLOW_HANDS_S * v.groundspeedMps),
  },
  base: {
    from: 'downwind',
    past: (b, v) => b.corners.base.fromX + SLOW_HANDS_S * v.groundspeedMps - v.xM,
  },
  final: {
    from: 'base',
    past: (b, v) => b.corners.final.fromY + SLOW_HANDS_S * v.groundspeedMps - v.yM,
  },
};

/** How the pilot stood before the look. */
export interface Before {
  readonly phase: PhaseName;
  readonly turning: boolean;
  readonly phaseFromS: number;
}

const LEGS: readonly StyleLeg[] = ['downwind', 'base', 'final'];

/** Begins a turn where this style does, not where the model pilot would. */
export const turnAtOwnPlace = (
  style: Style,
  b: Briefing,
  m: PilotMemory,
  v: Readonly<PilotView>,
  before: Before,
): void => {
  for (const onto of LEGS) {
    const { from, past } = PAST[onto];
    const lateM = style.turnLateM[onto];
    if (lateM === 0 || before.phase !== from) continue;
    const due = past(b, v) >= lateM;
    if (m.phase === onto && !due) {
      m.phase = before.phase;
      m.turning = before.turning;
      m.phaseFromS = before.phaseFromS;
    } else if (m.phase === from && due && !m.turning) beginPhase(m, v, onto);
  }
};
