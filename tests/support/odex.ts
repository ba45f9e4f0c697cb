/** The library `odex` (Hairer and Wanner's extrapolation code) with the few types the tests need. */
import { createRequire } from 'node:module';

interface Solver {
  absoluteTolerance: number;
  relativeTolerance: number;
  initialStepSize: number;
  solve(
    f: (x: number, y: number[]) => number[],
    x0: number,
    y0: number[],
    x1: number,
  ): { y: number[]; outcome: number };
}

export const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (n: number) => Solver };

/** Integrates y' = f(x, y) from x0 to x1 to an absolute and relative tolerance. */
export const solveOde = (
  f: (x: number, y: number[]) => number[],
  x0: number,
  y0: readonly number[],
  x1: number,
  tolerance: number,
): number[] => {
  const solver = new Solver(y0.length);
  solver.absoluteTolerance = tolerance;
  solver.relativeTolerance = tolerance;
  const { y, outcome } = solver.solve(f, x0, [...y0], x1);
  if (outcome !== 0) throw new Error(`odex did not converge from ${x0} to ${x1}: outcome ${outcome}`);
  return y;
};
