import { prepare } from '../simulation/model.ts';
import { flyByModelPilot } from '../study/by-model-pilot.ts';
import { flyFan, POWER_AND_ATTITUDE } from '../study/fan.ts';
import { seeAgain } from '../study/flown.ts';
import { approachToStudy, findRoot } from '../study/root/root.ts';
import { colourTrail } from '../study/trail.ts';
import type { FromStudy, StudyProgress, StudyResults, StudyTask, TaskName, ToStudy } from './messages.ts';

type Steps = Generator<StudyProgress, StudyResults[TaskName]>;

/** A task as something that is done step by step. */
function* stepsOf(ask: StudyTask): Steps {
  if (ask.task === 'root') return yield* findRoot(ask.flight, ask.circuit);
  if (ask.task === 'model-pilot') return flyByModelPilot(ask.flight, ask.fromS);
  if (ask.task === 'fan') {
    const { scenario, state, controls, blades, seconds } = ask;
    return flyFan({ model: prepare(scenario), state, controls }, blades ?? POWER_AND_ATTITUDE, seconds);
  }
  const flown = seeAgain(ask.flight);
  const approach = approachToStudy(flown, ask.circuit);
  return approach === null ? [] : yield* colourTrail(flown, approach);
}

/** Milliseconds of work between two looks at the post. */
const SLICE_MS = 30;

/** What the bench needs of the world outside. */
export interface Surroundings {
  now(): number;
  /** Calls back once whatever has arrived was read. */
  soon(go: () => void): void;
  send(message: FromStudy): void;
}

/**
 * Works on one task after another, a slice at a time, so that a cancel is heard between two flights. What goes
 * wrong in a task is sent as its sentence; the next task goes on.
 */
export const createBench = ({ now, soon, send }: Surroundings): ((message: ToStudy) => void) => {
  const waiting: { readonly id: number; readonly steps: Steps }[] = [];
  let busy = false;
  const work = (): void => {
    const [job] = waiting;
    if (job === undefined) {
      busy = false;
      return;
    }
    slice(job.id, job.steps);
    soon(work);
  };
  const slice = (id: number, steps: Steps): void => {
    try {
      const until = now() + SLICE_MS;
      let last: StudyProgress | null = null;
      do {
        const { done, value } = steps.next();
        if (done === true) {
          waiting.shift();
          send({ id, kind: 'done', result: value });
          return;
        }
        last = value;
      } while (now() < until);
      send({ id, kind: 'progress', progress: last });
    } catch (error) {
      waiting.shift();
      send({ id, kind: 'failed', why: error instanceof Error ? error.message : String(error) });
    }
  };
  return (message) => {
    if ('cancel' in message) {
      const at = waiting.findIndex((job) => job.id === message.id);
      if (at < 0) return;
      waiting.splice(at, 1);
      send({ id: message.id, kind: 'cancelled' });
      return;
    }
    waiting.push({ id: message.id, steps: stepsOf(message.ask) });
    if (busy) return;
    busy = true;
    soon(work);
  };
};
