/** Flights that go wrong, for whoever has to say something to them: seeded, and none of them the model pilot's. */

import type { CircuitPlan } from '../../src/circuit/types.ts';
import { beginFlight } from '../../src/flight/begin.ts';
import type { Flight } from '../../src/flight/flight.ts';
import { ownAircraft } from '../../src/flight/flight.ts';
import { flyStep } from '../../src/flight/run.ts';
import type { CoachLevel } from '../../src/lesson/coach/coach.ts';
import type { ControlSource } from '../../src/session/source.ts';
import { type Model, prepare } from '../../src/simulation/model.ts';
import type { Failure } from '../../src/simulation/scenario.ts';
import type { Snapshot } from '../../src/simulation/snapshot.ts';
import type { Mistakes } from './student/faults.ts';
import { type StudentDay, scenarioOfDay } from './student/flights.ts';
import { chance, deviate, type Luck, luckOf } from './student/luck.ts';
import { PERSONS } from './student/person.ts';
import { createStudent } from './student/student.ts';

export interface BadFlight {
  readonly name: string;
  readonly day: StudentDay;
  readonly level: CoachLevel;
  readonly hands: 'student' | 'monkey' | 'held';
  readonly mistakes: Mistakes;
  readonly failures: readonly Failure[];
  readonly seed: number;
}

const MISTAKES: readonly (readonly [string, Mistakes])[] = [
  ['base 15 s early', { baseLateS: -15, goesOnWhatever: true }],
  ['base 20 s late, saved by bank', { baseLateS: 20, steepestFinalDeg: 60, goesOnWhatever: true }],
  ['final late, saved by bank', { finalLateS: 6, steepestFinalDeg: 65, goesOnWhatever: true }],
  ['fifteen knots slow', { finalFastKt: -15, baseFastKt: -12, goesOnWhatever: true }],
  ['far too little power', { finalPowerRpm: -600, leavesFinalAlone: true, goesOnWhatever: true }],
  ['too little power on base', { basePowerRpm: -700, goesOnWhatever: true }],
  ['fast and high', { finalFastKt: 15, descentLateS: 25, goesOnWhatever: true }],
  ['rounds out at forty feet', { roundOutHighFt: 25 }],
  ['snatches the round-out', { pullShare: 3 }],
  ['hardly rounds out', { pullShare: 0.3 }],
  ['two hundred feet high', { downwindHighFt: 200, goesOnWhatever: true }],
  ['no flap', { flapFewer: 2, goesOnWhatever: true }],
];

const LEGS = ['downwind', 'base', 'final', 'final'] as const;

/** The first so many of one endless list. */
export const badFlights = (count: number): readonly BadFlight[] =>
  Array.from({ length: count }, (_, i) => {
    const luck = luckOf(1000 + i);
    const hands = (['student', 'student', 'monkey', 'held'] as const)[i % 4] as BadFlight['hands'];
    const [what, mistakes] = MISTAKES[Math.floor(chance(luck) * MISTAKES.length)] ?? ['', {}];
    const gusty = chance(luck) < 0.3;
    const day: StudentDay = {
      aeroplane: ['sandpiper', 'dotterel', 'whimbrel'][Math.floor(chance(luck) * 3)] ?? 'sandpiper',
      windDeg: Math.round(360 * chance(luck)),
      windKt: Math.round(14 * chance(luck)),
      ...(gusty && { gustKt: 22, turbulence: 'light' as const }),
      circuit: chance(luck) < 0.5 ? 'wide' : 'tight',
      leg: LEGS[Math.floor(chance(luck) * LEGS.length)] ?? 'final',
      seed: i + 1,
    };
    const fails = chance(luck) < 0.15;
    return {
      name: `${i}: ${hands}${hands === 'student' ? `, ${what}` : ''}, ${day.aeroplane} from ${day.leg}`,
      day,
      level: chance(luck) < 0.5 ? 'talked-through' : 'reminded',
      hands,
      mistakes,
      failures: fails ? [{ what: 'engine-stop', atS: 10 + 60 * chance(luck), amount: 0.5 }] : [],
      seed: i,
    };
  });

/** Pulls, pushes, rolls and slams what it likes, each for a second or three. */
const monkey = (seed: number): ControlSource<{ luck: Luck; untilS: number; to: number[] }> => ({
  name: 'monkey',
  begin: () => ({ luck: luckOf(seed), untilS: 0, to: [0, 0, 0.5, 0] }),
  next: (s, memory, controls) => {
    if (s.timeS >= memory.untilS) {
      memory.untilS = s.timeS + 1 + 2 * chance(memory.luck);
      memory.to = [
        controls.elevator * 0.5 + 0.12 * deviate(memory.luck),
        0.15 * deviate(memory.luck) - 0.8 * s.bankRad,
        chance(memory.luck),
        Math.floor(4 * chance(memory.luck)),
      ];
    }
    const [elevator = 0, aileron = 0, throttle = 0, flap = 0] = memory.to;
    controls.elevator += Math.max(-0.02, Math.min(0.02, elevator - controls.elevator));
    controls.aileron = aileron;
    controls.throttle += Math.max(-0.01, Math.min(0.01, throttle - controls.throttle));
    if (s.step % 600 === 0) controls.flapStage = flap;
  },
});

/** Holds one wrong thing for good. */
const held = (seed: number): ControlSource<null> => {
  const luck = luckOf(seed);
  const pull = 0.06 * deviate(luck);
  const roll = 0.03 * deviate(luck);
  const throttle = chance(luck);
  return {
    name: 'held',
    begin: () => null,
    next: (s, _, controls) => {
      if (s.timeS < 3) return;
      controls.elevator += Math.max(-0.003, Math.min(0.003, pull - controls.elevator));
      controls.aileron = roll - 0.3 * s.bankRad;
      controls.throttle += Math.max(-0.004, Math.min(0.004, throttle - controls.throttle));
    },
  };
};

const LONGEST_S = 240;

/** Flies it to its end, `look` after every step. */
export const flyBad = (bad: BadFlight, look: (flight: Flight, s: Readonly<Snapshot>) => void): Flight => {
  const planned = scenarioOfDay(bad.day);
  const scenario = { ...planned.scenario, failures: [...bad.failures] };
  const hands = (model: Model, plan: CircuitPlan): ControlSource<unknown> => {
    const person = PERSONS[bad.seed % PERSONS.length];
    if (bad.hands === 'student' && person !== undefined)
      return createStudent(model, plan, person, bad.mistakes, bad.seed) as ControlSource<unknown>;
    return (bad.hands === 'monkey' ? monkey(bad.seed) : held(bad.seed)) as ControlSource<unknown>;
  };
  const flight = beginFlight({
    scenario,
    model: prepare(scenario),
    source: hands,
    plan: planned.plan,
    otherPilot: null,
    judgedBy: null,
  });
  const own = ownAircraft(flight);
  for (let i = 0; i < LONGEST_S * 60 && own.snapshot.ended === null; i += 1) {
    flyStep(flight);
    look(flight, ownAircraft(flight).snapshot);
    if (ownAircraft(flight).snapshot.parked) break;
  }
  return flight;
};
