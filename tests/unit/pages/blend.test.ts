import { describe, expect, it } from 'vitest';
import { blend } from '../../../src/pages/fly/blend.ts';
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

  it('is the last step itself at one', () => {
    const now = { ...newSnapshot(), pitchRad: 0.1, timeS: 3, endedWhy: 'tail' };
    expect(blend(newSnapshot(), now, 1, newSnapshot())).toEqual(now);
  });
});
