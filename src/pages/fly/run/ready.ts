import { newSeenLights } from '../../../aerodrome/slope-lights.ts';
import { planCircuit } from '../../../circuit/plan.ts';
import { GATES_FT } from '../../../circuit/stabilised.ts';
import type { CircuitPlan } from '../../../circuit/types.ts';
import { type JudgedBy, limitsOf } from '../../../lesson/judge/edit-tolerances.ts';
import type { ToleranceSet } from '../../../lesson/judge/tolerances.ts';
import type { Lesson } from '../../../lesson/lesson.ts';
import { lessonOfScenario } from '../../../lesson/lesson-of.ts';
import type { LessonMemory } from '../../../lesson/memory.ts';
import { createLessonFold } from '../../../lesson/watch/lesson-fold.ts';
import { forkSession } from '../../../session/fork.ts';
import { createPlayback } from '../../../session/playback.ts';
import type { Recording } from '../../../session/recording.ts';
import { createSession, type Session, tick } from '../../../session/session.ts';
import type { ControlSource } from '../../../session/source.ts';
import type { Model } from '../../../simulation/model.ts';
import type { Scenario } from '../../../simulation/scenario.ts';
import { newSnapshot } from '../../../simulation/snapshot.ts';
import type { Gate, ViewFrame } from '../../../views/frame.ts';
import { createTrail, extendTrail, type Trail } from '../../../views/trail.ts';
import { judgedByNow } from '../../tolerances.ts';
import { trafficEntries } from './traffic.ts';

/** A flight that stands ready: the session and everything that is drawn and marked from it. */
export interface ReadyFlight {
  session: Session;
  readonly scenario: Scenario;
  readonly model: Model;
  readonly plan: CircuitPlan;
  readonly lesson: Lesson;
  readonly trail: Trail;
  readonly frame: ViewFrame;
  /** What it is judged by, from its beginning to its end. */
  readonly judgedBy: JudgedBy;
  readonly limits: ToleranceSet;
}

const GATES: readonly Gate[] = GATES_FT.map((heightFt) => ({ heightFt, text: `${heightFt} ft` }));

/** Prepares a flight; throws an Error sentence when it cannot begin. */
export const readyFlight = (
  scenario: Scenario,
  makeSource: (model: Model, plan: CircuitPlan) => ControlSource<unknown>,
  model: Model,
): ReadyFlight => {
  const { aeroplane, aerodrome, weather } = scenario;
  const plan = planCircuit(model.shape, aeroplane, aerodrome, model.runway, weather);
  const lesson = lessonOfScenario(scenario, model.runway, plan, null);
  const judgedBy = judgedByNow();
  const limits = limitsOf(judgedBy);
  const session = createSession([
    { scenario, source: makeSource(model, plan), folds: [createLessonFold(lesson, limits) as never] },
    ...trafficEntries(scenario, plan),
  ]);
  const trail = createTrail();
  const frame: ViewFrame = {
    snapshot: newSnapshot(),
    plan,
    runway: model.runway,
    aerodrome,
    aeroplane,
    lights: model.runway.lights ? newSeenLights() : null,
    leg: 'line-up',
    trail,
    forecast: [],
    lookRad: 0,
    picture: 'whiteboard',
    wind: { fromDegM: weather.windFromDegM, kt: weather.windKt, gustKt: weather.gustKt },
    planMode: 'runway-up',
    ghost: null,
    gates: GATES,
    traffic: [],
  };
  return { session, scenario, model, plan, lesson, trail, frame, judgedBy, limits };
};

/** A recorded flight where it stood at a step, ready to be flown on; its trail is flown once more. */
export const readyFrom = (
  recording: Recording,
  atStep: number,
  source: ControlSource<unknown>,
  model: Model,
): ReadyFlight => {
  const { scenario } = recording;
  const flight = readyFlight(scenario, () => source, model);
  const folds = flight.session.aircraft[0]?.folds ?? [];
  const forked = forkSession([{ recording, source, folds }], Math.min(atStep, recording.steps));
  const shadow = createSession([
    { scenario, source: createPlayback(recording), folds: [] },
    ...trafficEntries(scenario, flight.plan),
  ]);
  while (shadow.step < forked.step) {
    tick(shadow);
    const snapshot = shadow.aircraft[0]?.snapshot;
    if (snapshot) extendTrail(flight.trail, snapshot);
  }
  flight.session = { step: forked.step, aircraft: [...forked.aircraft, ...shadow.aircraft.slice(1)] };
  return flight;
};

/** What the lesson remembers of the flight now. */
export const lessonMemory = (flight: ReadyFlight): LessonMemory =>
  flight.session.aircraft[0]?.foldMemories[0] as LessonMemory;
