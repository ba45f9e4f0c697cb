// An airspeed indicator whose pitot head and drain are blocked reads like an altimeter (FAA-H-8083-25, pitot-static
// blockages: climbing it reads more, descending less; from memory), and a radio that is dead.
import { describe, expect, it } from 'vitest';
import { isaPressurePa } from '../../../src/atmosphere/isa.ts';
import type { Snapshot } from '../../../src/simulation/snapshot.ts';
import { mFromFt, mpsFromKt } from '../../../src/units/conversions.ts';
import { about, expectWithin } from '../../support/expect-within.ts';
import { beginFlight, fly, scenarioOf } from '../../support/flight.ts';
import { bankHold, speedByPitch, together, verticalSpeedHold } from '../../support/holds.ts';

const start = { ias_kt: 80, height_ft: 1000 };
const blocked = (failures = [{ atS: 2, what: 'airspeed-blocked' as const, amount: 0.5 }]) =>
  beginFlight(scenarioOf({ start, failures }));
const climbing = (mps: number) => together(bankHold(0), verticalSpeedHold(mps));

/** What trapped total pressure reads against the standard atmosphere's static pressure here. */
const readsMps = (trappedPa: number, s: Snapshot, cgAboveWheelsM: number): number => {
  const difference = trappedPa - isaPressurePa(s.heightM + cgAboveWheelsM);
  return Math.sqrt((2 * Math.max(0, difference)) / 1.225);
};

describe('an airspeed indicator', () => {
  it('shows what the wing feels while nothing is blocked', () => {
    const flight = blocked([]);
    fly(flight, 5, climbing(2));
    expect(flight.seen.shownIasMps).toBe(flight.seen.iasMps);
  });

  it('blocked in level flight stays where it is, whatever the speed does', () => {
    const flight = blocked();
    fly(flight, 3, climbing(0));
    expect(flight.seen.airspeedBlocked).toBe(true);
    const { shownIasMps: shown, heightM } = flight.seen;
    fly(
      flight,
      20,
      together(climbing(0), (_, c) => {
        c.throttle = 0.3;
      }),
    );
    expect(flight.seen.iasMps).toBeLessThan(mpsFromKt(75));
    // A metre of height lost is 12 Pa, which is half a knot
    const lostM = heightM - flight.seen.heightM;
    expectWithin(flight.seen.shownIasMps, about(shown - lostM * mpsFromKt(0.5), mpsFromKt(0.5), 'trapped'));
  });

  it('blocked reads more the higher it climbs, as the trapped pressure says', () => {
    const flight = blocked();
    fly(flight, 2.1, climbing(0));
    const { heightM } = flight.seen;
    const trappedPa = isaPressurePa(heightM + 1.15) + 0.5 * 1.225 * mpsFromKt(80) ** 2;
    fly(
      flight,
      90,
      together(bankHold(0), speedByPitch(mpsFromKt(75)), (_, c) => {
        c.throttle = 1;
      }),
      (seen) => seen.heightM > heightM + mFromFt(300),
    );
    expectWithin(flight.seen.iasMps, about(mpsFromKt(75), mpsFromKt(2), 'flown'));
    const expected = readsMps(trappedPa, flight.seen, 1.15);
    expect(expected).toBeGreaterThan(mpsFromKt(105));
    expectWithin(flight.seen.shownIasMps, about(expected, mpsFromKt(1.5), 'statics'));
  });

  it('blocked reads nothing well below where it was blocked', () => {
    const flight = blocked();
    fly(flight, 60, climbing(-5), (seen) => seen.heightM < mFromFt(600));
    expect(flight.seen.iasMps).toBeGreaterThan(mpsFromKt(60));
    expect(flight.seen.shownIasMps).toBe(0);
  });
});

describe('a radio', () => {
  it('fails at its time and stays dead, and nothing else changes', () => {
    const flight = beginFlight(scenarioOf({ start, failures: [{ atS: 1, what: 'radio', amount: 0.5 }] }));
    const other = beginFlight(scenarioOf({ start }));
    fly(flight, 0.9);
    expect(flight.seen.radioFailed).toBe(false);
    fly(flight, 2);
    fly(other, 2.9);
    expect(flight.seen.radioFailed).toBe(true);
    expect({ ...flight.seen, radioFailed: false }).toEqual(other.seen);
  });
});
