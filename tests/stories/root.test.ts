/**
 * The search for the root against flights whose root is known by construction: a fault was put into the model
 * pilot's hands or eyes (tests/support/faults.ts), nothing else. `LAPWING_LONG=1` flies all of it: every fault on
 * every day, in turbulence with two seeds, with good hands and with clumsy ones.
 */
import { describe, expect, it, vi } from 'vitest';
import { approachOf } from '../../src/study/approach.ts';
import { seeAgain } from '../../src/study/flown.ts';
import type { RootResult } from '../../src/study/root/result.ts';
import { findRoot } from '../../src/study/root/root.ts';
import {
  baseTurned,
  clumsy,
  type Fault,
  type FaultFlight,
  flapNotTaken,
  flyFault,
  noFault,
  onlyIn,
  speedFrom,
} from '../support/faults.ts';
import {
  DAYS,
  dayOf,
  expectedS,
  isRight,
  MORE_DAYS,
  ROOT_CASES,
  type RootCase,
} from '../support/root-cases.ts';

const LONG = process.env.LAPWING_LONG === '1';
if (LONG) vi.setConfig({ testTimeout: 1_200_000 });

const rootOf = (flown: FaultFlight): RootResult => {
  const search = findRoot(flown.flight);
  for (;;) {
    const { done, value } = search.next();
    if (done === true) return value;
  }
};

interface Tried {
  readonly day: string;
  readonly fault: Fault;
  readonly flown: FaultFlight;
  readonly result: RootResult;
}

const twins = new Map<string, boolean>();
const isFlownWellBy = (twin: Fault, day: string, seed: number): boolean => {
  const key = `${twin.name}, ${day}, ${seed}`;
  const well = twins.get(key) ?? approachOf(flyFault(dayOf(MORE_DAYS, day, seed), twin).memory, 1).settled;
  twins.set(key, well);
  return well;
};

const dayInTurn = (root: RootCase): string => root.days[ROOT_CASES.indexOf(root) % 2 === 0 ? 0 : 1];

/** Good hands and clumsy ones; the short run has the clumsy ones of every third kind. */
const handsOn = (root: RootCase, day: string, seed: number): readonly ((fault: Fault) => Fault)[] => {
  const good = (fault: Fault): Fault => fault;
  const both = LONG || (day === dayInTurn(root) && ROOT_CASES.indexOf(root) % 3 === 0);
  return both ? [good, (fault) => clumsy(fault, seed)] : [good];
};

/** Every flight of the search, and those left out: the fault did not spoil it, or its twin flies badly without it. */
let flights = 0;
const leftOut = { unspoilt: [] as string[], twinUnwell: [] as string[] };

/** The flights of a kind that the fault spoiled and that the same pilot flies well without it. */
const triesOf = (root: RootCase): Tried[] => {
  // One of its two days, by turns
  const names = LONG ? Object.keys(MORE_DAYS) : [dayInTurn(root)];
  const tries: Tried[] = [];
  // Without turbulence a seed changes nothing
  for (const day of names)
    for (const seed of LONG && MORE_DAYS[day]?.turbulence !== undefined ? [1, 2] : [1])
      for (const hands of handsOn(root, day, seed))
        for (const fault of (LONG ? root.faults : root.faults.slice(0, 1)).map(hands)) {
          const flown = flyFault(dayOf(MORE_DAYS, day, seed), fault);
          flights += 1;
          if (approachOf(flown.memory, 1).faults.length === 0) {
            leftOut.unspoilt.push(`${fault.name}, ${day}`);
            continue;
          }
          if (!isFlownWellBy(hands(root.twin), day, seed)) {
            leftOut.twinUnwell.push(`${fault.name}, ${day}`);
            continue;
          }
          tries.push({ day, fault, flown, result: rootOf(flown) });
        }
  return tries;
};

const tries = new Map<RootCase, Tried[]>();
const triedOf = (root: RootCase): readonly Tried[] => {
  const found = tries.get(root) ?? triesOf(root);
  tries.set(root, found);
  return found;
};

describe('the search for the root', () => {
  it.each(ROOT_CASES)('has spoilt approaches to look at: $name', (root) => {
    expect(triedOf(root).length).toBeGreaterThanOrEqual(LONG ? 2 : 1);
  });

  // The design: the right change and a time within a stated band in nine of ten
  it('names the right change at the right time in nine of ten', () => {
    const all = ROOT_CASES.flatMap((root) => triedOf(root).map((tried) => ({ root, ...tried })));
    const wrong = all.filter(({ root, flown, result }) => !isRight(root, flown, result.change));
    const told = wrong.map(
      ({ root, day, fault, flown, result }) =>
        `${fault.name}, ${day}: wanted ${root.kind} ${root.leg} at ${expectedS(root, flown).toFixed(0)} s, found ${result.change === null ? result.kind : `${result.change.kind} ${result.change.leg} at ${result.change.atS.toFixed(0)} s`}`,
    );
    if (LONG) process.stdout.write(`${all.length - wrong.length} of ${all.length}\n${told.join('\n')}\n`);
    const { unspoilt, twinUnwell } = leftOut;
    process.stdout.write(
      `root: ${flights} flights, ${unspoilt.length} not spoilt by their fault, ${twinUnwell.length} flown badly without it\n` +
        `${[...unspoilt, ...twinUnwell].join('\n')}\n`,
    );
    expect(all.length).toBe(flights - unspoilt.length - twinUnwell.length);
    expect(all.length).toBeGreaterThanOrEqual(LONG ? 240 : 22);
    // In the short run every fault spoils its approach, and its twin flies well
    expect(unspoilt.length + twinUnwell.length).toBeLessThanOrEqual(LONG ? flights / 2 : 0);
    const unanswered = all.filter(({ result }) => result.change === null);
    expect(unanswered.length).toBeLessThanOrEqual(0.1 * all.length);
    expect(all.length - wrong.length, told.join('\n')).toBeGreaterThanOrEqual(0.9 * all.length);
  });

  it('suggests nothing that lies behind the gate', () => {
    for (const { result } of ROOT_CASES.flatMap(triedOf)) {
      if (result.change === null) continue;
      const gateS = result.before?.firstBad?.atS ?? result.before?.lastGateS ?? 0;
      expect(result.change.atS).toBeLessThan(gateS);
    }
  });

  it('suggests no more than it takes, and a whole number of it', () => {
    for (const { result } of ROOT_CASES.flatMap(triedOf)) {
      if (result.change === null) continue;
      expect(result.change.size).toBeGreaterThan(0);
      expect(Number.isInteger(result.change.size)).toBe(true);
      const most = result.departures.find(
        ({ kind, leg }) => kind === result.change?.kind && leg === result.change.leg,
      );
      expect(result.change.size).toBeLessThanOrEqual(most?.size ?? 0);
    }
  });

  it('hands over the changed flight, and flown again from its recording it settles', () => {
    for (const root of LONG ? ROOT_CASES : ROOT_CASES.filter((_, i) => i % 3 === 0)) {
      const tried = triedOf(root).find(({ result }) => result.branch !== null);
      if (tried === undefined || tried.result.branch === null)
        throw new Error(`root.test: no flight of "${root.name}" has a branch to fly again`);
      const again = seeAgain({ ...tried.flown.flight, recording: tried.result.branch });
      expect(approachOf(again.memory, 1).settled, tried.result.sentence).toBe(true);
      // Until the fork it is the same flight
      const forkStep = (tried.result.branchFromS ?? 0) * 60;
      const was = tried.flown.flight.recording.keyframes.filter(({ step }) => step < forkStep);
      const is = tried.result.branch.keyframes.filter(({ step }) => step < forkStep);
      expect(is.map(({ state }) => state)).toEqual(was.map(({ state }) => state));
    }
  });

  it.each(Object.keys(LONG ? MORE_DAYS : DAYS))('finds nothing in a good flight: %s', (day) => {
    const flown = flyFault(dayOf(MORE_DAYS, day), noFault);
    const result = rootOf(flown);
    expect(result.kind).toBe('nothing-wrong');
    expect(result.change).toBeNull();
  });

  it('owns up when two faults would each have spoilt the approach alone, and names both', () => {
    const early = baseTurned(-18);
    const flap = flapNotTaken();
    const both: Fault = {
      name: 'base early and no flap',
      spoil: (h) => {
        early.spoil(h);
        flap.spoil(h);
      },
    };
    const flown = flyFault(dayOf(DAYS, 'still'), both);
    const result = rootOf(flown);
    expect(result.kind).toBe('no-single-change');
    expect(result.change).toBeNull();
    expect(result.departures.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['turn', 'flap']));
    expect(result.together.map(({ kind }) => kind)).toEqual(['turn', 'flap']);
    expect(result.sentence).toMatch(/^No single change would have done it\. Together: /);
    const again = seeAgain({ ...flown.flight, recording: result.branch! });
    expect(approachOf(again.memory, 1).settled).toBe(true);
    expect(result.afterGate?.sentence).toMatch(/go around/);
  });

  it('accepts nothing but going around once a gate was failed, and has flown that too', () => {
    const result = rootOf(flyFault(dayOf(DAYS, 'still'), baseTurned(-18)));
    expect(result.afterGate?.flown).toBe(true);
    expect(result.afterGate?.sentence).toMatch(/go around/);
  });

  it('looks at the circuit that was spoilt, and flies the change to a stop without a circuit more', () => {
    const flown = flyFault(
      { ...dayOf(DAYS, 'from the right, rough'), circuits: 2 },
      onlyIn(2, speedFrom('base', 8)),
      2,
    );
    const result = rootOf(flown);
    expect(result.circuit).toBe(2);
    expect(result.change?.kind).toBe('speed');
    const again = seeAgain({ ...flown.flight, recording: result.branch! });
    expect(approachOf(again.memory, 2).settled).toBe(true);
    expect(again.memory.stop).not.toBeNull();
    expect(again.memory.touchdowns).toHaveLength(2);
  });

  it('says how far it is and what is best so far, and can be left at any flight', () => {
    const search = findRoot(flyFault(dayOf(DAYS, 'still'), baseTurned(-18)).flight);
    const seen: { done: number; flightsFlown: number }[] = [];
    let best: string | null = null;
    for (let i = 0; i < 5; i += 1) {
      const { done, value } = search.next();
      if (done === true) break;
      seen.push(value);
      best = value.best?.sentence ?? best;
    }
    expect(seen.map(({ flightsFlown }) => flightsFlown)).toEqual([0, 0, 1, 2, 3]);
    expect(best).toMatch(/^Turn base \d+ s later\.$/);
  });
});
