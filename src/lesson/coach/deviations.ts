import { bandOf } from '../judge/bands.ts';
import { isAssessed } from '../judge/judge.ts';
import type { Live, Sides, Standard, Teaching } from '../judge/rule.ts';
import { RULES } from '../judge/rules.ts';
import { circuitFacts } from '../watch/facts.ts';
import type { CoachContext, Word } from './context.ts';

const sidesFor = (say: NonNullable<Live['say']>, teaching: Teaching): Sides =>
  'power-for-sink' in say ? say[teaching] : say;

/** On which side of its tolerance a value lies; null inside. */
const sideOf = (value: number, { low, high }: Standard): keyof Sides | null => {
  if (low !== null && value < low) return 'low';
  return high !== null && value > high ? 'high' : null;
};

/** What is outside its tolerance now: the rows that can be looked at while they last, by the assessment's own measure. */
export const deviationsNow = (c: CoachContext): Word[] => {
  const { leg, fromS, circuit } = c.m.legs;
  const here = RULES.filter(
    ({ leg: own, live }) =>
      live !== undefined && (live.legs ?? [own]).includes(leg) && c.s.timeS - fromS >= live.settleS,
  );
  if (here.length === 0) return [];
  const facts = circuitFacts(c.m, c.lesson, circuit);
  return here.flatMap((rule) => {
    const { live } = rule;
    if (live === undefined || !isAssessed(c.lesson, rule.id) || rule.unjudged?.(facts)) return [];
    const value = live.value(c);
    if (value === null) return [];
    const against = rule.against(facts, c.limits.allowed);
    const side = sideOf(value, against);
    // What is smoothed lags: said only while the needle says so too
    const reads = live.reads === undefined ? value : live.reads(c);
    if (side === null || reads === null || sideOf(reads, against) !== side) return [];
    const { target, low, high, amberLow } = against;
    const band = bandOf(value, target, low, high, amberLow);
    const say = live.say === undefined ? rule.say : sidesFor(live.say, c.teaching);
    const text = say[side] ?? '';
    // Red is said at once, amber when it stays
    return text === '' ? [] : [{ topic: rule.id, text, rank: live.rank, afterS: band === 'red' ? 1 : 3 }];
  });
};
