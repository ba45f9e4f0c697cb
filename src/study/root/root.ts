import { MODEL_VERSION } from '../../simulation/scenario.ts';
import { type Approach, approachOf, circuitsWithGates } from '../approach.ts';
import { flyBranch } from '../branch.ts';
import { type Flown, type StudyFlight, seeAgain } from '../flown.ts';
import { settlesFrom } from '../trail.ts';
import { afterGateOf } from './after-gate.ts';
import { type Span, spanOf } from './finders/span.ts';
import { GOING_AROUND, nextTimeFor } from './next-time.ts';
import type { RootProgress, RootResult } from './result.ts';
import { changeOf, type Found, handsFor, type Searched, searchRoot } from './search.ts';
import { searchTogether, type Together } from './together.ts';
import { flownWhy, noneOf, whyOf } from './words.ts';

const NOTHING: Omit<RootResult, 'kind' | 'circuit' | 'sentence' | 'why'> = {
  change: null,
  together: [],
  branch: null,
  branchFromS: null,
  before: null,
  after: null,
  afterGate: null,
  nextTime: null,
  departures: [],
  flightsFlown: 0,
};

const notSearched = (why: string): RootResult => ({
  kind: 'not-searched',
  circuit: 1,
  sentence: 'No root was looked for.',
  why,
  ...NOTHING,
});

/** Why the search is not for this flight; null when it is. */
const unfit = ({ recording }: StudyFlight): string | null => {
  const { modelVersion, scenario } = recording;
  if (modelVersion !== MODEL_VERSION)
    return `The flight was recorded with model version ${modelVersion}, and this is ${MODEL_VERSION}: it cannot be flown on exactly.`;
  const technique = scenario.task?.technique ?? 'normal';
  if (technique !== 'normal' && technique !== 'short-field' && technique !== 'soft-field')
    return 'The search is for approaches with power; this one was flown without, or slipped.';
  if (scenario.failures.length > 0)
    return 'Something failed in this flight, and so it is not for the search.';
  return null;
};

/** The first approach that was not inside its tolerances; else the last one there was. */
export const approachToStudy = (flown: Flown, circuit: number | null = null): Approach | null => {
  const circuits = circuit === null ? circuitsWithGates(flown.memory) : [circuit];
  const approaches = circuits.map((number) => approachOf(flown.memory, number));
  return (
    approaches.find((approach) => approach.faults.length > 0) ?? approaches[approaches.length - 1] ?? null
  );
};

/**
 * The root of a flight's trouble: the earliest single change that would have brought the approach inside its
 * tolerances, the smallest of its kind, found by flying it. Yields before every flight, so that a worker can say
 * how far it is and stop; whoever stops keeps `best` of the last progress.
 */
export function* findRoot(
  flight: StudyFlight,
  circuit: number | null = null,
): Generator<RootProgress, RootResult> {
  const why = unfit(flight);
  if (why !== null) return notSearched(why);
  yield { flightsFlown: 0, done: 0, trying: 'The flight itself, once more.', best: null };
  const flown = seeAgain(flight);
  const approach = approachToStudy(flown, circuit);
  if (approach === null)
    return notSearched('The flight did not come down to a gate, so there is no approach to judge.');
  if (approach.faults.length === 0)
    return {
      kind: 'nothing-wrong',
      circuit: approach.circuit,
      sentence: 'Nothing before the gate needs changing.',
      why: approach.settled
        ? 'The approach was inside its tolerances at every gate.'
        : 'The approach was given up, and nothing was outside its tolerances until then: a go-around is never wrong.',
      ...NOTHING,
      before: approach,
      flightsFlown: 1,
    };
  const span = spanOf(flown, approach);
  const searched = yield* searchRoot(span);
  if (searched.found !== null) return oneFound(span, approach, searched, searched.found);
  const { found, flightsFlown } = yield* searchTogether(span, searched.departures, searched.flightsFlown);
  const none = noneFound(flown, approach, { ...searched, flightsFlown });
  return found === null ? none : severalFound(span, approach, none, found);
}

const oneFound = (span: Span, approach: Approach, searched: Searched, found: Found): RootResult => {
  const { flown } = span;
  const { change, departure, style, future } = found;
  const branchFromS = Math.floor(departure.forkS);
  const { recording } = flyBranch(flown, handsFor(flown, style, branchFromS), branchFromS);
  return {
    kind: 'one-change',
    circuit: approach.circuit,
    sentence: change.sentence,
    why: whyOf(span, approach, future, branchFromS, change),
    change,
    together: [],
    branch: recording,
    branchFromS,
    before: approach,
    after: future.approach,
    afterGate: afterGateOf(flown, approach),
    nextTime: nextTimeFor(change, departure.sense > 0),
    departures: searched.departures.map((other) => changeOf(other, other.size)),
    flightsFlown: searched.flightsFlown + 2,
  };
};

/** The last time, counted back from the gate, at which the model pilot could still have settled it. */
const lastMendS = (flown: Flown, approach: Approach): number | null => {
  const endS = approach.firstBad?.atS ?? approach.lastGateS;
  if (endS === null) return null;
  for (let backS = BACK_STEP_S; backS <= FURTHEST_BACK_S && backS < endS; backS += BACK_STEP_S)
    if (settlesFrom(flown, endS - backS, approach.circuit)) return endS - backS;
  return null;
};
const BACK_STEP_S = 5;
const FURTHEST_BACK_S = 90;

const severalFound = (span: Span, approach: Approach, none: RootResult, found: Together): RootResult => {
  const { flown } = span;
  const together = found.departures.map((departure) => changeOf(departure, departure.size));
  const [first] = found.departures;
  const branchFromS = Math.floor(found.forkS);
  const { recording } = flyBranch(flown, handsFor(flown, found.style, branchFromS), branchFromS);
  return {
    ...none,
    sentence: `No single change would have done it. Together: ${together.map(({ sentence }) => sentence).join(' ')}`,
    why: flownWhy(span, approach, found.future, branchFromS),
    together,
    branch: recording,
    branchFromS,
    after: found.future.approach,
    nextTime: first === undefined ? none.nextTime : nextTimeFor(changeOf(first, first.size), first.sense > 0),
    flightsFlown: none.flightsFlown + 1,
  };
};

const noneFound = (flown: Flown, approach: Approach, searched: Searched): RootResult => {
  const mendS = lastMendS(flown, approach);
  return {
    ...NOTHING,
    kind: 'no-single-change',
    circuit: approach.circuit,
    sentence: 'No single change before the gate would have done it.',
    why: noneOf(approach, mendS),
    before: approach,
    afterGate: afterGateOf(flown, approach),
    nextTime: GOING_AROUND,
    departures: searched.departures.map((other) => changeOf(other, other.size)),
    flightsFlown: searched.flightsFlown + 1,
  };
};
