import { instantAt } from '../flown.ts';
import { type Future, flyOn } from '../future.ts';
import { carriedBy } from './carried.ts';
import type { Departure } from './finders/departure.ts';
import { styleOf } from './finders/departures.ts';
import type { Span } from './finders/span.ts';
import type { Style } from './own/style.ts';
import type { RootProgress } from './result.ts';
import { handsFor } from './search.ts';

/** Changes that do it together where none does it alone. */
export interface Together {
  readonly departures: readonly Departure[];
  readonly style: Style;
  readonly future: Future;
  readonly forkS: number;
}

/** The trouble must come from them; as for a single change. */
const CARRIED = 0.4;

/**
 * Mends everything that was done otherwise than planned, from the earliest on; if that works, leaves out again
 * whatever is not needed, the latest first. What is left is the fewest of the earliest. Null where not even
 * everything would do.
 */
export function* searchTogether(
  span: Span,
  all: readonly Departure[],
  flownBefore: number,
): Generator<RootProgress, { readonly found: Together | null; readonly flightsFlown: number }> {
  const { flown, circuit } = span;
  const tried = all.filter((departure) => departure.suggests);
  const [first] = tried;
  let flightsFlown = flownBefore;
  if (first === undefined || tried.length < 2) return { found: null, flightsFlown };
  const { forkS } = first;
  const asFlown = styleOf(all);
  const mended = (some: readonly Departure[]): Style =>
    some.reduce((style, departure) => departure.mend(style, departure.size), asFlown);
  const fly = (style: Style): Future => {
    flightsFlown += 1;
    return flyOn(flown, instantAt(flown, forkS), handsFor(flown, style, forkS), circuit);
  };
  const progress = (trying: string): RootProgress => ({ flightsFlown, done: 0.9, trying, best: null });

  yield progress('Everything as planned.');
  let needed = tried;
  let future = fly(mended(needed));
  if (!future.approach.settled) return { found: null, flightsFlown };
  yield progress('Nothing changed.');
  if (carriedBy(span, fly(asFlown), future, forkS) < CARRIED) return { found: null, flightsFlown };
  for (const departure of [...tried].reverse()) {
    const fewer = needed.filter((other) => other !== departure);
    if (fewer.length === 0) break;
    yield progress(fewer.map((other) => other.say(other.size)).join(' '));
    const without = fly(mended(fewer));
    if (!without.approach.settled) continue;
    needed = fewer;
    future = without;
  }
  return { found: { departures: needed, style: mended(needed), future, forkS }, flightsFlown };
}
