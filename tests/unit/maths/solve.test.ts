import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { findRoot, solveLinear, solveNewton } from '../../../src/maths/solve.ts';

describe('a root in a bracket', () => {
  it('is found for easy, steep, flat and kinked functions', () => {
    const cases: readonly [(x: number) => number, number, number, number][] = [
      [(x) => x * x - 2, 0, 2, Math.SQRT2],
      [(x) => Math.exp(x) - 10, -50, 50, Math.LN10],
      [(x) => (x - 0.3) ** 9, -1, 1, 0.3],
      [(x) => (x < 0.25 ? -1 : 1), 0, 1, 0.25],
      [(x) => Math.atan(x - 5), -1e4, 1e5, 5],
      [(x) => 3 - x, 10, -10, 3],
    ];
    for (const [f, low, high, root] of cases) {
      expect(Math.abs(findRoot(f, low, high, 1e-10)! - root)).toBeLessThan(2e-10);
    }
  });

  it('is not invented where both ends have one sign', () => {
    expect(findRoot((x) => x * x + 1, -1, 1, 1e-9)).toBeUndefined();
    expect(findRoot(() => Number.NaN, -1, 1, 1e-9)).toBeUndefined();
  });

  it('does not ask more often than halving would, many times over', () => {
    let asked = 0;
    findRoot(
      (x) => {
        asked++;
        return (x - 0.3) ** 9;
      },
      -1,
      1,
      1e-10,
    );
    expect(asked).toBeLessThan(90);
  });
});

describe('linear equations', () => {
  // Reference: the ml-matrix library.
  it('are solved as a matrix library solves them', () => {
    for (let n = 1; n <= 7; n++) {
      const rows = Array.from({ length: n }, (_, i) =>
        Array.from(
          { length: n },
          (_, j) => Math.sin(3.7 * i * i + 1.3 * j * j + i * j) + (i === j ? 0.5 : 0),
        ),
      );
      const right = rows.map((_, i) => Math.cos(2 * i));
      const theirs = solve(new Matrix(rows), Matrix.columnVector(right)).to1DArray();
      solveLinear(rows, right)!.forEach((x, i) => {
        expect(Math.abs(x - theirs[i]!)).toBeLessThan(1e-9 * (1 + Math.abs(x)));
      });
    }
  });

  it('say when the matrix is singular, and need no luck with the first pivot', () => {
    expect(
      solveLinear(
        [
          [0, 0],
          [0, 1],
        ],
        [1, 1],
      ),
    ).toBeUndefined();
    expect(
      solveLinear(
        [
          [0, 1],
          [1, 0],
        ],
        [2, 3],
      ),
    ).toEqual([3, 2]);
  });
});

describe('Newton for several unknowns', () => {
  // Rosenbrock's valley written as two equations: root (1, 1). More, Garbow, Hillstrom 1981, problem 1.
  it('finds the root of Rosenbrock from the standard start', () => {
    const found = solveNewton(([x, y]) => [10 * (y! - x! * x!), 1 - x!], [-1.2, 1], [1, 1]);
    expect(found.converged).toBe(true);
    expect(found.x[0]).toBeCloseTo(1, 9);
    expect(found.x[1]).toBeCloseTo(1, 9);
  });

  // Powell's badly scaled function: More, Garbow, Hillstrom 1981, problem 3: (1.098...e-5, 9.106...).
  it("finds the root of Powell's badly scaled equations", () => {
    const found = solveNewton(
      ([x, y]) => [1e4 * x! * y! - 1, Math.exp(-x!) + Math.exp(-y!) - 1.0001],
      [0, 1],
      [1e-4, 1],
      { tolerance: 1e-12, mostIterations: 200 },
    );
    expect(found.converged).toBe(true);
    expect(found.x[0]! / 1.098159e-5).toBeCloseTo(1, 4);
    expect(found.x[1]! / 9.106146).toBeCloseTo(1, 5);
  });

  it('says when there is no root, and stays inside its limits', () => {
    const none = solveNewton(([x]) => [x! * x! + 1], [0.7], [1]);
    expect(none.converged).toBe(false);
    const held = solveNewton(([x]) => [x! - 5], [0], [1], { lows: [-1], highs: [1] });
    expect(held.converged).toBe(false);
    expect(held.x[0]).toBe(1);
  });
});
