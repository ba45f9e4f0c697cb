import { outcomeWords } from '../../flight/outcome-words.ts';
import type { AttemptRow } from '../../lesson/attempts/attempt.ts';
import type { Exercise } from '../../lesson/exercises/exercise.ts';
import { isAskedEnd } from '../../lesson/judge/report.ts';

const count = (row: AttemptRow, band: string): number =>
  row.items.filter((item) => item.band === band).length;

/** Ended as asked first, then the fewest safety stops and missed go-arounds, items outside, just outside. */
const badness = (row: AttemptRow, { success }: Pick<Exercise, 'success'>): number =>
  (isAskedEnd(row.outcome, success) ? 0 : 1_000_000) +
  10_000 * (row.safety.length + row.missedGoArounds.length) +
  100 * count(row, 'red') +
  count(row, 'amber');

/** The pilot's last attempt at an exercise and the best one; rows come newest first. */
export const bestAndLast = (
  rows: readonly AttemptRow[],
  exercise: Pick<Exercise, 'id' | 'success'>,
): { readonly best: AttemptRow | null; readonly last: AttemptRow | null } => {
  const own = rows.filter((row) => row.exercise === exercise.id && row.help.watchedS === 0);
  const best = own.reduce<AttemptRow | null>(
    (least, row) => (least === null || badness(row, exercise) < badness(least, exercise) ? row : least),
    null,
  );
  return { best, last: own[0] ?? null };
};

/** An attempt in a few words: "stopped, 21 inside, 2 outside". */
export const resultWords = (row: AttemptRow): string => {
  const outside = count(row, 'red') + count(row, 'amber');
  const stops = row.safety.length > 0 ? `, ${row.safety.length} safety` : '';
  return `${outcomeWords(row.outcome)}, ${count(row, 'green')} inside, ${outside} outside${stops}`;
};
