/**
 * Turbulence after Dryden, low-altitude form of MIL-F-8785C. Level set by the wind at 20 ft that belongs to
 * it (light 15 kt, moderate 30 kt) whatever wind blows.
 *
 *   Lw = h, Lu = Lv = h / k^1.2, sigma_w = 0.1 W20, sigma_u = sigma_v = sigma_w / k^0.4,
 *   k = 0.177 + 0.000823 h, h in feet, 10 to 1,000 ft. From 1,000 to 2,000 ft the lengths go straight to
 *   1,750 ft, where they stay; the sigmas stay as at 1,000 ft.
 *
 * Axes: along the horizontal airspeed, to its right, and up; each the velocity OF THE AIR. A positive
 * `along` is therefore a gust from behind, and takes airspeed away.
 *
 * The filters are kept as states of unit variance and multiplied by sigma as they come out, and are stepped
 * by their exact transition (not by a difference formula), so that any timestep gives the right spectrum.
 * u:   autocorrelation e^-s, s = V t / L.
 * v,w: (1 + sqrt3 s') / (1 + s')^2 driven by white noise, as a chain a' = -a + noise, b' = -b + a,
 *      y = sqrt3 a + (1 - sqrt3) b; with noise of unit intensity var a = 1/2, cov ab = var b = 1/4, var y = 1,
 *      autocorrelation (1 - s/2) e^-s.
 * The noise is evenly spread with unit variance, which is all that spectrum and strength ask for; a filter adds up
 * dozens to hundreds of draws, and so what comes out is normal (fourth moment within 1 % from 100 ft up).
 */
import { expInPlace, pow } from '../maths/functions.ts';
import { nextNormals, nextUniforms } from '../maths/random.ts';
import type { Slot } from '../maths/slots.ts';
import { ftFromM, mFromFt, mpsFromKt } from '../units/conversions.ts';
import type { TurbulenceLevel } from './wind.ts';

const SQRT3 = Math.sqrt(3);
const SQRT12 = Math.sqrt(12);
/** Wind at 20 ft that belongs to each level. */
export const W20_MPS: Readonly<Record<TurbulenceLevel, number>> = {
  none: 0,
  light: mpsFromKt(15),
  moderate: mpsFromKt(30),
};
const LOWEST_FT = 10;
const LOW_TOP_FT = 1000;
const HIGH_FT = 2000;
const HIGH_LENGTH_FT = 1750;
/** The filters hold for an aeroplane that flies through frozen air; slower ones are taken as this fast. */
const SLOWEST_MPS = 15;

/** Unit states are held inside six standard deviations: once in some years of flying. */
const HELD = 6;
/** 6 times the largest sigma: moderate, at 10 ft. */
const STRONGEST_MPS = 20;

const state = (name: string): Slot => ({ name, low: -HELD, high: HELD });
const speed = (name: string): Slot => ({ name, low: -STRONGEST_MPS, high: STRONGEST_MPS });

/** Five filter states and the three gust speeds that came out of the last step. */
export const TURBULENCE_SLOTS: readonly Slot[] = [
  state('turbulenceU'),
  state('turbulenceVa'),
  state('turbulenceVb'),
  state('turbulenceWa'),
  state('turbulenceWb'),
  speed('turbulenceAlongMps'),
  speed('turbulenceRightMps'),
  speed('turbulenceUpMps'),
];
/** Where the gust speeds stand in the memory, beyond its beginning. */
export const ALONG = 5;
export const RIGHT = 6;
export const UP = 7;

const hold = (memory: Float64Array, at: number): void => {
  const x = memory[at]!;
  if (x > HELD) memory[at] = HELD;
  else if (x < -HELD) memory[at] = -HELD;
};

const heldFt = (heightM: number): number => Math.max(ftFromM(heightM), LOWEST_FT);

/** k^0.4 at every foot up to 1,000: the one power all the formulae share. */
const rootAtFoot = Float64Array.from({ length: LOW_TOP_FT + 2 }, (_, foot) =>
  pow(0.177 + 0.000823 * Math.min(foot, LOW_TOP_FT), 0.4),
);

/** k^0.4, by a straight line between the feet (wrong by at most 3 parts in ten million); 1 from 1,000 ft up. */
const bracketRoot = (heightFt: number): number => {
  const ft = Math.min(heightFt, LOW_TOP_FT);
  const foot = Math.floor(ft);
  const here = rootAtFoot[foot]!;
  return here + (ft - foot) * (rootAtFoot[foot + 1]! - here);
};

/** Length above 1,000 ft, where all three are one. */
const highLengthFt = (heightFt: number): number =>
  LOW_TOP_FT +
  ((HIGH_LENGTH_FT - LOW_TOP_FT) * (Math.min(heightFt, HIGH_FT) - LOW_TOP_FT)) / (HIGH_FT - LOW_TOP_FT);

/** Length of the gusts along and across, Lu = Lv. */
export function horizontalLengthM(heightM: number): number {
  const heightFt = heldFt(heightM);
  if (heightFt > LOW_TOP_FT) return mFromFt(highLengthFt(heightFt));
  const root = bracketRoot(heightFt);
  return mFromFt(heightFt / (root * root * root));
}

/** Length of the vertical gusts, Lw. */
export function verticalLengthM(heightM: number): number {
  const heightFt = heldFt(heightM);
  return mFromFt(heightFt > LOW_TOP_FT ? highLengthFt(heightFt) : heightFt);
}

/** Standard deviation of the vertical gust. */
export const verticalSigmaMps = (level: TurbulenceLevel): number => 0.1 * W20_MPS[level];

/** Standard deviation of the gusts along and across. */
export const horizontalSigmaMps = (level: TurbulenceLevel, heightM: number): number =>
  verticalSigmaMps(level) / bracketRoot(heldFt(heightM));

const DRAWS = 6;
const draws = new Float64Array(DRAWS);

/** Six draws of mean 0 and variance 1, evenly spread. */
function drawNoise(memory: Float64Array, streamAt: number): void {
  nextUniforms(memory, streamAt, draws, DRAWS);
  for (let i = 0; i < DRAWS; i++) draws[i] = SQRT12 * (draws[i]! - 0.5);
}

/** Begins as if it had always blown: the states are drawn from their long-run distribution. Six draws. */
export function beginTurbulence(memory: Float64Array, at: number, streamAt: number): void {
  nextNormals(memory, streamAt, draws, DRAWS);
  memory[at] = draws[0]!;
  for (let chain = 0; chain < 2; chain++) {
    const a = Math.sqrt(0.5) * draws[1 + 2 * chain]!;
    memory[at + 1 + 2 * chain] = a;
    memory[at + 2 + 2 * chain] = 0.5 * a + Math.sqrt(0.125) * draws[2 + 2 * chain]!;
  }
  for (let i = 0; i < ALONG; i++) hold(memory, at + i);
  memory[at + ALONG] = 0;
  memory[at + RIGHT] = 0;
  memory[at + UP] = 0;
}

/** Distance flown in a step, in lengths, and e to the minus that: along and across, and vertical. */
const path = new Float64Array(4);
const HORIZONTAL = 0;
const VERTICAL = 2;

/**
 * One exact step of the chain a, b over the distance s of `path`, with the draws at `drawAt`. The noise of the
 * step has covariance P - F P F', F = e^-s [1 0; s 1], P = [1/2 1/4; 1/4 1/4].
 */
function stepChain(memory: Float64Array, at: number, pathAt: number, drawAt: number): void {
  const s = path[pathAt]!;
  const decay = path[pathAt + 1]!;
  const square = decay * decay;
  const q11 = 0.5 * (1 - square);
  const q12 = 0.25 - square * (0.25 + 0.5 * s);
  const q22 = 0.25 - square * (0.25 + 0.5 * s + 0.5 * s * s);
  const l11 = Math.sqrt(q11);
  const l21 = q12 / l11;
  const rest = q22 - l21 * l21;
  const l22 = rest > 0 ? Math.sqrt(rest) : 0;
  const a = memory[at]!;
  const b = memory[at + 1]!;
  const n1 = draws[drawAt]!;
  const n2 = draws[drawAt + 1]!;
  memory[at] = decay * a + l11 * n1;
  memory[at + 1] = decay * (b + s * a) + l21 * n1 + l22 * n2;
  hold(memory, at);
  hold(memory, at + 1);
}

/**
 * One step of the turbulence, on the stream at `streamAt`: always six draws. `heightM` is above the ground,
 * `tasMps` the horizontal airspeed. The gust speeds are then at `at + ALONG`, `at + RIGHT`, `at + UP`.
 */
export function stepTurbulence(
  memory: Float64Array,
  at: number,
  streamAt: number,
  dtS: number,
  level: TurbulenceLevel,
  heightM: number,
  tasMps: number,
): void {
  if (level === 'none') {
    nextUniforms(memory, streamAt, draws, DRAWS);
    memory[at + ALONG] = 0;
    memory[at + RIGHT] = 0;
    memory[at + UP] = 0;
    return;
  }
  drawNoise(memory, streamAt);
  const heightFt = heldFt(heightM);
  const low = heightFt <= LOW_TOP_FT;
  const root = bracketRoot(heightFt);
  const high = low ? 0 : highLengthFt(heightFt);
  const distanceFt = ftFromM(Math.max(tasMps, SLOWEST_MPS) * dtS);
  const sHorizontal = distanceFt / (low ? heightFt / (root * root * root) : high);
  const sVertical = distanceFt / (low ? heightFt : high);
  path[HORIZONTAL] = sHorizontal;
  path[HORIZONTAL + 1] = -sHorizontal;
  expInPlace(path, HORIZONTAL + 1);
  path[VERTICAL] = sVertical;
  path[VERTICAL + 1] = -sVertical;
  expInPlace(path, VERTICAL + 1);

  const decay = path[HORIZONTAL + 1]!;
  memory[at] = decay * memory[at]! + Math.sqrt(1 - decay * decay) * draws[0]!;
  hold(memory, at);
  stepChain(memory, at + 1, HORIZONTAL, 1);
  stepChain(memory, at + 3, VERTICAL, 3);

  const sigmaW = verticalSigmaMps(level);
  const sigmaUv = sigmaW / root;
  memory[at + ALONG] = memory[at]!;
  memory[at + RIGHT] = SQRT3 * memory[at + 1]! + (1 - SQRT3) * memory[at + 2]!;
  memory[at + UP] = SQRT3 * memory[at + 3]! + (1 - SQRT3) * memory[at + 4]!;
  for (let i = ALONG; i <= UP; i++) {
    hold(memory, at + i);
    memory[at + i] = memory[at + i]! * (i === UP ? sigmaW : sigmaUv);
  }
}
