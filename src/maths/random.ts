/**
 * Random streams that live in plain memory: four numbers in a Float64Array, so that a snapshot, a rewind
 * and a fork keep their luck. The generator is Alea (J. Baagoe, 2010), seeded by the `seedrandom` library
 * and stepped here; a test holds the two equal.
 */
import alea from 'seedrandom/lib/alea.js';
import { normalQuantiles } from './normal.ts';
import type { Slot } from './slots.ts';

/** The four numbers of a stream: s0, s1, s2 in [0, 1) and the carry c. */
export type StreamSeed = readonly [number, number, number, number];

/** The stream's slots in order, each with the range it never leaves. */
export const STREAM_SLOTS: readonly Slot[] = [
  { name: 'streamS0', low: 0, high: 1 },
  { name: 'streamS1', low: 0, high: 1 },
  { name: 'streamS2', low: 0, high: 1 },
  { name: 'streamCarry', low: 0, high: 2091639 },
];

const MULTIPLIER = 2091639;
const TWO_TO_MINUS_32 = 2.3283064365386963e-10;
/** Half the distance between two neighbouring uniforms: keeps a draw away from 0 and from 1. */
const HALF_STEP = TWO_TO_MINUS_32 / 2;

/** The stream of a name, for instance `1234/air/0`: one name a purpose and aircraft. */
export function seedStream(name: string): StreamSeed {
  const { s0, s1, s2, c } = alea(name, { state: true }).state();
  return [s0, s1, s2, c];
}

/** Lays a stream into memory at `at`; takes four slots. */
export function beginStream(memory: Float64Array, at: number, seed: StreamSeed): void {
  memory[at] = seed[0];
  memory[at + 1] = seed[1];
  memory[at + 2] = seed[2];
  memory[at + 3] = seed[3];
}

/**
 * One draw, evenly spread over [0, 1) in steps of 2^-32. Alea multiplies, adds the carry and keeps the whole part
 * as the next carry. Here the whole part is taken before the carry is added, which hardly ever matters to it, so
 * that one draw need not wait for the last; every number is a multiple of 2^-32 and exact, the result the same.
 */
export function nextUniform(memory: Float64Array, at: number): number {
  const product = MULTIPLIER * memory[at]!;
  let whole = product | 0;
  let value = product - whole + memory[at + 3]! * TWO_TO_MINUS_32;
  if (value >= 1) {
    value -= 1;
    whole += 1;
  }
  memory[at] = memory[at + 1]!;
  memory[at + 1] = memory[at + 2]!;
  memory[at + 2] = value;
  memory[at + 3] = whole;
  return value;
}

/** So many draws, the same as `nextUniform` gives, into `out` from its beginning. */
export function nextUniforms(memory: Float64Array, at: number, out: Float64Array, count: number): void {
  let s0 = memory[at]!;
  let s1 = memory[at + 1]!;
  let s2 = memory[at + 2]!;
  let carry = memory[at + 3]!;
  for (let i = 0; i < count; i++) {
    const product = MULTIPLIER * s0;
    let whole = product | 0;
    let value = product - whole + carry * TWO_TO_MINUS_32;
    if (value >= 1) {
      value -= 1;
      whole += 1;
    }
    s0 = s1;
    s1 = s2;
    s2 = value;
    carry = whole;
    out[i] = value;
  }
  memory[at] = s0;
  memory[at + 1] = s1;
  memory[at + 2] = s2;
  memory[at + 3] = carry;
}

/** So many standard normal draws into `out` from its beginning; one uniform each. Never beyond 6.3. */
export function nextNormals(memory: Float64Array, at: number, out: Float64Array, count: number): void {
  nextUniforms(memory, at, out, count);
  for (let i = 0; i < count; i++) out[i] = out[i]! + HALF_STEP;
  normalQuantiles(out, count);
}
