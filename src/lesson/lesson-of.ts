import type { Runway } from '../aerodrome/runway.ts';
import { planCircuit } from '../circuit/plan.ts';
import type { CircuitPlan } from '../circuit/types.ts';
import type { Scenario } from '../simulation/scenario.ts';
import { shapeOf } from '../simulation/shape.ts';
import { PLAIN_TASK } from '../simulation/task.ts';
import type { Exercise } from './exercises/exercise.ts';
import { createLesson, type Lesson } from './lesson.ts';

/** Base turn of the wind that the day gets to. */
const laterOf = (scenario: Scenario, runway: Runway): Lesson['later'] => {
  const { aeroplane, aerodrome, weather } = scenario;
  const { driftTo, ...day } = weather;
  if (driftTo === undefined) return null;
  const { windFromDegM, windKt, overS } = driftTo;
  const gustKt = day.gustKt === null ? null : day.gustKt + windKt - day.windKt;
  try {
    const plan = planCircuit(shapeOf(aeroplane), aeroplane, aerodrome, runway, {
      ...day,
      windFromDegM,
      windKt,
      gustKt,
    });
    return { baseTurnAngleRad: plan.baseTurnAngleRad, overS };
  } catch {
    return null;
  }
};

const proceduresOf = ({ procedures, aerodrome, weather, failures, seed }: Scenario): Lesson['procedures'] =>
  procedures === undefined
    ? null
    : {
        ...procedures,
        place: aerodrome.title,
        qnhHpa: Math.round(weather.qnhHpa),
        windFromDegM: weather.windFromDegM,
        windKt: weather.windKt,
        brakesFail: failures.some(({ what }) => what === 'brakes'),
        seed,
      };

/** The lesson of a scenario: its plan, its task, and of the exercise which rows are looked at; null: all of them. */
export const lessonOfScenario = (
  scenario: Scenario,
  runway: Runway,
  plan: CircuitPlan,
  exercise: Exercise | null,
): Lesson =>
  createLesson(scenario.aeroplane, runway, plan, {
    assessed: exercise?.assessed ?? null,
    task: scenario.task ?? PLAIN_TASK,
    rudderAssist: scenario.assists.rudder,
    later: laterOf(scenario, runway),
    procedures: proceduresOf(scenario),
  });
