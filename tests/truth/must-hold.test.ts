// What an instructor expects of the trainer in the circuit: the rows of the design's table "What must hold" that
// belong to the aeroplane. Common practice where no source stands beside the row. The rows of the light model are in
// slope-lights.test.ts, the phugoid's in phugoid.test.ts, the model pilot's in tests/stories.
import { describe, expect, it } from 'vitest';
import type { SteadyRequest } from '../../src/simulation/performance/steady.ts';
import {
  degFromRad,
  fpmFromMps,
  ftFromM,
  ktFromMps,
  mpsFromKt,
  radFromDeg,
  rpmFromRevps,
} from '../../src/units/conversions.ts';
import { WARNING_MARGIN_FROM_MEMORY } from '../reference/longitudinal.ts';
import { aeroplaneNamed } from '../support/aeroplanes.ts';
import { steadyAt } from '../support/airborne.ts';
import { about, expectWithin } from '../support/expect-within.ts';
import { beginFlight, fly, northRunway, scenarioOf } from '../support/flight.ts';
import {
  bankHold,
  pitchHold,
  speedByPitch,
  speedHold,
  together,
  verticalSpeedHold,
} from '../support/holds.ts';
import { meant } from '../support/trust-table.ts';

const TABLE = 'what must hold, the middle of its band (common practice)';
const sandpiper = aeroplaneNamed('sandpiper');
const dotterel = aeroplaneNamed('dotterel');
const VS0_KT = 44.0;
type Asked = Omit<Partial<SteadyRequest>, 'iasMps'>;

/** At 1,000 ft. */
const steady = (kt: number, asked: Asked, aeroplane = sandpiper) =>
  steadyAt(aeroplane, kt, { altitudeM: 304.8, ...asked });
const rpm = (kt: number, asked: Asked): number => rpmFromRevps(steady(kt, asked).revps);

describe('on downwind', () => {
  it.each([75, 80])('level at %d kt with the first flap stage takes 2,050 to 2,450 rpm', (kt) => {
    const found = rpm(kt, { flightPathRad: 0, flapDeg: 10 });
    if (kt === 80) meant('Downwind power', TABLE, found, 2300, 'rpm');
    expectWithin(found, { low: 2050, high: 2450, source: TABLE });
  });

  it('hands off from trimmed 80 kt, the first flap stage pitches the high wing up and slows it', () => {
    const flight = beginFlight(scenarioOf({ start: { ias_kt: 80 } }));
    const { pitchRad, heightM } = flight.seen;
    let highest = 0;
    let slowest = 200;
    fly(
      flight,
      12,
      (_, c) => {
        c.flapStage = 1;
      },
      (seen) => {
        highest = Math.max(highest, degFromRad(seen.pitchRad - pitchRad));
        slowest = Math.min(slowest, ktFromMps(seen.iasMps));
        return false;
      },
    );
    expectWithin(highest, { low: 1.5, high: 8, source: TABLE });
    expectWithin(80 - slowest, { low: 5, high: 20, source: TABLE });
    expect(flight.seen.heightM).toBeGreaterThan(heightM);
  });

  it('a push holds the nose while that flap goes down', () => {
    const flight = beginFlight(scenarioOf({ start: { ias_kt: 80 } }));
    const { heightM } = flight.seen;
    const level = verticalSpeedHold(0);
    let pushed = 0;
    fly(
      flight,
      12,
      (seen, c) => {
        c.flapStage = 1;
        level(seen, c);
        bankHold(0)(seen, c);
      },
      (seen) => {
        pushed = Math.min(pushed, seen.heldPressureDegKpa);
        return false;
      },
    );
    expect(pushed).toBeLessThan(-0.3);
    expectWithin(ftFromM(flight.seen.heightM - heightM), about(0, 40, TABLE));
    expect(flight.seen.elevator).toBeLessThan(0);
  });

  it('the same flap pitches the low wing down', () => {
    const flight = beginFlight(scenarioOf({ aeroplane: dotterel, start: { ias_kt: 85 } }));
    const { pitchRad } = flight.seen;
    fly(flight, 6, (_, c) => {
      c.flapStage = 1;
    });
    expect(degFromRad(flight.seen.pitchRad - pitchRad)).toBeLessThan(-2);
    expect(flight.seen.iasMps).toBeGreaterThan(mpsFromKt(85));
  });

  it('hands off, with power reduced to 1,800 rpm, the nose drops', () => {
    const flight = beginFlight(scenarioOf({ start: { ias_kt: 80, flap_deg: 10 } }));
    const { pitchRad } = flight.seen;
    const throttle = steady(78, { revps: 30, flapDeg: 10 }).throttle;
    fly(flight, 5, (_, c) => {
      c.throttle = throttle;
    });
    expectWithin(rpmFromRevps(flight.seen.engineRevps), about(1800, 60, TABLE));
    expectWithin(degFromRad(flight.seen.pitchRad - pitchRad), { low: -15, high: -3, source: TABLE });
  });
});

describe('on base', () => {
  it('the second stage, 1,800 rpm and 70 kt come down at 400 to 650 ft/min', () => {
    const sink = -fpmFromMps(steady(70, { flapDeg: 20, revps: 30 }).verticalSpeedMps);
    meant('Base descent', TABLE, sink, 500, 'ft/min');
    expectWithin(sink, { low: 400, high: 650, source: TABLE });
  });

  it('carburettor heat costs 50 to 150 rpm', () => {
    const flight = beginFlight(
      scenarioOf({ start: { ias_kt: 70, flap_deg: 20, rpm: 1800, height_ft: 3000 } }),
    );
    const attitude = flight.seen.pitchRad;
    const hands = together(
      bankHold(0),
      pitchHold(() => attitude),
      (_, c) => {
        c.carbHeat = 1;
      },
    );
    fly(flight, 8, hands);
    const drop = 1800 - rpmFromRevps(flight.seen.engineRevps);
    meant('Carburettor heat', TABLE, drop, 100, 'rpm');
    expectWithin(drop, { low: 50, high: 150, source: TABLE });
  });

  it('carburettor heat costs the injected engine nothing', () => {
    const plain = steady(75, { revps: 28, flapDeg: 15 }, dotterel);
    const heated = steady(75, { throttle: 1, flapDeg: 15, carbHeat: 1 }, dotterel);
    const cold = steady(75, { throttle: 1, flapDeg: 15 }, dotterel);
    expect(heated.revps).toBe(cold.revps);
    expect(plain.throttle).toBeGreaterThan(0);
  });
});

describe('on final', () => {
  const path = radFromDeg(-3);
  it.each([
    [10, 65],
    [20, 65],
    [30, 65],
  ])('flap %d at %d kt on a 3 degree slope takes 1,500 to 1,950 rpm', (flapDeg, kt) => {
    expectWithin(rpm(kt, { flapDeg, flightPathRad: path }), { low: 1500, high: 1950, source: TABLE });
  });

  const approach = () =>
    beginFlight(scenarioOf({ start: { ias_kt: 65, flap_deg: 20, flight_path_deg: -3, height_ft: 2000 } }));

  it('more power first changes the sink: at a held speed it comes down less', () => {
    const flight = approach();
    const { verticalSpeedMps } = flight.seen;
    const { throttle } = flight.controls;
    fly(
      flight,
      30,
      together(speedByPitch(mpsFromKt(65)), (_, c) => {
        c.throttle = throttle + 0.15;
      }),
    );
    expectWithin(ktFromMps(flight.seen.iasMps), about(65, 2, 'held'));
    expectWithin(fpmFromMps(flight.seen.verticalSpeedMps - verticalSpeedMps), {
      low: 100,
      high: 500,
      source: TABLE,
    });
  });

  it('more power alone, attitude held, also gains some speed: the cross-effect', () => {
    const flight = approach();
    const { pitchRad } = flight.seen;
    const { throttle } = flight.controls;
    const attitude = pitchHold(() => pitchRad);
    fly(flight, 20, (seen, c) => {
      attitude(seen, c);
      c.throttle = throttle + 0.15;
    });
    const [gainKt] = [ktFromMps(flight.seen.iasMps) - 65];
    expectWithin(gainKt, { low: 0.2, high: 8, source: TABLE });
    expect(fpmFromMps(flight.seen.verticalSpeedMps)).toBeGreaterThan(-345 + 60);
  });

  it('a lower nose first changes the speed, and sinks more: the cross-effect', () => {
    const flight = approach();
    const { pitchRad, verticalSpeedMps } = flight.seen;
    const attitude = pitchHold(() => pitchRad - radFromDeg(2));
    fly(flight, 20, attitude);
    expectWithin(ktFromMps(flight.seen.iasMps) - 65, { low: 4, high: 14, source: TABLE });
    expect(flight.seen.verticalSpeedMps).toBeLessThan(verticalSpeedMps);
  });
});

describe('going around with full flap from 65 kt', () => {
  const start = { ias_kt: 65, flap_deg: 30, flight_path_deg: -3, height_ft: 500 };

  it('hands off is below Vs0 + 5 kt within 15 s', () => {
    const flight = beginFlight(scenarioOf({ start }));
    let slowest = 200;
    fly(
      flight,
      15,
      (seen, c) => {
        c.throttle = 1;
        bankHold(0)(seen, c);
      },
      (seen) => {
        slowest = Math.min(slowest, ktFromMps(seen.iasMps));
        return false;
      },
    );
    expect(slowest).toBeLessThan(VS0_KT + 5);
  });

  it('at least 1.5 degrees of elevator push hold a climbing attitude', () => {
    const flight = beginFlight(scenarioOf({ start }));
    const target = steadyAt(sandpiper, 65, { throttle: 1, flapDeg: 30 }).pitchRad;
    const attitude = pitchHold(() => target);
    fly(flight, 15, (seen, c) => {
      c.throttle = 1;
      attitude(seen, c);
      bankHold(0)(seen, c);
    });
    const pushDeg = flight.seen.elevator * sandpiper.pitch.elevatorDownDeg;
    expectWithin(pushDeg, { low: -6, high: -1.5, source: TABLE });
    expectWithin(ktFromMps(flight.seen.iasMps), about(65, 5, 'held'));
  });

  it('climbs 150 to 400 ft/min at sea level and hardly at 4,500 ft and 24 degrees', () => {
    const climb = fpmFromMps(steadyAt(sandpiper, 65, { throttle: 1, flapDeg: 30 }).verticalSpeedMps);
    meant('Go-around climb, full flap', TABLE, climb, 275, 'ft/min');
    expectWithin(climb, { low: 150, high: 400, source: TABLE });
    const flight = beginFlight(
      scenarioOf({
        aerodrome: northRunway({ elevationFt: 4500 }),
        weather: { temperatureC: 24 },
        start: { ias_kt: 65, flap_deg: 30, height_ft: 200, flight_path_deg: -2 },
      }),
    );
    fly(
      flight,
      40,
      together(bankHold(0), speedByPitch(mpsFromKt(65)), (_, c) => {
        c.throttle = 1;
      }),
    );
    expectWithin(ktFromMps(flight.seen.iasMps), about(65, 3, 'held'));
    expectWithin(fpmFromMps(flight.seen.verticalSpeedMps), about(0, 100, TABLE));
  });
});

describe('with full throttle', () => {
  it('climbs 600 to 750 ft/min at 70 to 75 kt', () => {
    for (const kt of [70, 75]) {
      const climb = fpmFromMps(steadyAt(sandpiper, kt, { throttle: 1 }).verticalSpeedMps);
      if (kt === 70) meant('Climb, full throttle', TABLE, climb, 675, 'ft/min');
      expectWithin(climb, { low: 600, high: 750, source: TABLE });
    }
  });

  it('flies level at 105 to 118 kt with the engine at its 2,700 rpm', () => {
    const flight = beginFlight(scenarioOf({ aerodrome: northRunway(), start: { ias_kt: 105 } }));
    fly(
      flight,
      120,
      together(verticalSpeedHold(0), bankHold(0), (_, c) => {
        c.throttle = 1;
      }),
    );
    expectWithin(ktFromMps(flight.seen.iasMps), { low: 105, high: 118, source: TABLE });
    expectWithin(rpmFromRevps(flight.seen.engineRevps), about(2700, 60, TABLE));
  });
});

describe('without power', () => {
  it('glides 8 to 9.5 to 1 at 70 kt with the propeller windmilling', () => {
    const ratio = -1 / Math.tan(steady(70, { throttle: 0 }).flightPathRad);
    meant('Glide ratio, windmilling', TABLE, ratio, 8.75, '');
    expectWithin(ratio, { low: 8, high: 9.5, source: TABLE });
  });

  it('with the engine failed in a 70 kt climb and the attitude held, is slow in seconds and stalls', () => {
    // Design: 57 kt after 5 s, stall after 9 s; bands are common practice (an instructor counts to five)
    const flight = beginFlight(
      scenarioOf({
        start: { ias_kt: 70, vertical_speed_fpm: 600, height_ft: 1000 },
        failures: [{ atS: 0, what: 'engine-stop', amount: 0.5 }],
      }),
    );
    const { pitchRad } = flight.seen;
    const hands = together(
      bankHold(0),
      pitchHold(() => pitchRad),
    );
    fly(flight, 5, hands);
    expectWithin(ktFromMps(flight.seen.iasMps), about(57, 2, 'design'));
    fly(flight, 10, hands, (seen) => seen.stalled || seen.warner);
    expectWithin(flight.seen.timeS, { low: 5, high: 11, source: 'design' });
  });
});

describe('rolling and yawing', () => {
  it('full aileron at 65 kt rolls at 25 to 28 degrees a second', () => {
    const flight = beginFlight(scenarioOf({ start: { ias_kt: 65, height_ft: 3000 } }));
    fly(flight, 1.5, (_, c) => {
      c.aileron = 1;
    });
    const rate = degFromRad(flight.seen.rollRateRadps);
    expectWithin(rate, { low: 25, high: 28, source: 'design' });
    expect(flight.seen.bankRad).toBeGreaterThan(0);
  });

  it('full rudder, wings held level on aileron, gives 14 degrees of slip and asks for crossed controls', () => {
    const flight = beginFlight(
      scenarioOf({ start: { ias_kt: 65, height_ft: 3000, throttle: 0 }, rudderAssist: true }),
    );
    const speed = flight.seen.pitchRad;
    fly(
      flight,
      15,
      together(
        bankHold(-8),
        pitchHold(() => speed),
        (_, c) => {
          c.rudder = 1;
        },
      ),
    );
    // Right rudder: the nose goes right, the air comes from the left
    expectWithin(degFromRad(flight.seen.slipRad), about(-14, 1.5, 'design'));
    expect(flight.controls.aileron).toBeLessThan(-0.1);
  });

  it('a full slip at 65 kt comes down about 500 ft/min faster', () => {
    const flight = beginFlight(scenarioOf({ start: { ias_kt: 65, height_ft: 3000, throttle: 0 } }));
    const before = fpmFromMps(flight.seen.verticalSpeedMps);
    const hands = together(bankHold(-10), speedByPitch(mpsFromKt(65)), (_, c) => {
      c.rudder = 1;
    });
    fly(flight, 40, hands);
    expectWithin(ktFromMps(flight.seen.iasMps), about(65, 2, 'held'));
    const more = before - fpmFromMps(flight.seen.verticalSpeedMps);
    meant('Slip, extra sink', TABLE, more, 500, 'ft/min');
    expectWithin(more, about(500, 100, 'design'));
  });

  it('full power at 65 kt without the assist needs 30 to 40 per cent of right rudder', () => {
    const flight = beginFlight(
      scenarioOf({ start: { ias_kt: 65, height_ft: 1000, flight_path_deg: 5 }, rudderAssist: false }),
    );
    const attitude = flight.seen.pitchRad;
    let rudder = 0.2;
    const hands = together(
      bankHold(0),
      pitchHold(() => attitude),
      (seen, c) => {
        c.throttle = 1;
        // Ball in the middle: step on it
        rudder += (2 * seen.ball) / 60;
        c.rudder = rudder;
      },
    );
    fly(flight, 15, hands);
    expectWithin(flight.seen.ball, about(0, 0.005, 'balanced'));
    expectWithin(flight.controls.rudder, { low: 0.3, high: 0.4, source: 'design' });
  });

  it('with feet off, full power takes the nose left and the ball right', () => {
    const flight = beginFlight(
      scenarioOf({ start: { ias_kt: 65, height_ft: 1000, flight_path_deg: 3 }, rudderAssist: false }),
    );
    fly(flight, 4, (seen, c) => {
      c.throttle = 1;
      c.rudder = 0;
      bankHold(0)(seen, c);
    });
    expect(flight.seen.yawRateRadps).toBeLessThan(0);
    expect(flight.seen.ball).toBeGreaterThan(0.02);
  });
});

describe('near the stall', () => {
  it('the warner sounds 5 degrees before it', () => {
    const flight = beginFlight(scenarioOf({ start: { ias_kt: 65, height_ft: 3000 } }));
    const hands = together(bankHold(0), verticalSpeedHold(0), (_, c) => {
      c.throttle = 0;
    });
    fly(flight, 40, hands, (seen) => seen.warner);
    expectWithin(degFromRad(flight.seen.stallAlphaRad - flight.seen.alphaRad), about(5, 0.2, 'design'));
    const warned = ktFromMps(flight.seen.iasMps);
    const [[, low, high]] = WARNING_MARGIN_FROM_MEMORY.rows;
    expectWithin(warned - 50.6, { low, high, source: `${WARNING_MARGIN_FROM_MEMORY.source}, from memory` });
    fly(flight, 20, hands, (seen) => seen.stalled);
    expect(flight.seen.stalled).toBe(true);
  });

  it('a balanced stall drops the nose and is flown out of', () => {
    const flight = beginFlight(scenarioOf({ start: { ias_kt: 60, height_ft: 3000 } }));
    const pulling = together(bankHold(0), verticalSpeedHold(0), (_, c) => {
      c.throttle = 0;
    });
    fly(flight, 40, pulling, (seen) => seen.stalled);
    const { pitchRad } = flight.seen;
    fly(flight, 3, (seen, c) => {
      c.elevator = -0.1;
      bankHold(0)(seen, c);
    });
    expect(flight.seen.pitchRad).toBeLessThan(pitchRad - radFromDeg(5));
    fly(flight, 4, (seen, c) => {
      c.throttle = 1;
      c.elevator = 0;
      bankHold(0)(seen, c);
    });
    expect(flight.seen.stalled).toBe(false);
    expect(flight.seen.ended).toBeNull();
  });

  it.each([
    [900, 'loss-of-control', 'there was no height to recover'],
    [3000, 'loss-of-control', 'Spins are not modelled'],
  ])('a skidded stall at %d ft ends the flight as %s, saying "%s"', (heightFt, outcome, why) => {
    const flight = beginFlight(
      scenarioOf({ start: { ias_kt: 60, height_ft: heightFt, bank_deg: -15, flap_deg: 20 } }),
    );
    // Too much bottom rudder in a turn to the left, nose held up, power off: the overshot final turn
    const hands = together(bankHold(-15), (_, c) => {
      c.throttle = 0;
      c.rudder = -0.8;
      c.elevator = Math.min(1, c.elevator + 0.3 / 60);
    });
    fly(flight, 30, hands);
    expect(flight.seen.ended).toBe(outcome);
    expect(flight.seen.endedWhy).toContain(why);
    // The wing on the inside of the skid
    expect(flight.seen.bankRad).toBeLessThan(radFromDeg(-55));
  });
});

describe('held off after a round-out from 65 kt with full flap', () => {
  it('floats 500 to 650 ft before it touches', () => {
    const flight = beginFlight(
      scenarioOf({
        start: { east_m: 0, north_m: -300, height_ft: 75, ias_kt: 65, flap_deg: 30, flight_path_deg: -3 },
      }),
    );
    fly(
      flight,
      30,
      together(bankHold(0), speedHold(mpsFromKt(65)), verticalSpeedHold(-1.75)),
      (seen) => ftFromM(seen.wheelClearanceM) < 22,
    );
    // Round out: the sink taken off in proportion to height left, power closed; level from 3 ft up, "floats" from there
    let from = Number.NaN;
    let sink = flight.seen.verticalSpeedMps;
    const hold = { pitchRad: flight.seen.pitchRad };
    const attitude = pitchHold(() => hold.pitchRad);
    fly(
      flight,
      30,
      (seen, c) => {
        bankHold(0)(seen, c);
        c.throttle = Math.max(0, c.throttle - 0.5 / 60);
        const clear = Math.max(0, ftFromM(seen.wheelClearanceM));
        const wanted = -0.15 - 1.6 * Math.min(1, Math.max(0, clear - 1.5) / 18);
        sink += (wanted - sink) * 0.15;
        const astray = sink - seen.verticalSpeedMps;
        hold.pitchRad += (0.9 * astray) / seen.tasMps / 12;
        hold.pitchRad = Math.min(hold.pitchRad, radFromDeg(12));
        attitude(seen, c);
        if (Number.isNaN(from) && clear < 20) from = seen.northM;
      },
      (seen) => seen.onGround,
    );
    const floatFt = ftFromM(flight.seen.northM - from);
    expect(flight.seen.ended).toBeNull();
    meant('Float from round-out', TABLE, floatFt, 575, 'ft');
    expectWithin(floatFt, { low: 500, high: 650, source: TABLE });
  });
});
