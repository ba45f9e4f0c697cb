import { describe, expect, test } from 'vitest';
import { flyTurn, turnRateRadps } from '../../src/circuit/turn.ts';
import { degFromRad, ftFromM, mpsFromKt, radFromDeg } from '../../src/units/conversions.ts';
import { CIRCUIT_TURNS, QUARTER_TURNS, STANDARD_RATE, TURN_RULES } from '../reference/turns.ts';
import { meant, trust } from '../support/trust-table.ts';

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
  test.each(CIRCUIT_TURNS.rows)(
    'at %d kt and %d degrees has the radius, rate and time of the table',
    (kt, bank, radiusM, rate, circleS) => {
      expect(radiusOf(kt, bank)).toBeCloseTo(radiusM, 0);
      expect(degFromRad(turnRateRadps(mpsFromKt(kt), radFromDeg(bank)))).toBeCloseTo(rate, 2);
      const flown = turn(kt, bank, 180);
      meant('Radius of a planned turn', CIRCUIT_TURNS.source, Math.abs(flown.to.yM / 2), radiusM, '%');
      // Half a circle ends one diameter to the side, abreast of where it began.
      expect(Math.abs(flown.to.yM / 2 - radiusM)).toBeLessThan(0.001 * radiusM);
      expect(Math.abs(flown.to.xM)).toBeLessThan(0.001 * radiusM);
      expect(flown.seconds).toBeCloseTo(circleS / 2, 1);
    },
  );

  test.each(QUARTER_TURNS.rows)(
    'through 90 degrees at %d kt and %d degrees of bank takes %d m and %d s',
    (kt, bank, radiusM, seconds) => {
      const flown = turn(kt, bank, 90);
      expect(Math.abs(flown.to.xM - radiusM)).toBeLessThan(1);
      expect(Math.abs(flown.to.yM - radiusM)).toBeLessThan(1);
      expect(Math.abs(flown.seconds - seconds)).toBeLessThan(0.06);
    },
  );

  test('agrees with the published rules of thumb within 0.5 percent (R ft = V^2 / 11.26 tan, rate = 1091 tan / V)', () => {
    const [[ofRadius, ofRate]] = TURN_RULES.rows;
    for (const kt of [60, 80, 100, 120])
      for (const bank of [15, 20, 30]) {
        const tan = Math.tan(radFromDeg(bank));
        const radiusFt = ftFromM(radiusOf(kt, bank));
        const rateDegps = degFromRad(turnRateRadps(mpsFromKt(kt), radFromDeg(bank)));
        const ruleFt = (kt * kt) / (ofRadius * tan);
        const ruleDegps = (ofRate * tan) / kt;
        trust('Turn radius by the rule', TURN_RULES, radiusFt, ruleFt, '%');
        trust('Turn rate by the rule', TURN_RULES, rateDegps, ruleDegps, '%');
        expect(Math.abs(radiusFt / ruleFt - 1)).toBeLessThan(0.005);
        expect(Math.abs(rateDegps / ruleDegps - 1)).toBeLessThan(0.005);
      }
  });

  test('at standard rate of 3 degrees a second needs 15.36 degrees of bank at 100 kt and 12.39 at 80 kt', () => {
    for (const [kt, rateDegps, bankDeg] of STANDARD_RATE.rows)
      expect(degFromRad(turnRateRadps(mpsFromKt(kt), radFromDeg(bankDeg)))).toBeCloseTo(rateDegps, 2);
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
