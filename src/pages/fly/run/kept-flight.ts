import { lessonMemory } from '../../../flight/flight.ts';
import { endingOf } from '../../../lesson/judge/outcome.ts';
import type { Settings } from '../../settings.ts';
import type { ReadyFlight } from './ready.ts';

/** What only changes how a flight is shown and held, not which flight it is. */
const SHOWN_ONLY: ReadonlySet<string> = new Set([
  'theme',
  'seenStart',
  'who',
  'lead',
  'handStyle',
  'arrowsAsStick',
  'picture',
  'planMode',
  'announce',
  'coach',
  'voice',
  'tolerances',
  'ownLimits',
  'keys',
  'touch',
]);

/** The flight that settings ask for, as a text to compare. */
export const askedBy = (settings: Settings): string =>
  JSON.stringify(Object.entries(settings).filter(([key]) => !SHOWN_ONLY.has(key)));

let kept: { readonly flight: ReadyFlight; readonly asked: string } | null = null;

/** Keeps the flight as it was left for another page. */
export const keepFlight = (flight: ReadyFlight | null, asked: string): void => {
  kept = flight && { flight, asked };
};

/** The flight that was left, for whoever comes back; null when it is over or another one is asked for. */
export const keptFlight = (settings: Settings): ReadyFlight | null => {
  if (kept?.asked !== askedBy(settings)) return null;
  return endingOf(lessonMemory(kept.flight), kept.flight.lesson) === null ? kept.flight : null;
};
