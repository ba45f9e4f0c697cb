// Events that wait for a height, and a wind that changes: what the scenario asks for is what is met in the air.
import { expect, test } from 'vitest';
import { ftFromM } from '../../../src/units/conversions.ts';
import { beginFlight, fly, scenarioOf } from '../../support/flight.ts';

test('an engine that is to stop above 1,100 ft runs below and stops there', () => {
  const flight = beginFlight(
    scenarioOf({
      start: { height_ft: 1000, ias_kt: 70, vertical_speed_fpm: 500 },
      failures: [{ what: 'engine-stop', atS: 0, amount: 0.5, aboveFt: 1100 }],
    }),
  );
  let diedFt = 0;
  fly(flight, 30, (seen) => {
    if (seen.engineDead && diedFt === 0) diedFt = ftFromM(seen.wheelClearanceM);
  });
  expect(diedFt).toBeGreaterThanOrEqual(1100);
  expect(diedFt).toBeLessThan(1102);
  expect(flight.seen.engineDead).toBe(true);
});

test('a drifting wind at 10 m of 10 kt from north becomes 20 kt from east', () => {
  const flight = beginFlight(
    scenarioOf({
      weather: { windFromDegM: 360, windKt: 10, driftTo: { windFromDegM: 90, windKt: 20, overS: 20 } },
    }),
  );
  const speedMps = () => Math.hypot(flight.seen.windEastMps, flight.seen.windNorthMps);
  fly(flight, 10);
  expect(flight.seen.windNorthMps).toBeLessThan(0);
  expect(flight.seen.windEastMps).toBeLessThan(0);
  // Standing at the line-up the height, and with it the share of the 10 m wind, stays: half way it was 15 kt
  const halfWay = speedMps();
  fly(flight, 30);
  expect(speedMps() / halfWay).toBeCloseTo(20 / 15, 2);
  expect(Math.abs(flight.seen.windNorthMps)).toBeLessThan(0.01);
});
