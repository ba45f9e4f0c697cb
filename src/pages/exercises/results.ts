import type { AttemptRow } from '../../lesson/attempt.ts';

const count = (row: AttemptRow, band: string): number =>
  row.items.filter((item) => item.band === band).length;

/** Fewest safety stops and missed go-arounds first, then the fewest items outside, then just outside. */
const badness = (row: AttemptRow): number =>
  10_000 * (row.safety.length + row.missedGoArounds.length) + 100 * count(row, 'red') + count(row, 'amber');

/** The pilot's last attempt at an exercise and the best one; rows come newest first. */
export const bestAndLast = (
  rows: readonly AttemptRow[],
  exerciseId: string,
): { readonly best: AttemptRow | null; readonly last: AttemptRow | null } => {
  const own = rows.filter((row) => row.exercise === exerciseId && row.help.watchedS === 0);
  const best = own.reduce<AttemptRow | null>(
    (least, row) => (least === null || badness(row) < badness(least) ? row : least),
    null,
  );
  return { best, last: own[0] ?? null };
};

/** An attempt in a few words: "stopped, 21 inside, 2 outside". */
export const resultWords = (row: AttemptRow): string => {
  const outside = count(row, 'red') + count(row, 'amber');
  const stops = row.safety.length > 0 ? `, ${row.safety.length} safety` : '';
  return `${row.outcome.replaceAll('-', ' ')}, ${count(row, 'green')} inside, ${outside} outside${stops}`;
};
