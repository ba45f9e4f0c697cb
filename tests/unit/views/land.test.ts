import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runwayInUse } from '../../../src/aerodrome/runway.ts';
import { hatch, scatter } from '../../../src/views/ground/hatch.ts';
import { landOf } from '../../../src/views/ground/land.ts';
import { trianglesOf, twiceArea } from '../../../src/views/ground/triangles.ts';
import { aerodromeFiles, aerodromeNamed } from '../../support/aerodromes.ts';

const areaOfTriangles = (outline: readonly number[], corners: readonly number[]): number => {
  let sum = 0;
  for (let k = 0; k < corners.length; k += 3) {
    const pick = [0, 1, 2].flatMap((m) => {
      const at = 2 * (corners[k + m] as number);
      return [outline[at] as number, outline[at + 1] as number];
    });
    sum += Math.abs(twiceArea(pick)) / 2;
  }
  return sum;
};

describe('cutting an outline into triangles', () => {
  it('cuts a square of side 10 into two triangles of area 100 together', () => {
    const square = [0, 0, 10, 0, 10, 10, 0, 10];
    const triangles = trianglesOf(square);
    expect(triangles).toHaveLength(6);
    expect(areaOfTriangles(square, triangles)).toBeCloseTo(100, 9);
  });

  it('cuts a concave L of three unit squares into area 3, either way round', () => {
    const ell = [0, 0, 2, 0, 2, 1, 1, 1, 1, 2, 0, 2];
    const turned = ell.flatMap((_, i) =>
      i % 2 === 0 ? [ell[ell.length - 2 - i]!, ell[ell.length - 1 - i]!] : [],
    );
    expect(areaOfTriangles(ell, trianglesOf(ell))).toBeCloseTo(3, 9);
    expect(areaOfTriangles(turned, trianglesOf(turned))).toBeCloseTo(3, 9);
  });

  it('keeps the area of any star-shaped outline (shoelace formula)', () => {
    const radii = fc.array(fc.double({ min: 1, max: 10, noNaN: true }), { minLength: 3, maxLength: 14 });
    fc.assert(
      fc.property(radii, (lengths) => {
        const outline = lengths.flatMap((r, i) => {
          const angle = (2 * Math.PI * i) / lengths.length;
          return [r * Math.cos(angle), r * Math.sin(angle)];
        });
        expect(areaOfTriangles(outline, trianglesOf(outline))).toBeCloseTo(
          Math.abs(twiceArea(outline)) / 2,
          6,
        );
      }),
      { seed: 2, numRuns: 200 },
    );
  });
});

describe('hatching', () => {
  it('covers a square of side 10 with lines 1 apart whose length times spacing is its area', () => {
    const lines = hatch([0, 0, 10, 0, 10, 10, 0, 10], 0, 1);
    let length = 0;
    for (let k = 0; k < lines.length; k += 4)
      length += Math.hypot(lines[k + 2]! - lines[k]!, lines[k + 3]! - lines[k + 1]!);
    expect(length).toBeCloseTo(100, 9);
  });

  it('leaves the bay of a concave outline free', () => {
    // A U: 3 wide, 3 tall, with a bay 1 wide from y = 1 up. A line at y = 2 has two parts.
    const u = [0, 0, 3, 0, 3, 3, 2, 3, 2, 1, 1, 1, 1, 3, 0, 3];
    const lines = hatch(u, 0, 4);
    expect(lines).toHaveLength(8);
  });

  it('scatters no point outside the outline', () => {
    const points = scatter([0, 0, 1000, 0, 1000, 1000, 0, 1000], 90);
    expect(points.length).toBeGreaterThan(100);
    for (const value of points) {
      expect(value).toBeGreaterThan(-30);
      expect(value).toBeLessThan(1030);
    }
  });
});

describe('the land of every aerodrome', () => {
  for (const file of aerodromeFiles())
    it(`${file}: every area is cut up whole`, () => {
      const aerodrome = aerodromeNamed(file.replace('.json', ''));
      const runway = runwayInUse(aerodrome, aerodrome.runway.ends[0].designator);
      const areas = landOf(aerodrome, runway).filter(({ kind }) => kind !== 'road' && kind !== 'obstacle');
      expect(areas.length).toBeGreaterThan(0);
      for (const feature of areas) {
        const area = areaOfTriangles([...feature.outline], [...feature.triangles]);
        expect(area).toBeCloseTo(Math.abs(twiceArea([...feature.outline])) / 2, 0);
      }
    });
});
