import { describe, expect, test } from 'vitest';
import { runwayInUse } from '../../../src/aerodrome/runway.ts';
import { runwayByWind, windOverLimits } from '../../../src/circuit/runway-choice.ts';
import { startOfLeg } from '../../../src/circuit/start-of-leg.ts';
import { CIRCUIT_LEGS } from '../../../src/circuit/types.ts';
import { aerodromeNamed } from '../../support/aerodromes.ts';
import { aeroplaneNamed, plannedCircuit, standardWeather } from '../../support/circuits.ts';

describe('the start on a leg', () => {
  const plan = plannedCircuit('curlew-sands', '22', { windFromDegM: 250, windKt: 12 });

  test('is upwind at 300 ft, else at roll-out from the turn onto it', () => {
    expect(startOfLeg(plan, 'upwind').height_ft).toBe(300);
    for (const leg of CIRCUIT_LEGS.slice(1)) {
      const start = startOfLeg(plan, leg);
      expect(Math.abs(start.east_m - plan.legs[leg].from.eastM)).toBeLessThan(0.06);
      expect(Math.abs(start.north_m - plan.legs[leg].from.northM)).toBeLessThan(0.06);
    }
  });

  test('steers the magnetic heading that holds the track, into the wind from the right', () => {
    const final = startOfLeg(plan, 'final');
    expect(final.heading_deg).toBeGreaterThan(220);
    expect(final.heading_deg).toBeLessThan(235);
    expect(startOfLeg(plan, 'downwind').heading_deg).toBeLessThan(40);
  });

  test('has the speed, flap and one vertical speed of the plan', () => {
    const aeroplane = aeroplaneNamed('sandpiper');
    const base = startOfLeg(plan, 'base');
    expect(base.ias_kt).toBeCloseTo(aeroplane.speeds.baseKt, 6);
    expect(base.flap_deg).toBe(20);
    expect(base.vertical_speed_fpm).toBeLessThan(-300);
    expect(startOfLeg(plan, 'downwind').vertical_speed_fpm).toBe(0);
    expect(startOfLeg(plan, 'upwind').vertical_speed_fpm).toBeGreaterThan(600);
  });

  test('is above the ground on every leg', () => {
    for (const leg of CIRCUIT_LEGS) expect(startOfLeg(plan, leg).height_ft).toBeGreaterThan(250);
  });
});

describe('the runway by wind', () => {
  const curlew = aerodromeNamed('curlew-sands');
  const by = (windFromDegM: number, windKt: number) =>
    runwayByWind(curlew, standardWeather(curlew, { windFromDegM, windKt }));

  test.each([
    [0, 0, '04'],
    [40, 10, '04'],
    [240, 10, '22'],
    [131, 10, '22'],
    [129, 10, '04'],
    [310, 10, '04'],
  ])('with %d/%d is %s', (from, kt, designator) => {
    expect(by(from, kt)).toBe(designator);
  });

  test('is told against the limits of the aeroplane, gusts counted', () => {
    const aeroplane = aeroplaneNamed('sandpiper');
    const runway = runwayInUse(curlew, '22');
    const over = (wind: Parameters<typeof standardWeather>[1]) =>
      windOverLimits(aeroplane, runway, standardWeather(curlew, wind));
    expect(over({ windFromDegM: 310, windKt: 14 })).toEqual([]);
    expect(over({ windFromDegM: 310, windKt: 12, gustKt: 20 })).toEqual([
      'The crosswind on runway 22 is 20 kt in the gusts, above the 14 kt of Sandpiper, two-seat high wing.',
    ]);
    // 15 sin(75 deg) = 14.49: in whole knots it would read "14 kt, above the 14 kt"
    expect(over({ windFromDegM: 295, windKt: 15 })).toEqual([
      'The crosswind on runway 22 is 14.5 kt, above the 14 kt of Sandpiper, two-seat high wing.',
    ]);
    expect(over({ windFromDegM: 40, windKt: 9 })).toEqual([
      'The tailwind on runway 22 is 9 kt, above the 5 kt of Sandpiper, two-seat high wing.',
    ]);
  });
});
