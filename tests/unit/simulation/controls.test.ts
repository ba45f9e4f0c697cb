// The table of controls says the ranges; quantiseControls is written out for speed. The two must agree.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import {
  CONTROL_STEP,
  CONTROLS,
  neutralControls,
  quantiseControls,
} from '../../../src/simulation/controls.ts';

it('clamps every control to its range in the table and rounds it to its step', () => {
  const anything = fc.oneof(fc.double(), fc.double({ min: -3, max: 3 }), fc.constant(Number.NaN));
  fc.assert(
    fc.property(fc.array(anything, { minLength: CONTROLS.length, maxLength: CONTROLS.length }), (values) => {
      const controls = neutralControls();
      CONTROLS.forEach((c, i) => {
        controls[c.name] = values[i] as number;
      });
      quantiseControls(controls, 3);
      CONTROLS.forEach((c, i) => {
        const asked = values[i] as number;
        const high = c.name === 'flapStage' ? 3 : c.high;
        const step = c.whole ? 1 : CONTROL_STEP;
        const got = controls[c.name];
        expect(Object.is(got, -0)).toBe(false);
        expect(got).toBeGreaterThanOrEqual(c.low);
        expect(got).toBeLessThanOrEqual(high);
        expect(Math.abs(got / step - Math.round(got / step))).toBeLessThan(1e-9);
        const inside = Number.isNaN(asked) ? 0 : Math.min(high, Math.max(c.low, asked));
        expect(Math.abs(got - inside)).toBeLessThanOrEqual(step / 2 + 1e-12);
      });
    }),
  );
});
