import { itemWords, sideWords } from '../judge/item-words.ts';
import type { LegName } from '../names.ts';
import { type AttemptRow, COACH_WORDS, type HelpUsed, isUnaided, PICTURES } from './attempt.ts';
import {
  consistencyOf,
  IN_A_ROW,
  type ItemTrend,
  itemTrends,
  LATELY,
  ownAttempts,
  type SuccessOf,
} from './trends.ts';

/** One thing to practise next, and why. */
export interface PractiseNext {
  readonly kind: 'go-around' | 'safety' | 'item' | 'again' | 'less-help' | 'more-wind';
  /** The item that asks for it, where one does. */
  readonly item: string | null;
  /** Where to begin, where a leg asks for it. */
  readonly leg: LegName | null;
  readonly what: string;
  readonly why: string;
}

/** How many of the last attempts a fault in them still speaks for. */
const SAFETY_BACK = 3; // our choice: what is practised lately
/** An item within this share of the worst is as bad: the earliest in the circuit is taken, early faults make later ones. */
const AS_BAD = 0.75; // our choice: nearly as bad
const WEIGHT: Readonly<Record<string, number>> = { red: 2, amber: 1 }; // our choice: red counts twice

/** One reason to practise something, and what; null where there is none. */
type Reason = (own: readonly AttemptRow[], successOf?: SuccessOf) => PractiseNext | null;

/** The reasons of the last attempts, newest first. */
const lately = (own: readonly AttemptRow[], of: (row: AttemptRow) => readonly string[]): string[] =>
  own.slice(-SAFETY_BACK).reverse().flatMap(of);

const goAround: Reason = (own) => {
  const [why] = lately(own, (row) => row.missedGoArounds);
  if (why === undefined) return null;
  return {
    kind: 'go-around',
    item: 'go-around',
    leg: 'final',
    what: 'Go around at the first gate or trigger that asks for it.',
    why: `A go-around was due and was not flown: ${why}.`,
  };
};

const safety: Reason = (own) => {
  const found = lately(own, (row) => row.safety);
  const [why] = found;
  if (why === undefined) return null;
  return {
    kind: 'safety',
    item: null,
    leg: null,
    what: 'Fly it again with room to spare near the ground, before anything finer.',
    why: `In the last ${Math.min(SAFETY_BACK, own.length)} attempts: ${why}.`,
  };
};

/** Faults of the last five, the newest counting most; nothing when the last two were green. */
const badness = ({ points }: ItemTrend): number => {
  const last = points.filter((point) => point.band !== 'not-judged').slice(-LATELY);
  if (last.slice(-2).every((point) => point.band === 'green')) return 0;
  return last.reduce((sum, point, i) => sum + (i + 1 + LATELY - last.length) * (WEIGHT[point.band] ?? 0), 0);
};

const TENDENCIES = {
  better: ', getting better',
  worse: ', getting worse',
  steady: '',
  'too-few': '',
} as const;

const itemWhy = (trend: ItemTrend): string => {
  const { green, amber, red } = trend.lately;
  const judged = green + amber + red;
  const side = trend.side === null ? '' : sideWords(trend.id, trend.side);
  const often = `outside its tolerance in ${amber + red} of the last ${judged}`;
  return `${itemWords(trend.id, trend.leg)} was ${often}${side === '' ? '' : `, mostly ${side}`}${TENDENCIES[trend.tendency]}.`;
};

const worstItem: Reason = (own) => {
  const scored = itemTrends(own).map((trend) => ({ trend, score: badness(trend) }));
  const worst = scored.reduce((most, { score }) => Math.max(most, score), 0);
  if (worst === 0) return null;
  const found = scored.find(({ score }) => score >= AS_BAD * worst);
  if (found === undefined) return null;
  const { trend } = found;
  return {
    kind: 'item',
    item: trend.id,
    leg: trend.leg,
    what: `Practise ${itemWords(trend.id, trend.leg)}.`,
    why: itemWhy(trend),
  };
};

const times = (count: number): string => (count === 1 ? 'once' : `${count} times`);

const flyAgain = (why: string): PractiseNext => ({
  kind: 'again',
  item: null,
  leg: null,
  what: 'Fly the same again.',
  why,
});

const again: Reason = (own, successOf) => {
  const { run } = consistencyOf(own, successOf);
  if (run >= IN_A_ROW) return null;
  if (run === 0) return flyAgain('The last flight did not come to the end it should have.');
  return flyAgain(`Sound ${times(run)} in a row; ${IN_A_ROW} in a row make it a habit.`);
};

const next = <T extends string>(steps: readonly T[], now: T): T | null =>
  steps[steps.indexOf(now) + 1] ?? null;

/** One help less than last time, the smallest step that is left. */
const withLess = (help: HelpUsed): string => {
  const picture = next(PICTURES, help.picture);
  if (picture !== null) return `Fly it with less to see: ${picture.replaceAll('-', ' ')}.`;
  const coach = next(COACH_WORDS, help.coach);
  if (coach !== null) return `Fly it with less said: coach ${coach.replaceAll('-', ' ')}.`;
  return 'Fly it in one go, without freeze, step back or a look at the plan.';
};

const lessHelp: Reason = (own) => {
  const newest = own[own.length - 1];
  if (newest === undefined || isUnaided(newest.help)) return null;
  return {
    kind: 'less-help',
    item: null,
    leg: null,
    what: withLess(newest.help),
    why: `${IN_A_ROW} sound flights in a row, with help that no cockpit has.`,
  };
};

const againUnaided: Reason = (own, successOf) => {
  const { unaidedRun } = consistencyOf(own, successOf);
  if (unaidedRun >= IN_A_ROW) return null;
  return flyAgain(`Sound ${times(unaidedRun)} in a row without help; ${IN_A_ROW} in a row make it a habit.`);
};

const moreWind: Reason = () => ({
  kind: 'more-wind',
  item: null,
  leg: null,
  what: 'Take more wind, or another runway.',
  why: `${IN_A_ROW} sound flights in a row without help.`,
});

/** In this order: what is unsafe before what is inexact, the same again before less help, less help before more wind. */
const REASONS: readonly Reason[] = [goAround, safety, worstItem, again, lessHelp, againUnaided, moreWind];

/** What to practise next and why, from one pilot's attempts; null before the first. */
export const practiseNext = (rows: readonly AttemptRow[], successOf?: SuccessOf): PractiseNext | null => {
  const own = ownAttempts(rows);
  if (own.length === 0) return null;
  for (const reason of REASONS) {
    const found = reason(own, successOf);
    if (found !== null) return found;
  }
  return null;
};
