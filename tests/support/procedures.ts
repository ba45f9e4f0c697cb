import { aerodromeNamed, aeroplaneNamed } from '../../src/catalogue.ts';
import { planCircuit } from '../../src/circuit/plan.ts';
import { startOfLeg } from '../../src/circuit/start-of-leg.ts';
import type { modelPilot } from '../../src/flight/model-pilot.ts';
import { assess } from '../../src/lesson/judge/assess.ts';
import type { ItemReport } from '../../src/lesson/judge/report.ts';
import type { Lesson } from '../../src/lesson/lesson.ts';
import { lessonOfScenario } from '../../src/lesson/lesson-of.ts';
import type { LessonMemory } from '../../src/lesson/memory.ts';
import { createLessonFold } from '../../src/lesson/watch/lesson-fold.ts';
import { createPilot } from '../../src/pilot/pilot.ts';
import type { Recording } from '../../src/session/recording.ts';
import { createSession, type Session, tell, tick } from '../../src/session/session.ts';
import type { ControlSource, Fold } from '../../src/session/source.ts';
import type { Controls } from '../../src/simulation/controls.ts';
import { prepare } from '../../src/simulation/model.ts';
import { standardDay } from '../../src/simulation/performance/standard-day.ts';
import type { PilotEvent } from '../../src/simulation/pilot-event.ts';
import type { Procedures } from '../../src/simulation/procedures.ts';
import { type LegStart, MODEL_VERSION, type Scenario } from '../../src/simulation/scenario.ts';
import type { Snapshot } from '../../src/simulation/snapshot.ts';

/** What the pilot beside the flying pilot sees and may do. */
export interface Beside {
  readonly s: Readonly<Snapshot>;
  readonly m: LessonMemory;
  readonly lesson: Lesson;
  readonly session: Session;
  tell(kind: PilotEvent['kind'], value: string): void;
}

export interface ProcedureFlight {
  readonly m: LessonMemory;
  readonly lesson: Lesson;
  readonly scenario: Scenario;
  readonly recording: Recording;
  /** By id; undefined where the row has nothing to say. */
  item(id: string): ItemReport | undefined;
}

export interface FlightAsked {
  readonly start: LegStart;
  readonly procedures?: Partial<Procedures>;
  readonly failures?: Scenario['failures'];
  readonly aeroplane?: string;
  readonly seconds?: number;
  /** How long somebody stays aboard after the stop; else nobody does. */
  readonly afterStopS?: number;
  /** Four times a second. */
  readonly beside?: (b: Beside) => void;
  /** The hand on the levers beside the model pilot's; every step. */
  readonly hands?: (s: Readonly<Snapshot>, controls: Controls) => void;
  readonly task?: Scenario['task'];
  /** Who flies; the model pilot, who works no check, unless said otherwise. */
  readonly pilot?: typeof modelPilot;
}

/** A calm flight by the model pilot at the demonstration's aerodrome, with somebody who checks, calls and looks. */
export const flyWithProcedures = (asked: FlightAsked): ProcedureFlight => {
  const aeroplane = aeroplaneNamed(asked.aeroplane ?? 'sandpiper');
  const aerodrome = aerodromeNamed('curlew-sands');
  const weather = { ...standardDay(aerodrome.elevationFt), windFromDegM: 220, windKt: 5 };
  const lineUp: Scenario = {
    modelVersion: MODEL_VERSION,
    exercise: 'free',
    aeroplane,
    aerodrome,
    runway: '22',
    weather,
    start: { at: 'line-up', trimmed: true, leg: 'line-up' },
    seed: 7,
    assists: { rudder: true },
    failures: [...(asked.failures ?? [])],
    circuits: 1,
    procedures: { radio: 'untowered', words: 'icao', subscaleHpa: 1013, traffic: [], ...asked.procedures },
    ...(asked.task && { task: asked.task }),
  };
  const base = prepare(lineUp);
  const plan = planCircuit(base.shape, aeroplane, aerodrome, base.runway, weather);
  const scenario: Scenario =
    asked.start === 'line-up'
      ? lineUp
      : { ...lineUp, start: { at: startOfLeg(plan, asked.start), trimmed: true, leg: asked.start } };
  const model = prepare(scenario);
  const lesson = lessonOfScenario(scenario, model.runway, plan, null);
  const pilot = asked.pilot?.(model, plan) ?? (createPilot(model, plan) as ControlSource<unknown>);
  const source: ControlSource<unknown> = {
    ...pilot,
    next: (s, memory, controls) => {
      pilot.next(s, memory, controls);
      asked.hands?.(s, controls);
    },
  };
  const session = createSession([{ scenario, source, folds: [createLessonFold(lesson) as Fold<unknown>] }]);
  const own = session.aircraft[0]!;
  const m = own.foldMemories[0] as LessonMemory;
  const steps = (asked.seconds ?? 400) * 60;
  let stoppedFor = 0;
  for (let i = 0; i < steps && m.ended === null; i += 1) {
    if (m.stop !== null) stoppedFor += 1;
    if (stoppedFor > (asked.afterStopS ?? 0) * 60) break;
    if (i % 15 === 0)
      asked.beside?.({
        s: own.snapshot,
        m,
        lesson,
        session,
        tell: (kind, value) => tell(session, 0, kind, value),
      });
    tick(session);
  }
  const { items } = assess(m, lesson);
  return {
    m,
    lesson,
    scenario,
    recording: own.recorder.recording,
    item: (id) => items.find((each) => each.id === id),
  };
};
