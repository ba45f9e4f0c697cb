import { fromFile, type Runway } from '../../aerodrome/runway.ts';
import type { Aerodrome } from '../../aerodrome/schema.ts';
import { mFromFt } from '../../units/conversions.ts';
import { hatch, scatter } from './hatch.ts';
import { type Outline, trianglesOf, twiceArea } from './triangles.ts';

type Kind = Aerodrome['features'][number]['kind'];

/** One feature of the land, ready to draw: metres east and north of the landing threshold in use. */
export interface Feature {
  readonly kind: Kind;
  readonly name: string;
  readonly outline: Float64Array;
  /** Corner numbers by threes; empty for roads and obstacles. */
  readonly triangles: Uint16Array;
  /** x1, y1, x2, y2 by fours. */
  readonly lines: Float64Array;
  /** x, y by twos. */
  readonly spots: Float64Array;
  /** East and north of its middle. */
  readonly middle: Float64Array;
  /** Square root of the area. */
  readonly sizeM: number;
  readonly heightM: number;
}

const AREAS: ReadonlySet<Kind> = new Set<Kind>(['field', 'wood', 'water', 'village']);
const FURROWS_M = 70;
const WAVES_M = 110;
const TREES_M = 95;
const HOUSES_M = 85;

const middleOf = (outline: Outline): Float64Array => {
  const n = outline.length / 2;
  let east = 0;
  let north = 0;
  for (let i = 0; i < n; i += 1) {
    east += (outline[2 * i] as number) / n;
    north += (outline[2 * i + 1] as number) / n;
  }
  return Float64Array.of(east, north);
};

/** Every field is ploughed its own way: the direction follows its longest side. */
const furrowsAngle = (outline: Outline): number => {
  let longest = -1;
  let angle = 0;
  const n = outline.length / 2;
  for (let i = 0; i < n; i += 1) {
    const j = (i + 1) % n;
    const dx = (outline[2 * j] as number) - (outline[2 * i] as number);
    const dy = (outline[2 * j + 1] as number) - (outline[2 * i + 1] as number);
    if (dx * dx + dy * dy > longest) {
      longest = dx * dx + dy * dy;
      angle = Math.atan2(dy, dx);
    }
  }
  return angle;
};

const linesOf = (kind: Kind, outline: Outline): number[] => {
  if (kind === 'field') return hatch(outline, furrowsAngle(outline), FURROWS_M, 0.03);
  if (kind === 'water') return hatch(outline, 0, WAVES_M, 0.12);
  return [];
};

const spotsOf = (kind: Kind, outline: Outline): number[] => {
  if (kind === 'wood') return scatter(outline, TREES_M);
  if (kind === 'village') return scatter(outline, HOUSES_M);
  return [];
};

/** Everything that lies about an aerodrome, cut up once for the plan and the window. */
export function landOf(aerodrome: Aerodrome, runway: Runway): readonly Feature[] {
  return aerodrome.features.map((feature) => {
    const outline = feature.points.flatMap((point) => {
      const place = fromFile(runway, point);
      return [place.eastM, place.northM];
    });
    const area = AREAS.has(feature.kind) && outline.length >= 6;
    return {
      kind: feature.kind,
      name: feature.name,
      outline: Float64Array.from(outline),
      triangles: Uint16Array.from(area ? trianglesOf(outline) : []),
      lines: Float64Array.from(area ? linesOf(feature.kind, outline) : []),
      spots: Float64Array.from(area ? spotsOf(feature.kind, outline) : []),
      middle: middleOf(outline),
      sizeM: area ? Math.sqrt(Math.abs(twiceArea(outline)) / 2) : 0,
      heightM: mFromFt(feature.heightFt ?? 0),
    };
  });
}
