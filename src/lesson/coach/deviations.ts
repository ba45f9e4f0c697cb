import { wrapPi } from '../../units/angles.ts';
import { degFromRad, ftFromM, ktFromMps, mFromFt, mpsFromKt } from '../../units/conversions.ts';
import { bandOf } from '../judge/bands.ts';
import { isAssessed } from '../judge/judge.ts';
import type { Standard, WhatToSay } from '../judge/rule.ts';
import { RULES } from '../judge/rules.ts';
import type { LegName } from '../names.ts';
import { lampsNow } from '../watch/stretch.ts';
import { type CoachContext, factsNow, type Teaching, type Word } from './context.ts';

/**
 * What a row of the rules would look at, as it is at this moment. The coach holds it against the same target and
 * tolerance as the assessment and uses the same words.
 */
interface Live {
  readonly rule: string;
  readonly legs: readonly LegName[];
  /** Seconds on the leg before it is looked at. */
  readonly settleS: number;
  readonly rank: number;
  readonly value: (c: CoachContext) => number | null;
}

const SETTLE_S = 8; // our choice: as stretch.ts waits

const speed = (leg: LegName, rank: number): Live => ({
  rule: `${leg}-speed`,
  legs: [leg],
  settleS: SETTLE_S,
  rank,
  value: ({ m }) => ktFromMps(m.smoothIasMps),
});

const track = (leg: 'upwind' | 'crosswind' | 'downwind' | 'base' | 'final'): Live => ({
  rule: `${leg}-track`,
  legs: [leg],
  settleS: SETTLE_S,
  rank: 60,
  value: ({ lesson, s }) => degFromRad(wrapPi(s.trackRadT - lesson.lines[leg].trackRadT)),
});

const bank = (onto: 'crosswind' | 'downwind' | 'base' | 'final', rank: number): Live => ({
  rule: `turn-to-${onto}-bank`,
  legs: [`turn-to-${onto}`],
  settleS: 0,
  rank,
  value: ({ m }) => Math.abs(degFromRad(m.smoothBankRad)),
});

const trim = (leg: LegName): Live => ({
  rule: `${leg}-trim`,
  legs: [leg],
  settleS: 15,
  rank: 70,
  value: ({ m }) => (m.steadyFromS === null ? null : m.smoothHeldDegKpa),
});

const flapOverKt = ({ lesson, s }: CoachContext): number => {
  const { stages } = lesson.aeroplane.flap;
  const limitKt = s.flapStage === 0 ? Number.POSITIVE_INFINITY : (stages[s.flapStage]?.limitKt ?? 0);
  return Math.max(0, ktFromMps(s.iasMps - mpsFromKt(limitKt)));
};

const AIRBORNE: readonly LegName[] = ['upwind', 'crosswind', 'downwind', 'turn-to-base', 'base', 'final'];

const CLIMBING_MPS = 1; // our choice: less is level
const BELOW_M = mFromFt(50); // our choice: half of a licence test’s tolerance

/** The climb is over, and the descent that some customs begin abeam has not begun. */
const levelOnDownwind = ({ lesson, s }: CoachContext): boolean =>
  lesson.where.alongM > 0 &&
  !(s.verticalSpeedMps > CLIMBING_MPS && s.heightM < lesson.plan.heightM - BELOW_M);

/** Ranks, the lower the more urgent, and seconds to settle (our choice: speed and bank low down before all else). */
const LIVE: readonly Live[] = [
  { rule: 'flap-limit', legs: AIRBORNE, settleS: 0, rank: 12, value: flapOverKt },
  bank('final', 10),
  bank('base', 30),
  bank('downwind', 30),
  bank('crosswind', 30),
  speed('final', 20),
  {
    rule: 'final-lights',
    legs: ['final'],
    settleS: 4,
    rank: 25,
    value: ({ m, lesson }) => lampsNow(m, lesson),
  },
  speed('upwind', 40),
  speed('base', 40),
  speed('crosswind', 45),
  speed('downwind', 45),
  {
    rule: 'downwind-height',
    legs: ['downwind'],
    settleS: SETTLE_S,
    rank: 42,
    value: (c) => (levelOnDownwind(c) ? ftFromM(c.s.heightM) : null),
  },
  track('upwind'),
  track('crosswind'),
  track('downwind'),
  track('base'),
  track('final'),
  trim('upwind'),
  trim('downwind'),
  trim('final'),
];

/** Which hand does what on final is the aerodrome's teaching; the rest are the rule's own words. */
const TAUGHT: Readonly<Record<Teaching, Readonly<Record<string, WhatToSay>>>> = {
  'power-for-sink': {
    'final-speed': {
      low: 'Slow: lower the nose for the speed, power for the sink.',
      high: 'Fast: raise the nose a little for the speed, then less power.',
    },
    'final-lights': {
      low: 'Low: power for less sink, and hold the speed with the attitude.',
      high: 'High: less power for more sink, and hold the speed with the attitude.',
    },
  },
  'point-with-pitch': {
    'final-speed': {
      low: 'Slow: more power, and the nose stays on the aim point.',
      high: 'Fast: less power, and the nose stays on the aim point.',
    },
    'final-lights': {
      low: 'Low: nose up until the aim point stays where it is, then power for the speed.',
      high: 'High: nose down to the aim point, less power for the speed.',
    },
  },
};

/** What the debrief tells of a leg that is over, as it is said while it lasts. */
const HELD: WhatToSay = {
  low: 'The hand is pushing: hold the attitude, and trim nose down until it holds nothing.',
  high: 'The hand is pulling: hold the attitude, and trim nose up until it holds nothing.',
};

const wordsFor = (
  rule: string,
  say: WhatToSay,
  teaching: Teaching,
  value: number,
  { low }: Standard,
): string => {
  const words = TAUGHT[teaching][rule] ?? (rule.endsWith('-trim') ? HELD : say);
  return (low !== null && value < low ? words.low : words.high) ?? '';
};

/** What is outside its tolerance now. */
export const deviationsNow = (c: CoachContext): Word[] => {
  const { leg, fromS } = c.m.legs;
  const here = LIVE.filter((live) => live.legs.includes(leg) && c.s.timeS - fromS >= live.settleS);
  if (here.length === 0) return [];
  const facts = factsNow(c);
  return here.flatMap((live) => {
    const rule = RULES.find(({ id }) => id === live.rule);
    const looked = rule !== undefined && isAssessed(c.lesson, rule.id) && !rule.unjudged?.(facts);
    const value = looked ? live.value(c) : null;
    if (rule === undefined || value === null) return [];
    const standard = rule.against(facts, c.limits);
    const { target, low, high, amberLow } = standard;
    const band = bandOf(value, target, low, high, amberLow);
    if (band === 'green' || band === 'not-judged') return [];
    const text = wordsFor(live.rule, rule.say, c.teaching, value, standard);
    // Red is said at once, amber when it stays
    return text === '' ? [] : [{ topic: live.rule, text, rank: live.rank, afterS: band === 'red' ? 1 : 3 }];
  });
};
