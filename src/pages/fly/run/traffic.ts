import { startOfLeg } from '../../../circuit/start-of-leg.ts';
import type { CircuitPlan } from '../../../circuit/types.ts';
import { trafficValue } from '../../../lesson/procedures/watch-traffic.ts';
import { type AircraftEntry, type Session, tell } from '../../../session/session.ts';
import { type Model, prepare } from '../../../simulation/model.ts';
import { type Scenario, STEP_HZ } from '../../../simulation/scenario.ts';
import type { Eyes } from './other-pilot.ts';
import { pilotsNow } from './pilots.ts';

/** How often the flight is told where the others are. */
const TELL_STEPS = STEP_HZ;

/** What the others of a flight see of the student. */
const EYES = new WeakMap<Scenario, Eyes>();

const eyesOf = (scenario: Scenario): Eyes => {
  const known = EYES.get(scenario) ?? { own: null };
  EYES.set(scenario, known);
  return known;
};

/**
 * The others of the circuit: the same aeroplane in the same air, each flown by a model pilot with a seed of its own.
 * They look out for the student (`other-pilot.ts`). Nobody where the pilots have not been fetched.
 */
export const trafficEntries = (scenario: Scenario, plan: CircuitPlan): AircraftEntry[] => {
  const { procedures, task: _, ...plain } = scenario;
  const pilots = pilotsNow();
  if (pilots === null) return [];
  return (procedures?.traffic ?? []).map(({ from }, i) => {
    const theirs: Scenario = {
      ...plain,
      start: { at: startOfLeg(plan, from), trimmed: true, leg: from },
      seed: (scenario.seed + 1 + i) % 4294967296,
      failures: [],
      circuits: 1,
    };
    const model: Model = prepare(theirs);
    return { scenario: theirs, source: pilots.otherPilot(model, plan, eyesOf(scenario)), folds: [] };
  });
};

/** Since when each of the others has stood on the runway, and who has left it. */
export interface TrafficWatch {
  /** Call it after every step. */
  step(session: Session): void;
  isGone(index: number): boolean;
}

export const watchTrafficOf = (scenario: Scenario): TrafficWatch => {
  const traffic = scenario.procedures?.traffic ?? [];
  const stoodSince: (number | null)[] = traffic.map(() => null);
  const isGone = (index: number, step: number): boolean => {
    const since = stoodSince[index];
    return since !== null && since !== undefined && step - since > (traffic[index]?.vacatesS ?? 0) * STEP_HZ;
  };
  const eyes = eyesOf(scenario);
  let now = 0;
  return {
    step: (session) => {
      now = session.step;
      eyes.own = session.aircraft[0]?.snapshot ?? null;
      traffic.forEach((_, i) => {
        const other = session.aircraft[i + 1];
        if (other === undefined) return;
        const { snapshot } = other;
        const still = snapshot.parked || snapshot.ended !== null;
        const since = stoodSince[i] ?? null;
        // Set back, the flight may stand before its stop
        if (!still || (since !== null && since > now)) stoodSince[i] = null;
        if (still) stoodSince[i] ??= now;
        if (now % TELL_STEPS === 0 && !isGone(i, now)) tell(session, 0, 'traffic', trafficValue(i, snapshot));
      });
    },
    isGone: (index) => isGone(index, now),
  };
};
