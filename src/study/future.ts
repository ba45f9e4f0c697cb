import type { LessonMemory } from '../lesson/memory.ts';
import { createLessonFold, type LessonFold } from '../lesson/watch/lesson-fold.ts';
import { clonePlain } from '../session/plain.ts';
import { eventsAt } from '../session/recording.ts';
import type { ControlSource } from '../session/source.ts';
import { type Controls, copyControls, neutralControls, quantiseControls } from '../simulation/controls.ts';
import { observe } from '../simulation/observe.ts';
import { STEP_HZ } from '../simulation/scenario.ts';
import { newSnapshot, type Snapshot } from '../simulation/snapshot.ts';
import { step } from '../simulation/step.ts';
import { type Approach, approachOf, LAST_GATE_FT } from './approach.ts';
import { type Flown, type Instant, isOver } from './flown.ts';

/** What came of flying on from an instant. */
export interface Future {
  readonly approach: Approach;
  readonly lesson: LessonMemory;
  /** Seconds flown. */
  readonly flownS: number;
}

/** Longest way to the last gate: a whole circuit and more. */
const LONGEST_S = 420;
const LOOK_STEPS = 6;

/**
 * Flies on from an instant until the approach is decided: the last gate passed, a go-around begun, or the end.
 * No recorder: this is what is done hundreds of times; what is worth keeping is flown once more by a session.
 */
export const flyOn = (
  flown: Flown,
  from: Instant,
  source: ControlSource<unknown>,
  circuit: number,
): Future => {
  const fold: LessonFold = createLessonFold(flown.lesson, flown.flight.limits);
  const lesson = clonePlain(from.lesson);
  const flight = takeUp(flown, from, source);
  const goArounds = lesson.goArounds.length;
  const gates = lesson.gates.length;
  const until = from.step + LONGEST_S * STEP_HZ;
  while (flight.seen.step < until) {
    flyStep(flown, flight);
    // What was ticked and said is said again, at its time: other hands do not silence anybody
    fold.step(lesson, flight.seen, eventsAt(flown.flight.recording, flight.seen.step - 1));
    if (flight.seen.step % LOOK_STEPS !== 0) continue;
    if (lesson.goArounds.length > goArounds || isDecided(lesson, gates) || isOver(flown, lesson, flight.seen))
      break;
  }
  const fromS = from.step / STEP_HZ;
  return {
    approach: approachOf(lesson, circuit, fromS),
    lesson,
    flownS: flight.seen.step / STEP_HZ - fromS,
  };
};

const isDecided = (m: LessonMemory, from: number): boolean => {
  for (let i = from; i < m.gates.length; i += 1) if (m.gates[i]?.heightFt === LAST_GATE_FT) return true;
  return false;
};

/** One aeroplane in the air without recorder or lesson. */
export interface Aloft {
  readonly state: Float64Array;
  readonly controls: Controls;
  readonly seen: Snapshot;
  readonly source: ControlSource<unknown>;
  readonly memory: unknown;
}

export const takeUp = (flown: Flown, from: Instant, source: ControlSource<unknown>): Aloft => {
  const state = from.state.slice();
  const controls = neutralControls();
  copyControls(from.controls, controls);
  const seen = newSnapshot();
  observe(flown.model, state, controls, seen);
  return { state, controls, seen, source, memory: source.begin(seen, controls) };
};

export const flyStep = ({ model }: Flown, flight: Aloft): void => {
  flight.source.next(flight.seen, flight.memory, flight.controls);
  quantiseControls(flight.controls, model.topStage);
  step(model, flight.state, flight.controls);
  observe(model, flight.state, flight.controls, flight.seen);
};
