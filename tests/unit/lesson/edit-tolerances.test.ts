// Sets are data that can be changed; whatever is changed says so.
import { describe, expect, it } from 'vitest';
import { limitsOf, withLimit } from '../../../src/lesson/judge/edit-tolerances.ts';
import {
  COMMERCIAL,
  EASA_LICENCE_TEST,
  FAA_LICENCE_TEST,
  FIRST_LESSONS,
} from '../../../src/lesson/judge/tolerances.ts';

describe('a tolerance set', () => {
  it('changed in one limit says so and keeps the others', () => {
    const mine = withLimit(FAA_LICENCE_TEST, 'heightFt', { below: 50, above: 60 });
    expect(mine.allowed.heightFt).toMatchObject({ below: 50, above: 60, sure: 'own' });
    expect(mine.allowed.heightFt.source).toMatch(/^entered by you; before: FAA-S-ACS-6/);
    expect(mine.title).toBe('Licence test, FAA, changed');
    expect(mine.allowed.trackDeg).toEqual(FAA_LICENCE_TEST.allowed.trackDeg);
    expect(withLimit(mine, 'heightFt', { below: 40, above: 40 }).allowed.heightFt.source).toBe(
      mine.allowed.heightFt.source,
    );
    expect(FAA_LICENCE_TEST.allowed.heightFt.below).toBe(100);
  });
});

// Figures as tests/reference/circuit.ts has them: seen in transcriptions, quoted, the commercial ones from memory.
describe('the figures of the sets', () => {
  it('are those of FAA-S-ACS-6', () => {
    expect(FAA_LICENCE_TEST.allowed.shortTouchdownFt).toMatchObject({ below: 0, above: 200, sure: 'seen' });
    expect(FAA_LICENCE_TEST.allowed.climbSpeedKt).toMatchObject({ below: 5, above: 10, sure: 'seen' });
  });

  it('are those of AMC1 FCL.235', () => {
    expect(EASA_LICENCE_TEST.allowed.heightFt).toMatchObject({ below: 150, above: 150, sure: 'quoted' });
    expect(EASA_LICENCE_TEST.allowed.approachSpeedKt).toMatchObject({ below: 5, above: 15, sure: 'quoted' });
    expect(EASA_LICENCE_TEST.allowed.circuitSpeedKt).toMatchObject({ below: 15, above: 15 });
    expect(EASA_LICENCE_TEST.allowed.trackDeg).toMatchObject({ below: 10, above: 10 });
  });

  it('of the commercial test rest on memory where they do, and are marked', () => {
    expect(COMMERCIAL.allowed.approachSpeedKt).toMatchObject({ below: 5, above: 5, sure: 'memory' });
    expect(COMMERCIAL.allowed.touchdownFt).toMatchObject({ above: 200, sure: 'memory' });
    expect(FAA_LICENCE_TEST.allowed.heightFt.sure).toBe('seen');
  });

  it('of the first lessons are wider, but never on the low side of a climb or an approach', () => {
    expect(FIRST_LESSONS.allowed.heightFt.above).toBe(1.5 * FAA_LICENCE_TEST.allowed.heightFt.above);
    expect(FIRST_LESSONS.allowed.approachSpeedKt.below).toBe(FAA_LICENCE_TEST.allowed.approachSpeedKt.below);
    expect(FIRST_LESSONS.allowed.climbSpeedKt.below).toBe(FAA_LICENCE_TEST.allowed.climbSpeedKt.below);
  });
});

describe('what a flight was judged by', () => {
  it('is the named set with what was changed in it, and says so', () => {
    const set = limitsOf({ set: 'first-lessons', changed: { heightFt: { below: 200, above: 180 } } });
    expect(set.allowed.heightFt).toMatchObject({ below: 200, above: 180, sure: 'own' });
    expect(set.allowed.touchdownFt).toEqual(FIRST_LESSONS.allowed.touchdownFt);
    expect(set.title).toBe('First lessons, changed');
  });

  it('is the usual set where nothing was written down, or a set or a limit that there is no more', () => {
    expect(limitsOf(null)).toBe(FAA_LICENCE_TEST);
    expect(limitsOf({ set: 'gone', changed: { goneToo: { below: 1, above: 1 } } })).toBe(FAA_LICENCE_TEST);
  });
});
