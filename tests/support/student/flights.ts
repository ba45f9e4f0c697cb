import type { Aerodrome } from '../../../src/aerodrome/schema.ts';
import { withCircuit } from '../../../src/circuit/brief/custom.ts';
import { planCircuit } from '../../../src/circuit/plan.ts';
import { startOfLeg } from '../../../src/circuit/start-of-leg.ts';
import type { CircuitLeg, CircuitPlan, PlanOptions } from '../../../src/circuit/types.ts';
import { type Result, resultOf } from '../../../src/formats/result.ts';
import { endingOf } from '../../../src/lesson/judge/outcome.ts';
import type { Lesson } from '../../../src/lesson/lesson.ts';
import { lessonOfScenario } from '../../../src/lesson/lesson-of.ts';
import type { LessonMemory } from '../../../src/lesson/memory.ts';
import { createLessonFold } from '../../../src/lesson/watch/lesson-fold.ts';
import type { Recording } from '../../../src/session/recording.ts';
import { createSession, tick } from '../../../src/session/session.ts';
import type { ControlSource } from '../../../src/session/source.ts';
import { type Model, prepare } from '../../../src/simulation/model.ts';
import { MODEL_VERSION, type Scenario, STEP_HZ } from '../../../src/simulation/scenario.ts';
import { radFromDeg } from '../../../src/units/conversions.ts';
import { aerodromeNamed } from '../aerodromes.ts';
import { aeroplaneNamed } from '../aeroplanes.ts';
import { standardWeather } from '../circuits.ts';
import type { Mistakes } from './faults.ts';
import type { Person } from './person.ts';
import { createStudent } from './student.ts';

/** Wide and on the lights; or tight, steep and level to the base turn. */
export const CIRCUITS = {
  wide: {},
  tight: { spacingM: 1480, approachRad: radFromDeg(4.5), descentFrom: 'base-turn' },
} as const satisfies Readonly<Record<string, PlanOptions>>;

export interface StudentDay {
  readonly aeroplane?: string;
  readonly aerodrome?: string;
  /** From where the wind blows, clockwise from the landing direction. */
  readonly windDeg?: number;
  readonly windKt?: number;
  readonly gustKt?: number;
  readonly turbulence?: 'none' | 'light' | 'moderate';
  readonly circuit?: keyof typeof CIRCUITS;
  readonly leg?: CircuitLeg;
  /** Of the air. */
  readonly seed?: number;
  /** Where the wheels are to touch, past the aim point; as the aerodrome has it where none is given. */
  readonly pointPastAimM?: number;
  readonly failures?: Scenario['failures'];
  readonly procedures?: NonNullable<Scenario['procedures']>;
}

export interface StudentFlight {
  readonly scenario: Scenario;
  readonly model: Model;
  readonly plan: CircuitPlan;
  readonly lesson: Lesson;
  readonly memory: LessonMemory;
  readonly recording: Recording;
  readonly result: Result;
}

const withPoint = (aerodrome: Aerodrome, pastAimM: number | undefined): Aerodrome =>
  pastAimM === undefined
    ? aerodrome
    : {
        ...aerodrome,
        runway: {
          ...aerodrome.runway,
          ends: aerodrome.runway.ends.map((end) => ({
            ...end,
            specifiedPastAimM: pastAimM,
          })) as unknown as Aerodrome['runway']['ends'],
        },
      };

export const scenarioOfDay = (day: StudentDay): { scenario: Scenario; model: Model; plan: CircuitPlan } => {
  const aerodrome = withPoint(
    withCircuit(aerodromeNamed(day.aerodrome ?? 'curlew-sands'), CIRCUITS[day.circuit ?? 'wide']),
    day.pointPastAimM,
  );
  const end = aerodrome.runway.ends[0];
  const aeroplane = aeroplaneNamed(day.aeroplane ?? 'sandpiper');
  const weather = standardWeather(aerodrome, {
    windFromDegM: (end.headingDegM + (day.windDeg ?? 0) + 720) % 360,
    windKt: day.windKt ?? 0,
    gustKt: day.gustKt ?? null,
    turbulence: day.turbulence ?? 'none',
  });
  const lineUp: Scenario = {
    modelVersion: MODEL_VERSION,
    exercise: 'normal-circuit',
    aeroplane,
    aerodrome,
    runway: end.designator,
    weather,
    start: { at: 'line-up', trimmed: false, leg: 'line-up' },
    seed: day.seed ?? 1,
    assists: { rudder: true },
    failures: [...(day.failures ?? [])],
    circuits: 1,
    ...(day.procedures !== undefined && { procedures: day.procedures }),
  };
  const model = prepare(lineUp);
  const plan = planCircuit(model.shape, aeroplane, aerodrome, model.runway, weather);
  if (day.leg === undefined) return { scenario: lineUp, model, plan };
  const start = { at: startOfLeg(plan, day.leg), trimmed: true, leg: day.leg } as const;
  const scenario = { ...lineUp, start };
  return { scenario, model: prepare(scenario), plan };
};

const LONGEST_S = 20 * 60;

/** Flies a day from its start to a stop with these hands, and judges it as the page does. */
export const flyWith = (
  day: StudentDay,
  hands: (model: Model, plan: CircuitPlan) => ControlSource<unknown>,
): StudentFlight => {
  const { scenario, model, plan } = scenarioOfDay(day);
  const lesson = lessonOfScenario(scenario, model.runway, plan, null);
  const fold = createLessonFold(lesson);
  const session = createSession([{ scenario, source: hands(model, plan), folds: [fold] }]);
  const aircraft = session.aircraft[0];
  if (aircraft === undefined) throw new Error('session: one aircraft was expected, found none');
  const memory = aircraft.foldMemories[0] as LessonMemory;
  while (session.step < LONGEST_S * STEP_HZ) {
    tick(session);
    if (aircraft.snapshot.ended !== null) break;
    if (session.step % 6 === 0 && endingOf(memory, lesson) !== null) break;
  }
  const result = resultOf(scenario, lesson, memory, session.step / STEP_HZ, {
    outcome: 'time-up',
    why: 'Twenty minutes were up.',
  });
  return { scenario, model, plan, lesson, memory, recording: aircraft.recorder.recording, result };
};

export const flyStudent = (
  day: StudentDay,
  person: Person,
  mistakes: Mistakes = {},
  personSeed = 1,
): StudentFlight =>
  flyWith(
    day,
    (model, plan) => createStudent(model, plan, person, mistakes, personSeed) as ControlSource<unknown>,
  );
