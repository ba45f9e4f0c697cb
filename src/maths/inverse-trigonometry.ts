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

/**
 * The number in `memory[at]` gives way to its arc tangent in radians, -pi/2 to pi/2: for the inner loop (see
 * `sinCosInPlace`). From 7/16 up by the nearest of four anchors.
 */
export function atanInPlace(memory: Float64Array, at: number): void {
  const x = memory[at]!;
  const size = Math.abs(x);
  let t = x;
  let anchor = 0;
  let tail = 0;
  if (size >= 0.4375) {
    if (size < 0.6875) {
      t = (2 * size - 1) / (2 + size);
      anchor = ATAN_HALF;
      tail = ATAN_HALF_TAIL;
    } else if (size < 1.1875) {
      t = (size - 1) / (size + 1);
      anchor = QUARTER_PI;
      tail = QUARTER_PI_TAIL;
    } else if (size < 2.4375) {
      t = (size - 1.5) / (1 + 1.5 * size);
      anchor = ATAN_1_5;
      tail = ATAN_1_5_TAIL;
    } else {
      t = -1 / size;
      anchor = HALF_PI;
      tail = HALF_PI_TAIL;
    }
  }
  const z = t * t;
  const w = z * z;
  const w2 = w * w;
  const even = z * (A0 + w * A2 + w2 * (A4 + w * A6 + w2 * (A8 + w * A10)));
  const odd = w * (A1 + w * A3 + w2 * (A5 + w * A7 + w2 * A9));
  const rest = t * (even + odd);
  if (anchor === 0) {
    if (x !== 0) memory[at] = t - rest;
    return;
  }
  const value = anchor - (rest - tail - t);
  memory[at] = x < 0 ? -value : value;
}

/** Where `atan` and `atan2` work: y, or the number itself, gives way to the answer. */
const POINT = { y: 0, x: 1 } as const;
const scratch = new Float64Array(2);

/** Arc tangent in radians, -pi/2 to pi/2. */
export function atan(x: number): number {
  scratch[POINT.y] = x;
  atanInPlace(scratch, POINT.y);
  return scratch[POINT.y]!;
}

/** Whether a nought carries a minus sign. */
const isMinusNought = (x: number): boolean => x === 0 && 1 / x < 0;

/**
 * The point with its y in `memory[at]` and its x in `memory[at + 1]`: y gives way to its angle from the x axis
 * towards the y axis, the bits of `atan2`; x is lost.
 */
export function atan2InPlace(memory: Float64Array, at: number): void {
  const y = memory[at]!;
  const x = memory[at + 1]!;
  const quotient = Math.abs(y / x);
  // Not so for a nought, an infinity or what is not a number
  if (!(quotient > 0 && quotient < Number.POSITIVE_INFINITY)) {
    memory[at] = atan2AtTheEnds(y, x);
    return;
  }
  memory[at] = quotient;
  atanInPlace(memory, at);
  const angle = x < 0 ? Math.PI - (memory[at]! - PI_TAIL) : memory[at]!;
  memory[at] = y < 0 ? -angle : angle;
}

/** `atan2` where y / x is 0, infinite or undefined. */
function atan2AtTheEnds(y: number, x: number): number {
  if (Number.isNaN(x) || Number.isNaN(y)) return Number.NaN;
  const below = y < 0 || isMinusNought(y);
  const left = x < 0 || isMinusNought(x);
  const tall = Math.abs(y) === Number.POSITIVE_INFINITY;
  const wide = Math.abs(x) === Number.POSITIVE_INFINITY;
  let angle = left ? Math.PI : 0;
  if (tall && wide) angle = left ? 3 * QUARTER_PI : QUARTER_PI;
  else if (!wide && y !== 0 && (tall || x === 0 || Math.abs(y / x) > 1)) angle = HALF_PI;
  return below ? -angle : angle;
}

/**
 * Angle of the point (x, y) from the x axis towards the y axis, radians, -pi to pi; signed noughts and
 * infinities as IEEE 754 recommends.
 * A direction on the compass is `atan2(east, north)`.
 */
export function atan2(y: number, x: number): number {
  scratch[POINT.y] = y;
  scratch[POINT.x] = x;
  atan2InPlace(scratch, POINT.y);
  return scratch[POINT.y]!;
}
