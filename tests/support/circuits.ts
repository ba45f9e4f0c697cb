import { readFileSync } from 'node:fs';
import { runwayInUse } from '../../src/aerodrome/runway.ts';
import type { Aerodrome } from '../../src/aerodrome/schema.ts';
import type { Aeroplane } from '../../src/aeroplane/schema.ts';
import { planCircuit } from '../../src/circuit/plan.ts';
import type { CircuitPlan, PlanOptions } from '../../src/circuit/types.ts';
import type { Weather } from '../../src/simulation/scenario.ts';
import { shapeOf } from '../../src/simulation/shape.ts';
import { mFromFt } from '../../src/units/conversions.ts';
import { aerodromeNamed } from './aerodromes.ts';

const ASSETS = new URL('../../assets/aeroplanes/', import.meta.url);

export const aeroplaneNamed = (id: string): Aeroplane =>
  JSON.parse(readFileSync(new URL(`${id}.json`, ASSETS), 'utf8')) as Aeroplane;

/** A standard day at the aerodrome, with the wind asked for. */
export const standardWeather = (aerodrome: Aerodrome, wind: Partial<Weather> = {}): Weather => ({
  windFromDegM: 0,
  windKt: 0,
  gustKt: null,
  turbulence: 'none',
  temperatureC: 15 - 0.0065 * mFromFt(aerodrome.elevationFt),
  dewPointC: null,
  qnhHpa: 1013.25,
  ...wind,
});

export const plannedCircuit = (
  aerodromeId: string,
  designator: string,
  wind: Partial<Weather> = {},
  options: PlanOptions = {},
  aeroplane: Aeroplane = aeroplaneNamed('sandpiper'),
): CircuitPlan => {
  const aerodrome = aerodromeNamed(aerodromeId);
  const runway = runwayInUse(aerodrome, designator);
  return planCircuit(
    shapeOf(aeroplane),
    aeroplane,
    aerodrome,
    runway,
    standardWeather(aerodrome, wind),
    options,
  );
};
