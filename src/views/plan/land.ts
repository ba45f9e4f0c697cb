import { ftFromM } from '../../units/conversions.ts';
import { thousandsTo } from '../../units/format.ts';
import type { Feature } from '../ground/land.ts';
import type { PaletteColour } from '../palette.ts';
import type { Colours } from '../pen/colours.ts';
import type { Pen } from '../pen/pen.ts';
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

function drawArea(pen: Pen, colours: Colours, camera: PlanCamera, feature: Feature): void {
  const [colour, alpha] = TINTS[feature.kind];
  pen.use(colours[colour], alpha);
  pen.triangles(feature.outline, feature.triangles);
  pen.use(colours[colour], 0.55);
  pen.segments(feature.lines, 1);
  pen.use(colours[colour], 0.8);
  const spotPx = Math.max(1.2, Math.min(4, 24 * camera.pxPerM));
  pen.signs(feature.spots, feature.kind === 'village' ? HOUSE : TREE, spotPx);
  pen.trace(feature.outline);
  pen.path(1, true);
}

function drawRoad(pen: Pen, colours: Colours, feature: Feature): void {
  pen.trace(feature.outline);
  pen.use(colours.road, 0.9);
  pen.path(4);
  pen.use(colours.paper);
  pen.path(2);
}

function drawObstacle(pen: Pen, colours: Colours, feature: Feature): void {
  pen.use(colours.inkSoft, 0.9);
  pen.signs(feature.middle, MAST, 1);
  pen.textOn('small', textOf(feature), feature.middle, 0, -21);
}

/** Fields, woods, water, villages, roads and obstacles in quiet tints and hatching; names where there is room. */
export function drawLand(pen: Pen, colours: Colours, camera: PlanCamera, land: readonly Feature[]): void {
  for (let i = 0; i < land.length; i += 1) {
    const feature = land[i] as Feature;
    if (feature.triangles.length > 0) drawArea(pen, colours, camera, feature);
  }
  for (let i = 0; i < land.length; i += 1) {
    const feature = land[i] as Feature;
    if (feature.kind === 'road') drawRoad(pen, colours, feature);
    if (feature.kind === 'obstacle') drawObstacle(pen, colours, feature);
  }
  pen.use(colours.inkSoft, 0.85);
  for (let i = 0; i < land.length; i += 1) {
    const feature = land[i] as Feature;
    if (feature.name === '' || feature.sizeM * camera.pxPerM < NAMED_PX) continue;
    pen.textOn('small', feature.name, feature.middle, 0);
  }
}
