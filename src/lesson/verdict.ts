import type { Exercise } from './exercise.ts';
import { wordsFor } from './judge.ts';
import type { ItemReport, Outcome, Report } from './report.ts';

/** Whether the exercise was done, and what stood against it, one sentence each. */
export interface Verdict {
  readonly passed: boolean;
  readonly against: readonly string[];
}

const itemSentence = (item: ItemReport): string => {
  const words = wordsFor(item);
  return `${item.id.replaceAll('-', ' ')} was ${item.value} ${item.unit}${words === '' ? '' : `: ${words}`}`;
};

/** Ended as it may, without a safety stop, and nothing that was looked at red. */
export const verdictOf = (
  exercise: Pick<Exercise, 'success'>,
  outcome: Outcome,
  why: string,
  report: Report,
): Verdict => {
  const against = [
    ...(exercise.success.includes(outcome) ? [] : [`the flight ended otherwise: ${why}`]),
    ...report.safety.map((stop) => stop.what),
    ...report.items.filter((item) => item.band === 'red').map(itemSentence),
  ];
  return { passed: against.length === 0, against };
};
