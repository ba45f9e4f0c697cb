import { expect, it } from 'vitest';
import { aerodromeNamed, aeroplaneNamed, exerciseNamed } from '../../../src/catalogue.ts';
import { exerciseScenario, scenarioPlan } from '../../../src/lesson/exercises/exercise-scenario.ts';
import { lessonOfScenario } from '../../../src/lesson/lesson-of.ts';
import type { LessonMemory } from '../../../src/lesson/memory.ts';
import { createLessonFold } from '../../../src/lesson/watch/lesson-fold.ts';
import { createPilot } from '../../../src/pilot/pilot.ts';
import { createSession, tick } from '../../../src/session/session.ts';
import { prepare } from '../../../src/simulation/model.ts';
import { STEP_HZ } from '../../../src/simulation/scenario.ts';

it('shares what is over with every keyframe instead of copying it', () => {
  const exercise = exerciseNamed('touch-and-go-session');
  const scenario = exerciseScenario(exercise, aeroplaneNamed('sandpiper'), aerodromeNamed('curlew-sands'), 1);
  const model = prepare(scenario);
  const plan = scenarioPlan(scenario);
  const folds = [createLessonFold(lessonOfScenario(scenario, model.runway, plan, exercise)) as never];
  const session = createSession([{ scenario, source: createPilot(model, plan), folds }]);
  const [aircraft] = session.aircraft;
  const memory = aircraft?.foldMemories[0] as LessonMemory;
  // Two circuits and some way into the third
  while (memory.touchdowns.length < 2 && session.step < 1800 * STEP_HZ) tick(session);
  for (let i = 0; i < 20 * STEP_HZ; i += 1) tick(session);
  const last = aircraft?.recorder.recording.keyframes.at(-1)?.foldMemories[0] as LessonMemory;
  const over = (m: LessonMemory) => [...m.stretches, ...m.gates, ...m.turns.slice(0, -1), m.touchdowns[0]];
  expect(last.turns.length).toBeGreaterThan(4);
  expect(last.gates.length).toBeGreaterThan(2);
  const now = new Set(over(memory));
  expect(over(last).filter((fact) => !now.has(fact))).toEqual([]);
});
