// For each row of checks, calls, lookout and traffic a fault of somebody beside a good pilot: it is found by that row,
// and by no row that it has nothing to do with, the flying included (issue "The lesson", 8). What is done right, and in
// which order: tests/truth/procedures.test.ts, with the documents.
import { describe, expect, it } from 'vitest';
import { assess } from '../../src/lesson/judge/assess.ts';
import { PROCEDURE_RULES } from '../../src/lesson/judge/rules/procedures.ts';
import { trafficValue } from '../../src/lesson/procedures/watch-traffic.ts';
import type { Controls } from '../../src/simulation/controls.ts';
import { newSnapshot, type Snapshot } from '../../src/simulation/snapshot.ts';
import { radFromDeg } from '../../src/units/conversions.ts';
import { type Doing, flyEverything } from '../support/everything-done.ts';
import type { Beside, FlightAsked, ProcedureFlight } from '../support/procedures.ts';

interface Story {
  readonly doing?: Partial<Doing>;
  readonly asked?: Partial<FlightAsked> & { readonly triesBrakes?: boolean };
  /** Rows that the same fault must touch too, and why. */
  readonly also?: Readonly<Record<string, string>>;
  readonly safety?: RegExp;
}

const GO_AROUND: Partial<FlightAsked> = {
  task: { technique: 'normal', instructions: [{ what: 'go-around', circuit: 1, atHeightFt: 150 }] },
};
const TOWER: Partial<FlightAsked> = { procedures: { radio: 'towered' } };

const noItemsOf = (list: string): Partial<Doing> => ({ tick: (_, of) => of !== list });
const noLookBefore = (...legs: readonly string[]): Partial<Doing> => ({
  looks: (leg) => (legs.includes(leg) ? [] : [90, 0, -60]),
});

/** Fuel, harness and flap before mixture and altimeter, from the bottom of the list to its top. */
const backwards =
  (list: string): Doing['tick'] =>
  (id, of, { m }) => {
    if (of !== list) return true;
    const open = m.procedures?.lists.find((fact) => fact.list === list && fact.closedS === null);
    const left = open?.items.filter(
      ({ doneS, id: each }) => doneS === null && each !== 'brakes' && each !== 'heat',
    );
    return left?.at(-1)?.id === id;
  };

/** The hand on the stick while heads are in on downwind, for so many seconds. */
const withHeadsIn = (
  seconds: number,
  hand: (s: Readonly<Snapshot>, controls: Controls) => void,
): NonNullable<Story['asked']> => {
  let headsS = Number.POSITIVE_INFINITY;
  return {
    start: 'downwind',
    beside: ({ m, s }) => {
      const fact = m.procedures?.lists.find(({ list }) => list === 'downwind');
      if (fact !== undefined && fact.headsFromS !== null) headsS = Math.min(headsS, s.timeS);
    },
    hands: (s, controls) => {
      if (s.timeS >= headsS && s.timeS < headsS + seconds) hand(s, controls);
    },
  };
};

/** Flap first, then power: the go-around the wrong way round. */
const flapBeforePower = (): NonNullable<Story['asked']> => {
  let awayS = Number.POSITIVE_INFINITY;
  return {
    ...GO_AROUND,
    start: 'final',
    beside: ({ m, s }) => {
      if (m.said.length > 0) awayS = Math.min(awayS, s.timeS);
    },
    hands: (s, controls) => {
      const since = s.timeS - awayS;
      if (since > 0 && since < 14) controls.throttle = Math.min(controls.throttle, 0.88);
      if (since > 8 && since < 60) controls.flapStage = 0;
    },
  };
};

/** Another aeroplane so far ahead on downwind, at the same height. */
const ahead =
  (metres: number) =>
  ({ s, m, tell }: Beside): void => {
    if (m.legs.leg !== 'downwind') return;
    const other = { ...newSnapshot(), onGround: false, heightM: s.heightM };
    other.eastM = s.eastM + metres * Math.sin(s.trackRadT);
    other.northM = s.northM + metres * Math.cos(s.trackRadT);
    tell('traffic', trafficValue(0, other));
  };

const THE_SAME_HEIGHT = 'the height that is lost is lost on downwind';
const NO_BRAKES = 'what does not brake is pressed all the way and rolls on';

const STORIES: Readonly<Record<string, Story>> = {
  'checks-before-take-off': { doing: noItemsOf('before-take-off'), asked: { seconds: 60 } },
  'checks-after-take-off': { doing: noItemsOf('after-take-off'), asked: { seconds: 240 } },
  'checks-downwind': { doing: noItemsOf('downwind'), asked: { start: 'downwind' } },
  'checks-final': { doing: noItemsOf('final'), asked: { start: 'final' } },
  'checks-go-around': {
    asked: {
      ...GO_AROUND,
      start: 'final',
      hands: (s, controls) => {
        if (s.timeS < 150) controls.flapStage = 2;
      },
    },
  },
  'checks-after-landing': { doing: noItemsOf('after-landing'), asked: { start: 'final' } },
  'downwind-order': { doing: { tick: backwards('downwind') }, asked: { start: 'downwind' } },
  'go-around-order': {
    asked: flapBeforePower(),
    also: { 'go-around-answer': 'power that comes last comes late' },
  },
  'heads-in-height': {
    asked: withHeadsIn(20, (s, controls) => {
      controls.elevator = 0.6 * (radFromDeg(-3) - s.pitchRad);
      controls.throttle = 0.1;
    }),
    also: { 'downwind-height': THE_SAME_HEIGHT },
  },
  'heads-in-heading': {
    asked: withHeadsIn(16, (s, controls) => {
      controls.aileron = 2 * (radFromDeg(6) - s.bankRad);
    }),
    also: { 'checks-downwind': 'the heading that is lost is lost off the leg, and the check is cut short' },
  },
  subscale: {
    asked: { start: 'downwind', procedures: { subscaleHpa: 1007 } },
    doing: { tick: (id) => id !== 'altimeter' },
  },
  'brakes-found': {
    asked: { start: 'downwind', failures: [{ atS: 0, what: 'brakes', amount: 0.5 }], triesBrakes: false },
    doing: { tick: (id) => id !== 'brakes' },
    also: { brakes: NO_BRAKES, 'stop-remaining': NO_BRAKES },
  },
  'lookout-crosswind': { doing: noLookBefore('upwind', 'turn-to-crosswind'), asked: { seconds: 240 } },
  'lookout-downwind': {
    doing: noLookBefore('turn-to-crosswind', 'crosswind', 'turn-to-downwind'),
    asked: { start: 'crosswind', seconds: 120 },
  },
  'lookout-base': { doing: noLookBefore('downwind', 'turn-to-base'), asked: { start: 'downwind' } },
  'lookout-final': {
    doing: noLookBefore('turn-to-base', 'base', 'turn-to-final'),
    asked: { start: 'base' },
  },
  calls: { doing: { call: (call) => (call === 'downwind' ? 0 : null) } },
  'read-back': { asked: { ...TOWER, start: 'downwind' }, doing: { readBack: () => 1 } },
  clearance: { asked: TOWER, doing: { call: (call) => (call === 'ready' ? null : 0) } },
  'spacing-ahead': { asked: { start: 'downwind', beside: ahead(300) } },
};

const redOf = ({ m, lesson }: ProcedureFlight): string[] =>
  assess(m, lesson)
    .items.filter(({ band }) => band === 'red')
    .map(({ id }) => id);

describe('a circuit with everything done', () => {
  it.each(['untowered', 'towered'] as const)('has nothing red and no safety stop, %s', (radio) => {
    const flight = flyEverything({}, { procedures: { radio } });
    expect(redOf(flight)).toEqual([]);
    expect(flight.m.safety).toEqual([]);
    for (const { id } of PROCEDURE_RULES) {
      const item = flight.item(id);
      if (item !== undefined) expect(item.band, id).toBe('green');
    }
  });

  it('has nothing red with a go-around in it either', () => {
    const flight = flyEverything({}, GO_AROUND);
    expect(redOf(flight)).toEqual([]);
    expect(flight.item('checks-go-around')?.band).toBe('green');
    expect(flight.item('go-around-order')?.band).toBe('green');
  });
});

describe('what is left out beside the flying is found by its own row and by no unrelated one', () => {
  it('for every row there is one', () => {
    expect(Object.keys(STORIES).sort()).toEqual(PROCEDURE_RULES.map(({ id }) => id).sort());
  });

  it.each(Object.entries(STORIES))('%s', (row, { doing = {}, asked = {}, also = {}, safety }) => {
    const flight = flyEverything(doing, asked);
    const red = redOf(flight);
    expect(red).toContain(row);
    expect(red.filter((id) => id !== row && also[id] === undefined)).toEqual([]);
    const stops = flight.m.safety.map(({ what }) => what);
    if (safety === undefined) expect(stops).toEqual([]);
    else for (const stop of stops) expect(stop).toMatch(safety);
  });
});
