/**
 * The standard normal distribution backwards: from a share to the number below which that share lies.
 *
 * Source of method and coefficients: M. J. Wichura, Algorithm AS 241, Applied Statistics 37 (1988), routine
 * PPND7: about one part in ten million.
 */
import { log } from './functions.ts';

const MIDDLE = 0.425;
const MIDDLE_SQUARED = 0.180625;
const FAR = 5;
const NEAR_SHIFT = 1.6;

const A0 = 3.3871327179;
const A1 = 50.434271938;
const A2 = 159.29113202;
const A3 = 59.10937472;
const B1 = 17.895169469;
const B2 = 78.757757664;
const B3 = 67.1875636;

const C0 = 1.4234372777;
const C1 = 2.75681539;
const C2 = 1.3067284816;
const C3 = 0.17023821103;
const D1 = 0.7370016425;
const D2 = 0.12021132975;

const E0 = 6.657905115;
const E1 = 3.081226386;
const E2 = 0.42868294337;
const E3 = 0.017337203997;
const F1 = 0.24197894225;
const F2 = 0.012258202635;

/** Outside the middle 85 %: in the square root of minus the logarithm of the share beyond. */
const tailQuantile = (beyond: number): number => {
  const r = Math.sqrt(-log(beyond));
  if (r <= FAR) {
    const t = r - NEAR_SHIFT;
    return (C0 + t * (C1 + t * (C2 + t * C3))) / (1 + t * (D1 + t * D2));
  }
  const t = r - FAR;
  return (E0 + t * (E1 + t * (E2 + t * E3))) / (1 + t * (F1 + t * F2));
};

/** Replaces the first `count` shares, each above 0 and below 1, by their quantiles. */
export function normalQuantiles(shares: Float64Array, count: number): void {
  for (let i = 0; i < count; i++) {
    const p = shares[i]!;
    const q = p - 0.5;
    if (Math.abs(q) <= MIDDLE) {
      const r = MIDDLE_SQUARED - q * q;
      shares[i] = (q * (A0 + r * (A1 + r * (A2 + r * A3)))) / (1 + r * (B1 + r * (B2 + r * B3)));
    } else {
      shares[i] = q < 0 ? -tailQuantile(p) : tailQuantile(1 - p);
    }
  }
}
