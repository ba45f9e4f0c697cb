import { copyControls, neutralControls, quantiseControls } from '../simulation/controls.ts';
import { prepare } from '../simulation/model.ts';
import { observe } from '../simulation/observe.ts';
import { NO_EVENTS } from '../simulation/pilot-event.ts';
import { newSnapshot } from '../simulation/snapshot.ts';
import { step } from '../simulation/step.ts';
import { clonePlain } from './plain.ts';
import { createPlayback } from './playback.ts';
import { recordKeyframe, resumeRecorder } from './recorder.ts';
import { cutRecording, eventsAt, keyframeBefore, type Recording } from './recording.ts';
import { type Aircraft, type Session, watch } from './session.ts';
import type { ControlSource, Fold } from './source.ts';

/** What a recorded aircraft goes on with. */
export interface ForkEntry {
  readonly recording: Recording;
  readonly source: ControlSource<unknown>;
  readonly folds: readonly Fold<unknown>[];
}

/**
 * A session that stands exactly where the recordings stood after `atStep` steps: the keyframe before is
 * restored and the recorded hands fly on from there. It shares nothing with the original.
 * Memories of folds come from the keyframe when it holds as many as are handed in; otherwise they watch the
 * flight from its beginning. The source keeps its memory unless it is live or another one than recorded.
 */
export const forkSession = (entries: readonly ForkEntry[], atStep: number): Session => {
  for (const { recording } of entries) {
    if (!Number.isInteger(atStep) || atStep < 0 || atStep > recording.steps) {
      throw new Error(`recording: step must be a whole number from 0 to ${recording.steps}, was ${atStep}`);
    }
  }
  return { step: atStep, aircraft: entries.map((entry) => restore(entry, atStep)) };
};

const restore = (entry: ForkEntry, atStep: number): Aircraft => {
  const { source, folds } = entry;
  const recording = cutRecording(entry.recording, atStep);
  const near = keyframeBefore(recording, atStep);
  const watched = near.foldMemories.length === folds.length;
  const from = watched || folds.length === 0 ? near : keyframeBefore(recording, 0);
  const model = prepare(recording.scenario);
  const state = from.state.slice();
  const controls = neutralControls();
  copyControls(from.controls, controls);
  const snapshot = newSnapshot();
  const before = newSnapshot();
  observe(model, state, controls, snapshot);
  observe(model, state, controls, before);
  const goesOn = source.live !== true && source.name === near.sourceName;
  const aircraft: Aircraft = {
    model,
    state,
    controls,
    source,
    sourceMemory: goesOn ? clonePlain(near.sourceMemory) : null,
    folds,
    foldMemories: watched
      ? (clonePlain(near.foldMemories) as unknown[])
      : folds.map((fold) => fold.begin(snapshot)),
    snapshot,
    before,
    recorder: resumeRecorder(recording, controls),
    waiting: [],
    taken: NO_EVENTS,
  };
  const hands = createPlayback(entry.recording);
  const handsMemory = hands.begin(snapshot, controls);
  const scratch = neutralControls();
  for (let at = from.step; at < atStep; at += 1) {
    if (goesOn && at >= near.step) {
      copyControls(aircraft.controls, scratch);
      source.next(aircraft.snapshot, aircraft.sourceMemory, scratch);
    }
    hands.next(aircraft.snapshot, handsMemory, controls);
    quantiseControls(controls, model.topStage);
    aircraft.taken = eventsAt(recording, at);
    step(model, state, controls);
    watch(aircraft);
  }
  copyControls(controls, aircraft.recorder.last);
  if (!goesOn) {
    aircraft.sourceMemory = source.begin(aircraft.snapshot, controls);
    recordKeyframe(
      aircraft.recorder,
      atStep,
      state,
      controls,
      source.name,
      aircraft.sourceMemory,
      aircraft.foldMemories,
    );
  }
  return aircraft;
};
