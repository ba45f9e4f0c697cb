/**
 * Turbulence after Dryden: the filters of `transition.ts` with the lengths of `dryden.ts` and the strengths of
 * `strength.ts`; the vertical gust as a wing feels it (`span.ts`). Axes: along the horizontal airspeed, to its right, and up; each the velocity OF THE AIR. A positive `along` is
 * therefore a gust from behind, and takes airspeed away.
 *
 * The filters are kept as states of unit variance and multiplied by sigma as they come out. The noise is evenly
 * spread with unit variance, which is all that spectrum and strength ask for; a filter adds up dozens to hundreds
 * of draws, and so what comes out is normal (fourth moment within 1 % from 100 ft up; at a low wing's height on the
 * ground a few draws, and the vertical gust keeps inside what they can add up to).
 */
import { nextNormals, nextUniforms } from '../maths/random.ts';
import type { Slot } from '../maths/slots.ts';
import { HIGH_FT, heldFt } from './dryden.ts';
import { HORIZONTAL, layStrength, VERTICAL } from './strength.ts';
import {
  A_FROM_1,
  B_FROM_1,
  B_FROM_2,
  CHAIN_V,
  CHAIN_W,
  LEFT,
  layTransition,
  ROOT,
  TAKEN,
  transition,
  U_LEFT,
  U_NEW,
  UNBLOCKED,
  W_FROM_A,
  W_FROM_B,
} from './transition.ts';
import type { Wind } from './wind.ts';

const SQRT3 = Math.sqrt(3);
const SQRT12 = Math.sqrt(12);
/** The filters hold for an aeroplane that flies through frozen air; slower ones are taken as this fast. */
const SLOWEST_MPS = 15; // our choice: slower than any flight
const FASTEST_MPS = 600; // our choice: a bound on the sums
/** Height and airspeed are looked at every so many steps: 0.1 s at 60 Hz, in which neither goes far. */
const LOOK_EVERY = 6; // our choice: often enough

/** Unit states are held inside six standard deviations: once in some years of flying. */
const HELD = 6; // our choice: a bound that declares the slots
/** 6 times the largest sigma: moderate, at 10 ft. */
const STRONGEST_MPS = 20; // derived: from HELD and dryden.ts, rounded up

const state = (name: string): Slot => ({ name, low: -HELD, high: HELD });
const speed = (name: string): Slot => ({ name, low: -STRONGEST_MPS, high: STRONGEST_MPS });

/** Five filter states, the three gust speeds that came out of the last step, and the last look. */
export const TURBULENCE_SLOTS: readonly Slot[] = [
  state('turbulenceU'),
  state('turbulenceVa'),
  state('turbulenceVb'),
  state('turbulenceWa'),
  state('turbulenceWb'),
  speed('turbulenceAlongMps'),
  speed('turbulenceRightMps'),
  speed('turbulenceUpMps'),
  { name: 'turbulenceAtFt', low: 0, high: HIGH_FT },
  { name: 'turbulenceTasMps', low: 0, high: FASTEST_MPS },
  { name: 'turbulenceLookedSteps', low: 0, high: LOOK_EVERY - 1 },
];
/** Where the gust speeds stand in the memory, beyond its beginning. */
export const ALONG = 5; // definition: a place
export const RIGHT = 6; // definition: a place
export const UP = 7; // definition: a place
const LOOK = 8; // definition: a place
const LOOKED = 10; // definition: a place

const hold = (memory: Float64Array, at: number): void => {
  const x = memory[at]!;
  if (x > HELD) memory[at] = HELD;
  else if (x < -HELD) memory[at] = -HELD;
};

const DRAWS = 6; // definition: draws of the noise in a step
const FIRST_DRAW = 0; // definition: a place
const draws = new Float64Array(DRAWS);
const strength = new Float64Array(2);

/** Begins as if it had always blown: the states are drawn from their long-run distribution. Six draws. */
export function beginTurbulence(memory: Float64Array, at: number, streamAt: number): void {
  nextNormals(memory, streamAt, draws, DRAWS);
  memory[at] = draws[FIRST_DRAW]!;
  for (let chain = 0; chain < 2; chain++) {
    const a = Math.sqrt(0.5) * draws[1 + 2 * chain]!;
    memory[at + 1 + 2 * chain] = a;
    memory[at + 2 + 2 * chain] = 0.5 * a + Math.sqrt(0.125) * draws[2 + 2 * chain]!;
  }
  for (let i = 0; i < ALONG; i++) hold(memory, at + i);
  for (let i = ALONG; i <= LOOKED; i++) memory[at + i] = 0;
}

/** One step of a chain a, b at `at` with its transition at `chain` and two draws at `drawAt`. */
function stepChain(memory: Float64Array, at: number, chain: number, drawAt: number): void {
  const a = memory[at]!;
  const b = memory[at + 1]!;
  const n1 = draws[drawAt]!;
  const n2 = draws[drawAt + 1]!;
  memory[at] = transition[chain + LEFT]! * a + transition[chain + A_FROM_1]! * n1;
  memory[at + 1] =
    transition[chain + LEFT]! * b +
    transition[chain + TAKEN]! * a +
    transition[chain + B_FROM_1]! * n1 +
    transition[chain + B_FROM_2]! * n2;
  hold(memory, at);
  hold(memory, at + 1);
}

/** Looks at height and airspeed when it is time to. */
function look(memory: Float64Array, at: number, heightM: number, tasMps: number): void {
  const looked = memory[at + LOOKED]!;
  memory[at + LOOKED] = looked + 1 === LOOK_EVERY ? 0 : looked + 1;
  if (looked > 0) return;
  memory[at + LOOK] = heldFt(heightM);
  memory[at + LOOK + 1] = tasMps > FASTEST_MPS ? FASTEST_MPS : tasMps > SLOWEST_MPS ? tasMps : SLOWEST_MPS;
}

/**
 * One step of the turbulence, on the stream at `streamAt`: always six draws. `heightM` is the wing's above the
 * ground, `tasMps` the horizontal airspeed, `spanM` the wing's span (0: the gust at a point). The gust speeds are then at `at + ALONG`, `at + RIGHT`, `at + UP`.
 */
export function stepTurbulence(
  memory: Float64Array,
  at: number,
  streamAt: number,
  dtS: number,
  wind: Wind,
  heightM: number,
  tasMps: number,
  spanM: number,
): void {
  nextUniforms(memory, streamAt, draws, DRAWS);
  if (wind.turbulence === 'none') {
    memory[at + ALONG] = 0;
    memory[at + RIGHT] = 0;
    memory[at + UP] = 0;
    return;
  }
  for (let i = 0; i < DRAWS; i++) draws[i] = SQRT12 * (draws[i]! - 0.5);
  look(memory, at, heightM, tasMps);
  layTransition(memory, at + LOOK, dtS, spanM);
  memory[at] = transition[U_LEFT]! * memory[at]! + transition[U_NEW]! * draws[FIRST_DRAW]!;
  hold(memory, at);
  stepChain(memory, at + 1, CHAIN_V, 1);
  stepChain(memory, at + 3, CHAIN_W, 3);

  layStrength(wind, transition[ROOT]!, transition[UNBLOCKED]!, strength);
  memory[at + ALONG] = memory[at]!;
  memory[at + RIGHT] = SQRT3 * memory[at + 1]! + (1 - SQRT3) * memory[at + 2]!;
  memory[at + UP] = transition[W_FROM_A]! * memory[at + 3]! + transition[W_FROM_B]! * memory[at + 4]!;
  for (let i = ALONG; i <= UP; i++) {
    hold(memory, at + i);
    memory[at + i] = memory[at + i]! * strength[i === UP ? VERTICAL : HORIZONTAL]!;
  }
}
