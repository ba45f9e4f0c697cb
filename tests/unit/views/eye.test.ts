import { describe, expect, it } from 'vitest';
import { newSnapshot, type Snapshot } from '../../../src/simulation/snapshot.ts';
import { mFromNmi, radFromDeg } from '../../../src/units/conversions.ts';
import { WINDOW_FIELD_OF_VIEW_DEG } from '../../../src/views/frame.ts';
import { Eye } from '../../../src/views/window/eye.ts';

const seenFrom = (changes: Partial<Snapshot>, lookDeg = 0): Eye => {
  const eye = new Eye();
  eye.fit(400, 250);
  eye.take({ ...newSnapshot(), ...changes }, radFromDeg(lookDeg));
  return eye;
};

/** Angles right and up from the middle of the view, degrees; null behind the eye. */
const angles = (eye: Eye, place: readonly [number, number, number]): { right: number; up: number } | null => {
  const seen = new Float64Array(3);
  eye.bring(place, 0, seen, 0);
  const [x, y, z] = seen as unknown as [number, number, number];
  if (z <= 0) return null;
  return { right: (Math.atan2(x, z) * 180) / Math.PI, up: (Math.atan2(y, z) * 180) / Math.PI };
};

/** Expected angles are plane trigonometry done by hand. */
describe('the eye', () => {
  it('sees a runway straight ahead on a 3-degree slope 3 degrees below the horizon', () => {
    const distance = mFromNmi(1);
    const eye = seenFrom({ eyeHeightM: distance * Math.tan(radFromDeg(3)) });
    const seen = angles(eye, [0, distance, 0]);
    expect(seen?.right).toBeCloseTo(0, 9);
    expect(seen?.up).toBeCloseTo(-3, 9);
  });

  it('sees the horizon lower when the nose goes up', () => {
    const seen = angles(seenFrom({ pitchRad: radFromDeg(8) }), [0, 1e7, 0]);
    expect(seen?.up).toBeCloseTo(-8, 3);
  });

  it('sees what lies to the right on the right: heading north, a place in the north-east', () => {
    expect(angles(seenFrom({}), [100, 100, 0])?.right).toBeCloseTo(45, 9);
  });

  it('counts heading clockwise: heading east, a place in the north is 90 degrees left', () => {
    const eye = seenFrom({ headingRadT: radFromDeg(90) }, -90);
    expect(angles(eye, [0, 100, 0])?.right).toBeCloseTo(0, 9);
  });

  it('sees the horizon higher on the right when the right wing is down, and lower on the left', () => {
    const eye = seenFrom({ bankRad: radFromDeg(20) });
    const right = angles(eye, [1e6, 1e6, 0]);
    const left = angles(eye, [-1e6, 1e6, 0]);
    expect(right?.up).toBeGreaterThan(10);
    expect(left?.up).toBeLessThan(-10);
  });

  it('looks down by the bank angle when it looks out along the lower wing', () => {
    const eye = seenFrom({ bankRad: radFromDeg(20) }, 90);
    expect(angles(eye, [1e7, 0, 0])?.up).toBeCloseTo(20, 3);
  });

  it('sees the threshold 45 degrees behind the left wing when looking 135 degrees left', () => {
    // Downwind heading south, one mile west of a north-south runway is on its left: the threshold bears north-east.
    const eye = seenFrom({ headingRadT: Math.PI, eyeEastM: -1000, eyeNorthM: -1000 }, -135);
    expect(angles(eye, [0, 0, 0])?.right).toBeCloseTo(0, 9);
  });

  it('spans the stated field of view across the panel', () => {
    const eye = seenFrom({});
    const half = radFromDeg(WINDOW_FIELD_OF_VIEW_DEG / 2);
    expect(eye.screenX(Math.tan(half), 1)).toBeCloseTo(400, 9);
    expect(eye.screenX(-Math.tan(half), 1)).toBeCloseTo(0, 9);
  });
});
