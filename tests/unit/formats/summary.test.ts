// Quantiles: Hyndman and Fan, "Sample Quantiles in Statistical Packages" (1996), definition 7; the values below
// worked by hand: of 1..5, p05 lies at rank 0.2 and p95 at rank 3.8.
import { expect, it } from 'vitest';
import { distributionOf } from '../../../src/formats/summary.ts';

it('gives mean, ends and quantiles of a sample', () => {
  expect(distributionOf([5, 3, 1, 2, 4])).toEqual({ mean: 3, min: 1, max: 5, p05: 1.2, p95: 4.8 });
});

it('is null where no flight had the number', () => {
  expect(distributionOf([])).toBeNull();
});
