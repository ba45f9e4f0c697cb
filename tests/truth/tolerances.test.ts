// Every limit of every tolerance set against the document it names. Figures: reference/circuit-training.md, the
// section beside each; V there is "seen" here, V2 "quoted", M "memory", P "practice". What rests on memory or on
// practice is checked to be marked so, never to be right.
import { describe, expect, it } from 'vitest';
import { withLimit } from '../../src/lesson/judge/edit-tolerances.ts';
import type { Limit } from '../../src/lesson/judge/limit.ts';
import {
  COMMERCIAL,
  EASA_LICENCE_TEST,
  FAA_LICENCE_TEST,
  FIRST_LESSONS,
  TOLERANCE_SETS,
  type ToleranceSet,
} from '../../src/lesson/judge/tolerances.ts';
import { ktFromMps, mpsFromKt } from '../../src/units/conversions.ts';

type Row = readonly [string, number, number, RegExp, Limit['sure']];

const holds = (set: ToleranceSet, rows: readonly Row[]): void => {
  describe(set.title, () => {
    it.each(rows)('%s is -%d/+%d', (name, below, above, source, sure) => {
      expect(set.allowed[name]).toMatchObject({ below, above, sure });
      expect(set.allowed[name]?.source).toMatch(source);
    });
  });
};

describe('the sets', () => {
  // 3.1: III.B patterns, IV.A take-off, IV.B and IV.F landings, seen in three transcriptions of the private ACS.
  // The ACS names no heading for a circuit: the ±10 deg are the European ones (3.2).
  holds(FAA_LICENCE_TEST, [
    ['heightFt', 100, 100, /FAA-S-ACS-6 III\.B/, 'seen'],
    ['circuitSpeedKt', 10, 10, /FAA-S-ACS-6 III\.B/, 'seen'],
    ['climbSpeedKt', 5, 10, /FAA-S-ACS-6 IV\.A/, 'seen'],
    ['approachSpeedKt', 5, 10, /FAA-S-ACS-6 IV\.B/, 'seen'],
    ['touchdownFt', 0, 400, /FAA-S-ACS-6 IV\.B/, 'seen'],
    ['shortTouchdownFt', 0, 200, /FAA-S-ACS-6 IV\.F/, 'seen'],
    ['trackDeg', 10, 10, /AMC1 FCL\.235/, 'quoted'],
  ]);
  // 3.2: height ±150 ft, heading ±10 deg, take-off and approach +15/-5 kt, all other speeds ±15 kt, quoted. It
  // names no distance for the touchdown, and the set must not say that it does.
  holds(EASA_LICENCE_TEST, [
    ['heightFt', 150, 150, /AMC1 FCL\.235/, 'quoted'],
    ['trackDeg', 10, 10, /AMC1 FCL\.235/, 'quoted'],
    ['circuitSpeedKt', 15, 15, /AMC1 FCL\.235/, 'quoted'],
    ['climbSpeedKt', 5, 15, /AMC1 FCL\.235/, 'quoted'],
    ['approachSpeedKt', 5, 15, /AMC1 FCL\.235/, 'quoted'],
    ['touchdownFt', 0, 400, /common practice; the test names no figure/, 'practice'],
    ['shortTouchdownFt', 0, 200, /common practice; the test names no figure/, 'practice'],
  ]);
  // 3.1: III.B has the private figures in the commercial ACS too (seen); ±5 kt, 200 ft and 100 ft are from memory.
  holds(COMMERCIAL, [
    ['heightFt', 100, 100, /commercial ACS III\.B/, 'seen'],
    ['circuitSpeedKt', 10, 10, /commercial ACS III\.B/, 'seen'],
    ['climbSpeedKt', 5, 5, /from memory/, 'memory'],
    ['approachSpeedKt', 5, 5, /from memory/, 'memory'],
    ['touchdownFt', 0, 200, /from memory/, 'memory'],
    ['shortTouchdownFt', 0, 100, /from memory/, 'memory'],
  ]);

  it('of the first lessons is half as wide again as the licence test, the low side of climb and approach apart', () => {
    for (const name of ['heightFt', 'trackDeg', 'circuitSpeedKt', 'touchdownFt', 'shortTouchdownFt'] as const)
      expect(FIRST_LESSONS.allowed[name].above, name).toBe(1.5 * FAA_LICENCE_TEST.allowed[name].above);
    for (const name of ['climbSpeedKt', 'approachSpeedKt'] as const) {
      expect(FIRST_LESSONS.allowed[name].above).toBe(1.5 * FAA_LICENCE_TEST.allowed[name].above);
      expect(FIRST_LESSONS.allowed[name].below).toBe(FAA_LICENCE_TEST.allowed[name].below);
    }
  });
});

describe('what is the same in every set', () => {
  const rows: readonly Row[] = [
    // 1.3 and 2: turns at 30 deg, final turn never above (South African procedures, seen)
    ['levelBankDeg', 0, 30, /South African .*30 deg/, 'seen'],
    ['finalBankDeg', 0, 30, /South African .*30 deg/, 'seen'],
    // 1.3: climbing turns 15 to 20 deg (practice); 25 leaves a wing's wobble
    ['climbingBankDeg', 0, 25, /common practice.*15 to 20 deg/, 'practice'],
    // 1.3: about 45 deg behind the wing (AFH-3C p. 167); the ±5 deg are the design's
    ['baseTurnDeg', 5, 5, /FAA-H-8083-3C.*±5 deg common practice/, 'practice'],
    // 12: round-out begun at 10 to 20 ft (AFH-3C p. 179): 15 ft, and a few feet either side
    ['roundOutFt', 7, 10, /FAA-H-8083-3C p\. 179.*10 to 20 ft/, 'practice'],
    // 10: a field ahead, within 30 deg (quoted)
    ['aheadDeg', 30, 30, /within 30 deg/, 'quoted'],
    // 3.1, IX.B: best glide ±10 kt, from memory
    ['glideSpeedKt', 10, 10, /FAA-S-ACS-6 IX\.B \(from memory\)/, 'memory'],
    // 3.1, IV.B: over the centreline, aligned, no side drift: the ACS has no figure for any of them
    ['centrelineShare', 0.25, 0.25, /IV\.B: over the centreline; .*common practice/, 'practice'],
    ['driftKt', 2, 2, /IV\.B: no side drift; .*common practice/, 'practice'],
    ['crabDeg', 5, 5, /IV\.B: axis aligned; .*common practice/, 'practice'],
    // 7: the white arc ends at Vfe (PHAK); two knots for the needle
    ['flapOverKt', 0, 2, /white arc \(FAA-H-8083-25/, 'practice'],
  ];
  it.each(rows)('%s is -%d/+%d', (name, below, above, source, sure) => {
    for (const set of TOLERANCE_SETS) {
      expect(set.allowed[name]).toMatchObject({ below, above, sure });
      expect(set.allowed[name]?.source).toMatch(source);
    }
  });
});

describe('how sure a figure is', () => {
  const all = TOLERANCE_SETS.flatMap((set) =>
    Object.entries(set.allowed).map(([name, limit]) => [set.id, name, limit, set] as const),
  );

  it('from memory is marked, and nothing else claims it', () => {
    for (const [set, name, limit] of all)
      expect(/from memory/.test(limit.source), `${set}, ${name}`).toBe(limit.sure === 'memory');
    expect(all.filter(([, , { sure }]) => sure === 'memory').length).toBeGreaterThan(4);
  });

  it('common practice is called so, and nobody claims a document for it', () => {
    for (const [set, name, limit] of all)
      expect(/common practice/.test(limit.source), `${set}, ${name}`).toBe(limit.sure === 'practice');
  });

  it('seen or quoted names the document', () => {
    const document = /FAA-S-ACS-6|commercial ACS|AMC1 FCL\.235|South African|New Zealand/;
    for (const [set, name, limit] of all)
      if (limit.sure === 'seen' || limit.sure === 'quoted')
        expect(limit.source, `${set}, ${name}`).toMatch(document);
  });

  it.each(all.filter(([, , { sure }]) => sure === 'memory'))(
    '%s, %s, can be changed, and then is somebody’s own',
    (_, name, limit, set) => {
      const mine = withLimit(set, name, { below: limit.below + 1, above: limit.above + 1 });
      expect(mine.allowed[name]).toMatchObject({
        below: limit.below + 1,
        above: limit.above + 1,
        sure: 'own',
      });
    },
  );
});

describe('a knot', () => {
  it('is 1852 m an hour (SI brochure), so that a speed limit is what the document means', () => {
    expect(mpsFromKt(10)).toBeCloseTo(18520 / 3600, 9);
    expect(ktFromMps(18520 / 3600)).toBeCloseTo(10, 9);
  });
});
