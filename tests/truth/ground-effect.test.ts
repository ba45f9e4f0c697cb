// Ground effect on induced drag. The law is from memory: that the code computes it is checked to the last printed digit
// (does what we meant); that it is right, only by the wide band of the handbook's shares, from memory too.
import { describe, expect, it } from 'vitest';
import { groundEffect } from '../../src/simulation/motion/airframe.ts';
import { derivative } from '../../src/simulation/motion/forces.ts';
import { INTEGRATED, NOW, SEEN, SEEN_LENGTH } from '../../src/simulation/places.ts';
import { shapeOf } from '../../src/simulation/shape.ts';
import { GROUND_EFFECT_FROM_MEMORY, WIESELSBERGER_FROM_MEMORY } from '../reference/longitudinal.ts';
import { aeroplaneM } from '../support/aeroplanes.ts';
import { integratedAt, nowAt, steadyAt } from '../support/airborne.ts';
import { about, expectWithin } from '../support/expect-within.ts';
import { meant } from '../support/trust-table.ts';

const LAW = "Wieselsberger's law, from memory";
const TABLE = WIESELSBERGER_FROM_MEMORY.rows;

describe('ground effect', () => {
  it.each(TABLE)('with the wing %d of a span up leaves %d of the induced drag', (heightOverSpan, factor) => {
    meant('Induced drag near the ground', LAW, groundEffect(heightOverSpan), factor, '%');
    expectWithin(groundEffect(heightOverSpan), about(factor, 0.00006, LAW));
  });

  it.each(GROUND_EFFECT_FROM_MEMORY.rows)(
    'at %d of the span takes about the handbook share %d off (from memory)',
    (heightOverSpan, _less, low, high) => {
      const source = 'FAA handbook, from memory';
      expectWithin(1 - groundEffect(heightOverSpan), { low, high, source });
    },
  );

  // Where the law no longer holds: the design's own bounds, common practice
  it('stays at its value at 1/15 of the span below that, and is nothing from a span up', () => {
    expect(groundEffect(0.01)).toBe(groundEffect(1 / 15));
    expect(groundEffect(1)).toBe(1);
    expect(groundEffect(7)).toBe(1);
  });

  it('never falls and never jumps on the way up', () => {
    let before = groundEffect(0);
    for (let x = 0; x <= 1.2; x += 0.001) {
      const here = groundEffect(x);
      expect(here).toBeGreaterThanOrEqual(before);
      expect(here - before).toBeLessThan(0.006);
      before = here;
    }
  });

  it("is felt at the wing's height, not the wheels'", () => {
    const aeroplane = aeroplaneM();
    const shape = shapeOf(aeroplane);
    const steady = steadyAt(aeroplane, 60, { flightPathRad: 0 });
    const now = nowAt(shape, steady, 0);
    // A band of ground that never ends, so that the height above it is the height
    now[NOW.slopeTo] = 1;
    const seen = new Float64Array(SEEN_LENGTH);
    const dragAt = (cgHeightM: number): { induced: number; cl2: number } => {
      const y = integratedAt(steady, cgHeightM);
      derivative(shape, now, y, new Float64Array(INTEGRATED), seen);
      const qS = seen[SEEN.dynamicPressure]! * 16;
      return { induced: seen[SEEN.drag]! / qS - 0.034, cl2: (seen[SEEN.lift]! / qS) ** 2 };
    };
    const spanM = Math.sqrt(7.5 * 16);
    // The wing of the Sandpiper family is 2.1 m above the wheels, the centre of gravity 1.15 m: .95 m higher
    for (const [heightOverSpan, factor] of TABLE) {
      const { induced, cl2 } = dragAt(heightOverSpan * spanM - 0.95);
      expectWithin(induced / (0.0565884 * cl2), about(factor, 0.0002, LAW));
    }
    const aloft = dragAt(50);
    expectWithin(aloft.induced / (0.0565884 * aloft.cl2), about(1, 1e-5, 'parabolic polar'));
  });
});
