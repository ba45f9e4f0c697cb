import { type Exercise, parseExercise } from './lesson/exercises/exercise.ts';
import { namedAmong, parsedFiles } from './units/files.ts';

/**
 * The exercises of the catalogue. They stand apart, and are parsed without side effect, because a flight needs them
 * and the rules they name only when it is judged.
 */
const files = import.meta.glob<unknown>('../assets/exercises/*.json', { eager: true, import: 'default' });

export const EXERCISES: readonly Exercise[] = /* @__PURE__ */ parsedFiles(files, parseExercise);

/** Throws an Error sentence that lists what there is. */
export const exerciseNamed = (id: string): Exercise => namedAmong(EXERCISES, 'exercise', id);

/** The exercise of a scenario, or null when it is none of these: then everything is looked at. */
export const exerciseOf = ({ exercise }: { readonly exercise: string }): Exercise | null =>
  EXERCISES.find(({ id }) => id === exercise) ?? null;
