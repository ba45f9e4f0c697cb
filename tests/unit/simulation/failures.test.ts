import { describe, expect, it } from 'vitest';
import { propellerTorqueNm } from '../../../src/simulation/engine/propeller.ts';
import type { Failure } from '../../../src/simulation/scenario.ts';
import { shapeOf } from '../../../src/simulation/shape.ts';
import type { Snapshot } from '../../../src/simulation/snapshot.ts';
import { AT } from '../../../src/simulation/state.ts';
import { rpmFromRevps } from '../../../src/units/conversions.ts';
import { aeroplaneNamed } from '../../support/aeroplanes.ts';
import { about, expectWithin } from '../../support/expect-within.ts';
import { beginFlight, fly, scenarioOf } from '../../support/flight.ts';
import { bankHold, speedByPitch, together } from '../../support/holds.ts';

const flown = (failure: Failure, seconds: number, hands = {}) => {
  const flight = beginFlight(scenarioOf({ start: { ias_kt: 80, height_ft: 3000 }, failures: [failure] }));
  const steady = together(bankHold(0), speedByPitch(flight.seen.iasMps));
  fly(flight, seconds, (seen, controls) => {
    steady(seen, controls);
    Object.assign(controls, hands);
  });
  return flight;
};

/** What the propeller takes, which at a steady rpm is what the engine gives, at one density. */
const torqueNm = (seen: Snapshot): number =>
  propellerTorqueNm(
    shapeOf(aeroplaneNamed('sandpiper')),
    1.1,
    seen.engineRevps,
    seen.tasMps * Math.cos(seen.alphaRad),
  );

describe('a failure dated in the scenario', () => {
  it('does nothing before its time', () => {
    const { seen } = flown({ atS: 5, what: 'engine-stop', amount: 0.5 }, 4.9);
    expect(seen.engineDead).toBe(false);
    expectWithin(rpmFromRevps(seen.engineRevps), about(2165, 40, 'level at 80 kt, 3,000 ft'));
  });

  it('stops the engine, which then windmills and drags', () => {
    const { seen } = flown({ atS: 1, what: 'engine-stop', amount: 0.5 }, 20);
    expect(seen.engineDead).toBe(true);
    expect(seen.thrustN).toBeLessThan(0);
    expectWithin(rpmFromRevps(seen.engineRevps), { low: 300, high: 1200, source: 'common practice' });
  });

  it('stopped, the engine does not come back by opening the throttle', () => {
    const { seen } = flown({ atS: 1, what: 'engine-stop', amount: 0.5 }, 20, { throttle: 1 });
    expect(seen.thrustN).toBeLessThan(0);
  });

  it.each([0.3, 0.5, 0.7])('leaves %d of the power at full throttle', (amount) => {
    const { seen } = flown({ atS: 1, what: 'partial-power', amount }, 30, { throttle: 1 });
    const whole = flown({ atS: 90, what: 'partial-power', amount }, 30, { throttle: 1 }).seen;
    expect(seen.engineRevps).toBeLessThan(whole.engineRevps);
    // Torque at a held rpm is what the propeller takes; 7.2
    expectWithin(torqueNm(seen) / torqueNm(whole), about(amount, 0.02, 'as asked'));
  });

  it('sticks the flap where it is', () => {
    const flight = flown({ atS: 2, what: 'flap-stuck', amount: 0.5 }, 10, { flapStage: 1 });
    expectWithin(flight.seen.flapDeg, about(8, 0.2, '4 degrees a second for 2 s'));
  });

  it('sticks the trim wheel where it is', () => {
    const flight = flown({ atS: 1, what: 'trim-stuck', amount: 0.5 }, 1);
    const wheel = flight.seen.trim;
    fly(flight, 2, (_, c) => {
      c.trim = 0.9;
    });
    expect(flight.seen.trim).toBe(wheel);
  });
});

describe('the mixture pulled to cut-off', () => {
  it('stops the engine for as long as it is there', () => {
    const flight = beginFlight(scenarioOf({ start: { ias_kt: 80, height_ft: 3000 } }));
    fly(flight, 5, (_, c) => {
      c.mixture = 0;
    });
    expect(flight.seen.thrustN).toBeLessThan(0);
    expect(flight.state[AT.engineDead]).toBe(0);
    fly(flight, 5, (_, c) => {
      c.mixture = 1;
    });
    expect(flight.seen.thrustN).toBeGreaterThan(0);
  });

  it('leaves nothing behind the brake pedals', () => {
    const rolling = (failures: readonly Failure[]) => {
      const flight = beginFlight(scenarioOf({ failures: [...failures] }));
      fly(flight, 4, (_, controls) => Object.assign(controls, { throttle: 0.45, brake: 1 }));
      return flight.seen;
    };
    const sound = rolling([]);
    const failed = rolling([{ atS: 0, what: 'brakes', amount: 0.5 }]);
    // Brakes hold a light aeroplane against part power, and without them it rolls (common practice)
    expect(sound.groundspeedMps).toBeLessThan(0.5);
    expect(failed.groundspeedMps).toBeGreaterThan(1.5);
    expect([sound.brakePressure, failed.brakePressure]).toEqual([1, 0]);
  });
});
