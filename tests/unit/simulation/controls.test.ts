// The table of controls says the ranges; quantiseControls is written out for speed. The two must agree.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  CONTROLS,
  copyControls,
  neutralControls,
  quantiseControls,
  quantiseMoved,
} from '../../../src/simulation/controls.ts';

it('clamps every control to its range in the table and rounds it to its step', () => {
  const anything = fc.oneof(fc.double(), fc.double({ min: -3, max: 3 }), fc.constant(Number.NaN));
  fc.assert(
    fc.property(fc.array(anything, { minLength: CONTROLS.length, maxLength: CONTROLS.length }), (values) => {
      const controls = neutralControls();
      CONTROLS.forEach((c, i) => {
        controls[c.name] = values[i] as number;
      });
      const moved = { ...controls };
      quantiseControls(controls, 3);
      quantiseMoved(moved, 3, neutralControls());
      expect(moved).toEqual(controls);
      CONTROLS.forEach((c, i) => {
        const asked = values[i] as number;
        const high = c.name === 'flapStage' ? 3 : c.high;
        const step = c.whole ? 1 : 1e-4;
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

describe('the controls', () => {
  it('are the same once quantised twice', () => {
    const controls = neutralControls();
    Object.assign(controls, { elevator: 0.77777777, trim: -0.33333, flapStage: 1.4 });
    quantiseControls(controls, 3);
    const once = { ...controls };
    quantiseControls(controls, 3);
    expect(controls).toEqual(once);
  });

  it('are taken from the last where they have not moved, a nought without its minus', () => {
    const last = neutralControls();
    Object.assign(last, { elevator: 0.1234, trim: -0.5 });
    const controls = { ...last, aileron: -0, flapStage: -0, rudder: 0.55555 };
    quantiseMoved(controls, 3, last);
    expect(controls).toEqual({ ...last, rudder: 0.5556 });
  });

  it('copied, are all there and share nothing', () => {
    const from = neutralControls();
    for (const [i, { name }] of CONTROLS.entries()) from[name] = i + 1;
    const into = neutralControls();
    copyControls(from, into);
    expect(into).toEqual(from);
    from.elevator = 99;
    expect(into.elevator).not.toBe(99);
  });

  it('stand one to a column, and every lever has its row', () => {
    const names = CONTROLS.map(({ name }) => name);
    expect([...names].sort()).toEqual(Object.keys(neutralControls()).sort());
    expect(new Set(CONTROLS.map(({ column }) => column)).size).toBe(CONTROLS.length);
  });
});
