import type { Exercise } from './lesson/exercises/exercise.ts';

/** Of an exercise, what it is chosen and a flight is judged by. */
export interface JudgedExercise
  extends Pick<Exercise, 'id' | 'title' | 'assessed' | 'success' | 'doneAfter' | 'aerodrome'> {
  /** It may be flown in any weather (lesson/exercises/own-day.ts). */
  readonly anyDay: boolean;
}

/**
 * The exercises of the catalogue without what is read before and after flying: half a dozen pages of prose that the
 * flying page need not fetch. vite.config.ts cuts them from the same files; tests/unit/lesson/judged-exercises.test.ts holds that they
 * say what the catalogue says, which is parsed and checked.
 */
const files = import.meta.glob<JudgedExercise>('../assets/exercises/*.json', {
  eager: true,
  import: 'default',
  query: '?judged',
});

export const JUDGED_EXERCISES: readonly JudgedExercise[] = /* @__PURE__ */ Object.values(files);

/** The exercise of a scenario, or null when it is none of these: then everything is looked at. */
export const judgedExerciseOf = ({ exercise }: { readonly exercise: string }): JudgedExercise | null =>
  JUDGED_EXERCISES.find(({ id }) => id === exercise) ?? null;
