import { legWords } from '../names.ts';
import type { AttemptRow } from './attempt.ts';

/** Without capitals and accents, so that "Cafe" finds "café". */
const folded = (text: string): string => text.normalize('NFD').replaceAll(/\p{M}/gu, '').toLowerCase();

/** Everything of a row that is text. */
const textOf = (row: AttemptRow): string =>
  [
    row.pilot,
    row.when.slice(0, 10),
    row.exercise.replaceAll('-', ' '),
    row.aeroplane,
    row.aerodrome,
    row.runway,
    row.wind,
    row.turbulence,
    row.outcome.replaceAll('-', ' '),
    row.why,
    row.notes,
    row.demonstration === true ? 'demonstration' : '',
    ...row.ownView,
    ...row.safety,
    ...row.missedGoArounds,
    ...row.items.filter((item) => item.band === 'red').map((item) => legWords(item.leg)),
  ].join('\n');

/** Rows in which every word asked for stands somewhere; all of them when nothing is asked for. */
export const searchRows = (rows: readonly AttemptRow[], asked: string): AttemptRow[] => {
  const words = folded(asked)
    .split(/\s+/)
    .filter((word) => word !== '');
  return rows.filter((row) => {
    const text = folded(textOf(row));
    return words.every((word) => text.includes(word));
  });
};
