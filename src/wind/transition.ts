/**
 * The exact transition of the turbulence filters over one step (not a difference formula), so that any timestep
 * gives the right spectrum. Over the distance s, in lengths:
 * u:   autocorrelation e^-s.
 * v,w: (1 + sqrt3 s') / (1 + s')^2 driven by white noise, as a chain a' = -a + noise, b' = -b + a,
 *      y = sqrt3 a + (1 - sqrt3) b; with noise of unit intensity var a = 1/2, cov ab = var b = 1/4, var y = 1,
 *      autocorrelation (1 - s/2) e^-s. The noise of a step has covariance P - F P F', F = e^-s [1 0; s 1],
 *      P = [1/2 1/4; 1/4 1/4]; it is made of two draws by its triangular root.
 * w, felt by a wing: the same chain over a longer length, y = weightA a + weightB b (`span.ts`).
 */
import { expInPlace } from '../maths/functions.ts';
import { ftFromM } from '../units/conversions.ts';
import { bracketRoot, horizontalLengthFt, verticalLengthFt } from './dryden.ts';
import { LENGTHENED, laySpan, WEIGHT_A, WEIGHT_B } from './span.ts';
import { unblockedShare } from './strength.ts';

/** Where a transition's numbers stand. The first three and the span are what it was worked out for. */
export const FOR_HEIGHT_FT = 0; // definition: a place
export const FOR_TAS_MPS = 1; // definition: a place
const FOR_DT_S = 2; // definition: a place
/** k^0.4 at the height. */
export const ROOT = 3; // definition: a place
/** What is left of u, and how much of a draw is added. */
export const U_LEFT = 4; // definition: a place
export const U_NEW = 5; // definition: a place
/** Two chains, of v and of w. */
export const CHAIN_V = 6; // definition: a place
export const CHAIN_W = 11; // definition: a place
/** In a chain: what is left of a and of b, what b takes of a, then the root of the noise. */
export const LEFT = 0; // definition: a place
export const TAKEN = 1; // definition: a place
export const A_FROM_1 = 2; // definition: a place
export const B_FROM_1 = 3; // definition: a place
export const B_FROM_2 = 4; // definition: a place

const FOR_SPAN_M = 16; // definition: a place
/** Weights of a and b in the vertical gust that the wing feels. */
export const W_FROM_A = 17; // definition: a place
export const W_FROM_B = 18; // definition: a place
/** Share of the variance of vertical convective gusts that the ground leaves. */
export const UNBLOCKED = 19; // definition: a place

/** The last transition worked out, a pure function of what it was worked out for: who asks for others gets others. */
export const transition = new Float64Array(20);
const felt = new Float64Array(3);

function layChain(at: number, s: number, decay: number): void {
  const square = decay * decay;
  const q11 = 0.5 * (1 - square);
  const q12 = 0.25 - square * (0.25 + 0.5 * s);
  const q22 = 0.25 - square * (0.25 + 0.5 * s + 0.5 * s * s);
  const root11 = Math.sqrt(q11);
  const root21 = q12 / root11;
  transition[at + LEFT] = decay;
  transition[at + TAKEN] = s * decay;
  transition[at + A_FROM_1] = root11;
  transition[at + B_FROM_1] = root21;
  transition[at + B_FROM_2] = Math.sqrt(Math.max(0, q22 - root21 * root21));
}

/** Of an array of one. */
const ONLY = 0; // definition: a place
const decay = new Float64Array(1);
const decayOver = (s: number): number => {
  decay[ONLY] = -s;
  expInPlace(decay, ONLY);
  return decay[ONLY]!;
};

/** Lays `transition` for the height (ft, held) and airspeed at `memory[at]` and `memory[at + 1]`. */
export function layTransition(memory: Float64Array, at: number, dtS: number, spanM: number): void {
  const heightFt = memory[at]!;
  const tasMps = memory[at + 1]!;
  if (
    transition[FOR_HEIGHT_FT] === heightFt &&
    transition[FOR_TAS_MPS] === tasMps &&
    transition[FOR_DT_S] === dtS &&
    transition[FOR_SPAN_M] === spanM
  )
    return;
  transition[FOR_HEIGHT_FT] = heightFt;
  transition[FOR_TAS_MPS] = tasMps;
  transition[FOR_DT_S] = dtS;
  transition[FOR_SPAN_M] = spanM;
  const root = bracketRoot(heightFt);
  const distanceFt = ftFromM(tasMps * dtS);
  const sHorizontal = distanceFt / horizontalLengthFt(heightFt, root);
  const verticalFt = verticalLengthFt(heightFt);
  laySpan(ftFromM(spanM) / verticalFt, felt);
  transition[W_FROM_A] = felt[WEIGHT_A]!;
  transition[W_FROM_B] = felt[WEIGHT_B]!;
  transition[UNBLOCKED] = unblockedShare(heightFt);
  const sVertical = distanceFt / (verticalFt * felt[LENGTHENED]!);
  const left = decayOver(sHorizontal);
  transition[ROOT] = root;
  transition[U_LEFT] = left;
  transition[U_NEW] = Math.sqrt(1 - left * left);
  layChain(CHAIN_V, sHorizontal, left);
  layChain(CHAIN_W, sVertical, decayOver(sVertical));
}
