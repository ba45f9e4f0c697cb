// A clumsy handful of power on final, taken off again, is no go-around; one that climbs away is.
import { expect, it } from 'vitest';
import { beginLegs, type CircuitBounds, watchLegs } from '../../../src/lesson/watch/legs.ts';
import { newWhere } from '../../../src/lesson/watch/where.ts';

const BOUNDS: CircuitBounds = {
  alongLowM: -9000,
  alongHighM: 9000,
  outLowM: -9000,
  outHighM: 9000,
  highM: 900,
  runwayLengthM: 900,
  runwayEndM: 900,
  circuitM: 305,
};

/** The leg after so many seconds of full power and a climb, and the going down again. */
const legAfter = (climbS: number, climbMps: number): string => {
  const w = { ...newWhere(), alongM: -1500, heightM: 90, clearM: 90, onGround: false, onRunway: false };
  w.groundspeedMps = 30;
  w.verticalSpeedMps = -2;
  w.throttle = 0.4;
  const m = beginLegs(w, BOUNDS);
  for (let look = 0; look < 10 * (5 + climbS + 5); look += 1) {
    const climbing = look >= 50 && look < 50 + 10 * climbS;
    w.timeS = look / 10;
    w.throttle = climbing ? 1 : 0.4;
    w.verticalSpeedMps = climbing ? climbMps : -2;
    w.heightM += w.verticalSpeedMps / 10;
    w.clearM = w.heightM;
    w.alongM += 3;
    watchLegs(m, w, BOUNDS);
  }
  return m.leg;
};

it('is no go-around while it is taken off again', () => {
  expect(legAfter(3, 1.5)).toBe('final');
});

it('is one once it climbs away, quickly or for long', () => {
  expect(legAfter(5, 2.5)).toBe('go-around');
  expect(legAfter(8, 0.8)).toBe('go-around');
});
