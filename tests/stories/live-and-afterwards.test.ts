// Live and afterwards one function (design/lesson.md; issue "The lesson", 7): what the lesson says while a flight goes
// on, every twenty seconds and at its end, is what it says of the recording at the same instants, to the last figure.
import { describe, expect, it } from 'vitest';
import { aerodromeNamed, aeroplaneNamed, exerciseNamed } from '../../src/catalogue.ts';
import {
  exerciseScenario,
  type Overrides,
  scenarioPlan,
} from '../../src/lesson/exercises/exercise-scenario.ts';
import { assess } from '../../src/lesson/judge/assess.ts';
import { endingOf } from '../../src/lesson/judge/outcome.ts';
import type { Report } from '../../src/lesson/judge/report.ts';
import type { Lesson } from '../../src/lesson/lesson.ts';
import { lessonOfScenario } from '../../src/lesson/lesson-of.ts';
import type { LessonMemory } from '../../src/lesson/memory.ts';
import { createLessonFold } from '../../src/lesson/watch/lesson-fold.ts';
import { createPilot } from '../../src/pilot/pilot.ts';
import { createPlayback } from '../../src/session/playback.ts';
import { createSession, type Session, tick } from '../../src/session/session.ts';
import type { ControlSource } from '../../src/session/source.ts';
import { prepare } from '../../src/simulation/model.ts';
import type { Scenario } from '../../src/simulation/scenario.ts';
import { flyEverything } from '../support/everything-done.ts';

const EVERY_STEPS = 20 * 60;
const LONGEST_STEPS = 60 * 60 * 30;

/** The session flown with the lesson in it, and what the lesson said every twenty seconds and at the end. */
const saying = (
  scenario: Scenario,
  lesson: Lesson,
  source: ControlSource<unknown>,
  isOver: (m: LessonMemory, step: number) => boolean,
): { readonly session: Session; readonly said: readonly Report[] } => {
  const fold = createLessonFold(lesson);
  const session = createSession([
    {
      scenario,
      source,
      folds: [{ begin: fold.begin, step: (m, s, events) => fold.step(m as LessonMemory, s, events) }],
    },
  ]);
  const m = session.aircraft[0]?.foldMemories[0] as LessonMemory;
  const said: Report[] = [];
  while (session.step < LONGEST_STEPS && !isOver(m, session.step)) {
    tick(session);
    if (session.step % EVERY_STEPS === 0) said.push(assess(m, lesson));
  }
  said.push(assess(m, lesson));
  return { session, said };
};

const flights: readonly (readonly [string, string, number, Overrides])[] = [
  ['go-around', 'sandpiper', 3, {}],
  ['gusty-day', 'dotterel', 1, {}],
  ['touch-and-go-session', 'whimbrel', 1, { circuits: 2 }],
  ['engine-failure-after-take-off', 'sandpiper', 2, {}],
];

describe('what is said live is what is said afterwards', () => {
  it.each(flights)('of %s in the %s', (id, aeroplane, seed, overrides) => {
    const exercise = exerciseNamed(id);
    const scenario = exerciseScenario(
      exercise,
      aeroplaneNamed(aeroplane),
      aerodromeNamed('curlew-sands'),
      seed,
      overrides,
    );
    const model = prepare(scenario);
    const plan = scenarioPlan(scenario);
    const lesson = () => lessonOfScenario(scenario, model.runway, plan, exercise);
    const pilot = createPilot(model, plan) as ControlSource<unknown>;
    const mine = lesson();
    const live = saying(scenario, mine, pilot, (m) => endingOf(m, mine) !== null);
    const recording = live.session.aircraft[0]?.recorder.recording;
    expect(recording).toBeDefined();
    if (recording === undefined) return;
    const playback = createPlayback(recording) as ControlSource<unknown>;
    const afterwards = saying(scenario, lesson(), playback, (_, step) => step >= recording.steps);
    expect(live.said.length).toBeGreaterThan(3);
    expect(live.said.at(-1)?.items.length).toBeGreaterThan(1);
    expect(afterwards.said).toEqual(live.said);
  });

  it('of checks, calls and lookout too', () => {
    const flight = flyEverything({}, { start: 'downwind', procedures: { radio: 'towered' } });
    const playback = createPlayback(flight.recording) as ControlSource<unknown>;
    const { said } = saying(
      flight.scenario,
      flight.lesson,
      playback,
      (_, step) => step >= flight.recording.steps,
    );
    expect(said.at(-1)).toEqual(assess(flight.m, flight.lesson));
    expect(said.at(-1)?.items.some(({ id }) => id === 'checks-downwind')).toBe(true);
  });
});
