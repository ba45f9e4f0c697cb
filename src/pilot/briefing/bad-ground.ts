import { fromFile, type Runway } from '../../aerodrome/runway.ts';
import type { Aerodrome } from '../../aerodrome/schema.ts';

const BAD_GROUND: ReadonlySet<Aerodrome['features'][number]['kind']> = new Set(['wood', 'water', 'village']);

/** Corners in circuit axes. */
export type Outline = readonly (readonly [number, number])[];

/** Even-odd rule: a ray from the point crosses the outline an odd number of times. */
export const isInside = (outline: Outline, x: number, y: number): boolean => {
  let inside = false;
  outline.forEach(([x1, y1], i) => {
    const [x2, y2] = outline[(i + 1) % outline.length] as readonly [number, number];
    if (y1 > y !== y2 > y && x < x1 + ((x2 - x1) * (y - y1)) / (y2 - y1)) inside = !inside;
  });
  return inside;
};

/** Ground of the aerodrome's map that nobody lands on, in circuit axes. */
export const badGroundOf = ({ features }: Aerodrome, runway: Runway, side: 1 | -1): readonly Outline[] =>
  features
    .filter(({ kind }) => BAD_GROUND.has(kind))
    .map(({ points }) =>
      points.map((point) => {
        const { eastM, northM } = fromFile(runway, point);
        const x = eastM * runway.sinHeading + northM * runway.cosHeading;
        const y = side * (eastM * runway.cosHeading - northM * runway.sinHeading);
        return [x, y] as const;
      }),
    );
