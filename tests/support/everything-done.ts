import { modelPilot } from '../../src/flight/model-pilot.ts';
import { callPlace, nextCall } from '../../src/lesson/procedures/call-places.ts';
import { openAnswer } from '../../src/lesson/procedures/watch-calls.ts';
import { currentList } from '../../src/lesson/procedures/watch-checks.ts';
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

/** A whole circuit from the line-up to after the stop, with everything beside the flying done, or not quite. */
export const flyEverything = (
  changes: Partial<Doing> = {},
  asked: Partial<FlightAsked> & { readonly triesBrakes?: boolean } = {},
): ProcedureFlight => {
  const beside = besideWith(changes);
  return flyWithProcedures({
    start: 'line-up',
    seconds: 1200,
    afterStopS: 20,
    ...asked,
    // The hands that work brakes, stick and heat are the demonstration's; the words are not
    pilot: modelPilot,
    beside: (b) => {
      beside(b);
      asked.beside?.(b);
    },
    hands: (s, controls) => {
      if (asked.triesBrakes === false && !s.onGround) controls.brake = 0;
      asked.hands?.(s, controls);
    },
  });
};
