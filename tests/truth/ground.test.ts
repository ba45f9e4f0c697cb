// On the wheels: ground roll against its closed form, of an invented aeroplane, landing roll, friction, slope and wind
// factors, the legs and the parking latch (design).
import { describe, expect, it } from 'vitest';
import { ROLLING_FRICTION } from '../../src/simulation/model.ts';
import { AT } from '../../src/simulation/state.ts';
import { mpsFromKt } from '../../src/units/conversions.ts';
import {
  ROLL_WITHOUT_AIR,
  ROLLING_FRICTION_FROM_MEMORY,
  ROLLING_FRICTION_TARMAC,
} from '../reference/ground.ts';
import { aeroplaneM, aeroplaneNamed, everyAeroplane, variantOf } from '../support/aeroplanes.ts';
import { about, expectWithin, near } from '../support/expect-within.ts';
import { beginFlight, type Flight, fly, northRunway, scenarioOf } from '../support/flight.ts';
import { meant } from '../support/trust-table.ts';

const G = 9.80665;
const RHO = 1.225;
const CLOSED = 'closed form of the ground roll, aeroplane M';

/**
 * Aeroplane M as the closed form rolls it: CLg .4 and CDg = CD0 + .015 + K .16 whatever the attitude, wing too high for
 * ground effect, hard legs, a thrust that does not change with speed.
 */
const roller = (thrustN: number) => {
  const m = aeroplaneM();
  const cp = 0.05;
  const ratedTorqueNm = 103500 / (2 * Math.PI * 45);
  const ct = (thrustN * cp * 1.9) / (2 * Math.PI * ratedTorqueNm);
  return variantOf(m, {
    wing: { heightM: 12 },
    lift: { zeroAlpha: 0.4, perRad: 0.05 },
    drag: { parasite: 0.034 + 0.015 },
    propeller: { thrustCoefficient: [ct, 0, 0], powerCoefficient: [cp, 0, 0] },
    undercarriage: { mainSagM: 0.01, noseSagM: 0.01, mainsAftM: 0.5, noseForwardM: 1.3, tailStrikeDeg: 60 },
    pitch: { cmElevator: -1.1, cm0: 0, cmAlpha: -0.01 },
    flap: { stages: m.flap.stages.map((stage) => ({ ...stage, thrustMoment: 0 })) },
  });
};

/** s = integral of (V - w) dV / (A - B V^2), by Simpson's rule on 2,000 stretches; w is headwind. */
const closedRollM = (thrustN: number, friction: number, slope = 0, headwindMps = 0, vLofKt = 55): number => {
  const weight = 1000 * G;
  const clg = 0.4;
  const cdg = 0.034 + 0.015 + 0.0565884 * 0.16;
  const a = G * (thrustN / weight - friction - slope);
  const b = (G * RHO * 16 * (cdg - friction * clg)) / (2 * weight);
  const v1 = mpsFromKt(vLofKt);
  const f = (v: number): number => (v - headwindMps) / (a - b * v * v);
  const n = 2000;
  const h = (v1 - headwindMps) / n;
  let sum = f(headwindMps) + f(v1);
  for (let i = 1; i < n; i += 1) sum += f(headwindMps + i * h) * (i % 2 === 1 ? 4 : 2);
  return (sum * h) / 3;
};

interface Roll {
  readonly thrustN: number;
  readonly friction: number;
  readonly slopePercent?: number;
  /** At the wing, + from ahead. */
  readonly headwindMps?: number;
}

/** Run from brake release to 55 kt of airspeed, engine at full power before. */
const flownRollM = ({ thrustN, friction, slopePercent = 0, headwindMps = 0 }: Roll): number => {
  // The surface wind that blows so at the height of the centre of gravity, from a first look
  let windKt = Math.abs(headwindMps) / 0.514444;
  const windFromDegM = headwindMps >= 0 ? 360 : 180;
  const ready = (): Flight => {
    const scenario = scenarioOf({
      aeroplane: roller(thrustN),
      aerodrome: northRunway({ slopePercent }),
      weather: { windKt, windFromDegM },
    });
    const flight = beginFlight(scenario);
    const model = { ...flight.model, runwayFriction: friction };
    return { ...flight, model };
  };
  if (headwindMps !== 0) {
    const look = ready();
    fly(look, 1);
    windKt *= Math.abs(headwindMps) / Math.abs(look.seen.windNorthMps);
  }
  const flight = ready();
  fly(flight, 12, (_, c) => {
    c.throttle = 1;
    c.brake = 1;
  });
  expect(flight.seen.parked).toBe(true);
  expectWithin(flight.seen.thrustN, near(thrustN, 0.5, 'as asked'));
  const from = flight.seen.northM;
  let [lastV, lastM] = [0, from];
  const wanted = mpsFromKt(55);
  let rollM = Number.NaN;
  fly(
    flight,
    60,
    (_, c) => {
      c.brake = 0;
    },
    (seen) => {
      if (seen.tasMps >= wanted) {
        rollM = lastM + ((seen.northM - lastM) * (wanted - lastV)) / (seen.tasMps - lastV) - from;
        return true;
      }
      [lastV, lastM] = [seen.tasMps, seen.northM];
      return false;
    },
  );
  return rollM;
};

describe('the closed form used here', () => {
  it.each([
    [2500, 198.19],
    [2200, 232.89],
  ])('gives M with %d N a run of %d m', (thrustN, metres) => {
    expectWithin(closedRollM(thrustN, 0.03), about(metres, 0.02, CLOSED));
  });
});

describe('the take-off run as flown', () => {
  it.each([
    [2500, 198.19],
    [2200, 232.89],
  ])('with %d N is %d m', (thrustN, metres) => {
    const rolled = flownRollM({ thrustN, friction: 0.03 });
    meant('Take-off run', CLOSED, rolled, metres, '%');
    expectWithin(rolled, near(metres, 1, CLOSED));
  });

  // Relative to friction .02, thrust 2500 N
  it.each([
    [0.05, 1.132],
    [0.08, 1.304],
    [0.1, 1.452],
  ])('with rolling friction %d is %d times that with .02', (friction, factor) => {
    const ratio = flownRollM({ thrustN: 2500, friction }) / flownRollM({ thrustN: 2500, friction: 0.02 });
    meant('Run by friction, slope and wind', CLOSED, ratio, factor, '%');
    expectWithin(ratio, near(factor, 1, CLOSED));
  });

  it.each([
    [2, 1.108],
    [-2, 0.911],
  ])('up %d per cent is %d times the level one', (slopePercent, factor) => {
    const run = { thrustN: 2500, friction: 0.03 };
    const ratio = flownRollM({ ...run, slopePercent }) / flownRollM(run);
    meant('Run by friction, slope and wind', CLOSED, ratio, factor, '%');
    expectWithin(ratio, near(factor, 1, CLOSED));
  });

  // 10 % of 55 kt; constant acceleration gives .81 and 1.21, as handbooks have it (from memory)
  it.each([
    [1, 0.8149],
    [-1, 1.2034],
  ])('with %d tenth of headwind is %d times the still one', (tenths, factor) => {
    const run = { thrustN: 2500, friction: 0.03 };
    const headwindMps = (tenths * mpsFromKt(55)) / 10;
    const ratio = flownRollM({ ...run, headwindMps }) / flownRollM(run);
    meant('Run by friction, slope and wind', CLOSED, ratio, factor, '%');
    expectWithin(ratio, near(factor, 1, CLOSED));
  });
});

/** Rolls out along the runway from a groundspeed, without air: an aeroplane of almost no wing. */
const landingRollM = (kt: number, friction: number, brake: number): number => {
  const wheeled = variantOf(roller(2500), {
    wing: { areaM2: 0.0001 },
    propeller: {
      thrustCoefficient: [0, 0, 0],
      powerCoefficient: [0.05, 0, 0],
      lowestThrustCoefficient: -1e-9,
    },
  });
  const scenario = scenarioOf({ aeroplane: wheeled });
  const flight = beginFlight(scenario);
  const rolling: Flight = { ...flight, model: { ...flight.model, runwayFriction: friction } };
  fly(rolling, 3);
  rolling.state[AT.parked] = 0;
  rolling.state[AT.velocityNorth] = mpsFromKt(kt);
  const from = rolling.state[AT.north]!;
  fly(
    rolling,
    120,
    (_, c) => {
      c.brake = brake;
    },
    (seen) => seen.parked && seen.timeS > 4,
  );
  expect(rolling.seen.parked).toBe(true);
  return rolling.state[AT.north]! - from;
};

describe('the landing roll', () => {
  it.each(ROLL_WITHOUT_AIR.rows)('from %d kt with friction %d and no air is %d m', (kt, friction, metres) => {
    const rolled = landingRollM(kt, friction, 0);
    meant('Landing roll', ROLL_WITHOUT_AIR.source, rolled, metres, '%');
    expectWithin(rolled, near(metres, 1, ROLL_WITHOUT_AIR.source));
  });

  it('on the brakes is what friction on the loaded main wheels gives', () => {
    // Statics: the mains carry W ln / (ln + lm + mu h), all of the braking hangs on them (textbook)
    // Half of the brakes, which stay cool enough not to fade
    const mu = 0.2;
    const decel = (G * mu * 1.3) / (1.3 + 0.5 + mu * (1.15 + 0.01));
    const v = mpsFromKt(50);
    expectWithin(landingRollM(50, 0, 0.5), near((v * v) / (2 * decel), 2, 'statics'));
  });
});

describe.each(everyAeroplane().map((a) => [a.id, a] as const))('%s on its wheels', (_id, aeroplane) => {
  it('stands on its legs 60 to 100 mm deep', () => {
    const flight = beginFlight(scenarioOf({ aeroplane }));
    fly(flight, 5);
    expectWithin(-1000 * flight.seen.wheelClearanceM, { low: 60, high: 100, source: 'design' });
    expectWithin(flight.seen.weightOnWheels, about(1, 0.01, 'statics'));
  });

  it.each([
    ['in a steady wind across, without brakes', 0, { windKt: 20, windFromDegM: 270 }],
    [
      'on its brakes in a gusty one',
      1,
      { windKt: 20, windFromDegM: 300, gustKt: 30, turbulence: 'moderate' as const },
    ],
  ])('parked %s, stays exactly where it is, to the last bit', (_how, brake, weather) => {
    const flight = beginFlight(
      scenarioOf({ aeroplane, aerodrome: northRunway({ slopePercent: 2 }), weather }),
    );
    const hands = (_: unknown, c: { brake: number }): void => {
      c.brake = brake;
    };
    fly(flight, 2, hands);
    const before = flight.state.slice(0, 11);
    fly(flight, 60, hands);
    expect([...flight.state.slice(0, 11)]).toEqual([...before]);
    expect(flight.seen.parked).toBe(true);
  });

  it('parked, is let go by full power', () => {
    const flight = beginFlight(scenarioOf({ aeroplane }));
    fly(flight, 8, (_, c) => {
      c.throttle = 1;
    });
    expect(flight.seen.parked).toBe(false);
    expect(flight.seen.groundspeedMps).toBeGreaterThan(5);
  });

  it('held by its brakes, stands against full power', () => {
    const flight = beginFlight(scenarioOf({ aeroplane }));
    fly(flight, 15, (_, c) => {
      c.throttle = 1;
      c.brake = 1;
    });
    expect(flight.seen.groundspeedMps).toBe(0);
  });

  it('dropped a quarter of a metre, gives way, comes back and comes to rest on its legs', () => {
    const flight = beginFlight(scenarioOf({ aeroplane }));
    flight.state[AT.parked] = 0;
    flight.state[AT.up] = flight.state[AT.up]! + 0.25;
    let deepest = 0;
    fly(flight, 8, undefined, (seen) => {
      deepest = Math.max(deepest, -seen.wheelClearanceM);
      return false;
    });
    expect(flight.seen.ended).toBeNull();
    // A spring that sags s under the weight gives s + sqrt(s^2 + 2 s h) to a drop of h without damping
    expectWithin(deepest, { low: 0.08, high: 0.08 + Math.sqrt(0.0064 + 0.16 * 0.25), source: 'energy' });
    expectWithin(-1000 * flight.seen.wheelClearanceM, { low: 60, high: 100, source: 'design' });
    expect(flight.seen.parked).toBe(true);
  });
});

/** Dropped onto the runway, level, at a sink rate. */
const arrive = (sinkFpm: number): Flight => {
  const aeroplane = aeroplaneNamed('sandpiper');
  const scenario = scenarioOf({
    aeroplane,
    start: { east_m: 0, north_m: 400, height_ft: 1.5, ias_kt: 62, flap_deg: 30, flight_path_deg: -3 },
  });
  const flight = beginFlight(scenario);
  flight.state[AT.velocityUp] = -sinkFpm * 0.00508;
  fly(flight, 4);
  return flight;
};

describe('a touchdown', () => {
  it('at 300 ft/min is survived', () => {
    expect(arrive(300).seen.ended).toBeNull();
  });

  it('at 1,200 ft/min breaks the undercarriage and says so', () => {
    const { seen } = arrive(1200);
    expect(seen.ended).toBe('crashed');
    expect(seen.endedWhy).toMatch(/undercarriage gave way: it met the ground sinking at 1\d{3} ft\/min/);
  });
});

describe('wind from the side on the ground (common practice)', () => {
  const rolling = (rudderAssist: boolean): Flight => {
    const flight = beginFlight(scenarioOf({ weather: { windFromDegM: 90, windKt: 14 }, rudderAssist }));
    fly(flight, 6, (_, c) => {
      c.throttle = 1;
    });
    return flight;
  };

  it('swings the nose into the wind when the feet do nothing', () => {
    const flight = rolling(false);
    fly(flight, 4, (_, c) => {
      c.throttle = 0;
    });
    expect(Math.sin(flight.seen.headingRadT)).toBeGreaterThan(0.02);
    expect(flight.seen.ended).toBeNull();
  });

  it('is held by the feet', () => {
    const flight = rolling(false);
    const before = flight.seen.headingRadT;
    fly(flight, 4, (seen, c) => {
      c.throttle = 0;
      c.rudder = -4 * Math.sin(seen.headingRadT) - 2 * seen.yawRateRadps;
    });
    expectWithin(Math.sin(flight.seen.headingRadT - before), about(0, 0.08, 'common practice'));
    expect(flight.controls.rudder).toBeLessThan(0);
  });

  it('landed with 8 degrees of crab, is felt as a jolt sideways that dies away', () => {
    const flight = beginFlight(
      scenarioOf({
        start: {
          east_m: 0,
          north_m: 300,
          height_ft: 2,
          ias_kt: 60,
          flap_deg: 30,
          flight_path_deg: -1,
          heading_deg: 8,
        },
      }),
    );
    const speed = Math.hypot(flight.state[AT.velocityEast]!, flight.state[AT.velocityNorth]!);
    flight.state[AT.velocityEast] = 0;
    flight.state[AT.velocityNorth] = speed;
    let jolt = 0;
    fly(flight, 4, undefined, (seen) => {
      jolt = Math.max(jolt, Math.abs(seen.ball));
      return false;
    });
    expect(flight.seen.ended).toBeNull();
    expectWithin(jolt, { low: 0.08, high: 0.7, source: 'felt, and at most what the tyres grip, .7' });
    expectWithin(flight.seen.ball, about(0, 0.1, 'common practice'));
  });
});

describe("the surfaces' rolling friction", () => {
  it.each(ROLLING_FRICTION_FROM_MEMORY.rows)('on %s is %d to %d (from memory)', (surface, low, high) => {
    expectWithin(ROLLING_FRICTION[surface], { low, high, source: 'from memory' });
  });

  it('on tarmac is at least that of dry concrete', () => {
    const [[least]] = ROLLING_FRICTION_TARMAC.rows;
    expect(ROLLING_FRICTION.tarmac).toBeGreaterThanOrEqual(least);
  });
});
