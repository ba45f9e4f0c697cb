import { describe, expect, it } from 'vitest';
import { normalQuantiles } from '../../../src/maths/normal.ts';

const quantile = (share: number): number => {
  const shares = Float64Array.of(share);
  normalQuantiles(shares, 1);
  return shares[0]!;
};

describe('the normal distribution backwards', () => {
  // Wichura 1988 gives .25, .001 and 1e-20 for checking (from memory); .975 and .995 stand in any table of the
  // normal distribution. The routine promises about one part in ten million; it is held to two.
  it.each([
    [0.25, -0.6744897501960817],
    [0.001, -3.090232306167814],
    [1e-20, -9.26234008979841],
    [0.975, 1.959963984540054],
    [0.995, 2.5758293035489004],
    [0.5, 0],
  ])('finds %d below its quantile', (share, expected) => {
    expect(Math.abs(quantile(share) - expected)).toBeLessThanOrEqual(2e-7 * Math.abs(expected));
  });

  // The definition itself: the density e^(-x^2/2) / sqrt(2 pi), summed by Simpson's rule from -10.
  it('agrees with the integral of the density in all three of its ranges', () => {
    const density = (x: number): number => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
    const shareBelow = (x: number): number => {
      const pieces = 4000;
      const h = (x + 10) / pieces;
      let sum = density(-10) + density(x);
      for (let i = 1; i < pieces; i++) sum += (i % 2 === 1 ? 4 : 2) * density(-10 + i * h);
      return (sum * h) / 3;
    };
    for (const share of [
      1e-13, 1e-11, 1e-9, 1e-6, 0.01, 0.074, 0.076, 0.2, 0.4, 0.6, 0.924, 0.926, 0.99, 0.9999,
    ]) {
      expect(Math.abs(shareBelow(quantile(share)) / share - 1), `${share}`).toBeLessThan(5e-6);
    }
  });

  it('mirrors about a half and always rises', () => {
    let before = Number.NEGATIVE_INFINITY;
    for (let i = 1; i < 4096; i++) {
      const share = i / 4096;
      expect(quantile(1 - share)).toBe(-quantile(share) + 0);
      expect(quantile(share)).toBeGreaterThan(before);
      before = quantile(share);
    }
  });
});
