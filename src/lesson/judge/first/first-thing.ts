import { byHarm, causeOf } from './cause-of.ts';
import { covers, ledTo } from './chain.ts';
import type { Finding } from './finding.ts';
import { findingsOf, type Looked } from './findings.ts';

/** What to look at first: what leads, what it is about, and what else comes of the same cause. */
export interface FirstThing {
  readonly lead: Finding;
  /** What the lead led to, or what it came from; null where it stands alone. */
  readonly with: Finding | null;
  /** Everything that came of the same cause: said once, under it. */
  readonly under: readonly Finding[];
  readonly sentence: string;
}

const sentences = (...parts: readonly string[]): string => parts.filter((part) => part !== '').join(' ');

/** Of what the cause led to, an act that did most of the harm itself: a push, going on below a gate. */
const actBetween = (cause: Finding, worst: Finding, all: readonly Finding[]): string => {
  const act = all.find((f) => OWN_ACTS.has(f.key) && ledTo(cause, f) && ledTo(f, worst));
  return act === undefined ? '' : `; then ${act.short}`;
};
const OWN_ACTS: ReadonlySet<string> = new Set(['pushed', 'went-on']);

/** What hurts leads, and says what it began with; else the cause leads, and says what came of it. */
const said = (
  worst: Finding,
  cause: Finding | null,
  all: readonly Finding[],
): Pick<FirstThing, 'lead' | 'with' | 'sentence'> => {
  // A row without words of its own is said as it stands
  if (cause === null)
    return {
      lead: worst,
      with: null,
      sentence: worst.short === '' ? worst.says : sentences(worst.says, worst.next),
    };
  if (worst.harm === 'hurt' || (cause.band === 'amber' && worst.band === 'red')) {
    const began = `It began when ${cause.short}${actBetween(cause, worst, all)}.`;
    return { lead: worst, with: cause, sentence: sentences(worst.says, began, cause.next) };
  }
  const led = worst.short === '' || covers(cause, worst) ? '' : `Then ${worst.short}.`;
  return { lead: cause, with: worst, sentence: sentences(cause.says, led, cause.next) };
};

/**
 * What to look at first, the worst by harm and then by cause before symptom; null where nothing is outside. The one
 * answer for card, debrief, print and logbook.
 */
export const firstThing = (result: Looked): FirstThing | null => {
  const all = [...findingsOf(result)].sort(byHarm);
  const [worst] = all;
  if (worst === undefined) return null;
  const cause = causeOf(worst, all);
  const root = cause ?? worst;
  const under = all.filter((finding) => finding !== root && ledTo(root, finding));
  const first = said(worst, cause, all);
  const { circuit } = first.lead;
  return {
    ...first,
    under,
    sentence: circuit === 1 ? first.sentence : `Circuit ${circuit}: ${first.sentence}`,
  };
};
