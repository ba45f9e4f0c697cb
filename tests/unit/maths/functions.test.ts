// Reference: the engine's own Math, itself within 1 ulp of the true value (fdlibm, as V8 has it).
import { describe, expect, it } from 'vitest';
import {
  asin,
  atan,
  atan2,
  cos,
  exp,
  expInPlace,
  log,
  pow,
  sin,
  sinCosInPlace,
  tan,
} from '../../../src/maths/functions.ts';
import { largestUlp, spread, ulpsBetween } from '../../support/ulps.ts';

const CASES: readonly [string, (x: number) => number, (x: number) => number, number[]][] = [
  ['sin near', sin, Math.sin, spread(-7, 7, 200_001)],
  ['sin far', sin, Math.sin, spread(-1e3, 1e3, 200_001)],
  ['sin very far', sin, Math.sin, spread(-7.9e5, 7.9e5, 50_001)],
  ['cos near', cos, Math.cos, spread(-7, 7, 200_001)],
  ['cos far', cos, Math.cos, spread(-1e3, 1e3, 200_001)],
  ['cos very far', cos, Math.cos, spread(-7.9e5, 7.9e5, 50_001)],
  ['tan near', tan, Math.tan, spread(-7, 7, 200_001)],
  ['tan far', tan, Math.tan, spread(-1e3, 1e3, 200_001)],
  ['asin', asin, Math.asin, spread(-1, 1, 200_001)],
  ['atan near', atan, Math.atan, spread(-4, 4, 200_001)],
  ['atan far', atan, Math.atan, spread(-1e6, 1e6, 50_001)],
  ['exp', exp, Math.exp, spread(-745, 709.7, 200_001)],
  ['exp near', exp, Math.exp, spread(-1.5, 1.5, 200_001)],
  ['log near', log, Math.log, spread(1e-6, 3, 200_001)],
  ['log far', log, Math.log, spread(1, 1e6, 50_001)],
  ['log of every size', log, Math.log, spread(-744, 709, 20_001).map(Math.exp)],
];

describe('deterministic functions', () => {
  it.each(CASES)('%s is within 2 ulp of Math', (_name, ours, theirs, xs) => {
    const worst = largestUlp(ours, theirs, xs);
    expect(worst.ulps, `at ${worst.at}`).toBeLessThanOrEqual(2);
  });

  it('sin, cos and tan hold beside every multiple of a quarter circle', () => {
    const xs: number[] = [];
    for (let n = -640; n <= 640; n++) {
      const near = (n * Math.PI) / 2;
      for (const off of [0, 1e-16, 1e-12, 1e-8, 1e-4]) xs.push(near * (1 + off), near * (1 - off));
    }
    expect(largestUlp(sin, Math.sin, xs).ulps).toBeLessThanOrEqual(2);
    expect(largestUlp(cos, Math.cos, xs).ulps).toBeLessThanOrEqual(2);
    expect(largestUlp(tan, Math.tan, xs).ulps).toBeLessThanOrEqual(2);
  });

  it('sine and cosine together are the same bits as apart', () => {
    const out = new Float64Array(3);
    for (const x of spread(-50, 50, 10_001)) {
      out[1] = x;
      sinCosInPlace(out, 1);
      expect(out[1] === sin(x) && out[2] === cos(x)).toBe(true);
    }
  });

  it('the exponential in place is the same bits as outside', () => {
    const out = new Float64Array(3);
    for (const x of [...spread(-2, 2, 10_001), 0, -0, 0.3465, -0.3465, 800, -800, Number.NaN]) {
      out[1] = x;
      expInPlace(out, 1);
      expect(Object.is(out[1], exp(x))).toBe(true);
    }
  });

  it('pow is within 2 ulp of Math', () => {
    for (const y of [5.25588, 4.25588, 0.190263, 0.234969, 1 / 3, -0.5, 1.2, 3, -7, 50.3]) {
      const worst = largestUlp(
        (x) => pow(x, y),
        (x) => x ** y,
        spread(0.01, 30, 20_001),
      );
      expect(worst.ulps, `${worst.at} to the ${y}`).toBeLessThanOrEqual(2);
    }
    for (const x of [1e-300, 0.3, 0.99999, 1.0000001, 1.5, 2, 10, 1e200]) {
      const worst = largestUlp(
        (y) => pow(x, y),
        (y) => x ** y,
        spread(-40, 40, 5_001),
      );
      expect(worst.ulps, `${x} to the ${worst.at}`).toBeLessThanOrEqual(2);
    }
  });

  it('atan2 is within 2 ulp of Math all round', () => {
    for (let i = 0; i < 20_000; i++) {
      const bearing = -4 + i * 0.0004;
      for (const size of [1e-9, 0.7, 400, 3e7]) {
        const x = size * Math.cos(bearing);
        const y = size * Math.sin(bearing);
        expect(ulpsBetween(atan2(y, x), Math.atan2(y, x))).toBeLessThanOrEqual(2);
      }
    }
  });

  it('the odd corners are as ECMAScript has them', () => {
    const corners = [0, -0, 1, -1, 0.5, -0.5, 2, -2, 3, -3, 1e308, -1e308, 5e-324, Infinity, -Infinity, NaN];
    const ones: [(x: number) => number, (x: number) => number][] = [
      [sin, Math.sin],
      [cos, Math.cos],
      [tan, Math.tan],
      [asin, Math.asin],
      [atan, Math.atan],
      [exp, Math.exp],
      [log, Math.log],
    ];
    for (const x of corners) {
      for (const [ours, theirs] of ones) {
        const trig = ours === sin || ours === cos || ours === tan;
        if (trig && Math.abs(x) === 1e308) continue;
        expect(ulpsBetween(ours(x), theirs(x)), `${ours.name}(${x})`).toBeLessThanOrEqual(2);
      }
      for (const y of corners) {
        expect(ulpsBetween(pow(x, y), x ** y), `pow(${x}, ${y})`).toBeLessThanOrEqual(2);
        expect(ulpsBetween(atan2(y, x), Math.atan2(y, x)), `atan2(${y}, ${x})`).toBeLessThanOrEqual(2);
      }
    }
  });

  it('sin of a monstrous angle is still a sine', () => {
    for (const x of [1e6, -1e9, 1e15, 1e300]) {
      expect(Math.abs(sin(x))).toBeLessThanOrEqual(1);
      expect(sin(x) * sin(x) + cos(x) * cos(x)).toBeCloseTo(1, 12);
    }
  });
});
