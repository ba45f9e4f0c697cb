/**
 * Gusts of the reported strength, one at a time. Each rises from the mean to the reported gust and falls
 * back as 1 - cos (the discrete gust shape of pre-2017 14 CFR 23.333, in time instead of distance). From
 * one onset to the next 20 s on average, at random; a gust lasts 4 to 10 s (common practice). Over time
 * they add 17.5 % of (gust - mean) to the mean wind.
 */
import { sinCosInPlace } from '../maths/functions.ts';
import { nextUniforms } from '../maths/random.ts';
import type { Slot } from '../maths/slots.ts';
import type { Wind } from './wind.ts';

export const MEAN_SPACING_S = 20; // common practice
export const SHORTEST_S = 4; // common practice
export const LONGEST_S = 10; // common practice
const MEAN_LULL_S = MEAN_SPACING_S - (SHORTEST_S + LONGEST_S) / 2;
const TWO_PI = 2 * Math.PI; // definition: once round

/** Time since onset and duration; both 0 in a lull. */
export const GUST_SLOTS: readonly Slot[] = [
  { name: 'gustSinceS', low: 0, high: LONGEST_S },
  { name: 'gustLastsS', low: 0, high: LONGEST_S },
];

/** Begins in a lull. */
export function beginGusts(memory: Float64Array, at: number): void {
  memory[at] = 0;
  memory[at + 1] = 0;
}

const DRAW = { chance: 0, length: 1 } as const; // definition: places
const draws = new Float64Array(2);

/** One step of the gusts, on the stream at `streamAt`: always two draws, whatever the wind. */
export function stepGusts(memory: Float64Array, at: number, streamAt: number, dtS: number): void {
  nextUniforms(memory, streamAt, draws, 2);
  const chance = draws[DRAW.chance]!;
  const length = draws[DRAW.length]!;
  const lastsS = memory[at + 1]!;
  if (lastsS > 0) {
    const sinceS = memory[at]! + dtS;
    const over = sinceS >= lastsS;
    memory[at] = over ? 0 : sinceS;
    memory[at + 1] = over ? 0 : lastsS;
    return;
  }
  if (chance * MEAN_LULL_S < dtS) memory[at + 1] = SHORTEST_S + (LONGEST_S - SHORTEST_S) * length;
}

const PHASE = { sine: 0, cosine: 1 } as const; // definition: places
const phase = new Float64Array(2);

/** How much of the gust blows now, 0 to 1. */
export function gustShare(memory: Float64Array, at: number): number {
  const lastsS = memory[at + 1]!;
  if (!(lastsS > 0)) return 0;
  phase[PHASE.sine] = (TWO_PI * memory[at]!) / lastsS;
  sinCosInPlace(phase, PHASE.sine);
  return 0.5 * (1 - phase[PHASE.cosine]!);
}

/** What the gust adds to the mean wind at 10 m now; 0 where no gust is reported. */
export const gustMps = (wind: Wind, memory: Float64Array, at: number): number =>
  wind.gustMps === null ? 0 : (wind.gustMps - wind.speedMps) * gustShare(memory, at);
