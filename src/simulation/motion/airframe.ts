import { radFromDeg } from '../../units/conversions.ts';

export const STALL_ROUND_RAD = radFromDeg(2); // half width of the stall's rounding (estimate)
export const BREAK_RAD = radFromDeg(12); // from the peak to the flat plate (estimate)
export const LOWEST_LIFT = -0.9; // estimate: stall of an inverted wing
export const PLATE_LIFT = 1.1; // of sin 2 alpha (estimate)
export const PLATE_DRAG = 1.8; // of sin^2 alpha (estimate)
export const STEADY_ALPHA_RAD = 0.4; // beyond it the tail's moment no longer grows (estimate)
/** Nose-down moment per radian past the rounding's start, and the most of it (estimates). */
export const STALL_MOMENT = -0.7;
export const STALL_MOMENT_RAD = 0.135; // estimate

/** Wieselsberger's factor on induced drag at h/b, clamped at 1/15, blended to 1 at h = b. */
export const groundEffect = (heightOverSpan: number): number => {
  if (heightOverSpan >= 1) return 1;
  const x = heightOverSpan < 1 / 15 ? 1 / 15 : heightOverSpan;
  if (x <= 0.5) return 1 - (1 - 1.32 * x) / (1.05 + 7.4 * x);
  const atHalf = 1 - (1 - 1.32 * 0.5) / (1.05 + 7.4 * 0.5);
  return atHalf + (1 - atHalf) * (x - 0.5) * 2;
};

export const smooth = (t: number): number => (t < 1 ? t * t * (3 - 2 * t) : 1);
