import type { Result } from './result.ts';

/** How a number lay over several flights; null when no flight had it. */
export interface Distribution {
  readonly mean: number;
  readonly min: number;
  readonly max: number;
  readonly p05: number;
  readonly p95: number;
}

export interface Summary {
  readonly n: number;
  readonly outcomes: Readonly<Record<string, number>>;
  /** By gate height in feet. */
  readonly gates: Readonly<Record<string, Readonly<Record<string, Distribution | null>>>>;
  readonly touchdowns: Readonly<Record<string, Distribution | null>>;
  readonly stop: Readonly<Record<string, Distribution | null>>;
}

const GATE_NUMBERS = ['at_s', 'slope_deg', 'ias_kt', 'sink_fpm', 'centreline_m', 'bank_deg'] as const;
const TOUCHDOWN_NUMBERS = [
  'at_s',
  'past_threshold_m',
  'past_aim_m',
  'past_specified_m',
  'sink_fpm',
  'ias_kt',
  'centreline_m',
  'crab_deg',
  'drift_kt',
  'pitch_deg',
  'bounces',
] as const;
const STOP_NUMBERS = ['past_threshold_m', 'remaining_m', 'centreline_m'] as const;

/** Linear between the ranks, the most common definition (Hyndman and Fan 1996, type 7). */
const quantile = (sorted: readonly number[], share: number): number => {
  const rank = share * (sorted.length - 1);
  const below = Math.floor(rank);
  const low = sorted[below] as number;
  const high = sorted[Math.min(below + 1, sorted.length - 1)] as number;
  return low + (rank - below) * (high - low);
};

export const distributionOf = (values: readonly number[]): Distribution | null => {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  const to4 = (x: number): number => Math.round(x * 10000) / 10000 + 0;
  return {
    mean: to4(sorted.reduce((sum, x) => sum + x, 0) / sorted.length),
    min: sorted[0] as number,
    max: sorted[sorted.length - 1] as number,
    p05: to4(quantile(sorted, 0.05)),
    p95: to4(quantile(sorted, 0.95)),
  };
};

const spreadsOf = <K extends string>(
  keys: readonly K[],
  entries: readonly Readonly<Record<K, number>>[],
): Record<string, Distribution | null> =>
  Object.fromEntries(keys.map((key) => [key, distributionOf(entries.map((e) => e[key]))]));

/** What many flights have in common and how they spread. */
export const summaryOf = (flights: readonly Result[]): Summary => {
  const outcomes: Record<string, number> = {};
  for (const f of flights) outcomes[f.outcome] = (outcomes[f.outcome] ?? 0) + 1;
  const gates = flights.flatMap((f) => f.gates);
  const heights = [...new Set(gates.map((g) => g.height_ft))].sort((a, b) => b - a);
  return {
    n: flights.length,
    outcomes,
    gates: Object.fromEntries(
      heights.map((h) => [
        `${h}_ft`,
        spreadsOf(
          GATE_NUMBERS,
          gates.filter((g) => g.height_ft === h),
        ),
      ]),
    ),
    touchdowns: spreadsOf(
      TOUCHDOWN_NUMBERS,
      flights.flatMap((f) => f.touchdowns),
    ),
    stop: spreadsOf(
      STOP_NUMBERS,
      flights.flatMap((f) => (f.stop === null ? [] : [f.stop])),
    ),
  };
};
