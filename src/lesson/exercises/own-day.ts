import type { Exercise } from './exercise.ts';

/** Whether it can be flown in any weather: gusts, a wind that goes round or heat are what some exercises are about. */
export const allowsOwnDay = ({ weather }: Pick<Exercise, 'weather'>): boolean =>
  weather?.gustAddsKt === undefined && weather?.drift === undefined && weather?.aboveStandardC === undefined;
