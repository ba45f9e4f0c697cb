import { planCircuit } from '../circuit/plan.ts';
import type { CircuitPlan } from '../circuit/types.ts';
import { type JudgedBy, limitsOf } from '../lesson/judge/edit-tolerances.ts';
import { lessonOfScenario } from '../lesson/lesson-of.ts';
import { createLessonFold } from '../lesson/watch/lesson-fold.ts';
import { lookFrom } from '../lesson/watch/where.ts';
import { forkSession } from '../session/fork.ts';
import type { Recording } from '../session/recording.ts';
import { beginReplay, replayStep } from '../session/replay.ts';
import { advance, createSession, decide, type Session } from '../session/session.ts';
import type { ControlSource, Fold } from '../session/source.ts';
import type { Model } from '../simulation/model.ts';
import type { Scenario } from '../simulation/scenario.ts';
import type { Snapshot } from '../simulation/snapshot.ts';
import { type Flight, ownAircraft } from './flight.ts';
import type { OtherPilot } from './other-pilot.ts';
import { noteStanding, othersOf } from './others.ts';

/** Who flies, who else is there, and how it is judged. */
export interface FlightAsked {
  readonly scenario: Scenario;
  readonly model: Model;
  readonly source: (model: Model, plan: CircuitPlan) => ControlSource<unknown>;
  /** Planned here where it has not been. */
  readonly plan?: CircuitPlan;
  /** Null: nobody else flies, whatever the scenario says. */
  readonly otherPilot: OtherPilot | null;
  /** Null: by the usual set. */
  readonly judgedBy: JudgedBy | null;
  /** Who watches beside the lesson. */
  readonly folds?: readonly Fold<unknown>[];
}

/** Prepares a flight; throws an Error sentence when it cannot begin. */
export const beginFlight = (asked: FlightAsked): Flight => {
  const { scenario, model, judgedBy, otherPilot } = asked;
  const { aeroplane, aerodrome, weather } = scenario;
  const plan = asked.plan ?? planCircuit(model.shape, aeroplane, aerodrome, model.runway, weather);
  const lesson = lessonOfScenario(scenario, model.runway, plan, null);
  const limits = limitsOf(judgedBy);
  const folds = [createLessonFold(lesson, limits) as Fold<unknown>, ...(asked.folds ?? [])];
  const own = { scenario, source: asked.source(model, plan), folds };
  const others = otherPilot === null ? [] : othersOf(scenario, plan, otherPilot);
  return {
    session: createSession([own, ...others]),
    scenario,
    model,
    plan,
    lesson,
    judgedBy,
    limits,
    stoodSince: others.map(() => null),
    flownBy: null,
    coach: null,
    weakSinceS: null,
    endsAtStep: Number.POSITIVE_INFINITY,
  };
};

/**
 * A recorded flight where it stood at a step, ready to be flown on. Of the others there is no recording: they fly
 * beside what was recorded once more. `see` is shown every step on the way.
 */
export const resumeFlight = (
  recording: Recording,
  atStep: number,
  asked: Omit<FlightAsked, 'scenario' | 'source'> & { readonly source: ControlSource<unknown> },
  see: (snapshot: Readonly<Snapshot>) => void,
): Flight => {
  const { scenario } = recording;
  const flight = beginFlight({ ...asked, scenario, source: () => asked.source });
  const [own, ...others] = flight.session.aircraft;
  const entry = { recording, source: asked.source, folds: own?.folds ?? [] };
  const forked = forkSession([entry], Math.min(atStep, recording.steps));
  const replay = beginReplay(recording, flight.model);
  const beside: Session = { step: 0, aircraft: others };
  const around = [replay, ...others];
  while (replay.step < forked.step) {
    decide(beside, around);
    replayStep(replay);
    advance(beside);
    noteStanding(flight.stoodSince, replay.step, others);
    see(replay.snapshot);
  }
  flight.session = { step: forked.step, aircraft: [...forked.aircraft, ...others] };
  lookAgain(flight);
  return flight;
};

/** The lesson's place is worked out of the last look; after a leap it is to be that of here. */
const lookAgain = (flight: Flight): void =>
  lookFrom(flight.model.runway, flight.plan.side, ownAircraft(flight).snapshot, flight.lesson.where);

/** Stands the flight where it was at a step, flown on from there by `source`. */
export const setBack = (flight: Flight, step: number, source: ControlSource<unknown>): void => {
  const at = Math.max(0, Math.min(step, flight.session.step));
  const entries = flight.session.aircraft.map((aircraft, i) => ({
    recording: aircraft.recorder.recording,
    source: i === 0 ? source : aircraft.source,
    folds: aircraft.folds,
  }));
  flight.session = forkSession(entries, at);
  lookAgain(flight);
  flight.weakSinceS = null;
  flight.flownBy = null;
  flight.endsAtStep = Number.POSITIVE_INFINITY;
};
