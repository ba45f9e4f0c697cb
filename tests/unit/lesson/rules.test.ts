// The table of what is assessed: every row praises its good example and catches its bad one, at the demonstration's
// circuit (Sandpiper, Curlew Sands, calm), and names a source. Bands: design/lesson.md.
import { describe, expect, it } from 'vitest';
import { EXERCISES } from '../../../src/catalogue.ts';
import { bandOf } from '../../../src/lesson/judge/bands.ts';
import { wordsFor } from '../../../src/lesson/judge/judge.ts';
import { type CommonLimit, DOCUMENT_LIMITS } from '../../../src/lesson/judge/limit.ts';
import type { ItemReport } from '../../../src/lesson/judge/report.ts';
import type { Standard } from '../../../src/lesson/judge/rule.ts';
import { SESSION_RULES } from '../../../src/lesson/judge/rules/session.ts';
import { RULES } from '../../../src/lesson/judge/rules.ts';
import { selects } from '../../../src/lesson/judge/selection.ts';
import { FAA_LICENCE_TEST, TOLERANCE_SETS } from '../../../src/lesson/judge/tolerances.ts';
import { lastWhere } from '../../../src/lesson/last-where.ts';
import { createLesson } from '../../../src/lesson/lesson.ts';
import { type CircuitFacts, circuitFacts } from '../../../src/lesson/watch/facts.ts';
import { radFromDeg } from '../../../src/units/conversions.ts';
import { plannedCircuit } from '../../support/circuits.ts';
import { lessonOf, plannedMoments, watchMoments } from '../../support/synthetic-flight.ts';

const { lesson, plan } = lessonOf();
const { memory: m } = watchMoments(lesson, plannedMoments(plan));
const facts = circuitFacts(m, lesson, 1);
const band = (value: number, { target, low, high, amberLow }: Standard) =>
  bandOf(value, target, low, high, amberLow);
const rows = [
  ...RULES.map((rule) => ({ rule, standard: rule.against(facts, FAA_LICENCE_TEST.allowed) })),
  ...SESSION_RULES.map((rule) => ({ rule, standard: rule.against(FAA_LICENCE_TEST.allowed) })),
].map(({ rule, standard }) => [rule.id, rule, standard] as const);

describe('the table of rules', () => {
  it.each(rows)('%s praises its good example and catches its bad one', (_, rule, standard) => {
    expect(band(rule.good, standard)).toBe('green');
    expect(band(rule.bad, standard)).toBe('red');
  });

  it.each(rows)('%s says what it measures, by which source, and what to say', (id, rule, standard) => {
    expect(rule.measures.length).toBeGreaterThan(5);
    expect(standard.source.length).toBeGreaterThan(5);
    const item: ItemReport = {
      id,
      circuit: 1,
      leg: rule.leg,
      value: rule.bad,
      unit: rule.unit.written,
      target: standard.target,
      low: standard.low,
      high: standard.high,
      band: 'red',
      source: standard.source,
    };
    expect(wordsFor(item)).toMatch(/\.$/);
    expect(wordsFor({ ...item, circuit: 2 })).toBe(wordsFor(item));
    expect(wordsFor({ ...item, value: rule.good, band: 'green' })).toBe('');
  });

  it('has no row twice, and every row is looked at by some exercise', () => {
    const ids = rows.map(([id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids)
      expect(
        EXERCISES.some(({ assessed }) => selects(assessed, id)),
        id,
      ).toBe(true);
  });

  it('has one limit under one name, whichever rows bring it along, and none under the name of a document’s', () => {
    const seen = new Map<string, CommonLimit>();
    for (const { limits = {} } of RULES)
      for (const [name, limit] of Object.entries(limits)) {
        expect(seen.get(name) ?? limit, name).toEqual(limit);
        expect(Object.keys(DOCUMENT_LIMITS)).not.toContain(name);
        seen.set(name, limit);
      }
    expect(seen.size).toBeGreaterThan(25);
    for (const { allowed } of TOLERANCE_SETS)
      expect(Object.keys(allowed).sort()).toEqual([...Object.keys(DOCUMENT_LIMITS), ...seen.keys()].sort());
  });

  it('gives each row a lower end no higher than its target and an upper end no lower, in every set', () => {
    for (const set of TOLERANCE_SETS) {
      for (const rule of RULES) {
        const { target, low, high } = rule.against(facts, set.allowed);
        if (low !== null) expect(low, rule.id).toBeLessThanOrEqual(target);
        if (high !== null && rule.id !== 'touchdown-in-first-half')
          expect(high, rule.id).toBeGreaterThanOrEqual(Math.min(target, high));
      }
    }
  });

  it('finds a circuit flown as planned green wherever it looks', () => {
    const fine = RULES.flatMap((rule) => {
      const value = rule.measure(facts);
      const judged = value !== undefined && value !== null && rule.unjudged?.(facts) !== true;
      return judged ? [[rule.id, band(value, rule.against(facts, FAA_LICENCE_TEST.allowed))]] : [];
    });
    // The drawn flight has one airspeed all the way round and meets the ground without a round-out
    const drawn = /speed|round-out|float|sink|touchdown-point/;
    expect(fine.filter(([id, b]) => b !== 'green' && !drawn.test(id as string))).toEqual([]);
    expect(fine.length).toBeGreaterThan(25);
  });
});

describe('what cannot be judged is not', () => {
  const unjudged = (id: string, changes: Partial<CircuitFacts>): boolean | undefined =>
    RULES.find((rule) => rule.id === id)?.unjudged?.({ ...facts, ...changes });

  it('the balance while the rudder assist keeps it', () => {
    expect(unjudged('upwind-balance', { lesson: { ...lesson, rudderAssist: true } })).toBe(true);
    expect(unjudged('upwind-balance', { lesson: { ...lesson, rudderAssist: false } })).toBe(false);
  });

  it('the base-turn point when the tower has extended downwind', () => {
    expect(unjudged('base-turn-angle', {})).toBe(false);
    const said = [
      {
        what: 'extend',
        circuit: 1,
        saidS: 1,
        obeyedS: null,
        thenS: null,
        turnedRad: 0,
        lastTrackRad: 0,
        brakedFirst: false,
      } as const,
    ];
    expect(unjudged('base-turn-angle', { m: { ...m, said: [...said] } })).toBe(true);
  });

  it('slope lights where there are none, and where the circuit makes them impossible', () => {
    const lights = RULES.find((rule) => rule.id === 'final-lights');
    expect(lights?.measure(facts)).toBeCloseTo(0, 1);
    const dark = { ...lesson, runway: { ...lesson.runway, lights: null } };
    expect(lights?.measure({ ...facts, lesson: dark })).toBeUndefined();
    // Level to the base turn and steep: four whites all the way (design/lesson.md, preset b)
    const steep = plannedCircuit(
      'curlew-sands',
      '04',
      {},
      { descentFrom: 'base-turn', approachRad: radFromDeg(5) },
    );
    const steepLesson = createLesson(lesson.aeroplane, steep.runway, steep);
    const seen = watchMoments(steepLesson, plannedMoments(steep)).memory;
    const final = lastWhere(seen.stretches, (stretch) => stretch.leg === 'final');
    expect(final).not.toBeNull();
    expect(final?.lamps.count).toBe(0);
    expect(seen.gates.every((gate) => gate.lights === 'WWWW')).toBe(true);
  });
});
