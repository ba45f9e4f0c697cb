/**
 * The moving air around one aeroplane: mean wind, gusts and turbulence from one random stream. Its whole
 * memory is a stretch of a Float64Array: `[stream | gusts | turbulence]`. Eight draws a step, always.
 */

import { beginStream, STREAM_SLOTS, type StreamSeed } from '../maths/random.ts';
import type { Slot } from '../maths/slots.ts';
import { beginGusts, GUST_SLOTS, gustMps, stepGusts } from './gusts.ts';
import { windWithGust } from './profile.ts';
import { ALONG, beginTurbulence, RIGHT, stepTurbulence, TURBULENCE_SLOTS, UP } from './turbulence.ts';
import { WIND } from './velocity.ts';
import type { Wind } from './wind.ts';

/** All the numbers the air remembers, in order, with their ranges. */
export const AIR_SLOTS: readonly Slot[] = [...STREAM_SLOTS, ...GUST_SLOTS, ...TURBULENCE_SLOTS].map(
  (slot) => ({
    ...slot,
    name: `air.${slot.name}`,
  }),
);

const GUSTS = STREAM_SLOTS.length;
const TURBULENCE = GUSTS + GUST_SLOTS.length;

/** Lays the air's memory at `at`: `AIR_SLOTS.length` numbers. Seed: `seedStream('<seed>/air/<aircraft>')`. */
export function beginAir(memory: Float64Array, at: number, seed: StreamSeed): void {
  beginStream(memory, at, seed);
  beginGusts(memory, at + GUSTS);
  beginTurbulence(memory, at + TURBULENCE, at);
}

/** One step: `heightM` of the wing above the ground, `tasMps` the horizontal airspeed, `spanM` the wing's span. */
export function stepAir(
  memory: Float64Array,
  at: number,
  wind: Wind,
  dtS: number,
  heightM: number,
  tasMps: number,
  spanM: number,
): void {
  stepGusts(memory, at + GUSTS, at, dtS);
  stepTurbulence(memory, at + TURBULENCE, at, dtS, wind, heightM, tasMps, spanM);
}

/**
 * Velocity of the air at a height above the ground at this instant, into `out` at the places of
 * `WIND`: where it blows TO. `courseEast` and `courseNorth` are the unit vector of the horizontal
 * airspeed (of the heading, when hardly moving), along which turbulence is laid.
 */
export function airVelocity(
  memory: Float64Array,
  at: number,
  wind: Wind,
  heightM: number,
  courseEast: number,
  courseNorth: number,
  out: Float64Array,
): void {
  windWithGust(wind, heightM, gustMps(wind, memory, at + GUSTS), out);
  const along = memory[at + TURBULENCE + ALONG]!;
  const right = memory[at + TURBULENCE + RIGHT]!;
  out[WIND.east] = out[WIND.east]! + along * courseEast + right * courseNorth;
  out[WIND.north] = out[WIND.north]! + along * courseNorth - right * courseEast;
  out[WIND.up] = memory[at + TURBULENCE + UP]!;
}
