import { ledTo } from './chain.ts';
import { type Finding, HARMS } from './finding.ts';
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

const byHarm = (a: Finding, b: Finding): number =>
  HARMS.indexOf(a.harm) - HARMS.indexOf(b.harm) ||
  Number(a.band === 'amber') - Number(b.band === 'amber') ||
  a.rank - b.rank ||
  a.circuit - b.circuit;

/** An amber that nobody would speak of as the beginning of anything. */
const tells = ({ band, short }: Finding): boolean => band === 'red' || short !== '';

/** The earliest that led there, the red ones first. */
const causeOf = (effect: Finding, all: readonly Finding[]): Finding | null => {
  const before = all
    .filter((finding) => tells(finding) && ledTo(finding, effect))
    .sort((a, b) => a.place - b.place);
  return before.find(({ band }) => band === 'red') ?? before[0] ?? null;
};

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
  if (cause === null) return { lead: worst, with: null, sentence: sentences(worst.says, worst.next) };
  if (worst.harm === 'hurt' || cause.band === 'amber') {
    const began = `It began when ${cause.short}${actBetween(cause, worst, all)}.`;
    return { lead: worst, with: cause, sentence: sentences(worst.says, began, cause.next) };
  }
  const led = worst.short === '' ? '' : `Then ${worst.short}.`;
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
  return { ...said(worst, cause, all), under };
};
