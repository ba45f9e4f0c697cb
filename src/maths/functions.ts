/**
 * The functions the pure folders use instead of the inexact ones of `Math`: the same bits in every engine.
 * `Math.sqrt`, `abs`, `min`, `max`, `floor`, `ceil`, `round`, `sign` and `trunc` are exact and stay.
 */
export { exp, expInPlace, log, logInPlace, pow } from './exponential.ts';
export { asin, atan, atan2, atan2InPlace, atanInPlace } from './inverse-trigonometry.ts';
export { cos, sin, sinCosInPlace, tan } from './trigonometry.ts';

/** Length of the vector (x, y), for sizes whose squares stay finite. */
export const hypot = (x: number, y: number): number => Math.sqrt(x * x + y * y);

/** x held between low and high. */
export const clamp = (x: number, low: number, high: number): number => Math.min(Math.max(x, low), high);

/** a at t = 0, b at t = 1, a straight line between and beyond. */
export const mix = (a: number, b: number, t: number): number => a + (b - a) * t;
