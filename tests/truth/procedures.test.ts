// Order of checks and of the go-around, places of calls, the lookout, against the documents named in tests/reference.
// What an aeroplane does not have is left out, never moved.
import { describe, expect, it } from 'vitest';
import { AEROPLANES } from '../../src/catalogue.ts';
import { callPlace } from '../../src/lesson/procedures/call-places.ts';
import { itemsOf } from '../../src/lesson/procedures/check-lists.ts';
import { lookoutBefore } from '../../src/lesson/procedures/lookout.ts';
import { CALL_FINAL, CROSSWIND_SHOWN, GO_AROUND_ORDER, PRE_LANDING_ORDER } from '../reference/circuit.ts';
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

  it('downwind is late past the downwind end of the runway (CAP 413)', () => {
    const onDownwind = places('downwind', 'icao').filter(({ leg }) => leg === 'downwind');
    // Of both kinds, so that neither answer is never asked for
    expect(onDownwind.filter(({ place }) => place === 'late').length).toBeGreaterThan(20);
    expect(onDownwind.filter(({ place }) => place === 'here').length).toBeGreaterThan(20);
    for (const { alongM, place } of onDownwind) expect(place).toBe(alongM < 0 ? 'late' : 'here');
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
