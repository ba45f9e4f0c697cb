// The gear that moves: its time, drag, limits and warning, and what happens without it (common practice).
import { describe, expect, it } from 'vitest';
import { mpsFromKt } from '../../../src/units/conversions.ts';
import { aeroplaneNamed } from '../../support/aeroplanes.ts';
import { steadyAt } from '../../support/airborne.ts';
import { about, expectWithin, near } from '../../support/expect-within.ts';
import { beginFlight, fly, type Hands, handsOff, scenarioOf } from '../../support/flight.ts';
import { bankHold, together, verticalSpeedHold } from '../../support/holds.ts';

const whimbrel = aeroplaneNamed('whimbrel');
const aloft = (start: object) => beginFlight(scenarioOf({ aeroplane: whimbrel, start }));
const lever =
  (gear: 0 | 1): Hands =>
  (_, c) => {
    c.gear = gear;
  };

describe('the gear lever', () => {
  it('takes seven seconds, as the file says, from up to down and locked', () => {
    const flight = aloft({ ias_kt: 95, gear: 'up' });
    fly(flight, 60, lever(1), (seen) => seen.gear === 1);
    expectWithin(flight.seen.timeS, about(7, 0.05, 'undercarriage.travelS'));
  });

  it('does nothing with the weight on the wheels, and raises the gear once they are off', () => {
    const flight = beginFlight(scenarioOf({ aeroplane: whimbrel }));
    fly(flight, 5, lever(0));
    expect(flight.seen.gear).toBe(1);
    expect(flight.seen.gearLever).toBe(0);
    expect(flight.seen.ended).toBeNull();
  });

  it('does nothing where the gear is fixed', () => {
    const flight = beginFlight(scenarioOf({ start: {} }));
    fly(flight, 10, lever(0));
    expect(flight.seen.gear).toBe(1);
    expect(flight.seen.gearWarning).toBe(false);
  });

  it('changes the drag by the coefficient of the file', () => {
    const sink = (gear: 0 | 1) => {
      const { flightPathRad, tasMps } = steadyAt(whimbrel, 90, { throttle: 0, propeller: 0, gear });
      return { drag: -Math.sin(flightPathRad) * whimbrel.massKg.flown * 9.80665, tasMps };
    };
    const { areaM2 } = whimbrel.wing;
    const dynamic = 0.5 * 1.225 * sink(0).tasMps ** 2 * areaM2;
    // The nose-down path takes a little lift away, and with it induced drag
    expectWithin((sink(1).drag - sink(0).drag) / dynamic, near(whimbrel.drag.gear, 4, 'drag polar'));
  });
});

describe('the limit speeds of the gear', () => {
  it.each([
    ['up at any speed', 'up', 140, handsOff, false],
    ['moving at 110 kt, within 115', 'up', 110, lever(1), false],
    ['moving at 125 kt, above 115', 'up', 125, lever(1), true],
    ['down at 125 kt, within 135', 'down', 125, handsOff, false],
    ['down at 140 kt, above 135', 'down', 140, handsOff, true],
  ] as const)('%s', (_what, gear, kt, hands, tooFast) => {
    const flight = aloft({ ias_kt: kt, gear, height_ft: 3000, flight_path_deg: -5 });
    fly(flight, 1, hands);
    expect(flight.seen.gearTooFast).toBe(tooFast);
  });
});

describe('the gear warning', () => {
  it.each([
    ['is silent in the climb, gear up', 'up', 1, 0, false],
    ['sounds with the throttle closed, gear up', 'up', 0.05, 0, true],
    ['sounds with landing flap, gear up, whatever the power', 'up', 0.6, 2, true],
    ['is silent with the throttle closed, gear down', 'down', 0.05, 2, false],
  ] as const)('%s', (_what, gear, throttle, flapStage, sounds) => {
    const flight = aloft({ ias_kt: 90, gear });
    fly(flight, 1, (_, c) => {
      c.throttle = throttle;
      c.flapStage = flapStage;
    });
    expect(flight.seen.gearWarning).toBe(sounds);
  });

  it('sounds until the wheels are down and locked', () => {
    const flight = aloft({ ias_kt: 90, gear: 'up' });
    const down: Hands = (_, c) => {
      c.throttle = 0;
      c.gear = 1;
    };
    fly(flight, 6.5, down);
    expect(flight.seen.gearWarning).toBe(true);
    fly(flight, 0.7, down);
    expect(flight.seen.gearWarning).toBe(false);
  });
});

describe('landed without its gear, the flight ends', () => {
  const flare = (gear: 0 | 1) => {
    const flight = aloft({
      east_m: 0,
      north_m: 300,
      height_ft: 20,
      ias_kt: 72,
      flap_deg: 35,
      gear: 'up',
      flight_path_deg: -2,
    });
    const settle = together(bankHold(0), verticalSpeedHold(-0.4), (_, c) => {
      c.throttle = 0;
      c.gear = gear;
    });
    fly(flight, 30, settle);
    return flight.seen;
  };

  it('on its belly', () => {
    const seen = flare(0);
    expect(seen.ended).toBe('crashed');
    expect(seen.endedWhy).toBe('it came down on its belly: the gear was up');
    expect(seen.iasMps).toBeLessThan(mpsFromKt(75));
  });

  it('on legs that fold, lowered too late', () => {
    const flight = aloft({
      east_m: 0,
      north_m: 300,
      height_ft: 12,
      ias_kt: 72,
      flap_deg: 35,
      gear: 'up',
      flight_path_deg: -3,
    });
    fly(flight, 30, together(bankHold(0), verticalSpeedHold(-1), lever(1)));
    expect(flight.seen.endedWhy).toBe(
      'the gear folded: it was not yet down and locked when the wheels met the ground',
    );
  });
});
