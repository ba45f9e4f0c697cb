import type { LessonMemory } from '../lesson/memory.ts';
import { createLessonFold } from '../lesson/watch/lesson-fold.ts';
import { forkSession } from '../session/fork.ts';
import { eventsAt, type Recording } from '../session/recording.ts';
import { createSession, type Session, tick } from '../session/session.ts';
import type { ControlSource, Fold } from '../session/source.ts';
import { STEP_HZ } from '../simulation/scenario.ts';
import { type Flown, isOver } from './flown.ts';

/** A flight that was flown for keeping, and what the lesson saw of it. */
export interface Kept {
  readonly recording: Recording;
  readonly lesson: LessonMemory;
}

const LONGEST_S = 900;
const LOOK_STEPS = 6;

const foldOf = (flown: Flown): Fold<unknown> =>
  createLessonFold(flown.lesson, flown.flight.limits) as Fold<unknown>;

/** Flies on to a stop or another end. */
const toTheEnd = (flown: Flown, session: Session): Kept => {
  const aircraft = session.aircraft[0];
  if (aircraft === undefined) throw new Error('study: one aircraft was expected, found none');
  const lesson = aircraft.foldMemories[0] as LessonMemory;
  const until = session.step + LONGEST_S * STEP_HZ;
  while (session.step < until) {
    tick(session);
    if (session.step % LOOK_STEPS === 0 && isOver(flown, lesson, aircraft.snapshot)) break;
  }
  return { recording: aircraft.recorder.recording, lesson };
};

/** Other hands, with what was ticked, said and told in a recording, at its time. */
const besideHands = (source: ControlSource<unknown>, recording: Recording): ControlSource<unknown> => ({
  ...source,
  events: (step) => eventsAt(recording, step),
});

/** Forks the recorded flight at a time and flies the fork to its end, recorded. */
export const flyBranch = (flown: Flown, source: ControlSource<unknown>, forkS: number): Kept => {
  const { recording } = flown.flight;
  const entry = { recording, source: besideHands(source, recording), folds: [foldOf(flown)] };
  return toTheEnd(flown, forkSession([entry], Math.floor(forkS) * STEP_HZ));
};

/** The same scenario from its beginning with other hands: same aeroplane, same wind, same gusts. */
export const flyAnew = (flown: Flown, source: ControlSource<unknown>): Kept => {
  const { scenario } = flown.flight.recording;
  return toTheEnd(flown, createSession([{ scenario, source, folds: [foldOf(flown)] }]));
};
