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

function drawArea(ink: Ink, colours: Colours, camera: PlanCamera, feature: Feature): void {
  const { outline, triangles, lines, spots } = feature;
  const [colour, alpha] = TINTS[feature.kind];
  ink.use(colours[colour], alpha);
  for (let k = 0; k + 2 < triangles.length; k += 3) {
    const a = 2 * (triangles[k] as number);
    const b = 2 * (triangles[k + 1] as number);
    const c = 2 * (triangles[k + 2] as number);
    ink.triangle(
      camera.x(outline[a] as number, outline[a + 1] as number),
      camera.y(outline[a] as number, outline[a + 1] as number),
      camera.x(outline[b] as number, outline[b + 1] as number),
      camera.y(outline[b] as number, outline[b + 1] as number),
      camera.x(outline[c] as number, outline[c + 1] as number),
      camera.y(outline[c] as number, outline[c + 1] as number),
    );
  }
  ink.use(colours[colour], 0.55);
  for (let k = 0; k + 3 < lines.length; k += 4)
    ink.line(
      camera.x(lines[k] as number, lines[k + 1] as number),
      camera.y(lines[k] as number, lines[k + 1] as number),
      camera.x(lines[k + 2] as number, lines[k + 3] as number),
      camera.y(lines[k + 2] as number, lines[k + 3] as number),
      1,
    );
  const spotPx = Math.max(1.2, Math.min(4, 24 * camera.pxPerM));
  ink.use(colours[colour], 0.8);
  for (let k = 0; k + 1 < spots.length; k += 2) {
    const x = camera.x(spots[k] as number, spots[k + 1] as number);
    const y = camera.y(spots[k] as number, spots[k + 1] as number);
    if (feature.kind === 'village') ink.rect(x - spotPx, y - spotPx * 0.7, spotPx * 2, spotPx * 1.4);
    else ink.triangle(x, y - spotPx * 1.3, x + spotPx, y + spotPx * 0.7, x - spotPx, y + spotPx * 0.7);
  }
  ink.use(colours[colour], 0.8);
  runOutline(ink, camera, outline);
  ink.path(1, true);
}

function runOutline(ink: Ink, camera: PlanCamera, outline: readonly number[]): void {
  ink.move(
    camera.x(outline[0] as number, outline[1] as number),
    camera.y(outline[0] as number, outline[1] as number),
  );
  for (let k = 2; k + 1 < outline.length; k += 2)
    ink.to(
      camera.x(outline[k] as number, outline[k + 1] as number),
      camera.y(outline[k] as number, outline[k + 1] as number),
    );
}

function drawRoad(ink: Ink, colours: Colours, camera: PlanCamera, feature: Feature): void {
  runOutline(ink, camera, feature.outline);
  ink.use(colours.road, 0.9);
  ink.path(4);
  ink.use(colours.paper);
  ink.path(2);
}

function drawObstacle(ink: Ink, colours: Colours, camera: PlanCamera, feature: Feature): void {
  const x = camera.x(feature.middleEastM, feature.middleNorthM);
  const y = camera.y(feature.middleEastM, feature.middleNorthM);
  ink.use(colours.inkSoft, 0.9);
  ink.line(x, y - 7, x - 4, y + 2, 1.2);
  ink.line(x, y - 7, x + 4, y + 2, 1.2);
  ink.disc(x, y + 1, 1.4);
  ink.text('small', textOf(feature), x + 8, y - 1);
}

/** Fields, woods, water, villages, roads and obstacles in quiet tints and hatching; names where there is room. */
export function drawLand(ink: Ink, colours: Colours, camera: PlanCamera, land: readonly Feature[]): void {
  for (const feature of land) if (feature.triangles.length > 0) drawArea(ink, colours, camera, feature);
  for (const feature of land) if (feature.kind === 'road') drawRoad(ink, colours, camera, feature);
  for (const feature of land) if (feature.kind === 'obstacle') drawObstacle(ink, colours, camera, feature);
  ink.use(colours.inkSoft, 0.85);
  for (const feature of land) {
    const room = feature.sizeM * camera.pxPerM;
    if (feature.name === '' || room < NAMED_PX) continue;
    ink.text(
      'small',
      feature.name,
      camera.x(feature.middleEastM, feature.middleNorthM),
      camera.y(feature.middleEastM, feature.middleNorthM),
      'middle',
    );
  }
}
