// Every limit of every tolerance set against the document it names: VERIFIED in tests/reference is "seen" here, QUOTED
// "quoted". What rests on memory or on practice is ours, stands here, and is checked to be marked so, never to be right.
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
import {
  AHEAD_LIMIT,
  BANK_LIMITS,
  BASE_TURN_ANGLE,
  COMMERCIAL_LIMITS,
  EASA_LIMITS,
  FAA_LIMITS,
  ROUND_OUT_HEIGHT,
} from '../reference/circuit.ts';

type Row = readonly [string, number, number, RegExp, Limit['sure']];

const holds = (set: ToleranceSet, rows: readonly Row[]): void => {
  describe(set.title, () => {
    it.each(rows)('%s is -%d/+%d', (name, below, above, source, sure) => {
      expect(set.allowed[name]).toMatchObject({ below, above, sure });
      expect(set.allowed[name]?.source).toMatch(source);
    });
  });
};

/** Published limits as rows to hold a set to. */
const seen = (
  rows: readonly (readonly [string, number, number, string])[],
  sure: 'seen' | 'quoted',
): readonly Row[] =>
  rows.map(([name, below, above, section]) => [
    name,
    below,
    above,
    new RegExp(section.replaceAll('.', '\\.')),
    sure,
  ]);

describe('the sets', () => {
  // The ACS names no heading for a circuit: the ±10 deg are the European ones
  holds(FAA_LICENCE_TEST, [
    ...seen(FAA_LIMITS.rows, 'seen'),
    ...seen(
      EASA_LIMITS.rows.filter(([name]) => name === 'trackDeg'),
      'quoted',
    ),
  ]);
  // It names no distance for the touchdown, and the set must not say that it does
  holds(EASA_LICENCE_TEST, [
    ...seen(EASA_LIMITS.rows, 'quoted'),
    ['touchdownFt', 0, 400, /common practice; the test names no figure/, 'practice'],
    ['shortTouchdownFt', 0, 200, /common practice; the test names no figure/, 'practice'],
  ]);
  holds(COMMERCIAL, [
    ...seen(COMMERCIAL_LIMITS.rows, 'seen'),
    ['climbSpeedKt', 5, 5, /from memory/, 'memory'],
    ['approachSpeedKt', 5, 5, /from memory/, 'memory'],
    ['touchdownFt', 0, 200, /from memory/, 'memory'],
    ['shortTouchdownFt', 0, 100, /from memory/, 'memory'],
  ]);

  it('leave no limit of the licence tests out', () => {
    expect(FAA_LIMITS.rows).toHaveLength(6);
    expect(EASA_LIMITS.rows).toHaveLength(5);
    expect(COMMERCIAL_LIMITS.rows).toHaveLength(2);
  });

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
    ...BANK_LIMITS.rows.map(
      ([name, deg, section]): Row => [name, 0, deg, new RegExp(`${section} .*${deg} deg`), 'seen'],
    ),
    // Climbing turns 15 to 20 deg (common practice); 25 leaves a wing's wobble
    ['climbingBankDeg', 0, 25, /common practice.*15 to 20 deg/, 'practice'],
    // The 45 deg are published (below); the ±5 deg are ours
    ['baseTurnDeg', 5, 5, /FAA-H-8083-3C p\. 8-3.*±5 deg common practice/, 'practice'],
    // The round-out begun at 10 to 20 ft is published (below): 15 ft, and a few feet either side
    ['roundOutFt', 7, 10, /FAA-H-8083-3C p\. 9-8.*10 to 20 ft/, 'practice'],
    ...AHEAD_LIMIT.rows.map(
      ([name, deg]): Row => [name, deg, deg, new RegExp(`within ${deg} deg`), 'quoted'],
    ),
    // ACS IX.B: best glide ±10 kt, from memory
    ['glideSpeedKt', 10, 10, /FAA-S-ACS-6 IX\.B \(from memory\)/, 'memory'],
    // ACS IV.B: over the centreline, aligned, no side drift: the ACS has no figure for any of them
    ['centrelineShare', 0.25, 0.25, /IV\.B: over the centreline; .*common practice/, 'practice'],
    ['driftKt', 2, 2, /IV\.B: no side drift; .*common practice/, 'practice'],
    ['crabDeg', 5, 5, /IV\.B: axis aligned; .*common practice/, 'practice'],
    // The white arc ends at Vfe (PHAK); two knots for the needle
    ['flapOverKt', 0, 2, /white arc \(FAA-H-8083-25/, 'practice'],
  ];
  it.each(rows)('%s is -%d/+%d', (name, below, above, source, sure) => {
    for (const set of TOLERANCE_SETS) {
      expect(set.allowed[name]).toMatchObject({ below, above, sure });
      expect(set.allowed[name]?.source).toMatch(source);
    }
  });
});

describe('what a source of the sets says in figures', () => {
  it.each(TOLERANCE_SETS.map((set) => [set.title, set] as const))(
    'is what the document says: %s',
    (_, set) => {
      const [[least, most]] = ROUND_OUT_HEIGHT.rows;
      expect(set.allowed.roundOutFt?.source).toContain(`${least} to ${most} ft`);
      expect(set.allowed.baseTurnDeg?.source).toContain(`${BASE_TURN_ANGLE.rows[0][0]} deg`);
    },
  );
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
