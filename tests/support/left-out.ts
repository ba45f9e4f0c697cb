/** What a story leaves out, told and held: a selection must not empty a test without anybody seeing it. */
import { expect } from 'vitest';

/**
 * Prints how many were left out of how many, and fails when those left out are others than the `known` ones, each with
 * the sentence or reason that it must have.
 */
export const expectLeftOut = (
  what: string,
  of: number,
  out: readonly (readonly [string, string])[],
  known: readonly (readonly [string, RegExp])[],
): void => {
  process.stdout.write(`${what}: ${out.length} of ${of} left out\n`);
  expect(out.map(([name]) => name).sort()).toEqual(known.map(([name]) => name).sort());
  for (const [name, why] of out) {
    const reason = known.find(([which]) => which === name)?.[1];
    if (reason !== undefined) expect(why, name).toMatch(reason);
  }
  expect(out.length).toBeLessThan(of / 2);
};
