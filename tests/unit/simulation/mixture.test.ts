// Mixture and fuel: richer in thin air, leaned for power from 3,000 ft of density altitude (common practice; PHAK ch. 7
// on leaning, from memory), cut off, and a pump that fails.
import { describe, expect, it } from 'vitest';
import { isaDensityKgpm3, RHO0_KGPM3 } from '../../../src/atmosphere/isa.ts';
import { leanedMixture, mixtureShare } from '../../../src/simulation/engine/mixture.ts';
import { mFromFt, rpmFromRevps } from '../../../src/units/conversions.ts';
import { aeroplaneNamed } from '../../support/aeroplanes.ts';
import { about, expectWithin } from '../../support/expect-within.ts';
import { beginFlight, fly, northRunway, scenarioOf } from '../../support/flight.ts';
import { bankHold, speedByPitch, together } from '../../support/holds.ts';

const at = (ft: number): number => isaDensityKgpm3(mFromFt(ft));

describe('the mixture', () => {
  it('takes nothing away fully rich at sea level', () => {
    expect(mixtureShare(1, RHO0_KGPM3)).toBe(1);
  });

  it('left rich costs more power the thinner the air, a few per cent at 5,000 to 8,000 ft', () => {
    const rich = [0, 3000, 5000, 8000].map((ft) => mixtureShare(1, at(ft)));
    for (let i = 1; i < rich.length; i += 1) expect(rich[i]).toBeLessThan(rich[i - 1]!);
    expectWithin(1 - rich[2]!, { low: 0.01, high: 0.06, source: 'common practice, from memory' });
    expectWithin(1 - rich[3]!, { low: 0.02, high: 0.1, source: 'common practice, from memory' });
  });

  it('leaned gives the most there is, and leaned further less and less until nothing', () => {
    for (const ft of [3500, 5000, 8000]) {
      const best = leanedMixture(at(ft));
      const most = mixtureShare(best, at(ft));
      for (const lever of [0, 0.2, 0.5, best - 0.1, best - 0.03, best + 0.03, 1])
        expect(mixtureShare(lever, at(ft))).toBeLessThan(most);
      expect(mixtureShare(best - 0.2, at(ft))).toBeLessThan(mixtureShare(best - 0.1, at(ft)));
      expect(mixtureShare(0.2, at(ft))).toBe(0);
    }
  });

  it('is left rich in good hands below 3,000 ft, and leaned above', () => {
    expect(leanedMixture(at(2900))).toBe(1);
    expect(leanedMixture(at(3100))).toBeLessThan(0.95);
    expect(leanedMixture(at(8000))).toBeLessThan(leanedMixture(at(5000)));
  });

  it('is leaned in a start in the air up high, rich at the line-up', () => {
    const high = northRunway({ elevationFt: 4500 });
    expect(beginFlight(scenarioOf({ aerodrome: high, start: {} })).controls.mixture).toBeLessThan(0.95);
    expect(beginFlight(scenarioOf({ aerodrome: high })).controls.mixture).toBe(1);
    expect(beginFlight(scenarioOf({ start: {} })).controls.mixture).toBe(1);
  });

  it('leaned on a high aerodrome makes the engine stronger against the brakes', () => {
    const standing = (mixture: number): number => {
      const flight = beginFlight(scenarioOf({ aerodrome: northRunway({ elevationFt: 6000 }) }));
      fly(flight, 15, (_, c) => {
        c.throttle = 1;
        c.brake = 1;
        c.mixture = mixture;
      });
      return rpmFromRevps(flight.seen.engineRevps);
    };
    expect(standing(leanedMixture(at(6000)))).toBeGreaterThan(standing(1) + 15);
  });

  it('pulled to cut-off on the ground stops the propeller for good', () => {
    const flight = beginFlight(scenarioOf());
    fly(flight, 15, (_, c) => {
      c.mixture = 0;
    });
    expect(flight.seen.engineRevps).toBe(0);
    fly(flight, 5, (_, c) => {
      c.mixture = 1;
      c.throttle = 0.5;
    });
    expect(flight.seen.engineRevps).toBe(0);
  });
});

describe('the engine-driven fuel pump failed', () => {
  const failed = (id: string, pump: 0 | 1, seconds: number) => {
    const flight = beginFlight(
      scenarioOf({
        aeroplane: aeroplaneNamed(id),
        start: { ias_kt: 80, height_ft: 3000 },
        failures: [{ atS: 1, what: 'fuel-pump', amount: 0.5 }],
      }),
    );
    const hold = together(bankHold(0), speedByPitch(flight.seen.iasMps), (_, c) => {
      c.pump = pump;
    });
    fly(flight, seconds, hold);
    return flight;
  };

  it.each(['dotterel', 'whimbrel'])('starves the engine of %s within seconds', (id) => {
    const { seen } = failed(id, 0, 6);
    expect(seen.fuelPressure).toBeLessThan(0.25);
    expect(seen.thrustN).toBeLessThan(0);
    expect(seen.engineDead).toBe(false);
  });

  it.each(['dotterel', 'whimbrel'])('is not noticed in %s with the electric pump on', (id) => {
    const { seen } = failed(id, 1, 6);
    expectWithin(seen.fuelPressure, about(1, 0.01, 'the electric pump feeds it'));
    expect(seen.thrustN).toBeGreaterThan(0);
  });

  it('comes back with the electric pump while the propeller still turns', () => {
    const flight = failed('whimbrel', 0, 6);
    fly(flight, 4, (_, c) => {
      c.pump = 1;
    });
    expect(flight.seen.thrustN).toBeGreaterThan(0);
  });

  it('means nothing where the fuel falls to the engine by itself', () => {
    const { seen } = failed('sandpiper', 0, 6);
    expect(seen.fuelPressure).toBe(1);
    expect(seen.thrustN).toBeGreaterThan(0);
  });
});
