import { describe, expect, it } from 'vitest';
import { exerciseNamed } from '../../../src/exercises.ts';
import { judged } from '../../../src/flight/result.ts';
import { judgedExerciseOf } from '../../../src/judged-exercises.ts';
import { PROCEDURE_RULES } from '../../../src/lesson/judge/rules/procedures.ts';
import { selects } from '../../../src/lesson/judge/selection.ts';

const LESSON = {} as Parameters<typeof judged>[0];
const judgedBy = (exercise: string, watchedS: number) =>
  judged(LESSON, judgedExerciseOf({ exercise }), watchedS).assessed;

describe('what a flight is judged by', () => {
  // Whose exercise names its rows one by one, by their beginnings, or is none of the catalogue's
  it.each(['normal-circuit', 'downwind-and-checks', 'none of these'])(
    'is all of its rows by hand, and none of checks, calls and lookout with the model pilot: %s',
    (exercise) => {
      const byHand = judgedBy(exercise, 0);
      expect(byHand).toEqual(exercise === 'none of these' ? null : exerciseNamed(exercise).assessed);
      const watched = judgedBy(exercise, 5) ?? [];
      expect(watched.length).toBeGreaterThan(3);
      expect(PROCEDURE_RULES.filter(({ id }) => selects(watched, id))).toEqual([]);
      expect(selects(watched, 'downwind-height')).toBe(true);
    },
  );
});
