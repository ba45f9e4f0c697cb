import { expect, test } from 'vitest';
import { endNames } from '../../../src/aerodrome/runway.ts';
import { startOfLeg } from '../../../src/circuit/start-of-leg.ts';
import { CIRCUIT_LEGS } from '../../../src/circuit/types.ts';
import { startControls } from '../../../src/simulation/begin.ts';
import { prepare } from '../../../src/simulation/model.ts';
import { MODEL_VERSION, type Weather } from '../../../src/simulation/scenario.ts';
import { aerodromeFiles, aerodromeNamed } from '../../support/aerodromes.ts';
import { aeroplaneFiles, aeroplaneNamed } from '../../support/aeroplanes.ts';
import { plannedCircuit, standardWeather } from '../../support/circuits.ts';

const everyAeroplane = aeroplaneFiles().map((name) => aeroplaneNamed(name.replace('.json', '')));

const everyEnd = aerodromeFiles().flatMap((name) => {
  const id = name.replace('.json', '');
  return endNames(aerodromeNamed(id)).map((designator) => [id, designator] as const);
});

const WINDS: Partial<Weather>[] = [
  {},
  { windFromDegM: 90, windKt: 14 },
  { windFromDegM: 220, windKt: 20, gustKt: 30 },
];

test.each(
  everyAeroplane.flatMap((aeroplane) => everyEnd.map((end) => [aeroplane.id, ...end, aeroplane] as const)),
)(
  'every leg of the circuit of %s at %s runway %s can be begun, trimmed, in the air',
  (_name, id, designator, aeroplane) => {
    const aerodrome = aerodromeNamed(id);
    for (const wind of WINDS) {
      const plan = plannedCircuit(id, designator, wind, {}, aeroplane);
      for (const leg of CIRCUIT_LEGS) {
        const model = prepare({
          modelVersion: MODEL_VERSION,
          exercise: 'normal-circuit',
          aeroplane,
          aerodrome,
          runway: designator,
          weather: standardWeather(aerodrome, wind),
          start: { at: startOfLeg(plan, leg), trimmed: true, leg },
          seed: 1,
          assists: { rudder: true },
          failures: [],
          circuits: 1,
        });
        // The start's own steady state is that of the plan, at the height of the start.
        expect(model.start?.steady.tasMps).toBeGreaterThan(0.97 * plan.legs[leg].tasMps);
        expect(model.start?.steady.tasMps).toBeLessThan(1.03 * plan.legs[leg].tasMps);
        expect(startControls(model).gear).toBe(plan.legs[leg].gear);
        expect(startControls(model).propeller).toBeCloseTo(plan.legs[leg].propeller, 4);
      }
    }
  },
);
