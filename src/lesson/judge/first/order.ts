import type { LegName } from '../../names.ts';
import type { CauseId } from '../cause-words.ts';

/** Along a flight: legs, and what stands between them or in an order of its own on one of them. */
const ALONG: readonly string[] = [
  'line-up',
  'take-off-roll',
  'braked-first' satisfies CauseId,
  'upwind',
  'nose-late' satisfies CauseId,
  'turned-back' satisfies CauseId,
  'turn-to-crosswind',
  'crosswind',
  'turn-to-downwind',
  'downwind',
  'descent-late' satisfies CauseId,
  'turn-to-base',
  'base',
  'turn-to-final',
  'final-overshoot',
  'turn-to-final-bank',
  'bank-final-turn',
  'bank-low',
  'final-height',
  'final',
  'final-speed',
  'final-flap',
  'little-power' satisfies CauseId,
  'final-lights',
  'slow',
  'warner',
  'four-reds',
  'went-on',
  'go-around',
  'hold-off',
  'carried-speed' satisfies CauseId,
  'levelled-high' satisfies CauseId,
  'rounded-out-quickly' satisfies CauseId,
  'balloon-pulled' satisfies CauseId,
  'balloon-fast' satisfies CauseId,
  'balloon-gust' satisfies CauseId,
  'landed-flat' satisfies CauseId,
  'rounded-out-late' satisfies CauseId,
  'power-kept' satisfies CauseId,
  'pushed' satisfies CauseId,
  'dropped' satisfies CauseId,
  'not-straightened' satisfies CauseId,
  'round-out-height',
  'float',
  'touchdown-nose-first',
  'touchdown-drift',
  'touchdown-crab',
  'touchdown-sink',
  'touchdown-point',
  'touchdown-bounces',
  'landing-roll',
  'brakes-locked' satisfies CauseId,
  'brakes',
  'landing-roll-centreline',
  'went-on-flaring',
  'stopped',
  'ended',
];
const PLACES: ReadonlyMap<string, number> = new Map(ALONG.map((name, at) => [name, at]));

/** Where along a flight something lies; what has no place of its own lies on its leg. */
export const placeOf = (name: string, leg: LegName | null = null): number =>
  PLACES.get(name) ?? (leg === null ? undefined : PLACES.get(leg)) ?? 0;

/** What does most to people, the worst first (common practice); all else after it. */
const WORST: readonly string[] = [
  'turned-back',
  'ended-crashed',
  'ended-loss-of-control',
  'ended-landed-short',
  'ended-landed-beside',
  'ended-landed-beyond',
  'ended-off-the-side',
  'ended-off-the-end',
  'warner',
  'bank-low',
  'slow',
  'bank-final-turn',
  'four-reds',
  'went-on',
  'pushed',
];
const RANKS: ReadonlyMap<string, number> = new Map(WORST.map((key, at) => [key, at]));

export const rankOf = (key: string): number => RANKS.get(key) ?? WORST.length;
