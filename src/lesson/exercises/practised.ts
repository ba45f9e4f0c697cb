import type { LessonMemory } from '../memory.ts';
import type { Exercise } from './exercise.ts';

/** Whether the leg that an exercise is for has been flown: what comes after it is no longer looked at. */
export const isPractised = (m: LessonMemory, { doneAfter }: Pick<Exercise, 'doneAfter'>): boolean =>
  doneAfter !== undefined && m.stretches.some(({ leg }) => leg === doneAfter);
