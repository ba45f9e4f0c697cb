import type { Feature } from '../ground/land.ts';
import type { PaletteColour } from '../palette.ts';
import type { SceneLayer } from './scene.ts';

const TINTS: Readonly<Partial<Record<Feature['kind'], readonly [PaletteColour, number]>>> = {
  field: ['field', 0.6],
  wood: ['wood', 0.45],
  water: ['water', 0.75],
  village: ['village', 0.3],
};
const TREE_M = 13;
const HOUSE_M = 7;
const TALLEST_M = 20;
const ROAD_M = 7;

/** Every ground point with height 0, by threes. */
const flat = (points: Float64Array): Float64Array =>
  Float64Array.from({ length: (points.length / 2) * 3 }, (_, i) =>
    i % 3 === 2 ? 0 : (points[2 * Math.floor(i / 3) + (i % 3)] as number),
  );

/** Edges from corner to corner, closed or open, two places by sixes. */
const edges = (outline: Float64Array, closed: boolean): Float64Array => {
  const n = outline.length / 2;
  const ends: number[] = [];
  for (let i = 0; i < (closed ? n : n - 1); i += 1) {
    const j = (i + 1) % n;
    ends.push(outline[2 * i]!, outline[2 * i + 1]!, 0, outline[2 * j]!, outline[2 * j + 1]!, 0);
  }
  return Float64Array.from(ends);
};

const areaLayers = (feature: Feature): SceneLayer[] => {
  const tint = TINTS[feature.kind];
  if (tint === undefined || feature.triangles.length === 0) return [];
  const [colour, alpha] = tint;
  const layers: SceneLayer[] = [
    {
      kind: 'areas',
      colour,
      alpha,
      within: null,
      places: flat(feature.outline),
      corners: feature.triangles,
      per: 3,
      rimPx: 0,
    },
  ];
  if (feature.kind === 'field')
    layers.push({
      kind: 'lines',
      colour: 'wood',
      alpha: 0.35,
      within: null,
      ends: flat(feature.lines),
      widthM: 0.5,
      leastPx: 0.7,
    });
  layers.push({
    kind: 'lines',
    colour: feature.kind === 'water' ? 'ghost' : 'inkSoft',
    alpha: 0.5,
    within: null,
    ends: edges(feature.outline, true),
    widthM: 1,
    leastPx: 1,
  });
  return layers;
};

const uprightLayers = (feature: Feature): SceneLayer[] => {
  if (feature.spots.length === 0) return [];
  const wood = feature.kind === 'wood';
  return [
    {
      kind: 'uprights',
      colour: wood ? 'wood' : 'village',
      alpha: 0.95,
      within: null,
      feet: flat(feature.spots),
      upM: feature.heightM > 0 ? Math.min(feature.heightM, TALLEST_M) : wood ? TREE_M : HOUSE_M,
      form: wood ? 'tree' : 'house',
    },
  ];
};

/** The land on its plane: tints and outlines, roads, trees and houses standing on it, obstacles. */
export const landScene = (land: readonly Feature[]): readonly SceneLayer[] => [
  ...land.flatMap(areaLayers),
  ...land
    .filter((feature) => feature.kind === 'road')
    .map(
      (feature): SceneLayer => ({
        kind: 'lines',
        colour: 'road',
        alpha: 1,
        within: null,
        ends: edges(feature.outline, false),
        widthM: ROAD_M,
        leastPx: 1.4,
      }),
    ),
  ...land.flatMap(uprightLayers),
  ...land
    .filter((feature) => feature.kind === 'obstacle')
    .map(
      (feature): SceneLayer => ({
        kind: 'lines',
        colour: 'ink',
        alpha: 0.85,
        within: null,
        ends: Float64Array.of(
          feature.middle[0]!,
          feature.middle[1]!,
          0,
          feature.middle[0]!,
          feature.middle[1]!,
          feature.heightM,
        ),
        widthM: 3,
        leastPx: 1.6,
      }),
    ),
];
