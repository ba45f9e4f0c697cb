import { instructionNow } from '../../../flight/instruction.ts';
import { useStore } from '../../store.ts';
import type { ReadyFlight } from '../run/ready.ts';
import type { Announcer } from './announcer.ts';

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
