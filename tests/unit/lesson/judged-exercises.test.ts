import { describe, expect, it } from 'vitest';
import { EXERCISES } from '../../../src/exercises.ts';
import { JUDGED_EXERCISES, judgedExerciseOf } from '../../../src/judged-exercises.ts';
import { allowsOwnDay } from '../../../src/lesson/exercises/own-day.ts';

describe('the exercises that the flying page carries', () => {
  it('are those of the catalogue, and are chosen and judged by the same', () => {
    const wanted = EXERCISES.map((exercise) => {
      const { id, title, assessed, success, doneAfter, aerodrome } = exercise;
      return { id, title, assessed, success, doneAfter, aerodrome, anyDay: allowsOwnDay(exercise) };
    });
    expect(wanted.length).toBeGreaterThan(0);
    expect(JUDGED_EXERCISES).toEqual(wanted);
  });

  it('are found by their scenario', () => {
    expect(judgedExerciseOf({ exercise: 'go-around' })?.id).toBe('go-around');
    expect(judgedExerciseOf({ exercise: 'none of these' })).toBeNull();
  });
});
