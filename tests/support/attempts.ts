import { planCircuit } from '../../src/circuit/plan.ts';
import type { AttemptBody, AttemptHead } from '../../src/formats/attempt.ts';
import { resultOf } from '../../src/formats/result.ts';
import type { HelpUsed } from '../../src/lesson/attempts/attempt.ts';
import { createLesson } from '../../src/lesson/lesson.ts';
import type { LessonMemory } from '../../src/lesson/memory.ts';
import { createLessonFold } from '../../src/lesson/watch/lesson-fold.ts';
import { createSession, type Session, tick } from '../../src/session/session.ts';
import type { ControlSource, Fold } from '../../src/session/source.ts';
import { prepare } from '../../src/simulation/model.ts';
import { type Scenario, STEP_HZ } from '../../src/simulation/scenario.ts';
import { aerodromeNamed } from './aerodromes.ts';
import { scenarioOf } from './flight.ts';

export const WHOLE_HELP: HelpUsed = {
  coach: 'talked-through',
  picture: 'whiteboard',
  rudderAssist: true,
  handHolds: true,
  freezes: 1,
  stepsBack: 2,
  planLooks: 3,
  watchedS: 0,
};

export const NO_HELP: HelpUsed = {
  coach: 'silent',
  picture: 'cockpit',
  rudderAssist: false,
  handHolds: false,
  freezes: 0,
  stepsBack: 0,
  planLooks: 0,
  watchedS: 0,
};

export const headNamed = (id: string, changes: Partial<AttemptHead> = {}): AttemptHead => ({
  id,
  pilot: 'Wren',
  when: '2026-01-31T09:30:00.000Z',
  help: WHOLE_HELP,
  notes: '',
  ownView: [],
  parent: null,
  ...changes,
});

/** A gusty day at an aerodrome of the demo, in the air. */
export const gustyScenario = (seed = 1): Scenario =>
  scenarioOf({
    aerodrome: aerodromeNamed('curlew-sands'),
    runway: '22',
    start: {},
    seed,
    weather: { windFromDegM: 250, windKt: 12, gustKt: 20, turbulence: 'light' },
  });

/** Hands that never rest, with memory. */
export const busyHands: ControlSource<{ phase: number }> = {
  name: 'busy',
  begin: () => ({ phase: 1 }),
  next: (snapshot, memory, controls) => {
    memory.phase = (memory.phase * 16807) % 2147483647;
    controls.elevator = (memory.phase / 2147483647 - 0.5) * 0.05 - 0.5 * snapshot.pitchRad;
    controls.aileron = -0.8 * snapshot.bankRad;
  },
};

export interface Begun {
  readonly session: Session;
  readonly scenario: Scenario;
  readonly folds: readonly Fold<unknown>[];
  /** What would be kept now. */
  body(): AttemptBody;
}

/** A flight with the lesson watching. */
export const beginAttempt = (
  scenario: Scenario = gustyScenario(),
  source: ControlSource<unknown> = busyHands,
): Begun => {
  const model = prepare(scenario);
  const { aeroplane, aerodrome, weather } = scenario;
  const plan = planCircuit(model.shape, aeroplane, aerodrome, model.runway, weather);
  const lesson = createLesson(aeroplane, model.runway, plan);
  const folds = [createLessonFold(lesson) as Fold<unknown>];
  const session = createSession([{ scenario, source, folds }]);
  return {
    session,
    scenario,
    folds,
    body: () => {
      const aircraft = session.aircraft[0]!;
      const memory = aircraft.foldMemories[0] as LessonMemory;
      const timeS = session.step / STEP_HZ;
      const {
        scenario: _,
        model_version: __,
        ...result
      } = resultOf(scenario, lesson, memory, timeS, { outcome: 'time-up', why: 'Up.' });
      return {
        recording: aircraft.recorder.recording,
        marks: [{ atS: 1, kind: 'call', text: 'downwind' }],
        result,
        judgedBy: null,
      };
    },
  };
};

/** A flight of so many seconds, ready to be kept. */
export const bodyOf = (seconds: number, seed = 1): AttemptBody => {
  const flight = beginAttempt(gustyScenario(seed));
  for (let i = 0; i < seconds * STEP_HZ; i += 1) tick(flight.session);
  return flight.body();
};
