import { CONTROLS } from '../simulation/controls.ts';
import { type ChangeList, changesBefore, eventsAt, type Recording } from './recording.ts';
import type { ControlSource } from './source.ts';

export interface PlaybackMemory {
  /** How many changes of each control have been used. */
  used: number[];
}

/** A source that does again what was done; after the last recorded step everything stays as it is. */
export const createPlayback = (recording: Recording): ControlSource<PlaybackMemory> => ({
  name: 'playback',
  begin: (snapshot) => ({ used: recording.changes.map((list) => changesBefore(list, snapshot.step)) }),
  events: (step) => eventsAt(recording, step),
  next: (snapshot, memory, controls) => {
    for (let i = 0; i < CONTROLS.length; i += 1) {
      const list = recording.changes[i] as ChangeList;
      let used = memory.used[i] as number;
      if (used >= list.count || (list.steps[used] as number) > snapshot.step) continue;
      while (used < list.count && (list.steps[used] as number) <= snapshot.step) used += 1;
      memory.used[i] = used;
      controls[(CONTROLS[i] as (typeof CONTROLS)[number]).name] = (list.values[used - 1] as number) / 10000;
    }
  },
});
