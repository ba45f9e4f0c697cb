import type { CircuitPlan } from '../circuit/types.ts';
import type { Exercise } from '../lesson/exercises/exercise.ts';
import { endingOf } from '../lesson/judge/outcome.ts';
import type { ToleranceSet } from '../lesson/judge/tolerances.ts';
import type { Lesson } from '../lesson/lesson.ts';
import { lessonOfScenario } from '../lesson/lesson-of.ts';
import type { LessonMemory } from '../lesson/memory.ts';
import { faultsNow } from '../lesson/watch/gates.ts';
import { createLessonFold } from '../lesson/watch/lesson-fold.ts';
import type { Briefing } from '../pilot/briefing/briefing.ts';
import { briefingFor } from '../pilot/briefing/briefing-for.ts';
import { clonePlain } from '../session/plain.ts';
import type { Recording } from '../session/recording.ts';
import { beginReplay, instantOf, type Instant as ReplayInstant, replayStep } from '../session/replay.ts';
import type { Fold } from '../session/source.ts';
import { type Model, prepare } from '../simulation/model.ts';
import { STEP_HZ } from '../simulation/scenario.ts';
import type { Snapshot } from '../simulation/snapshot.ts';
import { type Look, lookAt } from './look.ts';

/** A recorded flight and what it is measured against: plain data, so that a worker can be handed it. */
export interface StudyFlight {
  readonly recording: Recording;
  readonly plan: CircuitPlan;
  readonly exercise: Exercise | null;
  readonly limits: ToleranceSet;
}

/** Where a flight can be taken up again: everything that is carried over, but for the hands. */
export interface Instant extends ReplayInstant {
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
  const replay = beginReplay(recording, model, [createLessonFold(lesson, limits) as Fold<unknown>]);
  const memory = replay.foldMemories[0] as LessonMemory;
  const instants: Instant[] = [];
  const looks: Look[] = [];
  const keep = (): void => {
    const { step, snapshot } = replay;
    if (step % INSTANT_STEPS === 0) instants.push({ ...instantOf(replay), lesson: clonePlain(memory) });
    if (step % LOOK_STEPS === 0)
      looks.push(lookAt(briefing, memory.legs, snapshot, faultsOn(memory, lesson, snapshot, limits)));
  };
  keep();
  while (replay.step < recording.steps) {
    const wasOver = replay.snapshot.ended !== null;
    replayStep(replay);
    if (!wasOver) keep();
  }
  return { flight, model, lesson, briefing, instants, looks, memory };
};

const faultsOn = (
  m: LessonMemory,
  lesson: Lesson,
  seen: Readonly<Snapshot>,
  limits: ToleranceSet,
): string[] => (m.legs.leg === 'final' ? faultsNow(m, lesson, seen, limits) : []);

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
