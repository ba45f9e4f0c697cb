import type { Aeroplane } from '../../src/aeroplane/schema.ts';
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
import { createSession, tick } from '../../src/session/session.ts';
import { prepare } from '../../src/simulation/model.ts';
import { newSnapshot, type Snapshot } from '../../src/simulation/snapshot.ts';
import type { Task } from '../../src/simulation/task.ts';

/** A fault laid over what the lesson sees; the flight itself stays the model pilot's good one. */
export type Fault = (s: Snapshot, m: LessonMemory, lesson: Lesson) => void;

export interface SeenOptions {
  readonly exercise?: string;
  readonly seed?: number;
  readonly aeroplane?: Aeroplane;
  readonly aerodrome?: string;
  readonly overrides?: Overrides;
  /** What the pilot is told. */
  readonly task?: Task;
  /** What the lesson believes, where it is not what was flown. */
  readonly lesson?: Partial<Lesson>;
}

const LONGEST_STEPS = 60 * 60 * 30;

/** Flies an exercise to its end while the lesson, with every row of the rules, sees the fault. */
export const seeFlight = (fault: Fault = () => {}, options: SeenOptions = {}): Report => {
  const drawn = exerciseScenario(
    exerciseNamed(options.exercise ?? 'normal-circuit'),
    options.aeroplane ?? aeroplaneNamed('sandpiper'),
    aerodromeNamed(options.aerodrome ?? 'curlew-sands'),
    options.seed ?? 1,
    { rudderAssist: false, ...options.overrides },
  );
  const scenario = options.task === undefined ? drawn : { ...drawn, task: options.task };
  const model = prepare(scenario);
  const plan = scenarioPlan(scenario);
  const lesson: Lesson = { ...lessonOfScenario(scenario, model.runway, plan, null), ...options.lesson };
  const fold = createLessonFold(lesson);
  const seen = newSnapshot();
  const session = createSession([
    {
      scenario,
      source: createPilot(model, plan),
      folds: [
        {
          begin: (s: Readonly<Snapshot>) => fold.begin(s),
          step: (memory: unknown, s: Readonly<Snapshot>) => {
            Object.assign(seen, s);
            fault(seen, memory as LessonMemory, lesson);
            fold.step(memory as LessonMemory, seen);
          },
        },
      ],
    },
  ]);
  const memory = session.aircraft[0]?.foldMemories[0] as LessonMemory;
  while (session.step < LONGEST_STEPS && endingOf(memory, lesson) === null) tick(session);
  return assess(memory, lesson);
};
