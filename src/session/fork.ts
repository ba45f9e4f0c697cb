import { copyControls, neutralControls } from '../simulation/controls.ts';
import { prepare } from '../simulation/model.ts';
import { NO_EVENTS } from '../simulation/pilot-event.ts';
import { clonePlain } from './plain.ts';
import { recordKeyframe, resumeRecorder } from './recorder.ts';
import { cutRecording, type Keyframe, keyframeBefore, type Recording } from './recording.ts';
import { type Replay, resumeReplay, setHands, takeStep } from './replay.ts';
import type { Aircraft, Session } from './session.ts';
import type { ControlSource, Fold } from './source.ts';

/** What a recorded aircraft goes on with. */
export interface ForkEntry {
  readonly recording: Recording;
  readonly source: ControlSource<unknown>;
  readonly folds: readonly Fold<unknown>[];
}

/** One aircraft on its way to where it is taken up. */
interface Fork {
  readonly entry: ForkEntry;
  readonly replay: Replay;
  /** From this keyframe on the source remembers. */
  readonly near: Keyframe;
  /** The source keeps its memory; null where it begins anew. */
  readonly sourceMemory: { readonly of: unknown } | null;
}

/**
 * A session that stands exactly where the recordings stood after `atStep` steps: the keyframe before is
 * restored and the recorded hands fly on from there, all aircraft at one tick. It shares nothing with the original.
 * Memories of folds come from the keyframe when it holds as many as are handed in; otherwise they watch the
 * flight from its beginning. The source keeps its memory unless it is live or another one than recorded.
 */
export const forkSession = (entries: readonly ForkEntry[], atStep: number): Session => {
  for (const { recording } of entries) {
    if (!Number.isInteger(atStep) || atStep < 0 || atStep > recording.steps) {
      throw new Error(`recording: step must be a whole number from 0 to ${recording.steps}, was ${atStep}`);
    }
  }
  const nears = entries.map(({ recording }) => keyframeBefore(recording, atStep));
  // A source that looks at the others needs them there from where its own memory begins
  const togetherFrom = Math.min(...nears.map((near) => near.step));
  const forks = entries.map((entry, i) => forkOf(entry, nears[i] as Keyframe, togetherFrom));
  const around = forks.map((fork) => fork.replay);
  const scratch = neutralControls();
  for (let at = Math.min(...around.map((replay) => replay.step)); at < atStep; at += 1) {
    const due = forks.filter(({ replay }) => replay.step === at);
    for (const { entry, replay, near, sourceMemory } of due) {
      if (sourceMemory === null || at < near.step) continue;
      copyControls(replay.controls, scratch);
      entry.source.next(replay.snapshot, sourceMemory.of, scratch, around);
    }
    for (const { replay } of due) {
      setHands(replay);
      takeStep(replay);
    }
  }
  return {
    step: atStep,
    aircraft: forks.map((fork) => aircraftOf(fork, atStep)),
  };
};

const forkOf = (entry: ForkEntry, near: Keyframe, togetherFrom: number): Fork => {
  const { recording, source, folds } = entry;
  const together = keyframeBefore(recording, togetherFrom);
  const watched = folds.length === 0 || together.foldMemories.length === folds.length;
  const from = watched ? together : keyframeBefore(recording, 0);
  const goesOn = source.live !== true && source.name === near.sourceName;
  return {
    entry,
    near,
    replay: resumeReplay(
      recording,
      prepare(recording.scenario),
      from,
      folds,
      watched ? clonePlain(from.foldMemories.slice(0, folds.length)) : null,
    ),
    sourceMemory: goesOn ? { of: clonePlain(near.sourceMemory) } : null,
  };
};

const aircraftOf = ({ entry, replay, sourceMemory }: Fork, atStep: number): Aircraft => {
  const { source, folds } = entry;
  const { model, state, controls, snapshot, before } = replay;
  const foldMemories = [...replay.foldMemories];
  const recorder = resumeRecorder(cutRecording(entry.recording, atStep), controls);
  const begun = sourceMemory === null ? source.begin(snapshot, controls) : sourceMemory.of;
  if (sourceMemory === null)
    recordKeyframe(recorder, atStep, state, controls, source.name, begun, foldMemories);
  return {
    model,
    state,
    controls,
    source,
    sourceMemory: begun,
    folds,
    foldMemories,
    snapshot,
    before,
    recorder,
    waiting: [],
    taken: NO_EVENTS,
  };
};
