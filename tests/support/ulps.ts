/** Distance between doubles, counted in the doubles that lie between them. */

const number = new Float64Array(1);
const bits = new BigInt64Array(number.buffer);
const MOST_NEGATIVE = -(2n ** 63n);

function place(x: number): bigint {
  number[0] = x;
  const raw = bits[0]!;
  return raw < 0n ? MOST_NEGATIVE - raw : raw;
}

/** How many doubles apart; 0 for two not-a-numbers, infinite when only one is or when noughts differ in sign. */
export function ulpsBetween(a: number, b: number): number {
  if (Object.is(a, b)) return 0;
  if (a === b || Number.isNaN(a) || Number.isNaN(b)) return Number.POSITIVE_INFINITY;
  const apart = place(a) - place(b);
  return Number(apart < 0n ? -apart : apart);
}

/** The largest distance over a list of arguments, and where it lies. */
export function largestUlp(
  ours: (x: number) => number,
  theirs: (x: number) => number,
  xs: readonly number[],
): { ulps: number; at: number } {
  let worst = { ulps: 0, at: Number.NaN };
  for (const x of xs) {
    const a = ours(x);
    const b = theirs(x);
    if (a === b) continue;
    const ulps = ulpsBetween(a, b);
    if (ulps > worst.ulps) worst = { ulps, at: x };
  }
  return worst;
}

/** Evenly spread numbers from low to high, both included. */
export const spread = (low: number, high: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => low + ((high - low) * i) / (count - 1));
