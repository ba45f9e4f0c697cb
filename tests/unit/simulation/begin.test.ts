import { describe, expect, it } from 'vitest';
import { prepare } from '../../../src/simulation/model.ts';
import { degFromRad, fpmFromMps, ftFromM, ktFromMps, rpmFromRevps } from '../../../src/units/conversions.ts';
import { aerodromeNamed } from '../../support/aerodromes.ts';
import { aeroplaneNamed, everyAeroplane, variantOf } from '../../support/aeroplanes.ts';
import { about, expectWithin } from '../../support/expect-within.ts';
import { beginFlight, fly, northRunway, type ScenarioChanges, scenarioOf } from '../../support/flight.ts';

describe.each(everyAeroplane().map((a) => [a.id, a] as const))('%s', (_id, aeroplane) => {
  it('begins at the line-up standing still, on the centreline, at idle', () => {
    const { seen } = beginFlight(scenarioOf({ aeroplane }));
    expect(seen.parked).toBe(true);
    expect(seen.onGround).toBe(true);
    expect(seen.groundspeedMps).toBe(0);
    expect(rpmFromRevps(seen.engineRevps)).toBeCloseTo(aeroplane.engine.idleRpm, 6);
    expect(seen.flapDeg).toBe(aeroplane.flap.stages[aeroplane.plan.takeOffStage]!.deg);
    expect(seen.onRunway).toBe(true);
  });

  it('begins in the air as asked', () => {
    const { seen } = beginFlight(
      scenarioOf({
        aeroplane,
        start: { ias_kt: 75, height_ft: 1200, heading_deg: 90, vertical_speed_fpm: -200 },
      }),
    );
    expectWithin(ktFromMps(seen.iasMps), about(75, 0.01, 'asked; density is taken a metre higher'));
    expect(ftFromM(seen.heightM)).toBeCloseTo(1200, 3);
    expect(degFromRad(seen.headingRadT)).toBeCloseTo(90, 9);
    expect(fpmFromMps(seen.verticalSpeedMps)).toBeCloseTo(-200, 6);
  });

  it('trimmed and left alone flies straight on for a minute', () => {
    const flight = beginFlight(scenarioOf({ aeroplane, start: { ias_kt: 75, height_ft: 2000 } }));
    const { pitchRad } = flight.seen;
    fly(flight, 60);
    expectWithin(ktFromMps(flight.seen.iasMps), about(75, 0.5, 'a steady state'));
    expectWithin(ftFromM(flight.seen.heightM), about(2000, 15, 'a steady state'));
    expectWithin(degFromRad(flight.seen.pitchRad - pitchRad), about(0, 0.2, 'a steady state'));
    expectWithin(degFromRad(flight.seen.bankRad), about(0, 0.01, 'a steady state'));
  });

  it('untrimmed needs the hand where the wheel does not carry it', () => {
    const flight = beginFlight(
      scenarioOf({ aeroplane, trimmed: false, start: { ias_kt: 65, height_ft: 2000 } }),
    );
    expect(Math.abs(flight.controls.elevator)).toBeGreaterThan(0.001);
    fly(flight, 5);
    expectWithin(ktFromMps(flight.seen.iasMps), about(65, 0.3, 'held by the hand'));
  });

  it('in a wind begins at its airspeed, drifting', () => {
    const { seen } = beginFlight(
      scenarioOf({
        aeroplane,
        weather: { windFromDegM: 270, windKt: 20 },
        start: { ias_kt: 75, height_ft: 1000 },
      }),
    );
    expectWithin(ktFromMps(seen.iasMps), about(75, 0.01, 'asked; density is taken a metre higher'));
    expect(seen.velocityEastMps).toBeGreaterThan(10);
  });

  it('without the rudder assist begins in balance', () => {
    const flight = beginFlight(scenarioOf({ aeroplane, rudderAssist: false, start: { ias_kt: 75 } }));
    fly(flight, 3);
    expectWithin(flight.seen.ball, about(0, 0.003, 'balanced by the start'));
  });
});

const why = (changes: ScenarioChanges): string => {
  try {
    prepare(scenarioOf(changes));
  } catch (error) {
    return (error as Error).message;
  }
  return 'accepted';
};

describe('a start that cannot be flown is refused in one sentence', () => {
  it.each<[string, ScenarioChanges, RegExp]>([
    [
      'below ground',
      { start: { height_ft: -3 } },
      /^start: height_ft must be above the ground \(0 ft there\), was -3$/,
    ],
    [
      'too slow',
      { start: { ias_kt: 40 } },
      /^start: 40 kt with flap 0 is below the stalling speed; the nearest possible is 5\d kt$/,
    ],
    [
      'too fast',
      { start: { ias_kt: 125 } },
      /^start: 125 kt with flap 0 on this path needs more than full power; the nearest possible is -\d+ ft\/min at \d+ rpm$/,
    ],
    [
      'too steep',
      { start: { ias_kt: 80, flight_path_deg: -12 } },
      /^start: 80 kt with flap 0 on this path needs less than no power; the nearest possible is -[89]\d\d ft\/min at \d+ rpm$/,
    ],
    [
      'with a flap it has not',
      { start: { flap_deg: 25 } },
      /^start: flap_deg must be one of 0, 10, 20, 30 for sandpiper, was 25$/,
    ],
    [
      'gear up',
      { start: { gear: 'up' } },
      /^start: gear must be "down" for sandpiper, whose gear is fixed, was "up"$/,
    ],
    [
      'asked for twice',
      { start: { rpm: 2000, throttle: 0 } },
      /^start: exactly one of .* is needed, found rpm and throttle$/,
    ],
    [
      'beyond its trim',
      {
        aeroplane: variantOf(aeroplaneNamed('sandpiper'), { pitch: { trimDownDeg: 1 } }),
        start: { ias_kt: 100 },
      },
      /^start: the trim wheel cannot carry 100 kt with flap 0; it would have to stand at -\d\.\d\d, expected -1 to 1$/,
    ],
  ])('%s', (_what, changes, expected) => {
    expect(why(changes)).toMatch(expected);
  });

  it('on an unknown runway', () => {
    expect(why({ runway: '09' })).toMatch(/09/);
  });
});

describe('the line-up', () => {
  it('is on the slope of the runway', () => {
    const { seen } = beginFlight(scenarioOf({ aerodrome: northRunway({ slopePercent: 2 }) }));
    expect(Math.tan(seen.pitchRad)).toBeCloseTo(0.02, 6);
  });

  it('is behind a displaced threshold where there is one', () => {
    const aerodrome = aerodromeNamed('dunlin-ridge');
    const end = aerodrome.runway.ends.find((e) => e.displacedThresholdM > 0);
    if (!end) return expect.fail('the demonstration aerodrome must have a displaced threshold');
    const { seen, model } = beginFlight(scenarioOf({ aerodrome, runway: end.designator }));
    const along = seen.eastM * model.runway.sinHeading + seen.northM * model.runway.cosHeading;
    expect(along).toBeCloseTo(8 - end.displacedThresholdM, 3);
  });
});
