// Trends are sums over rows written by hand here, so that every expectation can be counted on the fingers. The
// trend test is Mann's and Kendall's: its variance is checked against all orders of a series, by brute force.
// "Three in a row" and a hint rather than a proof of a trend: common practice.
import { describe, expect, it } from 'vitest';
import type { AttemptRow, HelpUsed, ItemNumber } from '../../../src/lesson/attempts/attempt.ts';
import { practiseNext } from '../../../src/lesson/attempts/practise.ts';
import { searchRows } from '../../../src/lesson/attempts/search.ts';
import { kendallS, kendallVariance, tendencyOf } from '../../../src/lesson/attempts/tendency.ts';
import { consistencyOf, itemTrends, legTrends } from '../../../src/lesson/attempts/trends.ts';
import { itemWords } from '../../../src/lesson/judge/item-words.ts';
import type { Band } from '../../../src/lesson/judge/report.ts';
import { attemptRow as row } from '../../support/attempt-rows.ts';
import { NO_HELP, WHOLE_HELP } from '../../support/attempts.ts';

const item = (id: string, leg: ItemNumber['leg'], value: number | null, band: Band): ItemNumber => ({
  id,
  circuit: 1,
  leg,
  value,
  unit: 'ft',
  target: 1000,
  low: 900,
  high: 1100,
  band,
});
const height = (value: number): ItemNumber => {
  const off = Math.abs(value - 1000);
  return item('downwind-height', 'downwind', value, off <= 100 ? 'green' : off <= 150 ? 'amber' : 'red');
};

/** One row a day from the first of the year. */
const days = (...rows: readonly AttemptRow[]): AttemptRow[] =>
  rows.map((r, i) => ({
    ...r,
    id: `d${i}`,
    when: `2026-02-${String(i + 1).padStart(2, '0')}T10:00:00.000Z`,
  }));
const withHelp = (help: HelpUsed, ...values: number[]) =>
  days(...values.map((v) => row([height(v)], { help })));

describe('the test for a trend', () => {
  const orders = (values: readonly number[]): number[][] =>
    values.length < 2
      ? [[...values]]
      : values.flatMap((v, i) => orders(values.filter((_, j) => j !== i)).map((rest) => [v, ...rest]));

  it.each([[[1, 2, 3, 4]], [[1, 2, 3, 4, 5, 6]], [[1, 2, 2, 3, 3, 3]], [[0, 0, 0, 1, 2]]])(
    'has the variance of S over every order of %j',
    (values) => {
      const sums = orders(values).map(kendallS);
      const mean = sums.reduce((a, b) => a + b, 0) / sums.length;
      const variance = sums.reduce((a, b) => a + (b - mean) * (b - mean), 0) / sums.length;
      expect(mean).toBeCloseTo(0, 9);
      expect(kendallVariance(values)).toBeCloseTo(variance, 9);
    },
  );

  it('wants four attempts, and is not moved by one wild landing', () => {
    expect(tendencyOf([3, 2, 1])).toBe('too-few');
    expect(tendencyOf([5, 4, 3, 2])).toBe('better');
    expect(tendencyOf([1, 2, 3, 4, 5])).toBe('worse');
    expect(tendencyOf([1, 1, 1, 1, 90])).toBe('steady');
    expect(tendencyOf([2, 2, 2, 2])).toBe('steady');
  });
});

describe('an item over attempts', () => {
  const rows = withHelp(WHOLE_HELP, 1160, 1140, 1120, 1050, 1020, 1000);

  it('has its points in the order of time whatever the order of the rows', () => {
    const [trend] = itemTrends([...rows].reverse());
    expect(trend?.points.map((p) => p.value)).toEqual([1160, 1140, 1120, 1050, 1020, 1000]);
    expect(trend?.counts).toEqual({ green: 3, amber: 2, red: 1 });
    expect(trend?.lately).toEqual({ green: 3, amber: 2, red: 0 });
    expect([trend?.run, trend?.best, trend?.tendency, trend?.side]).toEqual([3, 3, 'better', 'above']);
    // Sample standard deviation of 1140 1120 1050 1020 1000: mean 1066, squares 5476 + 2916 + 256 + 2116 + 4356, over 4.
    expect(trend?.spread).toBeCloseTo(Math.sqrt(15120 / 4), 9);
  });

  it('is the same item in every circuit of an attempt', () => {
    const [trend] = itemTrends([row([height(1000), { ...height(1200), circuit: 2 }])]);
    expect(trend?.points.map((p) => [p.circuit, p.band])).toEqual([
      [1, 'green'],
      [2, 'red'],
    ]);
  });

  it('leaves out what was watched, and what was refused', () => {
    const watched = row([height(1500)], { help: { ...NO_HELP, watchedS: 399 } });
    expect(itemTrends([watched, row([height(1500)], { outcome: 'refused' })])).toEqual([]);
    const shown = row([height(1500)], { demonstration: true });
    expect(itemTrends([shown])).toEqual([]);
    expect(consistencyOf([shown, shown, shown])).toMatchObject({ run: 0, reached: false });
  });
});

describe('legs over attempts', () => {
  it('stand in the order of the circuit, with what was judged on them', () => {
    const final = item('final-speed', 'final', 1120, 'amber');
    expect(legTrends([row([final, height(1000), item('gate-500', 'final', 0, 'not-judged')])])).toEqual([
      { leg: 'downwind', counts: { green: 1, amber: 0, red: 0 }, lately: { green: 1, amber: 0, red: 0 } },
      { leg: 'final', counts: { green: 0, amber: 1, red: 0 }, lately: { green: 0, amber: 1, red: 0 } },
    ]);
  });
});

describe('consistency', () => {
  it('is three sound flights in a row', () => {
    expect(consistencyOf(withHelp(WHOLE_HELP, 1000, 1000, 1200, 1000, 1000))).toEqual({
      run: 2,
      best: 2,
      unaidedRun: 0,
      reached: false,
    });
    expect(consistencyOf(withHelp(NO_HELP, 1200, 1000, 1110, 1000))).toMatchObject({
      run: 3,
      unaidedRun: 3,
      reached: true,
    });
  });

  it('is broken by a safety stop, a missed go-around, and a flight that did not stop', () => {
    const good = row([height(1000)]);
    for (const bad of [
      { safety: ['slow'] },
      { missedGoArounds: ['high'] },
      { outcome: 'ran-off' as const },
    ]) {
      expect(consistencyOf(days(good, good, { ...good, ...bad })).run).toBe(0);
    }
  });
});

describe('an exercise that is over before the flight is', () => {
  it('counts as sound when it was practised out', () => {
    const practised = { ...row([height(1000)]), outcome: 'practised' as const };
    expect(consistencyOf(days(practised, practised, practised)).run).toBe(3);
    expect(consistencyOf(days({ ...practised, outcome: 'time-up' })).run).toBe(0);
  });
});

describe('an exercise that asks for another end than a landing', () => {
  const landedOut = { ...row([height(1000)]), exercise: 'no-engine', outcome: 'landed-out' as const };
  const successOf = (exercise: string) =>
    exercise === 'no-engine' ? (['landed-out', 'stopped'] as const) : (['stopped'] as const);

  it('is sound when it ended so, and only there', () => {
    expect(consistencyOf(days(landedOut, landedOut), successOf).run).toBe(2);
    expect(consistencyOf(days({ ...landedOut, exercise: 'normal-circuit' }), successOf).run).toBe(0);
  });

  it('is not sent round again for an end that it should not have had', () => {
    expect(practiseNext(days(landedOut), successOf)?.why).toBe(
      'Sound once in a row; 3 in a row make it a habit.',
    );
  });
});

describe('what to practise next', () => {
  const good = row([height(1000)]);

  it('is nothing before the first attempt', () => {
    expect(practiseNext([])).toBeNull();
  });

  it('is going around before all, then what was unsafe', () => {
    const unsafe = { ...good, safety: ['41 deg of bank at 300 ft, allowed 40 deg'] };
    const missed = { ...good, missedGoArounds: ['not stabilised at 300 ft'] };
    expect(practiseNext(days(missed, unsafe, good))).toMatchObject({
      kind: 'go-around',
      why: 'A go-around was due and was not flown: not stabilised at 300 ft.',
    });
    expect(practiseNext(days(unsafe, good))).toMatchObject({
      kind: 'safety',
      why: expect.stringContaining('41 deg of bank'),
    });
    expect(practiseNext(days(unsafe, good, good, good))?.kind).not.toBe('safety');
  });

  it('is the item that fell short most and lately, said with its side', () => {
    expect(practiseNext(withHelp(WHOLE_HELP, 1000, 1160, 1140, 1120))).toEqual({
      kind: 'item',
      item: 'downwind-height',
      leg: 'downwind',
      what: 'Practise downwind: height.',
      why: 'downwind: height was outside its tolerance in 3 of the last 4, mostly too high.',
    });
  });

  it('is the earliest of items that are as bad: early faults make later ones', () => {
    const both = row([item('final-height', 'final', 1200, 'red'), height(1200)]);
    expect(practiseNext(days(both, both))?.item).toBe('downwind-height');
  });

  it('is no longer an item that was green twice', () => {
    expect(practiseNext(withHelp(WHOLE_HELP, 1200, 1200, 1000, 1000))).toMatchObject({
      kind: 'again',
      why: 'Sound 2 times in a row; 3 in a row make it a habit.',
    });
  });

  it('is less help, one step at a time, once it was sound three times; then the same without; then more wind', () => {
    expect(practiseNext(withHelp(WHOLE_HELP, 1000, 1000, 1000))).toMatchObject({
      kind: 'less-help',
      what: 'Fly it with less to see: cockpit with plan.',
    });
    const cockpit = { ...WHOLE_HELP, picture: 'cockpit' as const };
    expect(practiseNext(withHelp(cockpit, 1000, 1000, 1000))?.what).toBe(
      'Fly it with less said: coach reminded.',
    );
    const silent = { ...cockpit, coach: 'silent' as const };
    expect(practiseNext(withHelp(silent, 1000, 1000, 1000))?.what).toMatch(
      /^Fly it in one go, without freeze/,
    );
    const mixed = [...withHelp(silent, 1000, 1000), row([height(1000)], { help: NO_HELP })];
    expect(practiseNext(days(...mixed))?.why).toBe(
      'Sound once in a row without help; 3 in a row make it a habit.',
    );
    expect(practiseNext(withHelp(NO_HELP, 1000, 1000, 1000))?.kind).toBe('more-wind');
  });
});

describe('words and search', () => {
  it('says items as an instructor does', () => {
    expect(itemWords('turn-to-final-bank', 'turn-to-final')).toBe('turn to final: bank');
    expect(itemWords('gate-300', 'final')).toBe('final: stabilised at 300 ft');
  });

  it('finds every word, without capitals and accents', () => {
    const rows = [row([], { notes: 'Café landing, flared high' }), row([], { pilot: 'Robin' })];
    expect(searchRows(rows, 'cafe HIGH')).toEqual([rows[0]]);
    expect(searchRows(rows, 'robin curlew')).toEqual([rows[1]]);
    expect(searchRows(rows, 'robin cafe')).toEqual([]);
    expect(searchRows(rows, '  ')).toEqual(rows);
  });
});
