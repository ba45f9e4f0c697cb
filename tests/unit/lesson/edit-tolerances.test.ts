// Sets are data that can be changed and kept; whatever is changed says so, and a damaged one is told in a sentence.
import { describe, expect, it } from 'vitest';
import { limitsOf, parseToleranceSet, withLimit } from '../../../src/lesson/judge/edit-tolerances.ts';
import {
  COMMERCIAL,
  EASA_LICENCE_TEST,
  FAA_LICENCE_TEST,
  FIRST_LESSONS,
  TOLERANCE_SETS,
} from '../../../src/lesson/judge/tolerances.ts';

describe('a tolerance set', () => {
  it('survives being kept and read again', () => {
    for (const set of TOLERANCE_SETS)
      expect(parseToleranceSet(JSON.parse(JSON.stringify(set)), 'kept.json')).toEqual(set);
  });

  it('changed in one limit says so and keeps the others', () => {
    const mine = withLimit(FAA_LICENCE_TEST, 'heightFt', { below: 50, above: 60 });
    expect(mine.heightFt).toMatchObject({ below: 50, above: 60, sure: 'own' });
    expect(mine.heightFt.source).toMatch(/^entered by you; before: FAA-S-ACS-6/);
    expect(mine.title).toBe('Licence test, FAA, changed');
    expect(mine.trackDeg).toEqual(FAA_LICENCE_TEST.trackDeg);
    expect(withLimit(mine, 'heightFt', { below: 40, above: 40 }).heightFt.source).toBe(mine.heightFt.source);
    expect(FAA_LICENCE_TEST.heightFt.below).toBe(100);
  });

  it('that is damaged is told with place, expected and found', () => {
    const bad = { ...FAA_LICENCE_TEST, trackDeg: { ...FAA_LICENCE_TEST.trackDeg, above: -3 } };
    expect(() => parseToleranceSet(bad, 'kept.json')).toThrow(
      /^kept\.json: trackDeg\.above must be at least 0, was -3$/,
    );
    const { heightFt, ...without } = FAA_LICENCE_TEST;
    expect(heightFt).toBeDefined();
    expect(() => parseToleranceSet(without, 'kept.json')).toThrow(/^kept\.json: heightFt is missing$/);
  });
});

// Figures as tests/reference/circuit.ts has them: seen in transcriptions, quoted, the commercial ones from memory.
describe('the figures of the sets', () => {
  it('are those of FAA-S-ACS-6', () => {
    expect(FAA_LICENCE_TEST.shortTouchdownFt).toMatchObject({ below: 0, above: 200, sure: 'seen' });
    expect(FAA_LICENCE_TEST.climbSpeedKt).toMatchObject({ below: 5, above: 10, sure: 'seen' });
  });

  it('are those of AMC1 FCL.235', () => {
    expect(EASA_LICENCE_TEST.heightFt).toMatchObject({ below: 150, above: 150, sure: 'quoted' });
    expect(EASA_LICENCE_TEST.approachSpeedKt).toMatchObject({ below: 5, above: 15, sure: 'quoted' });
    expect(EASA_LICENCE_TEST.circuitSpeedKt).toMatchObject({ below: 15, above: 15 });
    expect(EASA_LICENCE_TEST.trackDeg).toMatchObject({ below: 10, above: 10 });
  });

  it('of the commercial test rest on memory where they do, and are marked', () => {
    expect(COMMERCIAL.approachSpeedKt).toMatchObject({ below: 5, above: 5, sure: 'memory' });
    expect(COMMERCIAL.touchdownFt).toMatchObject({ above: 200, sure: 'memory' });
    expect(FAA_LICENCE_TEST.heightFt.sure).toBe('seen');
  });

  it('of the first lessons are wider, but never on the low side of a climb or an approach', () => {
    expect(FIRST_LESSONS.heightFt.above).toBe(1.5 * FAA_LICENCE_TEST.heightFt.above);
    expect(FIRST_LESSONS.approachSpeedKt.below).toBe(FAA_LICENCE_TEST.approachSpeedKt.below);
    expect(FIRST_LESSONS.climbSpeedKt.below).toBe(FAA_LICENCE_TEST.climbSpeedKt.below);
  });
});

describe('what a flight was judged by', () => {
  it('is the named set with what was changed in it, and says so', () => {
    const set = limitsOf({ set: 'first-lessons', changed: { heightFt: { below: 200, above: 180 } } });
    expect(set.heightFt).toMatchObject({ below: 200, above: 180, sure: 'own' });
    expect(set.touchdownFt).toEqual(FIRST_LESSONS.touchdownFt);
    expect(set.title).toBe('First lessons, changed');
  });

  it('is the usual set where nothing was written down, or a set or a limit that there is no more', () => {
    expect(limitsOf(null)).toBe(FAA_LICENCE_TEST);
    expect(limitsOf({ set: 'gone', changed: { goneToo: { below: 1, above: 1 } } })).toBe(FAA_LICENCE_TEST);
  });
});
