// Turns as flown against their closed forms, and the few figures that the pilot's handbook prints.
import { describe, expect, it } from 'vitest';
import { SEEN } from '../../src/simulation/places.ts';
import { AT } from '../../src/simulation/state.ts';
import { degFromRad, ktFromMps, mpsFromKt } from '../../src/units/conversions.ts';
import {
  CIRCUIT_TURNS,
  LOADS,
  LOADS_PRINTED,
  STALL_IN_A_TURN,
  STALL_IN_A_TURN_PRINTED,
} from '../reference/turns.ts';
import { aeroplaneNamed, variantOf } from '../support/aeroplanes.ts';
import { steadyAt } from '../support/airborne.ts';
import { about, expectWithin, near } from '../support/expect-within.ts';
import { beginFlight, type Flight, fly, northRunway, scenarioOf } from '../support/flight.ts';
import { bankHold, speedHold, together, verticalSpeedHold } from '../support/holds.ts';
import { meant, trust } from '../support/trust-table.ts';

const sandpiper = aeroplaneNamed('sandpiper');

/**
 * Enough power for a steep level turn, and a fuselage that lies along the path at circuit speeds, so that bank is
 * bank about the path, as in the closed form. (Pitched up by p, the same bank on the attitude indicator turns
 * cos p as fast: the Sandpiper at 60 kt 2 % less.)
 */
const turner = variantOf(sandpiper, {
  lift: { zeroAlpha: 0.85 },
  pitch: { cm0: -0.05, trimUpDeg: 12, trimDownDeg: 6 },
  propeller: { thrustCoefficient: [0.112, 0, 0], powerCoefficient: [0.05, 0, 0] },
  engine: { powerKw: 250 },
});

const turning = (kt: number, bankDeg: number, aeroplane = turner): Flight => {
  const aerodrome = northRunway();
  // Thin air is not the point: an aerodrome 1,000 ft below the sea, so that at 1,000 ft true is indicated speed
  return beginFlight(
    scenarioOf({
      aeroplane,
      aerodrome: { ...aerodrome, elevationFt: -1000 },
      weather: { temperatureC: 15 + 1.9812 },
      start: { ias_kt: kt, bank_deg: bankDeg, height_ft: 1000 },
    }),
  );
};

/** Once round, level, at a speed and bank held: radius from how far north and south it reaches, and seconds. */
const circle = (kt: number, bankDeg: number, aeroplane = turner): { radiusM: number; seconds: number } => {
  const flight = turning(kt, bankDeg, aeroplane);
  const hands = together(bankHold(bankDeg), verticalSpeedHold(0), speedHold(mpsFromKt(kt)));
  fly(flight, 20, hands);
  let turnedRad = 0;
  let lastRad = flight.seen.headingRadT;
  let [north, south] = [-Infinity, Infinity];
  const began = flight.seen.timeS;
  fly(flight, 120, hands, (seen) => {
    turnedRad += Math.sin(seen.headingRadT - lastRad);
    lastRad = seen.headingRadT;
    north = Math.max(north, seen.northM);
    south = Math.min(south, seen.northM);
    return turnedRad >= 2 * Math.PI;
  });
  expectWithin(ktFromMps(flight.seen.tasMps), about(kt, 0.1, 'as asked'));
  expectWithin(degFromRad(flight.seen.bankRad), about(bankDeg, 0.05, 'as asked'));
  expectWithin(flight.seen.ball, about(0, 0.002, 'balanced'));
  return { radiusM: (north - south) / 2, seconds: flight.seen.timeS - began };
};

describe('a level balanced turn as flown', () => {
  it.each(CIRCUIT_TURNS.rows)(
    'at %d kt and %d degrees of bank has a radius of %d m at %d degrees a second',
    (kt, bankDeg, radiusM, rateDegps, circleS) => {
      const flown = circle(kt, bankDeg);
      expectWithin(flown.radiusM, near(radiusM, 0.5, CIRCUIT_TURNS.source));
      expectWithin(360 / flown.seconds, near(rateDegps, 0.5, CIRCUIT_TURNS.source));
      expectWithin(flown.seconds, about(circleS, 0.005 * circleS + 0.05, CIRCUIT_TURNS.source));
    },
  );

  it.each(CIRCUIT_TURNS.rows.filter(([kt, bankDeg]) => kt >= 65 && bankDeg < 45))(
    'by the Sandpiper at %d kt and %d degrees is that within what its pitch attitude costs',
    (kt, bankDeg, radiusM, rateDegps) => {
      const flown = circle(kt, bankDeg, sandpiper);
      meant('Turn radius, flown', CIRCUIT_TURNS.source, flown.radiusM, radiusM, '%');
      meant('Turn rate, flown', CIRCUIT_TURNS.source, 360 / flown.seconds, rateDegps, '%');
      expectWithin(flown.radiusM, near(radiusM, 2, CIRCUIT_TURNS.source));
      expectWithin(360 / flown.seconds, near(rateDegps, 2, CIRCUIT_TURNS.source));
    },
  );

  it.each(LOADS.rows)('at %d degrees of bank pulls %d g', (bankDeg, load) => {
    const flight = turning(85, bankDeg);
    fly(flight, 15, together(bankHold(bankDeg), verticalSpeedHold(0), speedHold(mpsFromKt(85))));
    const { loadFactor } = flight.seen;
    meant('Load factor in a level turn', LOADS.source, loadFactor, load, '%');
    const printed = LOADS_PRINTED.rows.find(([deg]) => deg === bankDeg);
    if (printed) trust('Load factor in a steep turn', LOADS_PRINTED, loadFactor, printed[1], '%');
    expectWithin(loadFactor, near(load, 0.5, LOADS.source));
  });
});

describe('the stalling speed', () => {
  /** Slowest indicated speed at which the wing still carries the turn: power off, bank and height held. */
  const stallKt = (bankDeg: number, fromKt: number): { heldKt: number; oneGKt: number } => {
    const flight = beginFlight(
      scenarioOf({
        aeroplane: turner,
        start: { ias_kt: fromKt, bank_deg: bankDeg, height_ft: 4000 },
      }),
    );
    const hands = together(bankHold(bankDeg), verticalSpeedHold(0), (_, controls) => {
      controls.throttle = 0;
    });
    const wanted = (0.99 * flight.model.shape.weightN) / Math.cos((bankDeg * Math.PI) / 180);
    let held = Infinity;
    let oneG = Infinity;
    fly(flight, 90, hands, (seen) => {
      const lift = flight.state[AT.seen + SEEN.lift]!;
      if (lift >= wanted) held = Math.min(held, seen.iasMps);
      oneG = Math.min(oneG, seen.iasMps * Math.sqrt(flight.model.shape.weightN / lift));
      return seen.stalled;
    });
    expect(flight.seen.stalled).toBe(true);
    return { heldKt: ktFromMps(held), oneGKt: ktFromMps(oneG) };
  };

  // sqrt(2 W / (rho0 S CLmax)) of 1050 kg, 16 m2, 1.55: 50.61 kt
  const LEVEL_KT = Math.sqrt((2 * 1050 * 9.80665) / (1.225 * 16 * 1.55)) / 0.514444;
  const straight = stallKt(0, 65);

  it('slowing down in straight flight is that of the lift equation', () => {
    // Reference stall speed: lowest speed over the root of the load normal to the path (14 CFR 25.103, from memory)
    meant('Stalling speed, straight', 'lift equation', straight.oneGKt, LEVEL_KT, '%');
    expectWithin(straight.oneGKt, near(LEVEL_KT, 1, 'lift equation at CLmax'));
  });

  it.each(STALL_IN_A_TURN.rows)('at %d degrees of bank is %d per cent higher', (bankDeg, percent) => {
    const banked = stallKt(bankDeg, 65 * Math.sqrt(1 / Math.cos((bankDeg * Math.PI) / 180)) + 3);
    const higher = banked.heldKt / straight.heldKt;
    const printed = STALL_IN_A_TURN_PRINTED.rows.find(([deg]) => deg === bankDeg)!;
    trust('Stalling speed in a turn', STALL_IN_A_TURN_PRINTED, higher, 1 + printed[1] / 100, '%');
    expectWithin(higher, near(1 + percent / 100, 2, STALL_IN_A_TURN.source));
  });
});

describe('fixed trim', () => {
  // The same trim in a level turn flies sqrt(n) faster. Closed form for a model without pitch damping.
  it.each([
    [45, Math.SQRT2],
    [60, 2],
  ])('in a level turn at %d degrees flies faster by the root of the load', (bankDeg, load) => {
    const calm = variantOf(turner, {
      pitch: { cmQ: -1e-9 },
      flap: { stages: turner.flap.stages.map((stage) => ({ ...stage, thrustMoment: 0 })) },
    });
    const straight = steadyAt(calm, 70, { flightPathRad: 0 });
    let [low, high] = [70, 130];
    for (let i = 0; i < 40; i += 1) {
      const kt = (low + high) / 2;
      const { elevatorRad } = steadyAt(calm, kt, { flightPathRad: 0, bankRad: (bankDeg * Math.PI) / 180 });
      // Trailing edge further up (negative) flies slower
      if (elevatorRad < straight.elevatorRad) low = kt;
      else high = kt;
    }
    expectWithin(low / 70, near(Math.sqrt(load), 0.7, 'closed form'));
  });
});
