import { runwayInUse } from '../../aerodrome/runway.ts';
import type { Aerodrome } from '../../aerodrome/schema.ts';
import type { Aeroplane } from '../../aeroplane/schema.ts';
import { withCircuit } from '../../circuit/brief/custom.ts';
import { planCircuit } from '../../circuit/plan.ts';
import { runwayByWind } from '../../circuit/runway-choice.ts';
import type { CircuitPlan } from '../../circuit/types.ts';
import { standardDay } from '../../simulation/performance/standard-day.ts';
import {
  type Failure,
  MODEL_VERSION,
  type Scenario,
  type Start,
  type Weather,
} from '../../simulation/scenario.ts';
import { shapeOf } from '../../simulation/shape.ts';
import type { Instruction, Task } from '../../simulation/task.ts';
import { mFromNmi, radFromDeg } from '../../units/conversions.ts';
import { rounded } from '../rounded.ts';
import { type Draw, drawFor } from './draw.ts';
import type { Exercise } from './exercise.ts';
import { asExercised } from './exercise-aeroplane.ts';
import { exerciseStart } from './exercise-start.ts';
import { exerciseWeather } from './exercise-weather.ts';

/** What is chosen otherwise than the exercise has it. */
export interface Overrides {
  readonly runway?: string;
  /** A wind given here is the whole wind: the exercise's own gusts and drift are dropped. */
  readonly weather?: Partial<Weather>;
  readonly start?: Start;
  readonly rudderAssist?: boolean;
  readonly circuits?: number;
}

/**
 * The scenario of one attempt at an exercise: every band drawn from the seed, so that the same seed gives the same
 * scenario. Throws an Error sentence where the flight cannot be planned.
 */
export const exerciseScenario = (
  exercise: Exercise,
  aeroplane: Aeroplane,
  aerodrome: Aerodrome,
  seed: number,
  overrides: Overrides = {},
): Scenario => {
  const draw = drawFor(seed, exercise.id);
  const place = circuitOf(exercise, aerodrome);
  const runway = overrides.runway ?? runwayOf(place, overrides.weather);
  const weather = exerciseWeather(exercise, runwayInUse(place, runway), place, draw, overrides.weather);
  const scenario: Scenario = {
    modelVersion: MODEL_VERSION,
    exercise: exercise.id,
    aeroplane: asExercised(exercise, aeroplane),
    aerodrome: place,
    runway,
    weather,
    start: { at: 'line-up', trimmed: false, leg: 'line-up' },
    seed,
    assists: { rudder: overrides.rudderAssist ?? true },
    failures: failuresOf(exercise, draw),
    circuits: overrides.circuits ?? exercise.circuits,
    ...taskOf(exercise, draw),
  };
  if (overrides.start !== undefined) return { ...scenario, start: overrides.start };
  if (exercise.start.at === 'line-up') return scenario;
  return {
    ...scenario,
    start: exerciseStart(exercise.start, scenarioPlan(scenario), scenario.aeroplane, draw),
  };
};

const circuitOf = ({ circuit }: Exercise, aerodrome: Aerodrome): Aerodrome =>
  circuit === undefined
    ? aerodrome
    : withCircuit(aerodrome, {
        ...(circuit.spacingNmi !== undefined && { spacingM: mFromNmi(circuit.spacingNmi) }),
        ...(circuit.approachDeg !== undefined && { approachRad: radFromDeg(circuit.approachDeg) }),
        ...(circuit.descentFrom !== undefined && { descentFrom: circuit.descentFrom }),
        ...(circuit.finalFromAimNmi !== undefined && { finalFromAimM: mFromNmi(circuit.finalFromAimNmi) }),
      });

const runwayOf = (aerodrome: Aerodrome, weather: Partial<Weather> | undefined): string =>
  runwayByWind(aerodrome, { ...standardDay(aerodrome.elevationFt), ...weather });

const failuresOf = (exercise: Exercise, draw: Draw): Failure[] =>
  (exercise.failures ?? []).map((failure, i) => ({
    atS: rounded(draw.of(`failure-${i}-at`, failure.atS ?? 0), 1),
    what: failure.what,
    amount: rounded(draw.of(`failure-${i}-amount`, failure.amount ?? 0.5), 2),
    ...(failure.aboveFt !== undefined && {
      aboveFt: rounded(draw.of(`failure-${i}-above`, failure.aboveFt)),
    }),
  }));

const taskOf = (exercise: Exercise, draw: Draw): { readonly task?: Task } => {
  const { technique = 'normal', oneOf } = exercise;
  if (technique === 'normal' && oneOf === undefined) return {};
  const chosen = oneOf === undefined ? null : draw.pick('instruction', oneOf);
  return { task: { technique, instructions: chosen === null ? [] : [instructionOf(chosen, draw)] } };
};

type Asked = NonNullable<Exercise['oneOf']>[number];

/** The same instruction with its figure drawn, in whole knots, feet or metres. */
const instructionOf = ({ what, ...figures }: Asked, draw: Draw): Instruction => {
  const drawn = Object.entries(figures).map(([key, band]) => [key, rounded(draw.of(`${what}-${key}`, band))]);
  return { what, circuit: 1, ...Object.fromEntries(drawn) } as Instruction;
};

/** The circuit of a scenario. Throws an Error sentence when there is none. */
export const scenarioPlan = (scenario: Scenario): CircuitPlan => {
  const { aeroplane, aerodrome, weather } = scenario;
  return planCircuit(
    shapeOf(aeroplane),
    aeroplane,
    aerodrome,
    runwayInUse(aerodrome, scenario.runway),
    weather,
  );
};
