import { ftFromM } from '../../units/conversions.ts';
import { thousandsTo } from '../../units/format.ts';
import type { Feature } from '../ground/land.ts';
import type { Colours } from '../ink/colours.ts';
import type { Ink } from '../ink/ink.ts';
import type { PaletteColour } from '../palette.ts';
import type { PlanCamera } from './camera.ts';

const TINTS: Readonly<Record<Feature['kind'], readonly [PaletteColour, number]>> = {
  field: ['field', 0.34],
  wood: ['wood', 0.34],
  water: ['water', 0.42],
  village: ['village', 0.22],
  road: ['road', 1],
  obstacle: ['ink', 1],
};

/** A name is written where its area is at least this wide. */
const NAMED_PX = 46;

const obstacleText = new WeakMap<Feature, string>();
const textOf = (feature: Feature): string => {
  let text = obstacleText.get(feature);
  if (text === undefined) {
    text = `${feature.name} ${thousandsTo(ftFromM(feature.heightM), 10)} ft`;
    obstacleText.set(feature, text);
  }
  return text;
};

/** Outlines of the signs that fill woods and villages, pixels. */
const TREE = [0, -1.3, 1, 0.7, -1, 0.7] as const;
/** Stands on its place, its name above. */
const MAST = [0, -13, 3.5, 0, -3.5, 0] as const;
const HOUSE = [-1, -0.7, 1, -0.7, 1, 0.7, -1, 0.7] as const;

function drawArea(ink: Ink, colours: Colours, camera: PlanCamera, feature: Feature): void {
  const [colour, alpha] = TINTS[feature.kind];
  ink.use(colours[colour], alpha);
  ink.triangles(feature.outline, feature.triangles);
  ink.use(colours[colour], 0.55);
  ink.segments(feature.lines, 1);
  ink.use(colours[colour], 0.8);
  const spotPx = Math.max(1.2, Math.min(4, 24 * camera.pxPerM));
  ink.signs(feature.spots, feature.kind === 'village' ? HOUSE : TREE, spotPx);
  ink.trace(feature.outline);
  ink.path(1, true);
}

function drawRoad(ink: Ink, colours: Colours, feature: Feature): void {
  ink.trace(feature.outline);
  ink.use(colours.road, 0.9);
  ink.path(4);
  ink.use(colours.paper);
  ink.path(2);
}

function drawObstacle(ink: Ink, colours: Colours, feature: Feature): void {
  ink.use(colours.inkSoft, 0.9);
  ink.signs(feature.middle, MAST, 1);
  ink.textOn('small', textOf(feature), feature.middle, 0, -21);
}

/** Fields, woods, water, villages, roads and obstacles in quiet tints and hatching; names where there is room. */
export function drawLand(ink: Ink, colours: Colours, camera: PlanCamera, land: readonly Feature[]): void {
  for (let i = 0; i < land.length; i += 1) {
    const feature = land[i] as Feature;
    if (feature.triangles.length > 0) drawArea(ink, colours, camera, feature);
  }
  for (let i = 0; i < land.length; i += 1) {
    const feature = land[i] as Feature;
    if (feature.kind === 'road') drawRoad(ink, colours, feature);
    if (feature.kind === 'obstacle') drawObstacle(ink, colours, feature);
  }
  ink.use(colours.inkSoft, 0.85);
  for (let i = 0; i < land.length; i += 1) {
    const feature = land[i] as Feature;
    if (feature.name === '' || feature.sizeM * camera.pxPerM < NAMED_PX) continue;
    ink.textOn('small', feature.name, feature.middle, 0);
  }
}
