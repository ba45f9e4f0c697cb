import type { StyleLeg } from '../own/style.ts';
import type { Finder } from './departure.ts';
import { lastOf, looksOn, type Span } from './span.ts';

const LEGS: readonly StyleLeg[] = ['downwind', 'base', 'final'];

/** Less flap at the end of a leg than the plan has there. */
const missingOn = (span: Span, leg: StyleLeg): number | null => {
  const end = lastOf(looksOn(span, leg, 2), 1);
  const look = end[end.length - 1];
  if (look === undefined) return null;
  return look.flapStage < span.flown.briefing.habits[leg].stage ? look.flapStage : null;
};

export const findFlap: Finder = (span) => {
  const mostFlap: Record<StyleLeg, number | null> = { downwind: null, base: null, final: null };
  for (const leg of LEGS) mostFlap[leg] = missingOn(span, leg);
  const leg = LEGS.find((on) => mostFlap[on] !== null);
  if (leg === undefined) return [];
  const atS = span.looks.find((look) => look.leg === leg)?.timeS ?? span.fromS;
  const { aeroplane } = span.flown.model.scenario;
  const stage = span.flown.briefing.habits[leg].stage;
  const deg = aeroplane.flap.stages[stage]?.deg ?? 0;
  return [
    {
      kind: 'flap',
      leg,
      atS,
      forkS: atS,
      size: 1,
      unit: 'whole',
      sense: -1,
      suggests: true,
      keep: (style) => ({ ...style, mostFlap }),
      mend: (style) => ({ ...style, mostFlap: { downwind: null, base: null, final: null } }),
      say: () => `Take the flap as planned: ${deg} degrees on ${leg}.`,
    },
  ];
};
