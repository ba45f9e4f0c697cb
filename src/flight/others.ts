import { startOfLeg } from '../circuit/start-of-leg.ts';
import type { CircuitPlan } from '../circuit/types.ts';
import { couldBeSeen } from '../lesson/procedures/could-be-seen.ts';
import { trafficValue } from '../lesson/procedures/watch-traffic.ts';
import { type AircraftEntry, tell } from '../session/session.ts';
import { prepare } from '../simulation/model.ts';
import { type Scenario, STEP_HZ } from '../simulation/scenario.ts';
import type { Snapshot } from '../simulation/snapshot.ts';
import type { Flight, StoodSince } from './flight.ts';
import type { OtherPilot } from './other-pilot.ts';

/** How often the flight is told where the others are. */
const TELL_STEPS = STEP_HZ;

/**
 * The others of the circuit: the same aeroplane in the same air, each flown by a model pilot with a seed of its own.
 * They look out for the student (`other-pilot.ts`).
 */
export const othersOf = (
  scenario: Scenario,
  plan: CircuitPlan,
  otherPilot: OtherPilot,
): readonly AircraftEntry[] => {
  const { procedures, task: _, ...plain } = scenario;
  return (procedures?.traffic ?? []).map(({ from }, i) => {
    const theirs: Scenario = {
      ...plain,
      start: { at: startOfLeg(plan, from), trimmed: true, leg: from },
      seed: (scenario.seed + 1 + i) % 4294967296,
      failures: [],
      circuits: 1,
    };
    return { scenario: theirs, source: otherPilot(prepare(theirs), plan), folds: [] };
  });
};

/** Whether one of the others, counted from 0, has left the runway, and with it the circuit. */
export const isGone = ({ stoodSince, scenario, session }: Flight, index: number): boolean => {
  const since = stoodSince[index] ?? null;
  const vacatesS = scenario.procedures?.traffic[index]?.vacatesS ?? 0;
  return since !== null && session.step - since > vacatesS * STEP_HZ;
};

/** After a step: notes who of the others stands. */
export const noteStanding = (
  stoodSince: StoodSince,
  step: number,
  others: readonly { readonly snapshot: Readonly<Snapshot> }[],
): void =>
  others.forEach(({ snapshot }, i) => {
    const since = stoodSince[i] ?? null;
    if (!snapshot.parked && snapshot.ended === null) stoodSince[i] = null;
    // Set back, the flight may stand before its stop
    else if (since === null || since > step) stoodSince[i] = step;
  });

/** After a step: notes who stands, and once a second tells the flight where the others are. */
export const watchOthers = (flight: Flight): void => {
  const { session } = flight;
  const { step, aircraft } = session;
  if (aircraft.length === 1) return;
  const others = aircraft.slice(1);
  noteStanding(flight.stoodSince, step, others);
  if (step % TELL_STEPS !== 0) return;
  others.forEach(({ snapshot }, i) => {
    if (!isGone(flight, i)) tell(session, 0, 'traffic', trafficValue(i, snapshot));
  });
};

/** Those of the others that could be seen from the own aeroplane now. */
export const othersInSight = (flight: Flight): readonly Snapshot[] => {
  const [own, ...others] = flight.session.aircraft;
  if (own === undefined) return [];
  const wing = flight.scenario.aeroplane.wing.position;
  return others
    .filter((other, i) => !isGone(flight, i) && couldBeSeen(own.snapshot, other.snapshot, wing))
    .map((other) => other.snapshot);
};
