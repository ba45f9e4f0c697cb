/** Slow and fast longitudinal motions of the model: by its own linearisation, and as flown. */
import { EigenvalueDecomposition, Matrix, solve } from 'ml-matrix';
import type { Aeroplane } from '../../src/aeroplane/schema.ts';
import { columnDensityKgpm3 } from '../../src/atmosphere/air.ts';
import { engineShare } from '../../src/simulation/engine/engine.ts';
import { derivative } from '../../src/simulation/motion/forces.ts';
import type { Steady } from '../../src/simulation/performance/steady.ts';
import { INTEGRATED, NOW, SEEN_LENGTH } from '../../src/simulation/places.ts';
import { shapeOf } from '../../src/simulation/shape.ts';
import { ISA, integratedAt, nowAt } from './airborne.ts';

export interface Mode {
  /** Damped: from crossing to crossing. */
  readonly periodS: number;
  readonly damping: number;
  /** Of the undamped motion. */
  readonly naturalRadps: number;
}

/** Places of height, forward and upward speed, pitch, pitch rate and engine speed among the integrated. */
const LONGITUDINAL = [2, 4, 5, 6, 9, 11];
const SCALES = [1, 0.1, 0.1, 0.002, 0.002, 0.05];

/**
 * Oscillations of the six longitudinal numbers about a steady state, slowest first, from the numerical Jacobian of
 * the model's own right-hand side. `density` false: the air is the same at every height.
 */
export const modesOf = (
  aeroplane: Aeroplane,
  steady: Steady,
  altitudeM: number,
  flapDeg = 0,
  density = true,
): Mode[] => {
  const shape = shapeOf(aeroplane);
  const now = nowAt(shape, steady, altitudeM, flapDeg);
  const rate = new Float64Array(INTEGRATED);
  const seen = new Float64Array(SEEN_LENGTH);
  const trim = integratedAt(steady, altitudeM);
  const rateAt = (place: number, off: number): number[] => {
    const y = Float64Array.from(trim);
    y[place] = y[place]! + off;
    now[NOW.density] = columnDensityKgpm3(ISA, density ? y[2]! : altitudeM);
    now[NOW.torqueScale] = engineShare(now[NOW.density]!);
    derivative(shape, now, y, rate, seen);
    return LONGITUDINAL.map((i) => rate[i]!);
  };
  const jacobian = Matrix.zeros(LONGITUDINAL.length, LONGITUDINAL.length);
  LONGITUDINAL.forEach((place, j) => {
    const step = SCALES[j]!;
    const above = rateAt(place, step);
    const below = rateAt(place, -step);
    for (let i = 0; i < above.length; i += 1) jacobian.set(i, j, (above[i]! - below[i]!) / (2 * step));
  });
  const { realEigenvalues, imaginaryEigenvalues } = new EigenvalueDecomposition(jacobian);
  return realEigenvalues
    .map((re, i) => ({ re, im: imaginaryEigenvalues[i]! }))
    .filter(({ im }) => im > 1e-6)
    .map(({ re, im }) => ({
      periodS: (2 * Math.PI) / im,
      damping: -re / Math.hypot(re, im),
      naturalRadps: Math.hypot(re, im),
    }))
    .sort((a, b) => a.naturalRadps - b.naturalRadps);
};

/**
 * The slow oscillation in a flown response, sampled every `dtS`: Prony's method. The samples, a second apart, are
 * fitted by a linear recurrence of `order` terms (the oscillation and slow aperiodic motions); its roots are e^(root
 * times a second).
 */
export const measuredMode = (samples: readonly number[], dtS: number, order = 4): Mode => {
  const every = Math.round(1 / dtS);
  const x = samples.filter((_, i) => i % every === 0);
  const rows: number[][] = [];
  const right: number[][] = [];
  for (let i = order; i < x.length; i += 1) {
    rows.push(Array.from({ length: order }, (_, k) => x[i - 1 - k]!));
    right.push([x[i]!]);
  }
  const terms = solve(new Matrix(rows), new Matrix(right), true).to1DArray();
  const companion = Matrix.zeros(order, order);
  for (let k = 0; k < order; k += 1) companion.set(0, k, terms[k]!);
  for (let k = 1; k < order; k += 1) companion.set(k, k - 1, 1);
  const { realEigenvalues, imaginaryEigenvalues } = new EigenvalueDecomposition(companion);
  const found = realEigenvalues
    .map((re, i) => ({
      re: Math.log(Math.hypot(re, imaginaryEigenvalues[i]!)),
      im: Math.atan2(imaginaryEigenvalues[i]!, re),
    }))
    .filter(({ im }) => im > 1e-3 && im < Math.PI - 1e-6)
    .sort((a, b) => Math.hypot(a.re, a.im) - Math.hypot(b.re, b.im))[0];
  if (!found) throw new Error('no oscillation was found in the samples');
  const naturalRadps = Math.hypot(found.re, found.im);
  return { periodS: (2 * Math.PI) / found.im, damping: -found.re / naturalRadps, naturalRadps };
};
