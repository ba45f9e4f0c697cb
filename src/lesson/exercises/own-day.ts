import type { Exercise } from './exercise.ts';

/** Whether it can be flown in any weather: gusts, a wind that goes round or heat are what some exercises are about. */
export const allowsOwnDay = ({ weather }: Pick<Exercise, 'weather'>): boolean =>
  weather?.gustAddsKt === undefined && weather?.drift === undefined && weather?.aboveStandardC === undefined;

/** A wind from so far off the runway is what the exercise is about. */
const ACROSS_DEG = 45; // our choice: more across than along

/** Whether the air of another flight will do for it: not where the wind has to come from the side. */
export const takesAnyAir = (exercise: Pick<Exercise, 'weather'>): boolean => {
  const from = exercise.weather?.windFromRunwayDeg;
  const least = Array.isArray(from) ? (from[0] ?? 0) : (from ?? 0);
  return allowsOwnDay(exercise) && least < ACROSS_DEG;
};
