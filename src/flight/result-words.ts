import type { FlownResult } from '../formats/result.ts';
import { itemSentence } from '../lesson/judge/item-words.ts';
import type { ItemReport, Outcome } from '../lesson/judge/report.ts';
import { ruleOf } from '../lesson/judge/rules.ts';

/** Endings that matter more than any tolerance. */
const ENDED_WORDS: Partial<Readonly<Record<Outcome, string>>> = {
  'ran-off': 'First: keeping straight on the ground. Feet on the runway line until it has stopped.',
  crashed: 'First: how it met the ground. Take it up again half a minute earlier, or go around sooner.',
  'loss-of-control': 'First: speed and balance near the ground. Lower the nose, then roll level.',
};

/** The item to look at first: red before amber, flying before checks, calls and lookout. */
export const firstItemOf = ({ items }: Pick<FlownResult, 'items'>): ItemReport | undefined => {
  const flown = items.filter((i) => ruleOf(i.id)?.besideFlying !== true);
  return (
    flown.find((i) => i.band === 'red') ??
    flown.find((i) => i.band === 'amber') ??
    items.find((i) => i.band === 'red') ??
    items.find((i) => i.band === 'amber')
  );
};

/**
 * What to look at first: a safety stop before all, then a gate flown below without being stabilised, then how
 * it ended where that was no landing, then the earliest leg that left its tolerance (an early fault makes the
 * later ones), red before amber, flying before checks, calls and lookout.
 */
export const firstLookAt = (
  result: Pick<FlownResult, 'outcome' | 'safety' | 'go_arounds' | 'items'>,
): string => {
  const [stop] = result.safety;
  if (stop) return `First: ${stop.what}.`;
  const missed = result.go_arounds.find((g) => g.at_s === null);
  if (missed) return `A go-around was due: ${missed.why}.`;
  const ended = ENDED_WORDS[result.outcome];
  if (ended !== undefined) return ended;
  const item = firstItemOf(result);
  if (item) return itemSentence(item);
  return result.items.some((i) => i.band === 'green')
    ? 'Everything that was judged lies inside its tolerance. Fly it again to make it a habit.'
    : 'Too little was flown to judge.';
};
