import type { Band } from './report.ts';

/** Green inside, amber to one and a half times the tolerance, red beyond; `amberLow` can bring amber's end closer. */
export const bandOf = (
  value: number | null,
  target: number,
  low: number | null,
  high: number | null,
  amberLow = Number.NEGATIVE_INFINITY,
): Band => {
  if (value === null) return 'not-judged';
  if ((low === null || value >= low) && (high === null || value <= high)) return 'green';
  // A side without tolerance takes half of the other side's.
  const below = low === null ? 0 : target - low;
  const above = high === null ? 0 : high - target;
  const roomBelow = 0.5 * (below > 0 ? below : above);
  const roomAbove = 0.5 * (above > 0 ? above : below);
  const lowest = low === null ? Number.NEGATIVE_INFINITY : Math.max(low - roomBelow, amberLow);
  const highest = high === null ? Number.POSITIVE_INFINITY : high + roomAbove;
  return value >= lowest && value <= highest ? 'amber' : 'red';
};
