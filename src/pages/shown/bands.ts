import type { Band } from '../../lesson/judge/report.ts';

/** What the mark of a value says, for those who do not see it. */
export const BAND_WORDS: Readonly<Record<Band, string>> = {
  green: 'inside',
  amber: 'just outside',
  red: 'outside',
  'not-judged': 'not judged',
};
