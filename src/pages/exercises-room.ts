import { fetchPart } from './parts/fetch-part.ts';

/**
 * The exercises with all their words, fetched where one is chosen: the flying page of a circuit without exercise
 * needs none of them.
 */
type Exercises = typeof import('./exercise-flight.ts');

let exercises: Exercises | null = null;

/** To be awaited before the flight of settings that name an exercise is asked for. */
export const loadExercises = async (): Promise<Exercises> => {
  exercises ??= await fetchPart('pages/exercise-flight.ts', () => import('./exercise-flight.ts'));
  return exercises;
};

/** Null until they are there. */
export const exercisesNow = (): Exercises | null => exercises;
