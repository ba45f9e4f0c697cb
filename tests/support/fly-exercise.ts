import { aerodromeNamed, aeroplaneNamed, exerciseNamed } from '../../src/catalogue.ts';
import type { CircuitPlan } from '../../src/circuit/types.ts';
import type { Result } from '../../src/formats/result.ts';
import { flyOrder } from '../../src/headless/flight.ts';
import type { Exercise } from '../../src/lesson/exercises/exercise.ts';
import {
  exerciseScenario,
  type Overrides,
  scenarioPlan,
} from '../../src/lesson/exercises/exercise-scenario.ts';
import { type Verdict, verdictOf } from '../../src/lesson/judge/verdict.ts';
import { createPilot } from '../../src/pilot/pilot.ts';
import { type Model, prepare } from '../../src/simulation/model.ts';
import type { Scenario } from '../../src/simulation/scenario.ts';
import type { ControlSource } from '../../src/simulation/source.ts';

export interface Attempt {
  readonly exercise: Exercise;
  readonly scenario: Scenario;
  readonly result: Result;
  readonly verdict: Verdict;
}

export interface AttemptChanges {
  readonly aeroplane?: string;
  readonly aerodrome?: string;
  readonly overrides?: Overrides;
  /** Another hand than the model pilot's, or the model pilot's made worse. */
  readonly source?: (model: Model, plan: CircuitPlan) => ControlSource<unknown>;
}

/** One attempt at an exercise without a screen, flown by the model pilot unless said otherwise, and what came of it. */
export const flyExercise = (id: string, seed: number, changes: AttemptChanges = {}): Attempt => {
  const exercise = exerciseNamed(id);
  const scenario = exerciseScenario(
    exercise,
    aeroplaneNamed(changes.aeroplane ?? 'sandpiper'),
    aerodromeNamed(changes.aerodrome ?? exercise.aerodrome ?? 'curlew-sands'),
    seed,
    changes.overrides,
  );
  const model = prepare(scenario);
  const plan = scenarioPlan(scenario);
  const source = (changes.source ?? createPilot)(model, plan);
  const { result } = flyOrder({
    scenario,
    plan,
    model,
    source,
    durationS: null,
    openLoop: false,
    trackHz: null,
    gpx: false,
  });
  return { exercise, scenario, result, verdict: verdictOf(exercise, result.outcome, result.why, result) };
};
