import { endingOf } from '../lesson/judge/outcome.ts';
import { isComplete, openList } from '../lesson/procedures/watch-checks.ts';
import { advance, decide, tell } from '../session/session.ts';
import type { PilotEvent } from '../simulation/pilot-event.ts';
import { STEP_HZ } from '../simulation/scenario.ts';
import { demonstrate, isStillDemonstrating } from './demonstrates.ts';
import { type Flight, lessonMemory, ownAircraft } from './flight.ts';
import { watchOthers } from './others.ts';
import { noteWhoFlies } from './who-flies.ts';

const REST_S = 1.5;
const AFTER_LANDING_S = 25;
/** How often is looked whether the flight is over. */
const LOOK_STEPS = 6;

/** The first half of a step: all hands are set. */
export const decideStep = (flight: Flight): void => {
  noteWhoFlies(flight);
  demonstrate(flight);
  decide(flight.session);
};

/** The second half: everybody flies it, and the others are watched. */
export const advanceStep = (flight: Flight): void => {
  advance(flight.session);
  watchOthers(flight);
};

/** One step of the whole flight. */
export const flyStep = (flight: Flight): void => {
  decideStep(flight);
  advanceStep(flight);
};

/** Whether this is a step at which to look for the end. */
export const isLookStep = ({ session }: Flight): boolean => session.step % LOOK_STEPS === 0;

/**
 * Notes when the flight will be over: a moment to see it come to rest, then time for the check after landing, as long
 * as it takes. `practised`: what its exercise is for has been flown.
 */
export const noteEnd = (flight: Flight, practised: boolean): void => {
  const memory = lessonMemory(flight);
  if (endingOf(memory, flight.lesson) === null && !practised) {
    flight.endsAtStep = Number.POSITIVE_INFINITY;
    return;
  }
  const { step } = flight.session;
  const check = memory.procedures ? openList(memory.procedures, 'after-landing') : null;
  const byHand = ownAircraft(flight).source.live === true;
  const atWork = byHand ? check !== null && !isComplete(check) : isStillDemonstrating(flight);
  const waitsS = atWork ? AFTER_LANDING_S : REST_S;
  if (flight.endsAtStep === Number.POSITIVE_INFINITY) flight.endsAtStep = step + waitsS * STEP_HZ;
  else if (waitsS === REST_S) flight.endsAtStep = Math.min(flight.endsAtStep, step + REST_S * STEP_HZ);
};

/** Nothing more to do on the runway: a flight that only waits for that may end. */
export const finish = (flight: Flight): void => {
  if (flight.endsAtStep !== Number.POSITIVE_INFINITY) flight.endsAtStep = flight.session.step;
};

export const isOver = ({ session, endsAtStep }: Flight): boolean => session.step >= endsAtStep;

/** Something done beside the controls; the next step takes it. */
export const tellFlight = (flight: Flight, kind: PilotEvent['kind'], value: string): void =>
  tell(flight.session, 0, kind, value);

/** Checks, calls and lookout belong to this flight. */
export const hasProcedures = (flight: Flight): boolean => lessonMemory(flight).procedures !== null;

/** Height that one hectopascal makes near sea level (ISA; common practice: 27 ft). */
const M_PER_HPA = 8.3;

/** How much the altimeter shows too much, when its subscale is not on the QNH. */
export const misreadM = (flight: Flight): number => {
  const { procedures } = lessonMemory(flight);
  const qnhHpa = flight.lesson.procedures?.qnhHpa;
  return procedures && qnhHpa !== undefined ? (procedures.subscaleHpa - qnhHpa) * M_PER_HPA : 0;
};
