import { CONTROLS, type Controls, copyControls, neutralControls } from '../simulation/controls.ts';
import type { PilotEvent } from '../simulation/pilot-event.ts';
import type { Scenario } from '../simulation/scenario.ts';
import { clonePlain } from './plain.ts';
import {
  type ChangeList,
  emptyChangeList,
  KEYFRAME_STEPS,
  pushChange,
  RECORDING_VERSION,
  type Recording,
} from './recording.ts';

/** Writes a Recording while a flight goes on; allocates only when a list must grow and at keyframes. */
export interface Recorder {
  readonly recording: Recording;
  /** What was noted last. */
  readonly last: Controls;
}

export const beginRecorder = (scenario: Scenario, start: Controls): Recorder => {
  const last = neutralControls();
  copyControls(start, last);
  return {
    recording: {
      version: RECORDING_VERSION,
      modelVersion: scenario.modelVersion,
      scenario,
      steps: 0,
      changes: CONTROLS.map(() => emptyChangeList()),
      keyframes: [],
      events: [],
    },
    last,
  };
};

/** Goes on writing where a cut recording ends. */
export const resumeRecorder = (recording: Recording, last: Controls): Recorder => {
  const copy = neutralControls();
  copyControls(last, copy);
  return { recording, last: copy };
};

const note = (changes: readonly ChangeList[], index: number, step: number, value: number): void =>
  pushChange(changes[index] as ChangeList, step, Math.round(value * 10000));

/** Notes what the step that begins at `step` uses; unrolled over CONTROLS, because it runs every step. */
export const recordControls = (recorder: Recorder, step: number, controls: Controls): void => {
  const { last } = recorder;
  const { changes } = recorder.recording;
  if (controls.elevator !== last.elevator) {
    last.elevator = controls.elevator;
    note(changes, 0, step, controls.elevator);
  }
  if (controls.aileron !== last.aileron) {
    last.aileron = controls.aileron;
    note(changes, 1, step, controls.aileron);
  }
  if (controls.rudder !== last.rudder) {
    last.rudder = controls.rudder;
    note(changes, 2, step, controls.rudder);
  }
  if (controls.trim !== last.trim) {
    last.trim = controls.trim;
    note(changes, 3, step, controls.trim);
  }
  if (controls.throttle !== last.throttle) {
    last.throttle = controls.throttle;
    note(changes, 4, step, controls.throttle);
  }
  if (controls.mixture !== last.mixture) {
    last.mixture = controls.mixture;
    note(changes, 5, step, controls.mixture);
  }
  if (controls.propeller !== last.propeller) {
    last.propeller = controls.propeller;
    note(changes, 6, step, controls.propeller);
  }
  if (controls.brake !== last.brake) {
    last.brake = controls.brake;
    note(changes, 7, step, controls.brake);
  }
  if (controls.flapStage !== last.flapStage) {
    last.flapStage = controls.flapStage;
    note(changes, 8, step, controls.flapStage);
  }
  if (controls.carbHeat !== last.carbHeat) {
    last.carbHeat = controls.carbHeat;
    note(changes, 9, step, controls.carbHeat);
  }
  if (controls.pump !== last.pump) {
    last.pump = controls.pump;
    note(changes, 10, step, controls.pump);
  }
  if (controls.gear !== last.gear) {
    last.gear = controls.gear;
    note(changes, 11, step, controls.gear);
  }
};

/** Notes what is done beside the controls in the step that begins now. */
export const recordEvents = (recorder: Recorder, events: readonly PilotEvent[]): void => {
  for (const event of events) recorder.recording.events.push(event);
};

export const isKeyframeDue = (step: number): boolean => step % KEYFRAME_STEPS === 0;

/** Keeps a copy of everything that survives a step; a second one at the same step replaces the first. */
export const recordKeyframe = (
  recorder: Recorder,
  step: number,
  state: Float64Array,
  controls: Controls,
  sourceName: string,
  sourceMemory: unknown,
  foldMemories: readonly unknown[],
): void => {
  const { keyframes } = recorder.recording;
  while (keyframes.length > 0 && (keyframes[keyframes.length - 1]?.step ?? 0) >= step) keyframes.pop();
  keyframes.push(clonePlain({ step, whole: true, state, controls, sourceName, sourceMemory, foldMemories }));
};
