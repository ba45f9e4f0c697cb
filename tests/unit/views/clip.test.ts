import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Clipper, cutSegment, newPlanes, setPlanes } from '../../../src/views/window/clip.ts';

const cornersOf = (clipper: Clipper): number[][] =>
  Array.from({ length: clipper.count }, (_, i) => [...clipper.corners.slice(3 * i, 3 * i + 3)]);

const outline = (points: readonly (readonly number[])[]): Clipper => {
  const clipper = new Clipper();
  clipper.begin();
  for (const [x, y, z] of points) clipper.add(x as number, y as number, z as number);
  return clipper;
};

const viewPlanes = (nearM: number, slopeX: number, slopeY: number) =>
  setPlanes(newPlanes(), nearM, { left: slopeX, right: slopeX, up: slopeY, down: slopeY });
const NEAR_ONLY = Float64Array.of(0, 0, 1, -1);
const inside = (planes: Float64Array, [x, y, z]: number[]): boolean => {
  for (let p = 0; p < planes.length; p += 4)
    if (planes[p]! * x! + planes[p + 1]! * y! + planes[p + 2]! * z! + planes[p + 3]! < -1e-6) return false;
  return true;
};

describe('cutting outlines to the view', () => {
  it('leaves an outline that is wholly ahead as it is', () => {
    const square = [
      [-1, -1, 5],
      [1, -1, 5],
      [1, 1, 5],
      [-1, 1, 5],
    ];
    const clipper = outline(square);
    expect(clipper.cut(viewPlanes(0.5, 1, 1))).toBe(4);
    expect(cornersOf(clipper).sort()).toEqual(square.sort());
  });

  it('drops an outline that is wholly behind the eye', () => {
    const clipper = outline([
      [0, 0, -1],
      [1, 0, -2],
      [0, 1, -3],
    ]);
    expect(clipper.cut(NEAR_ONLY)).toBe(0);
  });

  it('cuts a strip that runs from behind the eye to ahead of it exactly at the near limit', () => {
    // By hand: the edges from z = -1 to z = 3 cross z = 1 half way.
    const clipper = outline([
      [-2, -1, -1],
      [2, -1, -1],
      [2, 3, 3],
      [-2, 3, 3],
    ]);
    expect(clipper.cut(NEAR_ONLY)).toBe(4);
    expect(cornersOf(clipper)).toEqual(
      expect.arrayContaining([
        [2, 1, 1],
        [-2, 1, 1],
        [2, 3, 3],
        [-2, 3, 3],
      ]),
    );
  });

  it('adds a corner where one corner is cut off', () => {
    // A triangle with one corner behind: four corners are left.
    const clipper = outline([
      [0, 0, 0],
      [2, 0, 2],
      [0, 2, 2],
    ]);
    expect(clipper.cut(NEAR_ONLY)).toBe(4);
  });

  it('never leaves a corner outside, whatever convex or concave outline comes in', () => {
    const number = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(number, number, number), { minLength: 3, maxLength: 12 }), (points) => {
        const planes = viewPlanes(0.8, 0.9, 0.7);
        const clipper = outline(points);
        clipper.cut(planes);
        expect(cornersOf(clipper).every((corner) => inside(planes, corner))).toBe(true);
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('keeps all of the area that can be seen: a big ground square fills the whole pyramid', () => {
    // Ground 1 m below, seen through planes of slope 1 from z = 1 to the far edge z = 10:
    // a trapezium from half width 1 to 10 over 9 m, area (1 + 10) * 9 = 99.
    const clipper = outline([
      [-100, -1, -100],
      [100, -1, -100],
      [100, -1, 10],
      [-100, -1, 10],
    ]);
    clipper.cut(viewPlanes(1, 1, 1));
    const corners = cornersOf(clipper);
    const area = corners.reduce((sum, [x, , z], i) => {
      const [x2, , z2] = corners[(i + 1) % corners.length] as number[];
      return sum + (x as number) * (z2 as number) - (x2 as number) * (z as number);
    }, 0);
    expect(Math.abs(area) / 2).toBeCloseTo(99, 9);
  });
});

describe('cutting lines to the view', () => {
  it('cuts the end that lies behind the near limit', () => {
    const ends = Float64Array.of(0, 0, -1, 4, 0, 3);
    expect(cutSegment(ends, NEAR_ONLY)).toBe(true);
    expect([...ends]).toEqual([2, 0, 1, 4, 0, 3]);
  });

  it('cuts the other end just as well', () => {
    const ends = Float64Array.of(4, 0, 3, 0, 0, -1);
    expect(cutSegment(ends, NEAR_ONLY)).toBe(true);
    expect([...ends]).toEqual([4, 0, 3, 2, 0, 1]);
  });

  it('drops a line that lies behind', () => {
    expect(cutSegment(Float64Array.of(0, 0, 0, 1, 1, 0.5), NEAR_ONLY)).toBe(false);
  });
});
