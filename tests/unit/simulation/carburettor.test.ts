import { describe, expect, it } from 'vitest';
import { iceAfter, icingSeverity, relativeHumidity } from '../../../src/simulation/engine/carburettor.ts';
import type { Weather } from '../../../src/simulation/scenario.ts';
import { rpmFromRevps } from '../../../src/units/conversions.ts';
import { aeroplaneNamed } from '../../support/aeroplanes.ts';
import { about, expectWithin } from '../../support/expect-within.ts';
import { beginFlight, fly, STILL, scenarioOf } from '../../support/flight.ts';
import { bankHold, speedByPitch, together } from '../../support/holds.ts';

const celsius = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;
const air = (temperatureC: number, humidity: number): Weather => {
  // Dew point that gives this humidity: the Magnus form turned round
  const x = Math.log(humidity) + (17.62 * temperatureC) / (243.12 + temperatureC);
  return { ...STILL, temperatureC, dewPointC: (243.12 * x) / (17.62 - x) };
};

describe('relative humidity', () => {
  // Saturation pressures, WMO-No. 8: 20 C 23.4 hPa, 10 C 12.3 hPa, 30 C 42.4 hPa (from memory, rounded)
  it.each([
    [20, 20, 1],
    [20, 10, 12.3 / 23.4],
    [30, 20, 23.4 / 42.4],
  ])('at %d degrees with a dew point of %d is %d', (t, dew, humidity) => {
    expectWithin(relativeHumidity(t, dew), about(humidity, 0.01, 'WMO-No. 8, from memory'));
  });
});

describe('carburettor ice', () => {
  // US DOI SA 11-01, VERIFIED: severe 50 to 70 F above 60 % humidity; possible to 100 F; rare below 25 %
  it.each([50, 60, 69])('is severe at %d F and 80 per cent', (f) => {
    expectWithin(icingSeverity(air(celsius(f), 0.8)), { low: 0.95, high: 1, source: 'US DOI SA 11-01' });
  });
  it('is possible, not severe, at 90 F and 60 per cent', () => {
    expectWithin(icingSeverity(air(celsius(90), 0.6)), { low: 0.05, high: 0.6, source: 'US DOI SA 11-01' });
  });
  it('does not form above 100 F, nor below a quarter of humidity, nor in dry air', () => {
    expect(icingSeverity(air(celsius(101), 0.9))).toBe(0);
    expect(icingSeverity(air(15, 0.24))).toBe(0);
    expect(icingSeverity({ ...STILL, dewPointC: null })).toBe(0);
  });
  it('forms at 26 degrees with a dew point of 19, and faster at low power', () => {
    // "moderate cruise, intense at reduced power": VERIFIED
    const severity = icingSeverity({ ...STILL, temperatureC: 26, dewPointC: 19 });
    expectWithin(severity, { low: 0.3, high: 0.9, source: 'carburettor-icing chart, read' });
    expect(iceAfter(0, severity, 0.1, 0, 1)).toBeGreaterThan(1.8 * iceAfter(0, severity, 0.75, 0, 1));
  });
  it('is never less than none nor more than full', () => {
    expect(iceAfter(0.999, 1, 0, 0, 100)).toBe(1);
    expect(iceAfter(0.001, 1, 0, 1, 100)).toBe(0);
  });

  const humid = { temperatureC: 15, dewPointC: 14 };
  it('shows first as a slow loss of rpm, and heat brings it back', () => {
    // VERIFIED: first sign with a fixed pitch propeller
    const flight = beginFlight(scenarioOf({ weather: humid, start: { ias_kt: 75, height_ft: 2500 } }));
    const before = rpmFromRevps(flight.seen.engineRevps);
    const hands = together(bankHold(0), speedByPitch(flight.seen.iasMps));
    fly(flight, 90, hands);
    const iced = rpmFromRevps(flight.seen.engineRevps);
    expect(iced).toBeLessThan(before - 20);
    expect(iced).toBeGreaterThan(before - 300);
    fly(
      flight,
      60,
      together(hands, (_, c) => {
        c.carbHeat = 1;
      }),
    );
    expect(flight.seen.carbIce).toBe(0);
    fly(
      flight,
      10,
      together(hands, (_, c) => {
        c.carbHeat = 0;
      }),
    );
    expect(rpmFromRevps(flight.seen.engineRevps)).toBeGreaterThan(iced + 20);
  });

  it('never troubles an injected engine', () => {
    const dotterel = aeroplaneNamed('dotterel');
    const flight = beginFlight(scenarioOf({ aeroplane: dotterel, weather: humid, start: { ias_kt: 75 } }));
    fly(flight, 30);
    expect(flight.seen.carbIce).toBe(0);
  });
});
