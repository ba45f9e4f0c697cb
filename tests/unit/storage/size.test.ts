// Under 100 KB for ten minutes (budgets.md, architecture.md), in the roughest air there is, whoever flies.
import { expect, it } from 'vitest';
import { planCircuit } from '../../../src/circuit/plan.ts';
import { bodyText } from '../../../src/formats/logbook-json.ts';
import { createHands } from '../../../src/input/hands.ts';
import type { IntentReader } from '../../../src/input/intent.ts';
import { createPilot } from '../../../src/pilot/pilot.ts';
import { tick } from '../../../src/session/session.ts';
import type { ControlSource } from '../../../src/session/source.ts';
import { prepare } from '../../../src/simulation/model.ts';
import type { Scenario } from '../../../src/simulation/scenario.ts';
import { STEP_HZ } from '../../../src/simulation/scenario.ts';
import { newSnapshot } from '../../../src/simulation/snapshot.ts';
import { packText } from '../../../src/storage/gzip.ts';
import { aerodromeNamed } from '../../support/aerodromes.ts';
import { beginAttempt } from '../../support/attempts.ts';
import { scenarioOf } from '../../support/flight.ts';

const TEN_MINUTES_S = 600;
const rough = (start: boolean): Scenario => ({
  ...scenarioOf({
    aerodrome: aerodromeNamed('curlew-sands'),
    runway: '22',
    weather: { windFromDegM: 250, windKt: 12, gustKt: 20, turbulence: 'moderate' },
    ...(start && { start: {} }),
  }),
  circuits: 2,
});

const sizeOf = async (scenario: Scenario, source: ControlSource<unknown>): Promise<number> => {
  const flight = beginAttempt(scenario, source);
  let steps = 0;
  for (; steps < TEN_MINUTES_S * STEP_HZ; steps += 1) tick(flight.session);
  expect(flight.session.aircraft[0]!.snapshot.ended).toBeNull();
  return (await packText(bodyText(flight.body()))).length;
};

it('holds for two circuits of the model pilot', async () => {
  const scenario = rough(false);
  const model = prepare(scenario);
  const plan = planCircuit(
    model.shape,
    scenario.aeroplane,
    scenario.aerodrome,
    model.runway,
    scenario.weather,
  );
  const size = await sizeOf(scenario, createPilot(model, plan) as ControlSource<unknown>);
  expect(size).toBeLessThan(100_000);
});

/** Keys struck some three times a second, towards level flight at 300 m. */
const busyKeys = (style: 'hold' | 'stick', scenario: Scenario): ControlSource<unknown> => {
  let seen = newSnapshot();
  const sign = (x: number, dead: number) => (Math.abs(x) < dead ? 0 : Math.sign(x));
  const keys: IntentReader = {
    read: (intent) => {
      const beat = seen.step % 20;
      const wantedRad = 0.05 + (300 - seen.heightM) * 0.002 - seen.verticalSpeedMps * 0.01;
      if (beat < 9) intent.pitch = sign(wantedRad - seen.pitchRad - 0.2 * seen.pitchRateRadps, 0.005);
      if (beat > 12) intent.roll = sign(-seen.bankRad - 0.3 * seen.rollRateRadps, 0.02);
      if (beat > 4) intent.rudder = sign(seen.slipRad, 0.05);
      intent.power = sign(41 - seen.iasMps, 2);
    },
  };
  const hands = createHands([keys], scenario.aeroplane, style) as ControlSource<unknown>;
  return {
    ...hands,
    next: (snapshot, memory, controls) => {
      seen = snapshot;
      hands.next(snapshot, memory, controls);
    },
  };
};

it.each(['hold', 'stick'] as const)('holds for hands that never rest (%s)', async (style) => {
  const scenario = rough(true);
  const size = await sizeOf(scenario, busyKeys(style, scenario));
  expect(size).toBeLessThan(100_000);
});
