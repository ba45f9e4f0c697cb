import {
  type ChangeList,
  emptyChangeList,
  type Keyframe,
  pushChange,
  type Recording,
} from '../session/recording.ts';
import type { FlightHead } from './flight-under-way.ts';

/** What came to one control since the part before. */
export interface Changes {
  readonly steps: Int32Array;
  readonly values: Int32Array;
}

/** What a flight under way got in a second or so. Part 0 begins anew: it holds the whole flight so far. */
export interface JournalPart {
  readonly flight: string;
  readonly part: number;
  /** Steps flown when it was written. */
  readonly steps: number;
  /** In the order of the recording's; null where nothing moved. */
  readonly changes: readonly (Changes | null)[];
  /** A keyframe replaces those at its step and after. */
  readonly keyframes: readonly Keyframe[];
  /** What was done beside the controls since; parts of before there were any have none. */
  readonly events?: Recording['events'];
}

/** How far a journal has been written. */
export interface Written {
  /** The object that was written from; another one means that the flight was set back. */
  recording: Recording | null;
  part: number;
  steps: number;
  readonly counts: number[];
  events: number;
  keyframe: Keyframe | null;
}

export const nothingWritten = (): Written => ({
  recording: null,
  part: -1,
  steps: 0,
  counts: [],
  events: 0,
  keyframe: null,
});

const changesSince = (list: ChangeList, count: number): Changes | null =>
  count === list.count
    ? null
    : { steps: list.steps.slice(count, list.count), values: list.values.slice(count, list.count) };

const keyframesSince = (recording: Recording, last: Keyframe | null): readonly Keyframe[] => {
  if (last === null) return recording.keyframes;
  const at = recording.keyframes.lastIndexOf(last);
  return at >= 0
    ? recording.keyframes.slice(at + 1)
    : recording.keyframes.filter((keyframe) => keyframe.step >= last.step);
};

/** The next part: what came since the last, or the whole flight when it was set back. */
export const partSince = (flight: string, recording: Recording, written: Written): JournalPart => {
  const goesOn = written.recording === recording;
  return {
    flight,
    part: goesOn ? written.part + 1 : 0,
    steps: recording.steps,
    changes: recording.changes.map((list, i) =>
      changesSince(list, goesOn ? (written.counts[i] as number) : 0),
    ),
    keyframes: keyframesSince(recording, goesOn ? written.keyframe : null),
    events: recording.events.slice(goesOn ? written.events : 0),
  };
};

/** Remembers that `part` of `recording` stands written, as the recording was when the part was made. */
export const noteWritten = (written: Written, recording: Recording, part: JournalPart): void => {
  const goesOn = part.part > 0;
  written.recording = recording;
  written.part = part.part;
  written.steps = part.steps;
  part.changes.forEach((changes, i) => {
    written.counts[i] = (goesOn ? (written.counts[i] as number) : 0) + (changes?.steps.length ?? 0);
  });
  written.events = (goesOn ? written.events : 0) + (part.events?.length ?? 0);
  written.keyframe = part.keyframes[part.keyframes.length - 1] ?? (goesOn ? written.keyframe : null);
};

/**
 * Puts a flight together again from its parts in their order. Null when nothing can be read: no first part, or
 * no keyframe. Parts after a gap are left out.
 */
export const recordingFrom = (head: FlightHead, parts: readonly JournalPart[]): Recording | null => {
  const whole = parts.filter((part, i) => part.part === i);
  const last = whole[whole.length - 1];
  if (last === undefined) return null;
  const changes = last.changes.map(() => emptyChangeList());
  const keyframes: Keyframe[] = [];
  const events: Recording['events'] = [];
  for (const part of whole) {
    part.changes.forEach((more, at) => {
      if (more === null) return;
      const list = changes[at] as ChangeList;
      more.steps.forEach((step, i) => {
        pushChange(list, step, more.values[i] as number);
      });
    });
    events.push(...(part.events ?? []));
    for (const keyframe of part.keyframes) {
      while ((keyframes[keyframes.length - 1]?.step ?? -1) >= keyframe.step) keyframes.pop();
      keyframes.push(keyframe);
    }
  }
  if (keyframes[0]?.step !== 0) return null;
  const { version, modelVersion, scenario } = head;
  return { version, modelVersion, scenario, steps: last.steps, changes, keyframes, events };
};
