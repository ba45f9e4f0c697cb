import { aerodromeNamed, aeroplaneNamed } from '../../src/catalogue.ts';
import { planCircuit } from '../../src/circuit/plan.ts';
import { startOfLeg } from '../../src/circuit/start-of-leg.ts';
import type { CircuitPlan } from '../../src/circuit/types.ts';
import { beginFlight } from '../../src/flight/begin.ts';
import type { Flight } from '../../src/flight/flight.ts';
import { modelPilot, otherPilot } from '../../src/flight/model-pilot.ts';
import { prepare } from '../../src/simulation/model.ts';
import { standardDay } from '../../src/simulation/performance/standard-day.ts';
import type { Procedures } from '../../src/simulation/procedures.ts';
import { MODEL_VERSION, type Scenario } from '../../src/simulation/scenario.ts';

/** What surrounds the flying, without a tower and alone unless said otherwise. */
export const procedures = (changes: Partial<Procedures> = {}): Procedures => ({
  radio: 'untowered',
  words: 'icao',
  subscaleHpa: 1013,
  traffic: [],
  ...changes,
});

/** A calm day of the demonstration's pair, begun on a leg. */
export const scenarioFrom = (
  leg: 'downwind' | 'base' | 'final',
  beside: Procedures | null = null,
): { readonly scenario: Scenario; readonly plan: CircuitPlan } => {
  const aeroplane = aeroplaneNamed('sandpiper');
  const aerodrome = aerodromeNamed('curlew-sands');
  const lineUp: Scenario = {
    modelVersion: MODEL_VERSION,
    exercise: 'free',
    aeroplane,
    aerodrome,
    runway: '22',
    weather: { ...standardDay(aerodrome.elevationFt), windFromDegM: 220, windKt: 5 },
    start: { at: 'line-up', trimmed: true, leg: 'line-up' },
    seed: 7,
    assists: { rudder: true },
    failures: [],
    circuits: 1,
    ...(beside !== null && { procedures: beside }),
  };
  const { shape, runway } = prepare(lineUp);
  const plan = planCircuit(shape, aeroplane, aerodrome, runway, lineUp.weather);
  return { scenario: { ...lineUp, start: { at: startOfLeg(plan, leg), trimmed: true, leg } }, plan };
};

/** The same flown by the model pilot. */
export const flightFrom = (leg: 'downwind' | 'base' | 'final', beside: Procedures | null = null): Flight => {
  const { scenario } = scenarioFrom(leg, beside);
  return beginFlight({
    scenario,
    model: prepare(scenario),
    source: modelPilot,
    otherPilot,
    judgedBy: null,
  });
};
