import { STATE_SLOTS } from '../simulation/state.ts';
import { createPlayback } from './playback.ts';
import type { Recording } from './recording.ts';
import { createSession, tick } from './session.ts';

/** Where a repeated flight first stands elsewhere than its recording says. */
export interface Difference {
  readonly step: number;
  readonly slot: string;
  readonly recorded: number;
  readonly flown: number;
}

/** Flies the recorded hands again from the start and compares every keyframe bit for bit; null when all agree. */
export const firstDifference = (recording: Recording): Difference | null => {
  const session = createSession([
    { scenario: recording.scenario, source: createPlayback(recording), folds: [] },
  ]);
  const aircraft = session.aircraft[0];
  if (aircraft === undefined) return null;
  for (const keyframe of recording.keyframes) {
    while (session.step < keyframe.step) tick(session);
    for (let i = 0; i < STATE_SLOTS.length; i += 1) {
      const recorded = keyframe.state[i] ?? Number.NaN;
      const flown = aircraft.state[i] as number;
      if (!Object.is(recorded, flown)) {
        return { step: keyframe.step, slot: STATE_SLOTS[i]?.name ?? `slot ${i}`, recorded, flown };
      }
    }
  }
  return null;
};
