import type { Controls } from '../simulation/controls.ts';
import { NO_EVENTS, type PilotEvent } from '../simulation/pilot-event.ts';
import { type Scenario, STEP_HZ } from '../simulation/scenario.ts';
import { clonePlain } from './plain.ts';

/** Rises when the shape of a recording or of a memory inside it changes. */
export const RECORDING_VERSION = 1;

/** Between two keyframes, in seconds and in steps. */
export const KEYFRAME_S = 10;
export const KEYFRAME_STEPS = KEYFRAME_S * STEP_HZ;

/** One control's history: from step `steps[i]` on it stands at `values[i]` ten-thousandths. */
export interface ChangeList {
  count: number;
  steps: Int32Array;
  values: Int32Array;
}

/** Everything that is carried over from one step to the next, after `step` steps. */
export interface Keyframe {
  readonly step: number;
  /** The memories are there too. Files leave most of them out: they are found again by flying on from a whole one. */
  readonly whole: boolean;
  readonly state: Float64Array;
  /** As the last step used them. */
  readonly controls: Controls;
  readonly sourceName: string;
  readonly sourceMemory: unknown;
  readonly foldMemories: readonly unknown[];
}

/** A whole flight: what was fixed, what the hands did, and where to pick it up again. */
export interface Recording {
  readonly version: number;
  readonly modelVersion: number;
  readonly scenario: Scenario;
  /** Steps flown. */
  steps: number;
  /** In the order of CONTROLS. */
  readonly changes: readonly ChangeList[];
  readonly keyframes: Keyframe[];
  /** What was done beside the controls, in order. */
  readonly events: PilotEvent[];
}

export const emptyChangeList = (room = 64): ChangeList => ({
  count: 0,
  steps: new Int32Array(room),
  values: new Int32Array(room),
});

export const pushChange = (list: ChangeList, step: number, value: number): void => {
  if (list.count === list.steps.length) {
    const steps = new Int32Array(list.count * 2);
    const values = new Int32Array(list.count * 2);
    steps.set(list.steps);
    values.set(list.values);
    list.steps = steps;
    list.values = values;
  }
  list.steps[list.count] = step;
  list.values[list.count] = value;
  list.count += 1;
};

/** How many changes of the list come before this step; by halving. */
export const changesBefore = (list: ChangeList, step: number): number => {
  let low = 0;
  let high = list.count;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((list.steps[middle] as number) < step) low = middle + 1;
    else high = middle;
  }
  return low;
};

/** The last whole keyframe at or before a step. A recording always has one at step 0. */
export const keyframeBefore = (recording: Recording, step: number): Keyframe => {
  let best = recording.keyframes[0];
  for (const keyframe of recording.keyframes) if (keyframe.whole && keyframe.step <= step) best = keyframe;
  if (best === undefined || best.step > step)
    throw new Error(`recording: no whole keyframe at or before step ${step}`);
  return best;
};

/** What was done beside the controls in the step that begins at `step`. */
export const eventsAt = ({ events }: Recording, step: number): readonly PilotEvent[] => {
  let low = 0;
  let high = events.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((events[middle] as PilotEvent).step < step) low = middle + 1;
    else high = middle;
  }
  if (events[low]?.step !== step) return NO_EVENTS;
  let end = low + 1;
  while (events[end]?.step === step) end += 1;
  return events.slice(low, end);
};

/** The flight up to a step, sharing nothing that can change with the original. */
export const cutRecording = (recording: Recording, step: number): Recording => ({
  version: recording.version,
  modelVersion: recording.modelVersion,
  scenario: recording.scenario,
  steps: Math.min(step, recording.steps),
  changes: recording.changes.map((list) => {
    const count = changesBefore(list, step);
    const room = Math.max(64, count);
    const cut = emptyChangeList(room);
    cut.steps.set(list.steps.subarray(0, count));
    cut.values.set(list.values.subarray(0, count));
    cut.count = count;
    return cut;
  }),
  keyframes: recording.keyframes.filter((k) => k.step <= step).map((k) => clonePlain(k)),
  events: recording.events.filter((event) => event.step < step),
});
