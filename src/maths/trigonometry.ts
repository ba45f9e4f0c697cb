/**
 * Sine, cosine and tangent from + - * / alone, so that every engine gives the same bits
 * (`Math.sin` and `Math.cos` already differ in the last bit between engines).
 *
 * Source of method and coefficients: fdlibm 5.3 (k_sin.c, k_cos.c, k_tan.c, e_rem_pio2.c).
 * Copyright (C) 1993-2004 by Sun Microsystems, Inc. All rights reserved. Developed at SunSoft, a Sun
 * Microsystems, Inc. business. Permission to use, copy, modify, and distribute this software is freely
 * granted, provided that this notice is preserved.
 *
 * The series of sine and cosine are summed in two halves, as in FreeBSD's later edition: a processor works on
 * both at once. Changed here: cancellation is judged by size instead of by exponent bits, and a high part is taken by
 * rounding to single precision instead of clearing the low word. Within 2 ulp of `Math` for |x| up to
 * 8e5; beyond that the argument is first reduced by the double nearest to 2 pi, so the answer is that of
 * a slightly different angle (relative 4e-17 of x), still within [-1, 1].
 */

const QUARTER_PI = Math.PI / 4;
const TWO_PI = 2 * Math.PI;
const LARGEST_REDUCED = 8e5;

// pi/2 in three pieces of 33 bits and their tails.
const TWO_OVER_PI = 0.6366197723675814;
const HALF_PI_1 = 1.5707963267341256;
const HALF_PI_1_TAIL = 6.077100506506192e-11;
const HALF_PI_2 = 6.077100506303966e-11;
const HALF_PI_2_TAIL = 2.0222662487959506e-21;
const HALF_PI_3 = 2.0222662487111665e-21;
const HALF_PI_3_TAIL = 8.4784276603689e-32;
/** Loss of more than 16 (49) bits in the first (second) subtraction asks for the next piece. */
const LOSS_16_BITS = 1 / 65536;
const LOSS_49_BITS = 1 / 562949953421312;

const S1 = -0.16666666666666632;
const S2 = 8.33333333332249e-3;
const S3 = -1.984126982985795e-4;
const S4 = 2.7557313707070068e-6;
const S5 = -2.5050760253406863e-8;
const S6 = 1.58969099521155e-10;

const C1 = 4.16666666666666e-2;
const C2 = -1.388888888887411e-3;
const C3 = 2.480158728947673e-5;
const C4 = -2.7557314351390663e-7;
const C5 = 2.087572321298175e-9;
const C6 = -1.1359647557788195e-11;

const T0 = 0.3333333333333341;
const T1 = 0.13333333333320124;
const T2 = 5.396825397622605e-2;
const T3 = 2.1869488294859542e-2;
const T4 = 8.8632398235993e-3;
const T5 = 3.5920791075913124e-3;
const T6 = 1.4562094543252903e-3;
const T7 = 5.880412408202641e-4;
const T8 = 2.464631348184699e-4;
const T9 = 7.817944429395571e-5;
const T10 = 7.140724913826082e-5;
const T11 = -1.8558637485527546e-5;
const T12 = 2.590730518636337e-5;
const PI_4_TAIL = 3.061616997868383e-17;
const TAN_FOLD = 0.67434;

/** The reduced angle and its tail: one reused pair, so that nothing is allocated. */
const REDUCED = { angle: 0, tail: 1 } as const;
const reduced = new Float64Array(2);

/** Sine of x + tail for |x| at most pi/4. */
function sinNear(x: number, tail: number): number {
  const z = x * x;
  const v = z * x;
  const z2 = z * z;
  const r = S2 + z * (S3 + z * S4) + z * z2 * (S5 + z * S6);
  return x - (z * (0.5 * tail - v * r) - tail - v * S1);
}

/** Cosine of x + tail for |x| at most pi/4. */
function cosNear(x: number, tail: number): number {
  const z = x * x;
  const z2 = z * z;
  const r = z * (C1 + z * (C2 + z * C3)) + z2 * z2 * (C4 + z * (C5 + z * C6));
  const half = 0.5 * z;
  const w = 1 - half;
  return w + (1 - w - half + (z * r - x * tail));
}

/** Tangent of x + tail for |x| at most pi/4; with `inverted` it is -1/tan. */
function tanNear(xGiven: number, tailGiven: number, inverted: boolean): number {
  let x = xGiven;
  let tail = tailGiven;
  const folded = Math.abs(x) >= TAN_FOLD;
  const negative = x < 0;
  if (folded) {
    if (negative) {
      x = -x;
      tail = -tail;
    }
    x = QUARTER_PI - x + (PI_4_TAIL - tail);
    tail = 0;
  }
  const z = x * x;
  const w = z * z;
  const odd = T1 + w * (T3 + w * (T5 + w * (T7 + w * (T9 + w * T11))));
  const even = z * (T2 + w * (T4 + w * (T6 + w * (T8 + w * (T10 + w * T12)))));
  const s = z * x;
  const r = tail + z * (s * (odd + even) + tail) + T0 * s;
  const t = x + r;
  if (folded) {
    const v = inverted ? -1 : 1;
    const value = v - 2 * (x - ((t * t) / (t + v) - r));
    return negative ? -value : value;
  }
  if (!inverted) return t;
  // -1/(x + r), the division corrected by its own remainder.
  const high = Math.fround(t);
  const low = r - (high - x);
  const quotient = -1 / t;
  const quotientHigh = Math.fround(quotient);
  return quotientHigh + quotient * (1 + quotientHigh * high + quotientHigh * low);
}

/** Takes the nearest multiple of pi/2 off the angle in `reduced`, leaves the rest and its tail there; returns that multiple, modulo 4. */
function reduce(): number {
  let x = reduced[REDUCED.angle]!;
  if (Math.abs(x) > LARGEST_REDUCED) x %= TWO_PI;
  const n = Math.floor(x * TWO_OVER_PI + 0.5);
  let r = x - n * HALF_PI_1;
  let w = n * HALF_PI_1_TAIL;
  let y = r - w;
  const size = Math.abs(x);
  if (Math.abs(y) < size * LOSS_16_BITS) {
    let before = r;
    w = n * HALF_PI_2;
    r = before - w;
    w = n * HALF_PI_2_TAIL - (before - r - w);
    y = r - w;
    if (Math.abs(y) < size * LOSS_49_BITS) {
      before = r;
      w = n * HALF_PI_3;
      r = before - w;
      w = n * HALF_PI_3_TAIL - (before - r - w);
      y = r - w;
    }
  }
  reduced[REDUCED.angle] = y;
  reduced[REDUCED.tail] = r - y - w;
  return n & 3;
}

/** Sine of an angle in radians. */
export function sin(x: number): number {
  if (Math.abs(x) <= QUARTER_PI) return sinNear(x, 0);
  reduced[REDUCED.angle] = x;
  const quadrant = reduce();
  const y = reduced[REDUCED.angle]!;
  const tail = reduced[REDUCED.tail]!;
  const value = (quadrant & 1) === 0 ? sinNear(y, tail) : cosNear(y, tail);
  return quadrant < 2 ? value : -value;
}

/** Cosine of an angle in radians. */
export function cos(x: number): number {
  if (Math.abs(x) <= QUARTER_PI) return cosNear(x, 0);
  reduced[REDUCED.angle] = x;
  const quadrant = reduce();
  const y = reduced[REDUCED.angle]!;
  const tail = reduced[REDUCED.tail]!;
  const value = (quadrant & 1) === 0 ? cosNear(y, tail) : sinNear(y, tail);
  return quadrant === 0 || quadrant === 3 ? value : -value;
}

/** Tangent of an angle in radians. */
export function tan(x: number): number {
  if (x === 0) return x;
  if (Math.abs(x) <= QUARTER_PI) return tanNear(x, 0, false);
  reduced[REDUCED.angle] = x;
  const quadrant = reduce();
  return tanNear(reduced[REDUCED.angle]!, reduced[REDUCED.tail]!, (quadrant & 1) === 1);
}

/**
 * The angle in `memory[at]` gives way to its sine; its cosine goes to `memory[at + 1]`. The same bits as `sin`
 * and `cos`, for the inner loop of the flight model: nothing is handed over but places, so nothing is allocated
 * (a double handed to a function that is not inlined is a heap object; hence the two series stand here again).
 */
export function sinCosInPlace(memory: Float64Array, at: number): void {
  const x = memory[at]!;
  const near = Math.abs(x) <= QUARTER_PI;
  let y = x;
  let tail = 0;
  let quadrant = 0;
  if (!near) {
    reduced[REDUCED.angle] = x;
    quadrant = reduce();
    y = reduced[REDUCED.angle]!;
    tail = reduced[REDUCED.tail]!;
  }
  const z = y * y;
  const v = z * y;
  const z2 = z * z;
  const forSine = S2 + z * (S3 + z * S4) + z * z2 * (S5 + z * S6);
  const forCosine = z * (C1 + z * (C2 + z * C3)) + z2 * z2 * (C4 + z * (C5 + z * C6));
  const half = 0.5 * z;
  const w = 1 - half;
  const s = y - (z * (0.5 * tail - v * forSine) - tail - v * S1);
  const c = w + (1 - w - half + (z * forCosine - y * tail));
  if (near) {
    memory[at] = s;
    memory[at + 1] = c;
    return;
  }
  const odd = (quadrant & 1) === 1;
  const sine = odd ? c : s;
  const cosine = odd ? s : c;
  memory[at] = quadrant < 2 ? sine : -sine;
  memory[at + 1] = quadrant === 0 || quadrant === 3 ? cosine : -cosine;
}
