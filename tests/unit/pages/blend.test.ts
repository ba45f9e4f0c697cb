import { describe, expect, it } from 'vitest';
import { blend } from '../../../src/pages/fly/drawing/blend.ts';
import { newSnapshot } from '../../../src/simulation/snapshot.ts';
import { radFromDeg } from '../../../src/units/conversions.ts';

describe('the picture between two steps', () => {
  it('lies half way in place, and turns the short way through north', () => {
    const before = { ...newSnapshot(), eastM: 10, headingRadT: radFromDeg(350), step: 1 };
    const now = { ...newSnapshot(), eastM: 20, headingRadT: radFromDeg(10), step: 2, onGround: true };
    const shown = blend(before, now, 0.5, newSnapshot());
    expect(shown.eastM).toBe(15);
    expect(Math.min(shown.headingRadT, 2 * Math.PI - shown.headingRadT)).toBeLessThan(1e-9);
    expect(shown.step).toBe(2);
    expect(shown.onGround).toBe(true);
  });

  it('leaves no field behind, whatever a snapshot holds', () => {
    const filled = (by: number) => {
      const snapshot = newSnapshot() as unknown as Record<string, unknown>;
      for (const [i, key] of Object.keys(snapshot).entries()) {
        if (typeof snapshot[key] === 'number') snapshot[key] = by + i / 1000;
        if (typeof snapshot[key] === 'boolean') snapshot[key] = by > 1;
        if (typeof snapshot[key] === 'string') snapshot[key] = `${key} ${by}`;
        if (snapshot[key] === null) snapshot[key] = by > 1 ? 'crashed' : null;
      }
      return snapshot as unknown as ReturnType<typeof newSnapshot>;
    };
    const [before, now] = [filled(1), filled(2)];
    const shown = blend(before, now, 0.5, newSnapshot());
    for (const key of Object.keys(now) as (keyof typeof now)[]) {
      const [was, is, drawn] = [before[key], now[key], shown[key]];
      if (typeof is !== 'number' || typeof was !== 'number') expect(drawn, key).toBe(is);
      else
        expect(
          [is, (was + is) / 2].some((value) => Math.abs(value - Number(drawn)) < 1e-9),
          key,
        ).toBe(true);
    }
  });

  it('is the last step itself at one', () => {
    const now = { ...newSnapshot(), pitchRad: 0.1, timeS: 3, endedWhy: 'tail' };
    expect(blend(newSnapshot(), now, 1, newSnapshot())).toEqual(now);
  });
});
