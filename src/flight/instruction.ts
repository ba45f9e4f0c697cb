import { INSTRUCTION_WORDS, wordsNow } from '../lesson/exercises/instructions.ts';
import { type Flight, lessonMemory } from './flight.ts';

/** What a tower says itself, in its own words. */
const BY_TOWER: ReadonlySet<string> = new Set(
  Object.values(INSTRUCTION_WORDS).filter((words) => words !== INSTRUCTION_WORDS.stop),
);

/** What the instructor says now; empty when nothing is, or the tower says it. */
export const instructionNow = (flight: Flight, timeS: number): string => {
  const words = wordsNow(lessonMemory(flight), timeS) ?? '';
  return flight.lesson.procedures?.radio === 'towered' && BY_TOWER.has(words) ? '' : words;
};
