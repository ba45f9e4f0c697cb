import type { CircuitPlan } from '../circuit/types.ts';
import type { Exercise } from '../lesson/exercise.ts';
import { faultsNow } from '../lesson/gates.ts';
import type { Lesson } from '../lesson/lesson.ts';
import { createLessonFold } from '../lesson/lesson-fold.ts';
import { lessonOfScenario } from '../lesson/lesson-of.ts';
import type { LessonMemory } from '../lesson/memory.ts';
import { endingOf } from '../lesson/outcome.ts';
import type { ToleranceSet } from '../lesson/tolerances.ts';
import type { Briefing } from '../pilot/briefing/briefing.ts';
import { briefingFor } from '../pilot/briefing/briefing-for.ts';
import { clonePlain } from '../session/plain.ts';
import { createPlayback } from '../session/playback.ts';
import type { Recording } from '../session/recording.ts';
import { begin, startControls } from '../simulation/begin.ts';
import { type Controls, copyControls, neutralControls, quantiseControls } from '../simulation/controls.ts';
import { type Model, prepare } from '../simulation/model.ts';
import { observe } from '../simulation/observe.ts';
import { STEP_HZ } from '../simulation/scenario.ts';
import { newSnapshot, type Snapshot } from '../simulation/snapshot.ts';
import type { State } from '../simulation/state.ts';
import { step } from '../simulation/step.ts';
import { type Look, lookAt } from './look.ts';

/** A recorded flight and what it is measured against: plain data, so that a worker can be handed it. */
export interface StudyFlight {
  readonly recording: Recording;
  readonly plan: CircuitPlan;
  readonly exercise: Exercise | null;
  readonly limits: ToleranceSet;
}

/** Where a flight can be taken up again: everything that is carried over, but for the hands. */
export interface Instant {
  readonly step: number;
  readonly state: State;
  readonly controls: Readonly<Controls>;
  readonly lesson: LessonMemory;
}

/** A recorded flight, seen once more from its beginning to its end. */
export interface Flown {
  readonly flight: StudyFlight;
  readonly model: Model;
  readonly lesson: Lesson;
  readonly briefing: Briefing;
  /** One a second, from the first step on. */
  readonly instants: readonly Instant[];
  readonly looks: readonly Look[];
  /** The lesson's at the end. */
  readonly memory: LessonMemory;
}

/** Between two instants, and between two looks. */
const INSTANT_STEPS = STEP_HZ;
export const LOOK_HZ = 2;
const LOOK_STEPS = STEP_HZ / LOOK_HZ;

/** Flies the recorded hands again and keeps every second of it. */
export const seeAgain = (flight: StudyFlight): Flown => {
  const { recording, plan, exercise, limits } = flight;
  const model = prepare(recording.scenario);
  const lesson = lessonOfScenario(recording.scenario, model.runway, plan, exercise);
  const briefing = briefingFor(model, plan);
  const fold = createLessonFold(lesson, limits);
  const state = begin(model);
  const controls = startControls(model);
  quantiseControls(controls, model.topStage);
  const seen = newSnapshot();
  observe(model, state, controls, seen);
  const memory = fold.begin(seen);
  const hands = createPlayback(recording);
  const handsMemory = hands.begin(seen, controls);
  const instants: Instant[] = [];
  const looks: Look[] = [];
  for (let at = 0; at <= recording.steps; at += 1) {
    if (at % INSTANT_STEPS === 0) instants.push(instantOf(at, state, controls, memory));
    if (at % LOOK_STEPS === 0)
      looks.push(lookAt(briefing, memory.legs, seen, faultsOn(memory, lesson, seen, limits)));
    if (at === recording.steps || seen.ended !== null) break;
    hands.next(seen, handsMemory, controls);
    quantiseControls(controls, model.topStage);
    step(model, state, controls);
    observe(model, state, controls, seen);
    fold.step(memory, seen);
  }
  return { flight, model, lesson, briefing, instants, looks, memory };
};

const faultsOn = (
  m: LessonMemory,
  lesson: Lesson,
  seen: Readonly<Snapshot>,
  limits: ToleranceSet,
): string[] => (m.legs.leg === 'final' ? faultsNow(m, lesson, seen, limits) : []);

const instantOf = (at: number, state: State, controls: Controls, memory: LessonMemory): Instant => {
  const kept = neutralControls();
  copyControls(controls, kept);
  return { step: at, state: state.slice(), controls: kept, lesson: clonePlain(memory) };
};

/** The last instant at or before a time. */
export const instantAt = ({ instants }: Flown, timeS: number): Instant => {
  const index = Math.min(instants.length - 1, Math.max(0, Math.floor((timeS * STEP_HZ) / INSTANT_STEPS)));
  const found = instants[index];
  if (found === undefined) throw new Error('study: a flight must have at least one instant, found none');
  return found;
};

/** Whether there is nothing more to be seen of a flight. */
export const isOver = (flown: Flown, memory: LessonMemory, seen: Readonly<Snapshot>): boolean =>
  seen.ended !== null || endingOf(memory, flown.lesson) !== null;
