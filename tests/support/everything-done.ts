import { callPlace, nextCall } from '../../src/lesson/procedures/call-places.ts';
import { openAnswer } from '../../src/lesson/procedures/watch-calls.ts';
import { currentList } from '../../src/lesson/procedures/watch-checks.ts';
import type { Controls } from '../../src/simulation/controls.ts';
import { type Beside, type FlightAsked, flyWithProcedures, type ProcedureFlight } from './procedures.ts';

/** What somebody beside the pilot leaves out or does otherwise; by default everything is done as it should be. */
export interface Doing {
  /** Which of the three wordings is chosen; null: nothing is said. */
  readonly call: (call: string, b: Beside) => number | null;
  readonly readBack: (b: Beside) => number | null;
  readonly ifItStops: number;
  /** Whether an item may be ticked now. */
  readonly tick: (id: string, list: string, b: Beside) => boolean;
  /** Degrees right of the nose, one after the other, every two seconds; empty: nobody looks. */
  readonly looks: (leg: string, b: Beside) => readonly number[];
  /** Seconds between two items: heads come out again in between. */
  readonly pauseS: number;
}

const PLAIN: Doing = {
  call: () => 0,
  readBack: () => 0,
  ifItStops: 0,
  tick: () => true,
  looks: (leg) => (leg === 'line-up' || leg === 'stopped' ? [] : [90, 0, -60]),
  pauseS: 2,
};

/** Somebody who ticks, calls and looks as taught, in a left-hand circuit; or not quite. */
export const besideWith = (changes: Partial<Doing> = {}): ((b: Beside) => void) => {
  const doing = { ...PLAIN, ...changes };
  let lastTickS = -10;
  let lastLookS = -10;
  return (b) => {
    const p = b.m.procedures;
    if (p === null) return;
    const { leg } = b.m.legs;
    if (openAnswer(p) !== null) {
      const choice = doing.readBack(b);
      if (choice !== null) b.tell('say', `back/${choice}`);
    }
    const call = nextCall(b.m, b.lesson);
    const said = p.calls.some((f) => f.call === call && f.circuit === b.m.legs.circuit && f.saidS !== null);
    const place = callPlace(call, b.m, b.lesson);
    if (!said && (place === 'here' || place === 'late')) {
      const choice = doing.call(call, b);
      if (choice !== null) b.tell('say', `${call}/${choice}`);
    }
    const list = currentList(p);
    const next = list?.items.find(({ id, doneS }) => doneS === null && doing.tick(id, list.list, b));
    if (list && next !== undefined && b.s.timeS - lastTickS >= doing.pauseS) {
      lastTickS = b.s.timeS;
      if (next.id === 'if-it-stops') b.tell('say', `if-it-stops/${doing.ifItStops}`);
      else b.tell('tick', next.id);
    }
    const looks = doing.looks(leg, b);
    if (looks.length > 0 && b.s.timeS - lastLookS >= 2) {
      lastLookS = b.s.timeS;
      for (const deg of looks) b.tell('look', String(deg));
    }
  };
};

/** So long it stands at the line-up, for what is worked there. */
const STANDS_S = 30;
/** Of the Sandpiper's wheel (its file: pitch.trimTakeOff). */
const TAKE_OFF_MARK = 0.1;
const WAYS = [
  { fromS: 20, elevator: 1, aileron: 0 },
  { fromS: 22, elevator: -1, aileron: 0 },
  { fromS: 24, elevator: 0, aileron: -1 },
  { fromS: 26, elevator: 0, aileron: 1 },
] as const;

const workBeforeTakeOff = (timeS: number, controls: Controls): void => {
  controls.throttle = 0;
  controls.brake = timeS > 2 && timeS < 4 ? 1 : 0;
  const way = WAYS.find(({ fromS }) => timeS >= fromS && timeS < fromS + 1);
  controls.elevator = way?.elevator ?? 0;
  controls.aileron = way?.aileron ?? 0;
};

/** Somebody who works brakes, stick and heat where the checks want it, beside the pilot's own hands. */
const handsWith = (triesBrakes: boolean): Pick<FlightAsked, 'beside' | 'hands'> => {
  let downwindS = Number.POSITIVE_INFINITY;
  let circuit = 0;
  let isStopped = false;
  return {
    beside: ({ s, m, lesson }) => {
      isStopped = m.stop !== null;
      if (m.legs.leg !== 'downwind' || m.legs.circuit === circuit || lesson.procedures === null) return;
      downwindS = s.timeS;
      circuit = m.legs.circuit;
    },
    hands: (s, controls) => {
      if (s.timeS < STANDS_S && s.onGround) workBeforeTakeOff(s.timeS, controls);
      const since = s.timeS - downwindS;
      if (triesBrakes && since > 4 && since < 5) controls.brake = 1;
      if (since > 8 && since < 20) controls.carbHeat = 1;
      if (!isStopped) return;
      controls.flapStage = 0;
      controls.trim = TAKE_OFF_MARK;
    },
  };
};

/** A whole circuit from the line-up to after the stop, with everything beside the flying done, or not quite. */
export const flyEverything = (
  changes: Partial<Doing> = {},
  asked: Partial<FlightAsked> & { readonly triesBrakes?: boolean } = {},
): ProcedureFlight => {
  const work = handsWith(asked.triesBrakes ?? true);
  const beside = besideWith(changes);
  return flyWithProcedures({
    start: 'line-up',
    seconds: 1200,
    afterStopS: 20,
    ...asked,
    beside: (b) => {
      work.beside?.(b);
      beside(b);
      asked.beside?.(b);
    },
    hands: (s, controls) => {
      work.hands?.(s, controls);
      asked.hands?.(s, controls);
    },
  });
};
