import type { FlownResult } from '../formats/result.ts';
import { itemSentence } from '../lesson/judge/item-words.ts';
import type { ItemReport, Outcome } from '../lesson/judge/report.ts';
import { ruleOf } from '../lesson/judge/rules.ts';

/** Endings that hurt, or would have: they matter more than anything that led there. */
const ENDED_WORDS: Partial<Readonly<Record<Outcome, string>>> = {
  crashed: 'First: how it met the ground. Take it up again half a minute earlier, or go around sooner.',
  'loss-of-control': 'First: speed and balance near the ground. Ease forward, full power, then roll level.',
  'landed-out':
    'First: it came down where no runway is. Low and short is a go-around, while there is height for one.',
  'ran-off': 'First: keeping straight on the ground. Feet on the runway line until it has stopped.',
};

/** Safety stops by what they do to people, worst first (common practice); what is not named comes last, by its time. */
const HARM: readonly RegExp[] = [
  /stall warner/,
  /deg of bank at/,
  /below 1\.2 times/,
  /deg of bank in the turn/,
  /all lights red/,
];

const harmOf = (what: string): number => {
  const at = HARM.findIndex((pattern) => pattern.test(what));
  return at === -1 ? HARM.length : at;
};

/** The safety stop to speak of: the worst, and of its kind the first. */
const worstOf = (safety: FlownResult['safety']): FlownResult['safety'][number] | undefined =>
  safety.reduce<FlownResult['safety'][number] | undefined>(
    (worst, stop) => (worst === undefined || harmOf(stop.what) < harmOf(worst.what) ? stop : worst),
    undefined,
  );

/** With a dead engine a field is where one lands. */
const withoutEngine = (items: readonly ItemReport[]): boolean =>
  items.some(({ id }) => id.startsWith('engine-failure'));

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
 * What to look at first, by harm and then by cause, the same line on card, debrief and print: how it ended where that
 * hurts, then the worst safety stop, then a gate flown below without being stabilised, then the earliest leg that left
 * its tolerance (an early fault makes the later ones), red before amber, flying before checks, calls and lookout.
 */
export const firstLookAt = (
  result: Pick<FlownResult, 'outcome' | 'safety' | 'go_arounds' | 'items'>,
): string => {
  const ended = ENDED_WORDS[result.outcome];
  if (ended !== undefined && !(result.outcome === 'landed-out' && withoutEngine(result.items))) return ended;
  const stop = worstOf(result.safety);
  if (stop) return `First: ${stop.what}.`;
  const missed = result.go_arounds.find((g) => g.at_s === null);
  if (missed) return `A go-around was due: ${missed.why}.`;
  const item = firstItemOf(result);
  if (item) return itemSentence(item);
  return result.items.some((i) => i.band === 'green')
    ? 'Everything that was judged lies inside its tolerance. Fly it again to make it a habit.'
    : 'Too little was flown to judge.';
};
