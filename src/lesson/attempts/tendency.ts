/** Which way a series of sizes goes, when smaller is better. */
export type Tendency = 'better' | 'worse' | 'steady' | 'too-few';

const FEWEST = 4; // our choice: fewer say nothing
/** One-sided 10 %: normal deviate 1.28. A student's attempts are few; this is a hint, not a proof. */
const DEVIATE = 1.28; // definition: of the normal distribution

/** Kendall's S: pairs that rise less pairs that fall. */
export const kendallS = (values: readonly number[]): number => {
  let s = 0;
  for (let i = 0; i < values.length; i += 1) {
    for (let j = i + 1; j < values.length; j += 1) {
      s += Math.sign((values[j] as number) - (values[i] as number));
    }
  }
  return s;
};

/** Variance of S when nothing changes (Kendall 1975): n(n-1)(2n+5)/18, less the same of each group of ties. */
export const kendallVariance = (values: readonly number[]): number => {
  const sizes = new Map<number, number>();
  for (const value of values) sizes.set(value, (sizes.get(value) ?? 0) + 1);
  const part = (n: number): number => n * (n - 1) * (2 * n + 5);
  let sum = part(values.length);
  for (const size of sizes.values()) sum -= part(size);
  return sum / 18;
};

/**
 * The Mann-Kendall test (Mann 1945, Kendall 1975): rank by rank, so that one wild landing does not make a trend.
 * `offBy` are sizes of error, oldest first.
 */
export const tendencyOf = (offBy: readonly number[]): Tendency => {
  if (offBy.length < FEWEST) return 'too-few';
  const s = kendallS(offBy);
  const variance = kendallVariance(offBy);
  if (variance === 0) return 'steady';
  const z = (s - Math.sign(s)) / Math.sqrt(variance);
  if (z <= -DEVIATE) return 'better';
  return z >= DEVIATE ? 'worse' : 'steady';
};
