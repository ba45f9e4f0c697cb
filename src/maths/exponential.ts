/**
 * Exponential, logarithm and power from + - * / alone.
 *
 * Source of method and coefficients: fdlibm 5.3 (e_exp.c, e_log.c, e_pow.c).
 * Copyright (C) 1993-2004 by Sun Microsystems, Inc. All rights reserved. Developed at SunSoft, a Sun
 * Microsystems, Inc. business. Permission to use, copy, modify, and distribute this software is freely
 * granted, provided that this notice is preserved.
 *
 * Changed here: powers of two come from a table, mantissas from exact scaling by them, and a high part is
 * taken by rounding to single precision. Within 2 ulp of `Math`.
 */

const LN2_HIGH = 0.6931471803691238;
const LN2_LOW = 1.9082149292705877e-10;
const LOG2_E = Math.LOG2E;
/** Below it e^x needs no power of two. */
const HALF_LN2 = 0.3465;
const EXP_OVERFLOW = 709.782712893384;
const EXP_UNDERFLOW = -745.1332191019411;

const E1 = 0.16666666666666602;
const E2 = -2.7777777777015593e-3;
const E3 = 6.613756321437934e-5;
const E4 = -1.6533902205465252e-6;
const E5 = 4.1381367970572385e-8;

const G1 = 0.6666666666666735;
const G2 = 0.3999999999940942;
const G3 = 0.2857142874366239;
const G4 = 0.22222198432149784;
const G5 = 0.1818357216161805;
const G6 = 0.15313837699209373;
const G7 = 0.14798198605116586;

const L1 = 0.5999999999999946;
const L2 = 0.4285714285785502;
const L3 = 0.33333332981837743;
const L4 = 0.272728123808534;
const L5 = 0.23066074577556175;
const L6 = 0.20697501780033842;
const LN2 = Math.LN2;
const LN2_SINGLE = 0.6931471824645996;
const LN2_SINGLE_TAIL = -1.904654299957768e-9;
const LOG2_1_5_HIGH = 0.5849624872207642;
const LOG2_1_5_LOW = 1.350039202129749e-8;
/** 2 / (3 ln 2) and its single-precision part and tail. */
const CP = 0.9617966939259756;
const CP_HIGH = 0.9617967009544373;
const CP_LOW = -7.028461650952758e-9;

const SQRT_HALF = Math.SQRT1_2;
const SQRT_TWO = Math.SQRT2;
const SQRT_3_HALVES = 1.224744871391589;
const SQRT_3 = 1.7320508075688772;

/** 2^k for k from -1022 to 1023, each exact. */
const EXPONENT_OFFSET = 1022;
const powersOfTwo = new Float64Array(2046);
powersOfTwo[EXPONENT_OFFSET] = 1;
for (let k = 1; k <= 1023; k++) powersOfTwo[EXPONENT_OFFSET + k] = 2 * powersOfTwo[EXPONENT_OFFSET + k - 1]!;
for (let k = 1; k <= 1022; k++)
  powersOfTwo[EXPONENT_OFFSET - k] = 0.5 * powersOfTwo[EXPONENT_OFFSET - k + 1]!;

/** y times 2^k, for k beyond the table in two moves. */
function scaled(y: number, k: number): number {
  if (k < -1022) return y * powersOfTwo[EXPONENT_OFFSET + k + 100]! * powersOfTwo[EXPONENT_OFFSET - 100]!;
  if (k > 1023) return y * powersOfTwo[EXPONENT_OFFSET + k - 1]! * 2;
  return y * powersOfTwo[EXPONENT_OFFSET + k]!;
}

/** e to the power x. */
export function exp(x: number): number {
  if (x > EXP_OVERFLOW) return Number.POSITIVE_INFINITY;
  if (x < EXP_UNDERFLOW) return 0;
  if (Number.isNaN(x)) return x;
  const k = Math.floor(x * LOG2_E + 0.5);
  const high = x - k * LN2_HIGH;
  const low = k * LN2_LOW;
  const r = high - low;
  const t = r * r;
  const c = r - t * (E1 + t * (E2 + t * (E3 + t * (E4 + t * E5))));
  return scaled(1 - (low - (r * c) / (2 - c) - high), k);
}

/** The number in `memory[at]` gives way to e to its power: the bits of `exp`, for the inner loop (see `sinCosInPlace`). */
export function expInPlace(memory: Float64Array, at: number): void {
  const x = memory[at]!;
  if (!(Math.abs(x) < HALF_LN2)) {
    memory[at] = exp(x);
    return;
  }
  const t = x * x;
  const c = x - t * (E1 + t * (E2 + t * (E3 + t * (E4 + t * E5))));
  memory[at] = 1 - (0 - (x * c) / (2 - c) - x);
}

/** Below this a number has lost digits (subnormal); 2^54 brings it back exactly. */
const SMALLEST_NORMAL = 2.2250738585072014e-308;
const TWO_TO_54 = 18014398509481984;

/** One number and its two halves; the exponent's half is the one that is not 0 in the number 1. */
const one = new Float64Array([1]);
const halves = new Uint32Array(one.buffer);
const FIRST = 0;
const UPPER = halves[FIRST] === 0 ? 1 : FIRST;

/** The k for which x / 2^k lies in [1, 2), x positive, finite, normal. */
function exponentOf(x: number): number {
  one[0] = x;
  return (halves[UPPER]! >>> 20) - 1023;
}

/** The number in `memory[at]` gives way to its natural logarithm: for the inner loop (see `sinCosInPlace`). */
export function logInPlace(memory: Float64Array, at: number): void {
  let m = memory[at]!;
  if (!(m >= SMALLEST_NORMAL && m < Number.POSITIVE_INFINITY)) {
    memory[at] = logAtTheEnds(m);
    return;
  }
  let k = 0;
  if (m < SQRT_HALF || m >= SQRT_TWO) {
    k = exponentOf(m);
    m = scaled(m, -k);
    if (m >= SQRT_TWO) {
      m *= 0.5;
      k += 1;
    }
  }
  const f = m - 1;
  const half = 0.5 * f * f;
  const s = f / (2 + f);
  const z = s * s;
  const w = z * z;
  const even = w * (G2 + w * (G4 + w * G6));
  const odd = z * (G1 + w * (G3 + w * (G5 + w * G7)));
  memory[at] = k * LN2_HIGH - (half - (s * (half + even + odd) + k * LN2_LOW) - f);
}

/** Logarithm of what is not a positive number of ordinary size. */
function logAtTheEnds(x: number): number {
  if (!(x > 0)) return x === 0 ? Number.NEGATIVE_INFINITY : Number.NaN;
  return x === Number.POSITIVE_INFINITY ? x : log(x * TWO_TO_54) - 54 * LN2;
}

const scratch = new Float64Array(1);

/** Natural logarithm; minus infinity at 0, not a number below. */
export function log(x: number): number {
  scratch[0] = x;
  logInPlace(scratch, 0);
  return scratch[0]!;
}

/** Beyond this exponent every base but 1 overflows or vanishes. */
const EXPONENT_OF_NO_INTEREST = 18446744073709552000;

/** The answers of x^y that need no sum, or undefined. As ECMAScript defines them. */
function specialPower(x: number, y: number): number | undefined {
  if (y === 0) return 1;
  if (Number.isNaN(x) || Number.isNaN(y)) return Number.NaN;
  if (y === 1) return x;
  if (y === 2) return x * x;
  const size = Math.abs(x);
  if (Math.abs(y) >= EXPONENT_OF_NO_INTEREST && size !== 1) {
    return size > 1 === y > 0 ? Number.POSITIVE_INFINITY : 0;
  }
  if (Math.abs(y) === Number.POSITIVE_INFINITY) return Number.NaN;
  const oddWhole = Math.floor(y) === y && Math.abs(y % 2) === 1;
  const minus = oddWhole && (x < 0 || 1 / x < 0);
  if (size === 1 && Math.floor(y) === y) return minus ? -1 : 1;
  if (size === 0 || size === Number.POSITIVE_INFINITY) {
    const value = (size === 0) === y > 0 ? 0 : Number.POSITIVE_INFINITY;
    return minus ? -value : value;
  }
  if (x > 0) return undefined;
  if (Math.floor(y) !== y) return Number.NaN;
  return minus ? -positivePower(size, y) : positivePower(size, y);
}

/** x to the power y. */
export function pow(x: number, y: number): number {
  if (x > 0 && x < Number.POSITIVE_INFINITY && Math.abs(y) < EXPONENT_OF_NO_INTEREST) {
    return positivePower(x, y);
  }
  return specialPower(x, y) ?? positivePower(x, y);
}

/** x^y for positive finite x and y below 2^64: log2 in two parts, times y in two parts, then 2^. */
function positivePower(x: number, y: number): number {
  let n = 0;
  let a = x;
  if (a < SMALLEST_NORMAL) {
    a *= TWO_TO_54;
    n = -54;
  }
  if (a < 1 || a >= 2) {
    const k = exponentOf(a);
    a = scaled(a, -k);
    n += k;
  }
  let anchor = 1;
  let anchorHigh = 0;
  let anchorLow = 0;
  if (a >= SQRT_3) {
    n += 1;
    a *= 0.5;
  } else if (a >= SQRT_3_HALVES) {
    anchor = 1.5;
    anchorHigh = LOG2_1_5_HIGH;
    anchorLow = LOG2_1_5_LOW;
  }
  // s = (a - anchor) / (a + anchor) in two parts.
  const u = a - anchor;
  const v = 1 / (a + anchor);
  const s = u * v;
  const sHigh = Math.fround(s);
  const sumHigh = Math.fround(a + anchor);
  const sumLow = a - (sumHigh - anchor);
  const sLow = v * (u - sHigh * sumHigh - sHigh * sumLow);
  // log(a / anchor) = 2s + 2/3 s^3 + ...
  const s2 = s * s;
  const r = s2 * s2 * (L1 + s2 * (L2 + s2 * (L3 + s2 * (L4 + s2 * (L5 + s2 * L6))))) + sLow * (sHigh + s);
  const sHigh2 = sHigh * sHigh;
  const tHigh = Math.fround(3 + sHigh2 + r);
  const tLow = r - (tHigh - 3 - sHigh2);
  const productHigh = sHigh * tHigh;
  const productLow = sLow * tHigh + tLow * s;
  const pHigh = Math.fround(productHigh + productLow);
  const pLow = productLow - (pHigh - productHigh);
  const zHigh = CP_HIGH * pHigh;
  const zLow = CP_LOW * pHigh + pLow * CP + anchorLow;
  const log2High = Math.fround(zHigh + zLow + anchorHigh + n);
  const log2Low = zLow - (log2High - n - anchorHigh - zHigh);
  // y log2(x) in two parts.
  const yHigh = Math.fround(y);
  const low = (y - yHigh) * log2High + y * log2Low;
  const high = yHigh * log2High;
  const exponent = low + high;
  if (exponent >= 1024.5) return Number.POSITIVE_INFINITY;
  if (exponent < -1080) return 0;
  // 2^(high + low).
  const k = Math.floor(exponent + 0.5);
  const restHigh = high - k;
  const t = Math.fround(low + restHigh);
  const w1 = t * LN2_SINGLE;
  const w2 = (low - (t - restHigh)) * LN2 + t * LN2_SINGLE_TAIL;
  const z = w1 + w2;
  const w = w2 - (z - w1);
  const q = z * z;
  const t1 = z - q * (E1 + q * (E2 + q * (E3 + q * (E4 + q * E5))));
  return scaled(1 - ((z * t1) / (t1 - 2) - (w + z * w) - z), k);
}
