import { bandOf } from '../judge/bands.ts';
import { isAssessed } from '../judge/judge.ts';
import type { Live, Sides, Teaching } from '../judge/rule.ts';
import { RULES } from '../judge/rules.ts';
import { circuitFacts } from '../watch/facts.ts';
import type { CoachContext, Word } from './context.ts';

const sidesFor = (say: NonNullable<Live['say']>, teaching: Teaching): Sides =>
  'power-for-sink' in say ? say[teaching] : say;

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
    const { target, low, high, amberLow } = rule.against(facts, c.limits.allowed);
    const band = bandOf(value, target, low, high, amberLow);
    if (band === 'green' || band === 'not-judged') return [];
    const say = live.say === undefined ? rule.say : sidesFor(live.say, c.teaching);
    const text = (low !== null && value < low ? say.low : say.high) ?? '';
    // Red is said at once, amber when it stays
    return text === '' ? [] : [{ topic: rule.id, text, rank: live.rank, afterS: band === 'red' ? 1 : 3 }];
  });
};
