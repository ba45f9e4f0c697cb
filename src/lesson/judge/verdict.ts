import type { Exercise } from '../exercises/exercise.ts';
import { itemSentence } from './item-words.ts';
import { wordsFor } from './judge.ts';
import { type ItemReport, isAskedEnd, type Outcome, type Report } from './report.ts';

/** Whether the exercise was done, and what stood against it, one sentence each. */
export interface Verdict {
  readonly passed: boolean;
  readonly against: readonly string[];
}

const redSentence = (item: ItemReport): string => {
  const words = wordsFor(item);
  return words === '' ? itemSentence(item) : `${itemSentence(item)} ${words}`;
};

/** Ended as it may, without a safety stop, and nothing that was looked at red. */
export const verdictOf = (
  exercise: Pick<Exercise, 'success'>,
  outcome: Outcome,
  why: string,
  report: Report,
): Verdict => {
  const against = [
    ...(isAskedEnd(outcome, exercise.success) ? [] : [`the flight ended otherwise: ${why}`]),
    ...report.safety.map((stop) => stop.what),
    ...report.items.filter((item) => item.band === 'red').map(redSentence),
  ];
  return { passed: against.length === 0, against };
};
