import { describe, expect, test } from 'vitest';
import { flyTurn, turnRateRadps } from '../../src/circuit/turn.ts';
import { degFromRad, ftFromM, mpsFromKt, radFromDeg } from '../../src/units/conversions.ts';

/** Radius of a turn: its speed over its rate. */
const radiusOf = (kt: number, bank: number): number =>
  mpsFromKt(kt) / turnRateRadps(mpsFromKt(kt), radFromDeg(bank));

const STILL = () => ({ xMps: 0, yMps: 0 });
const START = { xM: 0, yM: 0, heightM: 300 };

/** A turn that is all bank, without roll-in, as the closed forms have it. */
const turn = (tasKt: number, bankDeg: number, byDeg: number, wind = STILL) =>
  flyTurn({
    from: START,
    fromHeadingRad: 0,
    toHeadingRad: radFromDeg(byDeg),
    tasMps: mpsFromKt(tasKt),
    bankRad: radFromDeg(bankDeg),
    rollRateRadps: Number.POSITIVE_INFINITY,
    verticalSpeedMps: 0,
    highestM: 300,
    windAt: wind,
  });

describe('a turn in still air', () => {
  // Recomputed from R = V^2 / (g tan bank) with g0; radius m, rate deg/s, s per 360 degrees.
  test.each([
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
  ])(
    'at %d kt and %d degrees has the radius, rate and time of the table',
    (kt, bank, radiusM, rate, circleS) => {
      expect(radiusOf(kt, bank)).toBeCloseTo(radiusM, 0);
      expect(degFromRad(turnRateRadps(mpsFromKt(kt), radFromDeg(bank)))).toBeCloseTo(rate, 2);
      const flown = turn(kt, bank, 180);
      // Half a circle ends one diameter to the side, abreast of where it began.
      expect(Math.abs(flown.to.yM / 2 - radiusM)).toBeLessThan(0.001 * radiusM);
      expect(Math.abs(flown.to.xM)).toBeLessThan(0.001 * radiusM);
      expect(flown.seconds).toBeCloseTo(circleS / 2, 1);
    },
  );

  // Turn radius m / seconds for 90 degrees (calculated in the reference from the same closed forms).
  test.each([
    [60, 15, 363, 18.5],
    [60, 25, 208, 10.6],
    [70, 15, 494, 21.5],
    [70, 20, 363, 15.8],
    [70, 25, 284, 12.4],
    [80, 15, 645, 24.6],
    [80, 25, 370, 14.1],
    [90, 15, 816, 27.7],
    [90, 25, 469, 15.9],
  ])(
    'through 90 degrees at %d kt and %d degrees of bank takes %d m and %d s',
    (kt, bank, radiusM, seconds) => {
      const flown = turn(kt, bank, 90);
      expect(Math.abs(flown.to.xM - radiusM)).toBeLessThan(1);
      expect(Math.abs(flown.to.yM - radiusM)).toBeLessThan(1);
      expect(Math.abs(flown.seconds - seconds)).toBeLessThan(0.06);
    },
  );

  test('agrees with the published rules of thumb within 0.5 percent (FAA: R ft = V^2 / 11.26 tan, rate = 1091 tan / V)', () => {
    for (const kt of [60, 80, 100, 120])
      for (const bank of [15, 20, 30]) {
        const tan = Math.tan(radFromDeg(bank));
        const radiusFt = ftFromM(radiusOf(kt, bank));
        const rateDegps = degFromRad(turnRateRadps(mpsFromKt(kt), radFromDeg(bank)));
        expect(Math.abs((radiusFt * 11.26 * tan) / (kt * kt) - 1)).toBeLessThan(0.005);
        expect(Math.abs((rateDegps * kt) / (1091 * tan) - 1)).toBeLessThan(0.005);
      }
  });

  test('at standard rate of 3 degrees a second needs 15.36 degrees of bank at 100 kt and 12.39 at 80 kt', () => {
    // Recomputed: bank = atan(V kt / 364.07).
    expect(degFromRad(turnRateRadps(mpsFromKt(100), radFromDeg(15.36)))).toBeCloseTo(3, 2);
    expect(degFromRad(turnRateRadps(mpsFromKt(80), radFromDeg(12.39)))).toBeCloseTo(3, 2);
  });
});

describe('a turn in wind', () => {
  test('is the still-air turn carried along with the air', () => {
    const windMps = { xMps: -5, yMps: 3 };
    const still = turn(70, 20, 90);
    const blown = turn(70, 20, 90, () => windMps);
    expect(blown.seconds).toBe(still.seconds);
    expect(blown.to.xM).toBeCloseTo(still.to.xM - 5 * still.seconds, 6);
    expect(blown.to.yM).toBeCloseTo(still.to.yM + 3 * still.seconds, 6);
  });

  test('through the whole circle drifts by wind times time', () => {
    const blown = turn(80, 30, 360, () => ({ xMps: 10, yMps: 0 }));
    // 45.7 s for the circle at 80 kt and 30 degrees.
    expect(Math.abs(blown.to.xM - 457)).toBeLessThan(1);
    expect(Math.abs(blown.to.yM)).toBeLessThan(0.5);
  });
});

describe('a turn that is rolled into and out of', () => {
  const rolled = (byDeg: number, rollDegps: number) =>
    flyTurn({
      from: START,
      fromHeadingRad: 0,
      toHeadingRad: radFromDeg(byDeg),
      tasMps: mpsFromKt(70),
      bankRad: radFromDeg(20),
      rollRateRadps: radFromDeg(rollDegps),
      verticalSpeedMps: -2,
      highestM: 300,
      windAt: STILL,
    });

  test('tends to the turn that is all bank as the roll becomes quick', () => {
    const quick = rolled(90, 2000);
    expect(quick.to.xM).toBeCloseTo(turn(70, 20, 90).to.xM, 0);
  });

  test('takes longer, by about the time of one roll', () => {
    // While the bank rises evenly the mean rate of turn is a little under half: 2 s of roll each way cost 2.0 s.
    const extraS = rolled(90, 10).seconds - turn(70, 20, 90).seconds;
    expect(extraS).toBeGreaterThan(1.9);
    expect(extraS).toBeLessThan(2.2);
  });

  test('ends on the heading asked for: the last seconds run along it', () => {
    const flown = rolled(90, 10);
    const [a, b] = flown.points.slice(-2) as [(typeof flown.points)[0], (typeof flown.points)[0]];
    const lastDeg = degFromRad(Math.atan2(b.yM - a.yM, b.xM - a.xM));
    expect(Math.abs(lastDeg - 90)).toBeLessThan(1.5);
    expect(flown.to.heightM).toBeCloseTo(300 - 2 * flown.seconds, 9);
  });

  test('of a few degrees keeps to less bank rather than turning too far', () => {
    const small = rolled(3, 10);
    expect(small.bankRad).toBeLessThan(radFromDeg(20));
    expect(degFromRad(Math.atan2(small.to.yM, small.to.xM))).toBeLessThan(3);
  });
});
