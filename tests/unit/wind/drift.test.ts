// A wind that changes during a flight: straight-line interpolation, worked by hand.
import { expect, test } from 'vitest';
import { radFromDeg } from '../../../src/units/conversions.ts';
import { type ChangingWind, driftedWind } from '../../../src/wind/drift.ts';
import { CALM, type Wind } from '../../../src/wind/wind.ts';

const wind: Wind = { ...CALM, fromRadT: radFromDeg(350), speedMps: 4, gustMps: 6 };
const drift = { fromRadT: radFromDeg(20), speedMps: 8, overS: 100 };
const at = (timeS: number): Wind => driftedWind(wind, drift, timeS, { ...CALM } as ChangingWind);

test('the wind begins as it was and has changed by half at half time, the short way through north', () => {
  expect(at(0)).toEqual(wind);
  expect(at(50).speedMps).toBeCloseTo(6, 12);
  expect(at(50).fromRadT).toBeCloseTo(radFromDeg(5), 12);
});

test('gusts stay as far above the mean as they were', () => {
  expect(at(50).gustMps).toBeCloseTo(8, 12);
  expect(driftedWind({ ...wind, gustMps: null }, drift, 50, { ...CALM } as ChangingWind).gustMps).toBeNull();
});

test('once there it stays', () => {
  expect(at(100)).toEqual(at(1e6));
  expect(at(1e6).fromRadT).toBeCloseTo(drift.fromRadT, 12);
});
