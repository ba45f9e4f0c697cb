import { begin, startControls } from '../simulation/begin.ts';
import { type Controls, copyControls, neutralControls, quantiseControls } from '../simulation/controls.ts';
import type { Model } from '../simulation/model.ts';
import { prepare } from '../simulation/model.ts';
import { observe } from '../simulation/observe.ts';
import { STEP_HZ } from '../simulation/scenario.ts';
import { newSnapshot, type Snapshot } from '../simulation/snapshot.ts';
import { STATE_SLOTS, type State } from '../simulation/state.ts';
import { step } from '../simulation/step.ts';
import { createPlayback, type PlaybackMemory } from './playback.ts';
import { eventsAt, type Recording } from './recording.ts';
import type { ControlSource, Fold } from './source.ts';

/**
 * A recorded flight that is being flown again, events included, for whoever watches: files, debrief, study, a fork.
 * Nothing else flies a recording again. It keeps no recording of its own; its objects are filled anew at every step.
 */
export interface Replay {
  readonly recording: Recording;
  readonly model: Model;
  readonly state: State;
  /** As the last step used them; between `setHands` and `takeStep` as the next one will. */
  readonly controls: Controls;
  /** Now, and one step ago. */
  snapshot: Snapshot;
  before: Snapshot;
  readonly folds: readonly Fold<unknown>[];
  readonly foldMemories: readonly unknown[];
  /** Steps flown. */
  step: number;
  readonly hands: ControlSource<PlaybackMemory>;
  readonly handsMemory: PlaybackMemory;
}

/** Where a recorded flight can be taken up again: all that is carried over but for who flies and who watches. */
export interface Instant {
  readonly step: number;
  readonly state: State;
  /** As the last step used them. */
  readonly controls: Readonly<Controls>;
}

const replayAt = (
  recording: Recording,
  model: Model,
  { step: at, state, controls }: Instant,
  watching: Pick<Replay, 'folds'> & {
    readonly foldMemories: readonly unknown[] | null;
  },
): Replay => {
  const snapshot = newSnapshot();
  const before = newSnapshot();
  observe(model, state, controls, snapshot);
  observe(model, state, controls, before);
  const hands = createPlayback(recording);
  return {
    recording,
    model,
    state,
    controls,
    snapshot,
    before,
    folds: watching.folds,
    foldMemories: watching.foldMemories ?? watching.folds.map((fold) => fold.begin(snapshot)),
    step: at,
    hands,
    handsMemory: hands.begin(snapshot, controls),
  };
};

/** A recorded flight at its beginning. */
export const beginReplay = (
  recording: Recording,
  model: Model,
  folds: readonly Fold<unknown>[] = [],
): Replay => {
  const controls = startControls(model);
  quantiseControls(controls, model.topStage);
  return replayAt(
    recording,
    model,
    { step: 0, state: begin(model), controls },
    { folds, foldMemories: null },
  );
};

/**
 * A recorded flight at an instant of it, which stays as it is. The folds go on with these memories, and change them;
 * without any they begin here.
 */
export const resumeReplay = (
  recording: Recording,
  model: Model,
  from: Instant,
  folds: readonly Fold<unknown>[] = [],
  foldMemories: readonly unknown[] | null = null,
): Replay => replayAt(recording, model, copyInstant(from), { folds, foldMemories });

const copyInstant = ({ step: at, state, controls }: Instant): Instant & { readonly controls: Controls } => {
  const copy = neutralControls();
  copyControls(controls, copy);
  return { step: at, state: state.slice(), controls: copy };
};

/** Where a replay stands, kept. */
export const instantOf = (replay: Replay): Instant => copyInstant(replay);

/** The first half of a step: the recorded hands for the step that begins now. */
export const setHands = (replay: Replay): void => {
  replay.hands.next(replay.snapshot, replay.handsMemory, replay.controls);
  quantiseControls(replay.controls, replay.model.topStage);
};

/** The second half: the physics, then those who watch, with what was done beside the controls. */
export const takeStep = (replay: Replay): void => {
  const { recording, model, state, controls, folds, snapshot, before } = replay;
  const taken = eventsAt(recording, replay.step);
  step(model, state, controls);
  observe(model, state, controls, before);
  replay.snapshot = before;
  replay.before = snapshot;
  replay.step += 1;
  for (let i = 0; i < folds.length; i += 1) {
    (folds[i] as Fold<unknown>).step(replay.foldMemories[i], replay.snapshot, taken);
  }
};

/** One step as it was flown. */
export const replayStep = (replay: Replay): void => {
  setHands(replay);
  takeStep(replay);
};

/** Flies on as recorded until so many steps have been flown. */
export const replayTo = (replay: Replay, atStep: number): void => {
  while (replay.step < atStep) replayStep(replay);
};

/** An instant as it was seen; for a flight of another model version too, which cannot be flown again. */
export const seeInstant = (model: Model, instant: Instant, into: Snapshot): void => {
  observe(model, instant.state, instant.controls, into);
  into.step = instant.step;
  into.timeS = instant.step / STEP_HZ;
};

/** Where a repeated flight first stands elsewhere than its recording says. */
export interface Difference {
  readonly step: number;
  readonly slot: string;
  readonly recorded: number;
  readonly flown: number;
}

/** Flies the recorded hands again from the start and compares every keyframe bit for bit; null when all agree. */
export const firstDifference = (recording: Recording): Difference | null => {
  const replay = beginReplay(recording, prepare(recording.scenario));
  for (const keyframe of recording.keyframes) {
    replayTo(replay, keyframe.step);
    for (let i = 0; i < STATE_SLOTS.length; i += 1) {
      const recorded = keyframe.state[i] ?? Number.NaN;
      const flown = replay.state[i] as number;
      if (!Object.is(recorded, flown)) {
        return {
          step: keyframe.step,
          slot: STATE_SLOTS[i]?.name ?? `slot ${i}`,
          recorded,
          flown,
        };
      }
    }
  }
  return null;
};
