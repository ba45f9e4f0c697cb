// Order of checks and of the go-around, places of calls, the lookout, against the documents named in tests/reference.
// What an aeroplane does not have is left out, never moved.
import { describe, expect, it } from 'vitest';
import { AEROPLANES } from '../../src/catalogue.ts';
import { callPlace } from '../../src/lesson/procedures/call-places.ts';
import { itemsOf } from '../../src/lesson/procedures/check-lists.ts';
import { lookoutBefore } from '../../src/lesson/procedures/lookout.ts';
import { ANSWER_IDS, CALL_IDS } from '../../src/lesson/procedures/memory.ts';
import { answerSaid, answerWordings, callWordings } from '../../src/lesson/procedures/wordings.ts';
import {
  CALL_DOWNWIND,
  CALL_DOWNWIND_FAA,
  CALL_FINAL,
  CROSSWIND_SHOWN,
  GO_AROUND_ORDER,
  PRE_LANDING_ORDER,
  TOWER_WORDS_FAA,
} from '../reference/circuit.ts';
import { flyWithProcedures } from '../support/procedures.ts';

const fleet = AEROPLANES.map((aeroplane) => [aeroplane.id, aeroplane] as const);

describe('the checks', () => {
  const PRE_LANDING: readonly string[] = PRE_LANDING_ORDER.rows.map(([item]) => item);
  const GOING_AROUND: readonly string[] = GO_AROUND_ORDER.rows.map(([item]) => item);

  it.each(fleet)('before landing in the %s stand in the order of the texts', (_, aeroplane) => {
    const ids = itemsOf('downwind', aeroplane).map(({ id }) => id);
    const theirs = PRE_LANDING.filter((id) => ids.includes(id));
    expect(ids.filter((id) => PRE_LANDING.includes(id))).toEqual(theirs);
    expect(theirs.length).toBeGreaterThanOrEqual(6);
    expect(ids.includes('gear')).toBe(aeroplane.undercarriage.retractable);
    expect(ids.includes('heat')).toBe(aeroplane.engine.carburettor);
    expect(ids.includes('propeller')).toBe(aeroplane.equipment.propellerLever);
    expect(ids.includes('pump')).toBe(aeroplane.equipment.pump);
  });

  it.each(fleet)('of the go-around in the %s are power, attitude, configuration', (_, aeroplane) => {
    const ids = itemsOf('go-around', aeroplane).map(({ id }) => id);
    expect(ids).toEqual(GOING_AROUND.filter((id) => ids.includes(id)));
    expect(ids.length).toBeGreaterThanOrEqual(4);
    expect(ids.slice(0, 1)).toEqual(['power']);
  });
});

describe('the calls', () => {
  /** Every place a call has on one circuit, with what stood for it then. */
  const places = (call: 'downwind' | 'final' | 'base', words: 'icao' | 'faa') => {
    const seen: { leg: string; alongM: number; toGoM: number; place: string }[] = [];
    flyWithProcedures({
      start: 'downwind',
      procedures: { radio: 'untowered', words },
      beside: ({ m, lesson }) => {
        const { alongM } = lesson.where;
        seen.push({ leg: m.legs.leg, alongM, toGoM: -alongM, place: callPlace(call, m, lesson) });
      },
    });
    return seen;
  };

  /** Along the runway from the landing threshold to either end of it. */
  const ENDS = { 'upwind end': 920, 'downwind end': 0 } as const;
  /** Called a little before it, or at the next look. */
  const ABOUT_M = 200;

  it(`downwind is called abeam the ${CALL_DOWNWIND.rows[0][0]}, late past the ${CALL_DOWNWIND.rows[0][1]}`, () => {
    const [[abeam, late]] = CALL_DOWNWIND.rows;
    const onDownwind = places('downwind', 'icao').filter(({ leg }) => leg === 'downwind');
    expect(new Set(onDownwind.map(({ place }) => place))).toEqual(new Set(['not-yet', 'here', 'late']));
    const first = onDownwind.find(({ place }) => place === 'here');
    expect(Math.abs((first?.alongM ?? Number.NaN) - ENDS[abeam])).toBeLessThan(ABOUT_M);
    for (const { alongM, place } of onDownwind) expect(place === 'late').toBe(alongM < ENDS[late]);
  });

  it('downwind is called on entering it in the words of the FAA', () => {
    const onDownwind = places('downwind', 'faa').filter(({ leg }) => leg === 'downwind');
    expect(CALL_DOWNWIND_FAA.rows[0][0]).toBe('entering');
    expect(onDownwind[0]?.place).toBe('here');
    expect(onDownwind[0]?.alongM).toBeGreaterThan(ENDS['upwind end'] + ABOUT_M);
  });

  it('final is made on final, within 4 NM (CAP 413)', () => {
    const here = places('final', 'icao').filter(({ place }) => place === 'here');
    expect(here.length).toBeGreaterThan(20);
    for (const { leg, toGoM } of here) {
      expect(leg).toBe('final');
      expect(toGoM).toBeLessThan(CALL_FINAL.rows[0][0] * 1852);
    }
  });

  it('base is reported where nobody answers in the United States (AIM 4-1-9), only if required elsewhere', () => {
    expect(places('base', 'faa').some(({ place }) => place === 'here')).toBe(true);
    expect(places('base', 'icao').every(({ place }) => place === 'not-yet')).toBe(true);
  });
});

describe('a tower and those who speak with it', () => {
  const lessonIn = (words: 'icao' | 'faa') =>
    flyWithProcedures({ start: 'downwind', seconds: 1, procedures: { radio: 'towered', words } }).lesson;

  it.each(TOWER_WORDS_FAA.rows)('of the FAA say %s with the runway first: %s', (answer, words) => {
    const lesson = lessonIn('faa');
    expect(answerSaid(answer, lesson)).toMatch(new RegExp(`runway 22, ${words}\\.$`));
    expect(answerWordings(answer, lesson)?.[0]).toMatch(new RegExp(`^Runway 22, ${words}, `));
  });

  it('of the FAA always say the hand of the circuit, those of CAP 413 only where it is to the right', () => {
    expect(callWordings('downwind', lessonIn('faa'))[0]).toContain('left downwind, runway 22');
    expect(callWordings('downwind', lessonIn('icao'))[0]).not.toContain('left');
  });

  it.each(['icao', 'faa'] as const)('keep to %s words throughout', (words) => {
    const lesson = lessonIn(words);
    const all = [
      ...CALL_IDS.flatMap((call) => callWordings(call, lesson)),
      ...ANSWER_IDS.flatMap((answer) => [
        answerSaid(answer, lesson),
        ...(answerWordings(answer, lesson) ?? []),
      ]),
    ].join(' ');
    const others = {
      icao: /takeoff|three-sixty|closed traffic/,
      faa: /take-off|orbit|vacated|surface wind/i,
    };
    expect(all).not.toMatch(others[words]);
    expect(all).toMatch(others[words === 'icao' ? 'faa' : 'icao']);
  });

  it.each(['icao', 'faa'] as const)('offer in %s words three that differ', (words) => {
    const lesson = lessonIn(words);
    const offered = [
      ...CALL_IDS.map((call) => callWordings(call, lesson)),
      ...ANSWER_IDS.map((answer) => answerWordings(answer, lesson)).filter((three) => three !== null),
    ];
    for (const three of offered) expect(new Set(three).size).toBe(3);
  });
});

describe('the lookout', () => {
  // Design of the lesson: left turn: right, ahead, left; the other way round in a right-hand circuit
  it.each([
    [-1, [90, 0, -60], true],
    [-1, [-60, 0, 90], false],
    [1, [-90, 0, 60], true],
    [1, [60, 0, -90], false],
  ] as const)('with the circuit to side %d, looks %j end into the turn: %s', (side, looks, endsInto) => {
    const at = looks.map((deg, i) => ({ atS: 90 + 3 * i, deg }));
    const found = lookoutBefore(at, { onto: 'crosswind', fromS: 100 }, side);
    expect(found).toEqual({ away: true, ahead: true, into: true, endsInto });
  });
});

describe('the crosswind that an aeroplane may have', () => {
  it.each(fleet)('is at least what certification shows in the %s', (_, aeroplane) => {
    const stallKt = aeroplane.claims.stallFullFlapKt?.value ?? Number.NaN;
    expect(aeroplane.limits.crosswindKt).toBeGreaterThanOrEqual(CROSSWIND_SHOWN.rows[0][0] * stallKt);
  });
});
