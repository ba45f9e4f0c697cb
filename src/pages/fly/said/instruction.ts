import { INSTRUCTION_WORDS, wordsNow } from '../../../lesson/exercises/instructions.ts';
import { useStore } from '../../store.ts';
import { lessonMemory, type ReadyFlight } from '../run/ready.ts';
import type { Announcer } from './announcer.ts';

/** What a tower says itself, in its own words. */
const BY_TOWER: ReadonlySet<string> = new Set(
  Object.values(INSTRUCTION_WORDS).filter((words) => words !== INSTRUCTION_WORDS.stop),
);

/** What the instructor says now; empty when nothing is, or the tower says it. */
export const instructionNow = (flight: ReadyFlight, timeS: number): string => {
  const words = wordsNow(lessonMemory(flight), timeS) ?? '';
  return flight.lesson.procedures?.radio === 'towered' && BY_TOWER.has(words) ? '' : words;
};

/** Four times a simulated second: shows and announces it, before anything that can wait. */
export const showInstruction = (
  flight: ReadyFlight,
  timeS: number,
  announcer: Announcer,
  speak: (text: string) => void,
): void => {
  const instruction = instructionNow(flight, timeS);
  if (instruction === useStore.getState().instruction) return;
  useStore.setState({ instruction });
  if (instruction === '') return;
  announcer.say(instruction, true);
  speak(instruction);
};
