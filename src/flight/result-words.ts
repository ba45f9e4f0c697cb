import type { FlownResult } from '../formats/result.ts';
import { firstThing } from '../lesson/judge/first/first-thing.ts';

/** What of a flight is spoken of first; what causes an earlier version did not keep it does without. */
export type SpokenOf = Parameters<typeof firstThing>[0];

/** What to look at first, the same line on card, debrief, print and logbook: by harm, then cause before symptom. */
export const firstLookAt = (result: SpokenOf | FlownResult): string => {
  const first = firstThing(result);
  if (first !== null) return first.sentence;
  return result.items.some((i) => i.band === 'green')
    ? 'Everything that was judged lies inside its tolerance. Fly it again to make it a habit.'
    : 'Too little was flown to judge.';
};

/** The exercise that trains what is looked at first; null where nothing is outside. */
export const trainsFirst = (result: SpokenOf | FlownResult): string | null =>
  firstThing(result)?.lead.exercise ?? null;
