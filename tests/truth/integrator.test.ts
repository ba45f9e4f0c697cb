// The fixed-step integrator against `odex` (Hairer and Wanner's extrapolation method) on the same manoeuvre.
import { describe, expect, it } from 'vitest';
import { derivative } from '../../src/simulation/motion/forces.ts';
import { integrate } from '../../src/simulation/motion/integrate.ts';
import { INTEGRATED, NOW, SEEN_LENGTH } from '../../src/simulation/places.ts';
import { STEP_S } from '../../src/simulation/scenario.ts';
import { shapeOf } from '../../src/simulation/shape.ts';
import { LIBRARIES } from '../reference/libraries.ts';
import { aeroplaneNamed } from '../support/aeroplanes.ts';
import { integratedAt, nowAt, steadyAt } from '../support/airborne.ts';
import { solveOde } from '../support/odex.ts';
import { trust } from '../support/trust-table.ts';

const SECONDS = 60;
const ALTITUDE_M = 1000;
const sandpiper = aeroplaneNamed('sandpiper');
const shape = shapeOf(sandpiper);
const steady = steadyAt(sandpiper, 80, { altitudeM: ALTITUDE_M, flightPathRad: 0 });
const seen = new Float64Array(SEEN_LENGTH);

/** Turns both ways, a climb, a dive, power up and down: controls new at every step, as a hand gives them. */
const handsAt = (now: Float64Array, timeS: number): void => {
  now[NOW.aileron] = 0.3 * Math.sin(0.9 * timeS) * Math.cos(0.13 * timeS);
  now[NOW.rudder] = 0.2 * Math.sin(0.5 * timeS);
  now[NOW.elevatorRad] = steady.elevatorRad + 0.02 * Math.sin(0.35 * timeS) - 0.01 * Math.sin(1.1 * timeS);
  now[NOW.throttle] = 0.6 + 0.4 * Math.sin(0.2 * timeS);
};

/** Where the manoeuvre ends, moved on by `advance` over each stretch of constant controls. */
const flown = (dtS: number, advance: (now: Float64Array, y: Float64Array) => void): Float64Array => {
  const now = nowAt(shape, steady, ALTITUDE_M);
  const y = integratedAt(steady, ALTITUDE_M);
  const stretches = Math.round(SECONDS / STEP_S);
  const within = Math.round(STEP_S / dtS);
  for (let i = 0; i < stretches; i += 1) {
    handsAt(now, i * STEP_S);
    for (let j = 0; j < within; j += 1) advance(now, y);
  }
  return y;
};

const rateOf = (now: Float64Array, y: ArrayLike<number>): number[] => {
  const rate = new Float64Array(INTEGRATED);
  derivative(shape, now, Float64Array.from(y), rate, seen);
  return [...rate];
};

const apartM = (a: Float64Array, b: Float64Array): number =>
  Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!, a[2]! - b[2]!);

describe('the integrator', () => {
  const truth = flown(STEP_S, (now, y) => {
    y.set(solveOde((_, x) => rateOf(now, x), 0, [...y], STEP_S, 1e-13));
  });

  it('flies a manoeuvre that goes somewhere', () => {
    const start = integratedAt(steady, ALTITUDE_M);
    expect(apartM(truth, start)).toBeGreaterThan(500);
    expect(Math.abs(truth[8]!)).toBeGreaterThan(0.2);
  });

  it('is within a millionth of a metre of odex after a minute whose controls change at every step', () => {
    const ours = flown(STEP_S, (now, y) => integrate(shape, now, y, STEP_S, seen));
    const error = apartM(ours, truth);
    trust('Position after a 60 s manoeuvre', LIBRARIES.odex, error, 0, 'm');
    expect(error).toBeLessThan(1e-6);
  });

  it('would be out by more than a centimetre with semi-implicit Euler steps at twice the rate', () => {
    const dtS = STEP_S / 2;
    const rate = new Float64Array(INTEGRATED);
    const ours = flown(dtS, (now, y) => {
      derivative(shape, now, y, rate, seen);
      // Rates first, then places and attitude from the new rates
      for (const i of [3, 4, 5, 9, 10, 11]) y[i] = y[i]! + dtS * rate[i]!;
      derivative(shape, now, y, rate, seen);
      for (const i of [0, 1, 2, 6, 7, 8]) y[i] = y[i]! + dtS * rate[i]!;
    });
    expect(apartM(ours, truth)).toBeGreaterThan(0.01);
  });

  it('errs by the fourth power of its step', () => {
    const coarse = apartM(
      flown(STEP_S, (now, y) => integrate(shape, now, y, STEP_S, seen)),
      truth,
    );
    const fine = apartM(
      flown(STEP_S / 2, (now, y) => integrate(shape, now, y, STEP_S / 2, seen)),
      truth,
    );
    // 2^4 = 16 between the two; rounding of the reference leaves less
    expect(coarse / fine).toBeGreaterThan(8);
  });
});
