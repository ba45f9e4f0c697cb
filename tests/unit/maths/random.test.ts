import alea from 'seedrandom/lib/alea.js';
import { describe, expect, it } from 'vitest';
import {
  beginStream,
  nextNormals,
  nextUniform,
  nextUniforms,
  STREAM_SLOTS,
  seedStream,
} from '../../../src/maths/random.ts';

describe('random streams', () => {
  // Reference: the seedrandom library's own alea generator.
  it('draw the same numbers as the library over a long run', () => {
    for (const name of ['1/air/0', '1/pilot/0', '', 'a much longer name of a stream, with spaces']) {
      const library = alea(name);
      const memory = new Float64Array(7);
      beginStream(memory, 3, seedStream(name));
      let different = 0;
      for (let i = 0; i < 200_000; i++) if (nextUniform(memory, 3) !== library()) different++;
      expect(different).toBe(0);
      expect([...memory.subarray(0, 3)]).toEqual([0, 0, 0]);
    }
  });

  it('keep their four numbers inside the declared ranges', () => {
    const memory = new Float64Array(4);
    beginStream(memory, 0, seedStream('range'));
    for (let i = 0; i < 50_000; i++) {
      nextUniform(memory, 0);
      STREAM_SLOTS.forEach(({ low, high }, slot) => {
        if (!(memory[slot]! >= low && memory[slot]! <= high)) expect.fail(`slot ${slot}: ${memory[slot]}`);
      });
    }
  });

  it('go on from a copy exactly as the original does', () => {
    const memory = new Float64Array(4);
    const original = new Float64Array(50);
    const copied = new Float64Array(50);
    beginStream(memory, 0, seedStream('fork'));
    nextNormals(memory, 0, original, 50);
    const fork = memory.slice();
    nextNormals(memory, 0, original, 50);
    nextNormals(fork, 0, copied, 50);
    expect([...copied]).toEqual([...original]);
  });

  it('are the same drawn one by one and many at once, and a normal takes one uniform', () => {
    const single = new Float64Array(4);
    const many = new Float64Array(4);
    const normal = new Float64Array(4);
    const out = new Float64Array(7);
    for (const memory of [single, many, normal]) beginStream(memory, 0, seedStream('count'));
    for (let i = 0; i < 1000; i++) {
      nextNormals(normal, 0, out, 7);
      nextUniforms(many, 0, out, 7);
      expect([...out]).toEqual(Array.from({ length: 7 }, () => nextUniform(single, 0)));
      expect([...many]).toEqual([...single]);
      expect([...normal]).toEqual([...single]);
    }
  });

  // Reference: moments and quantiles of the standard normal distribution (any table: 68.27 %, 95.45 %).
  // 400,000 draws: standard error of the mean .0016, of the variance .0022, of a share .0007; bands 4 sigma.
  it('are normal in mean, variance, fourth moment and shares', () => {
    const memory = new Float64Array(4);
    beginStream(memory, 0, seedStream('normal'));
    const out = new Float64Array(2);
    let sum = 0;
    let squares = 0;
    let fourths = 0;
    let products = 0;
    let withinOne = 0;
    let withinTwo = 0;
    const pairs = 200_000;
    for (let i = 0; i < pairs; i++) {
      nextNormals(memory, 0, out, 2);
      products += out[0]! * out[1]!;
      for (const x of out) {
        sum += x;
        squares += x * x;
        fourths += x * x * x * x;
        if (Math.abs(x) < 1) withinOne++;
        if (Math.abs(x) < 2) withinTwo++;
      }
    }
    const n = 2 * pairs;
    expect(Math.abs(sum / n)).toBeLessThan(0.0064);
    expect(Math.abs(squares / n - 1)).toBeLessThan(0.009);
    expect(Math.abs(fourths / n - 3)).toBeLessThan(0.062);
    expect(Math.abs(products / pairs)).toBeLessThan(0.009);
    expect(Math.abs(withinOne / n - 0.682689)).toBeLessThan(0.003);
    expect(Math.abs(withinTwo / n - 0.9545)).toBeLessThan(0.0014);
  });
});
