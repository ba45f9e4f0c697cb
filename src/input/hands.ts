import type { Controls } from '../simulation/controls.ts';
import type { Scenario } from '../simulation/scenario.ts';
import type { Snapshot } from '../simulation/snapshot.ts';
import { beginHand, type HandMemory, type HandStyle, moveHand } from './hand.ts';
import { clearIntent, type IntentReader, newIntent } from './intent.ts';

type Aeroplane = Scenario['aeroplane'];

/** What a session's `ControlSource` is, said here so that the input need not know the session. */
export interface Hands {
  readonly name: string;
  /** Keys cannot be asked twice: a fork begins the hands anew. */
  readonly live: true;
  begin(snapshot: Readonly<Snapshot>, controls: Readonly<Controls>): HandMemory;
  next(snapshot: Readonly<Snapshot>, memory: HandMemory, controls: Controls): void;
}

/** The pilot's own hands on whatever devices are there; later devices add to earlier ones. */
export const createHands = (
  devices: readonly IntentReader[],
  aeroplane: Aeroplane,
  style: HandStyle,
): Hands => {
  const intent = newIntent();
  return {
    name: 'hands',
    live: true,
    begin: (snapshot, controls) => beginHand(style, snapshot, controls),
    next: (snapshot, memory, controls) => {
      clearIntent(intent);
      for (const device of devices) device.read(intent);
      moveHand(memory, snapshot, intent, aeroplane, controls);
    },
  };
};
