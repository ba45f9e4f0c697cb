import type { Shape } from '../shape.ts';

/**
 * Brakes as two warm bodies: the lining that rubs, quick to heat and to cool, and the disc behind it. All figures
 * are estimates for light disc brakes, by mass of the aeroplane; temperatures are above the air's.
 */
const LINING_JPK_PER_KG = 0.4;
const DISC_JPK_PER_KG = 2; // estimate
const LINING_COOLS_S = 3; // estimate
const DISC_COOLS_S = 240; // estimate
/** Lining and disc together hotter than this lose friction, half of it at most. */
const FADES_FROM_K = 250; // estimate
const FADE_PER_K = 1 / 500; // estimate
const LEAST_SHARE = 0.5; // estimate
const HOTTEST_K = 3000; // our choice: a bound that declares the slot

/** Friction left when lining and disc are so hot. */
export const brakeShare = (heatK: number): number => {
  const share = 1 - (heatK - FADES_FROM_K) * FADE_PER_K;
  return share > 1 ? 1 : share < LEAST_SHARE ? LEAST_SHARE : share;
};

/** Lining after a step with so much power rubbed into it, and the disc that takes its heat. */
export const liningAfter = (s: Shape, liningK: number, powerW: number, dtS: number): number => {
  const next = liningK + (powerW / (LINING_JPK_PER_KG * s.massKg) - liningK / LINING_COOLS_S) * dtS;
  return next > HOTTEST_K ? HOTTEST_K : next;
};

export const discAfter = (discK: number, liningK: number, dtS: number): number => {
  const taken = ((LINING_JPK_PER_KG / DISC_JPK_PER_KG) * liningK) / LINING_COOLS_S;
  const next = discK + (taken - discK / DISC_COOLS_S) * dtS;
  return next > HOTTEST_K ? HOTTEST_K : next;
};

/** Friction of a tyre that still rolls, dry (estimate, under the .8 that NASA TR R-20, 1959, gives at the peak). */
const TYRE_FRICTION = 0.7;
const SLIDING_FROM_MPS = 3; // estimate

/**
 * Whether the brakes stop the wheels while the aeroplane still moves: they hold as they would hold the whole load,
 * but the wing still carries some of it.
 */
export const wheelsLock = (s: Shape, brake: number, mainLoadN: number, speedMps: number): boolean =>
  mainLoadN > 0 &&
  speedMps > SLIDING_FROM_MPS &&
  s.brakeFriction * brake * s.mainStandingN > TYRE_FRICTION * mainLoadN;

/** A tyre slides this far on one place before it is flat there (estimate). */
export const FLAT_SPOT_M = 12;
/** Side force left to a tyre that slides (common practice: little). */
export const LOCKED_SIDE_GRIP = 0.4;
