// Brakes that get hot and wheels that lock: short applications with releases are the remedy (common practice; model.md).
import { describe, expect, it } from 'vitest';
import { brakeShare, discAfter, liningAfter, wheelsLock } from '../../../src/simulation/motion/brakes.ts';
import { shapeOf } from '../../../src/simulation/shape.ts';
import { AT } from '../../../src/simulation/state.ts';
import { mpsFromKt } from '../../../src/units/conversions.ts';
import { aeroplaneNamed, variantOf } from '../../support/aeroplanes.ts';
import { about, expectWithin, near } from '../../support/expect-within.ts';
import { beginFlight, type Flight, fly, type Hands, scenarioOf } from '../../support/flight.ts';

const sandpiper = aeroplaneNamed('sandpiper');
const shape = shapeOf(sandpiper);

/** Rolling along the runway at a speed, throttle closed, flap as given, nose wheel down. */
const rolling = (kt: number, flapStage = 0, aeroplane = sandpiper): Flight => {
  const flight = beginFlight(scenarioOf({ aeroplane }));
  const flat: Hands = (_, c) => {
    c.throttle = 0;
    c.flapStage = flapStage;
  };
  fly(flight, 8, flat);
  flight.state[AT.parked] = 0;
  flight.state[AT.velocityNorth] = mpsFromKt(kt);
  fly(flight, 0.5, flat);
  return flight;
};
const braking =
  (brake: (timeS: number) => number): Hands =>
  (seen, c) => {
    c.throttle = 0;
    c.brake = brake(seen.timeS);
  };

/** Full brakes without lift: all the work goes into them. */
const wingless = variantOf(sandpiper, { wing: { areaM2: 0.0001 } });

describe('the brakes', () => {
  it('take up the work of the stop as heat: half m V squared, less what rolling and cooling take', () => {
    // No cooling on this scale, all heat kept: 0.4 J/K per kg of lining, 2 J/K per kg of disc
    let [lining, disc] = [0, 0];
    const watts = 20000;
    const dt = 1 / 60;
    for (let i = 0; i < 600; i += 1) {
      const before = lining;
      lining = liningAfter(shape, lining, watts, dt);
      disc = discAfter(disc, before, dt);
    }
    const kept = (0.4 * lining + 2 * disc) * shape.massKg;
    // The disc loses a little of it to the air in ten seconds
    expectWithin(kept, { low: 0.96 * watts * 10, high: watts * 10, source: 'energy is kept' });
  });

  it('cool again: the lining within seconds, the disc within minutes', () => {
    let [lining, disc] = [300, 100];
    for (let i = 0; i < 600; i += 1) {
      const before = lining;
      lining = liningAfter(shape, lining, 0, 1 / 60);
      disc = discAfter(disc, before, 1 / 60);
    }
    expect(lining).toBeLessThan(20);
    expectWithin(disc, { low: 120, high: 165, source: 'energy is kept: the lining gives it 60 K' });
  });

  it('hold fully when cool, less when hot, half at the worst', () => {
    expect(brakeShare(0)).toBe(1);
    expect(brakeShare(250)).toBe(1);
    expectWithin(brakeShare(350), about(0.8, 1e-9, '1/500 a kelvin from 250'));
    expect(brakeShare(2000)).toBe(0.5);
  });

  it('fade when kept on hard from a high speed, and do not in short applications', () => {
    const hottest = (brake: (timeS: number) => number): number => {
      const flight = rolling(55, 0, wingless);
      let most = 0;
      fly(flight, 60, braking(brake), (seen) => {
        most = Math.max(most, seen.brakeHeatK);
        return seen.parked;
      });
      expect(flight.seen.parked).toBe(true);
      return most;
    };
    expect(hottest(() => 1)).toBeGreaterThan(300);
    expect(hottest((t) => (t % 3 < 1.5 ? 0.6 : 0))).toBeLessThan(250);
  });

  it('stop an aeroplane that stood on them before, with what heat has left', () => {
    const stopM = (heatK: number): number => {
      const flight = rolling(40, 0, wingless);
      flight.state[AT.brakeHeat] = heatK;
      const from = flight.seen.northM;
      fly(
        flight,
        60,
        braking(() => 0.4),
        (seen) => seen.parked,
      );
      return flight.seen.northM - from;
    };
    // At the worst half the friction is left: twice the way, less what rolling friction does in both
    expectWithin(stopM(1500) / stopM(0), { low: 1.6, high: 2, source: 'V squared over 2 a' });
  });
});

describe('the wheels', () => {
  it('lock under full brakes while the wing still carries half of the weight, and not with all of it on them', () => {
    expect(wheelsLock(shape, 1, 0.5 * shape.mainStandingN, 25)).toBe(true);
    expect(wheelsLock(shape, 1, shape.mainStandingN, 25)).toBe(false);
    expect(wheelsLock(shape, 0.4, 0.5 * shape.mainStandingN, 25)).toBe(false);
    expect(wheelsLock(shape, 1, 0, 25)).toBe(false);
  });

  it('locked for a second at speed, have a flat spot that stays', () => {
    const flight = rolling(58, 3);
    fly(
      flight,
      1.2,
      braking(() => 1),
    );
    expect(flight.seen.flatSpot).toBe(true);
    fly(
      flight,
      30,
      braking(() => 0),
    );
    expect(flight.seen.wheelsLocked).toBe(false);
    expect(flight.seen.flatSpot).toBe(true);
  });

  it('braked lightly from the same speed, have none', () => {
    const flight = rolling(58, 3);
    fly(
      flight,
      20,
      braking((t) => (t % 2.5 < 1.5 ? 0.25 : 0)),
    );
    expect(flight.seen.flatSpot).toBe(false);
  });

  it('locked, hold sideways much less than rolling', () => {
    const sideways = (brake: number): number => {
      const flight = rolling(58, 3);
      flight.state[AT.velocityEast] = 5;
      fly(
        flight,
        0.5,
        braking(() => brake),
      );
      return flight.state[AT.velocityEast]!;
    };
    expect(5 - sideways(1)).toBeLessThan(0.7 * (5 - sideways(0)));
  });

  it('stand on hot brakes as on cold ones, but for what has faded', () => {
    const flight = beginFlight(scenarioOf());
    flight.state[AT.brakeHeat] = 1500;
    fly(flight, 10, (_, c) => {
      c.throttle = 0.5;
      c.brake = 1;
    });
    expect(flight.seen.groundspeedMps).toBe(0);
    expectWithin(flight.state[AT.brakeHeat]!, near(1500 * Math.exp(-10 / 240), 1, 'cooling by 240 s'));
  });
});
