// Turns: flight-figures section 5 (n = 1/cos, R = V^2/(g tan), omega = g tan/V: RECOMPUTED; the FAA's numbers VERIFIED).
import { describe, expect, it } from 'vitest';
import { SEEN } from '../../src/simulation/places.ts';
import { AT } from '../../src/simulation/state.ts';
import { degFromRad, ktFromMps, mpsFromKt } from '../../src/units/conversions.ts';
import { aeroplaneNamed, variantOf } from '../support/aeroplanes.ts';
import { steadyAt } from '../support/airborne.ts';
import { about, expectWithin, near } from '../support/expect-within.ts';
import { beginFlight, type Flight, fly, northRunway, scenarioOf } from '../support/flight.ts';
import { bankHold, speedHold, together, verticalSpeedHold } from '../support/holds.ts';
import { trust } from '../support/trust-table.ts';

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

/** kt, deg of bank, radius m, deg/s, seconds for 360 degrees: 5.3. */
const CIRCUIT_TURNS = [
  [60, 30, 168.3, 10.51, 34.3],
  [65, 20, 313.3, 6.116, 58.9],
  [65, 30, 197.5, 9.701, 37.1],
  [70, 30, 229.0, 9.008, 40.0],
  [80, 20, 474.5, 4.969, 72.5],
  [80, 30, 299.2, 7.882, 45.7],
  [90, 20, 600.6, 4.417, 81.5],
  [90, 30, 378.6, 7.007, 51.4],
  [100, 30, 467.4, 6.306, 57.1],
  [100, 45, 269.9, 10.922, 33.0],
] as const;
const CIRCUIT = 'flight-figures 5.3 RECOMPUTED';

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
  it.each(CIRCUIT_TURNS)(
    'at %d kt and %d degrees of bank has a radius of %d m at %d degrees a second',
    (kt, bankDeg, radiusM, rateDegps, circleS) => {
      const flown = circle(kt, bankDeg);
      expectWithin(flown.radiusM, near(radiusM, 0.5, CIRCUIT));
      expectWithin(360 / flown.seconds, near(rateDegps, 0.5, CIRCUIT));
      expectWithin(flown.seconds, about(circleS, 0.005 * circleS + 0.05, CIRCUIT));
    },
  );

  it.each(CIRCUIT_TURNS.filter(([kt, bankDeg]) => kt >= 65 && bankDeg < 45))(
    'by the Sandpiper at %d kt and %d degrees is that within what its pitch attitude costs',
    (kt, bankDeg, radiusM, rateDegps) => {
      const flown = circle(kt, bankDeg, sandpiper);
      trust('Turn radius, flown', '5.3 RECOMPUTED', flown.radiusM, radiusM, '%');
      trust('Turn rate, flown', '5.3 RECOMPUTED', 360 / flown.seconds, rateDegps, '%');
      expectWithin(flown.radiusM, near(radiusM, 2, CIRCUIT));
      expectWithin(360 / flown.seconds, near(rateDegps, 2, CIRCUIT));
    },
  );

  const LOADS = [
    [20, 1.0642],
    [30, 1.1547],
    [45, Math.SQRT2],
    [60, 2.0],
  ] as const;
  it.each(LOADS)('at %d degrees of bank pulls %d g', (bankDeg, load) => {
    const flight = turning(85, bankDeg);
    fly(flight, 15, together(bankHold(bankDeg), verticalSpeedHold(0), speedHold(mpsFromKt(85))));
    trust(
      'Load factor in a level turn',
      '5 RECOMPUTED; 60 deg 2 g FAA VERIFIED',
      flight.seen.loadFactor,
      load,
      '%',
    );
    expectWithin(flight.seen.loadFactor, near(load, 0.5, 'flight-figures 5; 60 degrees, 2 g: FAA, VERIFIED'));
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
    trust('Stalling speed, straight', 'lift equation', straight.oneGKt, LEVEL_KT, '%');
    expectWithin(straight.oneGKt, near(LEVEL_KT, 1, 'lift equation at CLmax'));
  });

  // PHAK, VERIFIED: 30, 45, 60 degrees of bank stall 7, 19, 41 % faster
  it.each([
    [30, 7.46],
    [45, 18.92],
    [60, 41.42],
  ])('at %d degrees of bank is %d per cent higher', (bankDeg, percent) => {
    const banked = stallKt(bankDeg, 65 * Math.sqrt(1 / Math.cos((bankDeg * Math.PI) / 180)) + 3);
    const higher = banked.heldKt / straight.heldKt;
    trust('Stalling speed in a turn', '5, FAA VERIFIED', higher, 1 + percent / 100, '%');
    expectWithin(higher, near(1 + percent / 100, 2, 'flight-figures 5; FAA +7/19/41 % VERIFIED'));
  });
});

describe('fixed trim', () => {
  // 6.10: the same trim in a level turn flies sqrt(n) faster. Closed form for a model without pitch damping.
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
    expectWithin(low / 70, near(Math.sqrt(load), 0.7, 'flight-figures 6.10 RECOMPUTED'));
  });
});
