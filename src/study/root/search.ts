import type { ControlSource } from '../../session/source.ts';
import { type Flown, instantAt } from '../flown.ts';
import { type Future, flyOn } from '../future.ts';
import { STRAINS, strainAt } from '../strain.ts';
import { carriedBy } from './carried.ts';
import type { Departure } from './finders/departure.ts';
import { departuresOf, styleOf } from './finders/departures.ts';
import type { Span } from './finders/span.ts';
import { flyInStyle, takeOverOn } from './own/own-way.ts';
import type { Style } from './own/style.ts';
import type { Change, RootProgress } from './result.ts';

/** The one change that was found. */
export interface Found {
  readonly change: Change;
  readonly departure: Departure;
  readonly style: Style;
  readonly future: Future;
}

/** What the search has come to. */
export interface Searched {
  readonly found: Found | null;
  readonly departures: readonly Departure[];
  readonly flightsFlown: number;
}

/** Size in which a change is looked for. */
const GRAIN: Readonly<Record<Departure['unit'], number>> = {
  s: 1,
  deg: 1,
  ft: 10,
  rpm: 25,
  '%': 2,
  kt: 1,
  whole: 1,
};

export const changeOf = (departure: Departure, units: number): Change => ({
  kind: departure.kind,
  leg: departure.leg,
  atS: departure.atS,
  size: units,
  plannedSize: departure.size,
  unit: departure.unit,
  sentence: departure.say(units),
});

/** The hands of a fork: the flight's own style, with whatever is mended in it. */
export const handsFor = (flown: Flown, style: Style, forkS: number): ControlSource<unknown> =>
  takeOverOn(flown, flyInStyle(flown, style), instantAt(flown, forkS).lesson);

/** Inside the tolerances with something in hand, at every gate that decides. */
const IN_HAND = 0.8;

const isComfortable = ({ flown, circuit }: Span, future: Future, forkS: number): boolean => {
  const { lesson, flight } = flown;
  if (!future.approach.settled) return false;
  return future.lesson.gates
    .filter((gate) => gate.decides && gate.circuit === circuit && gate.atS >= forkS)
    .every((gate) => {
      const strain = strainAt(gate, lesson, flight.limits);
      return STRAINS.every((name) => Math.abs(strain[name]) < IN_HAND || name === 'sink');
    });
};

/** So much of what went wrong at least must come from where the change is made; less, where nothing else was done otherwise. */
const CARRIED = 0.4;
const CARRIED_ALONE = 0.15;
/**
 * Looks for the earliest single change, the smallest of its kind, that brings the approach inside its tolerances.
 * One flight between two yields. A change counts only if the same fork without it goes wrong: what would have come
 * right by itself was not the root. The size is the smallest that leaves something in hand at the gates.
 */
export function* searchRoot(span: Span): Generator<RootProgress, Searched> {
  const { flown, circuit } = span;
  const departures = departuresOf(span);
  const asFlown = styleOf(departures);
  const tried = departures.filter((departure) => departure.suggests);
  let flightsFlown = 0;
  let best: Change | null = null;
  const fly = (style: Style, forkS: number): Future => {
    flightsFlown += 1;
    return flyOn(flown, instantAt(flown, forkS), handsFor(flown, style, forkS), circuit);
  };
  const progress = (i: number, trying: string): RootProgress => ({
    flightsFlown,
    done: tried.length === 0 ? 1 : i / tried.length,
    trying,
    best,
  });

  for (const [i, departure] of tried.entries()) {
    const { forkS, size, unit } = departure;
    yield progress(i, departure.say(size));
    let future = fly(departure.mend(asFlown, size), forkS);
    if (!future.approach.settled) continue;
    yield progress(i + 0.3, departure.say(size));
    const unchanged = fly(asFlown, forkS);
    const carried = carriedBy(span, unchanged, future, forkS);
    if (carried < (tried.length === 1 ? CARRIED_ALONE : CARRIED)) continue;
    let works = size;
    // Where the fork does not fail by itself, how little would do cannot be told from it
    let fails = unchanged.approach.settled ? size : 0;
    best = changeOf(departure, works);
    while (works - fails > GRAIN[unit]) {
      yield progress(i + 0.6, departure.say(works));
      const grains = Math.max(1, Math.floor((works - fails) / GRAIN[unit] / 2));
      const units = fails + grains * GRAIN[unit];
      const tryThis = fly(departure.mend(asFlown, units), forkS);
      if (isComfortable(span, tryThis, forkS)) {
        works = units;
        future = tryThis;
        best = changeOf(departure, works);
      } else fails = units;
    }
    const style = departure.mend(asFlown, works);
    return { found: { change: best, departure, style, future }, departures, flightsFlown };
  }
  return { found: null, departures, flightsFlown };
}
