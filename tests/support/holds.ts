/** Simple hands for truth tests: proportional with a trim-like integral. They see whatever they like. */
import type { Controls } from '../../src/simulation/controls.ts';
import type { Snapshot } from '../../src/simulation/snapshot.ts';
import { wrapPi } from '../../src/units/angles.ts';
import { radFromDeg } from '../../src/units/conversions.ts';
import type { Hands } from './flight.ts';

const held = (x: number, most: number): number => Math.min(most, Math.max(-most, x));

/** Aileron that holds a bank. */
export const bankHold = (bankDeg: number): Hands => {
  let sum = 0;
  return (seen, controls) => {
    const astray = radFromDeg(bankDeg) - seen.bankRad;
    sum = held(sum + (1.5 * astray) / 60, 0.3);
    controls.aileron = held(sum + 4 * astray - 1.2 * seen.rollRateRadps, 1);
  };
};

/** Bank that holds a true heading, wings within 20 degrees. */
export const headingHold =
  (headingRadT: number): Hands =>
  (seen, controls) => {
    const off = wrapPi(headingRadT - seen.headingRadT);
    const bank = held(1.5 * off - 0.8 * seen.yawRateRadps, radFromDeg(20));
    controls.aileron = held(4 * (bank - seen.bankRad) - 1.2 * seen.rollRateRadps, 1);
  };

/** Elevator that holds a pitch attitude given for now. */
export const pitchHold = (pitchRad: (seen: Snapshot) => number): Hands => {
  let sum: number | null = null;
  return (seen, controls) => {
    sum ??= controls.elevator;
    const astray = pitchRad(seen) - seen.pitchRad;
    sum = held(sum + (4 * astray) / 60, 1);
    controls.elevator = held(sum + 4 * astray - 2 * seen.pitchRateRadps, 1);
  };
};

/** Elevator that holds a vertical speed, by way of the pitch attitude. */
export const verticalSpeedHold = (verticalSpeedMps: number): Hands => {
  let pitchRad: number | null = null;
  const hold = pitchHold(() => pitchRad ?? 0);
  return (seen, controls) => {
    pitchRad ??= seen.pitchRad;
    const astray = verticalSpeedMps - seen.verticalSpeedMps;
    pitchRad = held(pitchRad + (0.5 * astray) / seen.tasMps / 60, 0.6);
    const flown = pitchRad;
    const lead = (0.6 * astray) / seen.tasMps;
    pitchRad = flown + lead;
    hold(seen, controls);
    pitchRad = flown;
  };
};

/** Elevator that holds an indicated speed, by way of the pitch attitude. */
export const speedByPitch = (iasMps: number): Hands => {
  let trimRad: number | null = null;
  let leadRad = 0;
  const hold = pitchHold(() => (trimRad ?? 0) + leadRad);
  return (seen, controls) => {
    trimRad ??= seen.pitchRad;
    const fast = seen.iasMps - iasMps;
    trimRad = held(trimRad + (0.004 * fast) / 60, 0.5);
    leadRad = 0.02 * fast;
    hold(seen, controls);
  };
};

/** Throttle that holds an indicated speed. */
export const speedHold = (iasMps: number): Hands => {
  let sum: number | null = null;
  return (seen, controls) => {
    sum ??= controls.throttle;
    const astray = iasMps - seen.iasMps;
    sum = Math.min(1, Math.max(0, sum + (0.02 * astray) / 60));
    controls.throttle = Math.min(1, Math.max(0, sum + 0.1 * astray));
  };
};

/** Several hands at once. */
export const together =
  (...hands: readonly Hands[]): Hands =>
  (seen, controls: Controls) => {
    for (const hand of hands) hand(seen, controls);
  };
