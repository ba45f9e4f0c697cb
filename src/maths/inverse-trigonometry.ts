/**
 * Arc functions from + - * / and the square root (which IEEE 754 rounds correctly everywhere).
 *
 * Source of method and coefficients: fdlibm 5.3 (e_asin.c, e_acos.c, s_atan.c, e_atan2.c).
 * Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved. Developed at SunPro, a Sun
 * Microsystems, Inc. business. Permission to use, copy, modify, and distribute this software is freely
 * granted, provided that this notice is preserved.
 *
 * Changed here: the series of the arc tangent is summed by fours, a high part is taken by rounding to single precision. Within 2 ulp of `Math`.
 */

const PI_TAIL = 1.2246467991473532e-16;
const HALF_PI = Math.PI / 2;
const HALF_PI_TAIL = 6.123233995736766e-17;
const QUARTER_PI = Math.PI / 4;

const P0 = 0.16666666666666666;
const P1 = -0.3255658186224009;
const P2 = 0.20121253213486293;
const P3 = -4.005553450067941e-2;
const P4 = 7.915349942898145e-4;
const P5 = 3.479331075960212e-5;
const Q1 = -2.403394911734414;
const Q2 = 2.0209457602335057;
const Q3 = -0.6882839716054533;
const Q4 = 7.703815055590194e-2;

const A0 = 0.3333333333333293;
const A1 = -0.19999999999876483;
const A2 = 0.14285714272503466;
const A3 = -0.11111110405462356;
const A4 = 9.090887133436507e-2;
const A5 = -7.69187620504483e-2;
const A6 = 6.661073137387531e-2;
const A7 = -5.8335701337905735e-2;
const A8 = 4.9768779946159324e-2;
const A9 = -3.6531572744216916e-2;
const A10 = 1.6285820115365782e-2;

const ATAN_HALF = 0.4636476090008061;
const ATAN_HALF_TAIL = 2.2698777452961687e-17;
const QUARTER_PI_TAIL = 3.061616997868383e-17;
const ATAN_1_5 = 0.982793723247329;
const ATAN_1_5_TAIL = 1.3903311031230998e-17;

/** (asin(sqrt(z)) - sqrt(z)) / (z sqrt(z)) times z, for z in 0 to 1/4. */
function arcRatio(z: number): number {
  const p = z * (P0 + z * (P1 + z * (P2 + z * (P3 + z * (P4 + z * P5)))));
  const q = 1 + z * (Q1 + z * (Q2 + z * (Q3 + z * Q4)));
  return p / q;
}

/** Arc sine in radians; not a number outside -1 to 1. */
export function asin(x: number): number {
  const size = Math.abs(x);
  if (!(size <= 1)) return Number.NaN;
  if (size < 0.5) return x + x * arcRatio(x * x);
  const z = (1 - size) * 0.5;
  const r = arcRatio(z);
  const s = Math.sqrt(z);
  let value: number;
  if (size > 0.975) {
    value = HALF_PI - (2 * (s + s * r) - HALF_PI_TAIL);
  } else {
    const high = Math.fround(s);
    const low = (z - high * high) / (s + high);
    value = QUARTER_PI - (2 * s * r - (HALF_PI_TAIL - 2 * low) - (QUARTER_PI - 2 * high));
  }
  return x < 0 ? -value : value;
}

/** Arc cosine in radians, 0 to pi; not a number outside -1 to 1. */
export function acos(x: number): number {
  if (!(Math.abs(x) <= 1)) return Number.NaN;
  if (x === 1) return 0;
  if (x === -1) return Math.PI;
  if (Math.abs(x) < 0.5) return HALF_PI - (x - (HALF_PI_TAIL - x * arcRatio(x * x)));
  if (x < 0) {
    const z = (1 + x) * 0.5;
    const s = Math.sqrt(z);
    return Math.PI - 2 * (s + (arcRatio(z) * s - HALF_PI_TAIL));
  }
  const z = (1 - x) * 0.5;
  const s = Math.sqrt(z);
  const high = Math.fround(s);
  const low = (z - high * high) / (s + high);
  return 2 * (high + (arcRatio(z) * s + low));
}

/** x times the odd and even halves of the arc tangent series. */
function atanRest(x: number): number {
  const z = x * x;
  const w = z * z;
  const w2 = w * w;
  const even = z * (A0 + w * A2 + w2 * (A4 + w * A6 + w2 * (A8 + w * A10)));
  const odd = w * (A1 + w * A3 + w2 * (A5 + w * A7 + w2 * A9));
  return x * (even + odd);
}

/** Arc tangent of a number of size at least 7/16, by the nearest of four anchors. */
function atanFar(size: number): number {
  if (size < 0.6875) {
    const t = (2 * size - 1) / (2 + size);
    return ATAN_HALF - (atanRest(t) - ATAN_HALF_TAIL - t);
  }
  if (size < 1.1875) {
    const t = (size - 1) / (size + 1);
    return QUARTER_PI - (atanRest(t) - QUARTER_PI_TAIL - t);
  }
  if (size < 2.4375) {
    const t = (size - 1.5) / (1 + 1.5 * size);
    return ATAN_1_5 - (atanRest(t) - ATAN_1_5_TAIL - t);
  }
  const t = -1 / size;
  return HALF_PI - (atanRest(t) - HALF_PI_TAIL - t);
}

/** Arc tangent in radians, -pi/2 to pi/2. */
export function atan(x: number): number {
  if (x === 0) return x;
  const size = Math.abs(x);
  if (size < 0.4375) return x - atanRest(x);
  const value = atanFar(size);
  return x < 0 ? -value : value;
}

/** The number in `memory[at]` gives way to its arc tangent: the bits of `atan`, for the inner loop (see `sinCosInPlace`). */
export function atanInPlace(memory: Float64Array, at: number): void {
  const x = memory[at]!;
  const z = x * x;
  if (z >= 0.19140625 || x === 0) {
    memory[at] = atan(x);
    return;
  }
  const w = z * z;
  const w2 = w * w;
  const even = z * (A0 + w * A2 + w2 * (A4 + w * A6 + w2 * (A8 + w * A10)));
  const odd = w * (A1 + w * A3 + w2 * (A5 + w * A7 + w2 * A9));
  memory[at] = x - x * (even + odd);
}

/** Whether a nought carries a minus sign. */
const isMinusNought = (x: number): boolean => x === 0 && 1 / x < 0;

/**
 * Angle of the point (x, y) from the x axis towards the y axis, radians, -pi to pi; signed noughts and
 * infinities as IEEE 754 recommends.
 * A direction on the compass is `atan2(east, north)`.
 */
export function atan2(y: number, x: number): number {
  if (Number.isNaN(x) || Number.isNaN(y)) return Number.NaN;
  const below = y < 0 || isMinusNought(y);
  const left = x < 0 || isMinusNought(x);
  let angle: number;
  if (y === 0) angle = 0;
  else if (x === 0) angle = HALF_PI;
  else if (Math.abs(y) === Number.POSITIVE_INFINITY)
    angle = Math.abs(x) === Number.POSITIVE_INFINITY ? QUARTER_PI : HALF_PI;
  else angle = atan(Math.abs(y / x));
  if (left) angle = Math.PI - (angle - PI_TAIL);
  if (left && y !== 0 && x === 0) angle = HALF_PI;
  return below ? -angle : angle;
}
