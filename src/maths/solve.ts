/** Root finding: one unknown in a bracket, several by damped Newton. Not for the inner loop. */

const MOST_HALVINGS = 200;

/**
 * The x between `low` and `high` where f crosses nought, to within `tolerance` in x.
 * False position with the Illinois weight (Dowell and Jarratt 1971), and a halving whenever a move has not
 * halved the bracket. Returns `undefined` when both ends have the same sign.
 */
export function findRoot(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance: number,
): number | undefined {
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa < 0 !== fb < 0) || Number.isNaN(fa) || Number.isNaN(fb)) return undefined;
  let halve = false;
  for (let i = 0; i < MOST_HALVINGS && Math.abs(b - a) > tolerance; i++) {
    const width = Math.abs(b - a);
    const guess = (a * fb - b * fa) / (fb - fa);
    const inside = guess > Math.min(a, b) && guess < Math.max(a, b);
    const x = halve || !inside ? 0.5 * (a + b) : guess;
    const fx = f(x);
    if (fx === 0) return x;
    if (fx < 0 === fb < 0) fa *= 0.5;
    else {
      a = b;
      fa = fb;
    }
    b = x;
    fb = fx;
    halve = Math.abs(b - a) > 0.5 * width;
  }
  return Math.abs(fa) < Math.abs(fb) && Math.abs(b - a) > tolerance ? a : b;
}

/**
 * Solves A x = b for a small square A in rows, by elimination with pivoting on the largest element of the
 * column. Returns `undefined` when A is singular.
 */
export function solveLinear(
  rows: readonly (readonly number[])[],
  right: readonly number[],
): number[] | undefined {
  const n = right.length;
  const m = rows.map((row, i) => [...row, right[i]!]);
  for (let column = 0; column < n; column++) {
    let pivot = column;
    for (let i = column + 1; i < n; i++) {
      if (Math.abs(m[i]![column]!) > Math.abs(m[pivot]![column]!)) pivot = i;
    }
    const top = m[pivot]!;
    m[pivot] = m[column]!;
    m[column] = top;
    const lead = top[column]!;
    if (!(Math.abs(lead) > 0) || !Number.isFinite(lead)) return undefined;
    for (let i = column + 1; i < n; i++) {
      const row = m[i]!;
      const factor = row[column]! / lead;
      for (let j = column; j <= n; j++) row[j] = row[j]! - factor * top[j]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    const row = m[i]!;
    let sum = row[n]!;
    for (let j = i + 1; j < n; j++) sum -= row[j]! * x[j]!;
    x[i] = sum / row[i]!;
  }
  return x;
}

/** What `solveNewton` found: the best point, its residuals, and whether they are small enough. */
export interface NewtonResult {
  readonly x: readonly number[];
  readonly residuals: readonly number[];
  readonly converged: boolean;
  readonly iterations: number;
}

/** Limits and patience of `solveNewton`; all optional. */
export interface NewtonOptions {
  /** Largest residual that counts as nought, in the residuals' own unit. Default 1e-9. */
  readonly tolerance?: number;
  readonly mostIterations?: number;
  /** The unknowns are held inside these, when given. */
  readonly lows?: readonly number[];
  readonly highs?: readonly number[];
}

const JACOBIAN_STEP = 1e-6;
const SMALLEST_DAMPING = 1 / 1024;

const largest = (values: readonly number[]): number => {
  let most = 0;
  for (const value of values) {
    if (!Number.isFinite(value)) return Number.POSITIVE_INFINITY;
    most = Math.max(most, Math.abs(value));
  }
  return most;
};

/** Jacobian by central differences, one row a residual. */
function jacobian(
  f: (x: readonly number[]) => readonly number[],
  x: readonly number[],
  scales: readonly number[],
): number[][] {
  const rows: number[][] = x.map(() => []);
  for (let j = 0; j < x.length; j++) {
    const step = JACOBIAN_STEP * scales[j]!;
    const above = [...x];
    const below = [...x];
    above[j] = x[j]! + step;
    below[j] = x[j]! - step;
    const fAbove = f(above);
    const fBelow = f(below);
    for (let i = 0; i < x.length; i++) rows[i]![j] = (fAbove[i]! - fBelow[i]!) / (2 * step);
  }
  return rows;
}

/**
 * Solves f(x) = 0 for n unknowns and n residuals by Newton's method with a numeric Jacobian; each move is
 * halved until the largest residual falls. `scales` is the natural size of each unknown (a radian, 10 m/s):
 * it sets the difference step. Residuals should be made comparable by the caller.
 */
export function solveNewton(
  f: (x: readonly number[]) => readonly number[],
  x0: readonly number[],
  scales: readonly number[],
  options: NewtonOptions = {},
): NewtonResult {
  const tolerance = options.tolerance ?? 1e-9;
  const mostIterations = options.mostIterations ?? 60;
  const held = (value: number, i: number): number =>
    Math.min(Math.max(value, options.lows?.[i] ?? -Infinity), options.highs?.[i] ?? Infinity);
  let x = x0.map(held);
  let residuals = f(x);
  let size = largest(residuals);
  let iterations = 0;
  while (size > tolerance && iterations < mostIterations) {
    iterations++;
    const move = solveLinear(jacobian(f, x, scales), residuals);
    if (move === undefined) break;
    let damping = 1;
    let better = false;
    while (damping >= SMALLEST_DAMPING && !better) {
      const candidate = x.map((value, i) => held(value - damping * move[i]!, i));
      const candidateResiduals = f(candidate);
      const candidateSize = largest(candidateResiduals);
      if (candidateSize < size) {
        x = candidate;
        residuals = candidateResiduals;
        size = candidateSize;
        better = true;
      }
      damping *= 0.5;
    }
    if (!better) break;
  }
  return { x, residuals, converged: size <= tolerance, iterations };
}
