import type { Feature } from '../ground/land.ts';
import type { Colours } from '../ink/colours.ts';
import type { PaletteColour } from '../palette.ts';
import type { Brush } from './brush.ts';

const TINTS: Readonly<Record<Feature['kind'], readonly [PaletteColour, number]>> = {
  field: ['field', 0.6],
  wood: ['wood', 0.45],
  water: ['water', 0.75],
  village: ['village', 0.3],
  road: ['road', 1],
  obstacle: ['ink', 1],
};
const TREE_M = 13;
const HOUSE_M = 7;
/** Trees and houses farther than this are lost in the tint. */
const SPOTS_M = 7000;

function drawArea(brush: Brush, colours: Colours, feature: Feature): void {
  const { outline, triangles, lines } = feature;
  const { ink, eye } = brush;
  const [colour, alpha] = TINTS[feature.kind];
  ink.use(colours[colour], alpha);
  for (let k = 0; k + 2 < triangles.length; k += 3) {
    brush.begin();
    for (let c = 0; c < 3; c += 1) {
      const at = 2 * (triangles[k + c] as number);
      brush.add(outline[at] as number, outline[at + 1] as number, 0);
    }
    brush.fill(eye.groundPlanes);
  }
  if (feature.kind === 'field') {
    ink.use(colours.wood, 0.35);
    for (let k = 0; k + 3 < lines.length; k += 4)
      brush.line(
        lines[k] as number,
        lines[k + 1] as number,
        0,
        lines[k + 2] as number,
        lines[k + 3] as number,
        0,
        0.5,
        0.7,
      );
  }
  ink.use(feature.kind === 'water' ? colours.ghost : colours.inkSoft, 0.5);
  const n = outline.length;
  for (let k = 0; k < n; k += 2)
    brush.line(
      outline[k] as number,
      outline[k + 1] as number,
      0,
      outline[(k + 2) % n] as number,
      outline[(k + 3) % n] as number,
      0,
      1,
      1,
    );
}

function drawSpots(brush: Brush, colours: Colours, feature: Feature): void {
  const { spots } = feature;
  const { ink, eye } = brush;
  const wood = feature.kind === 'wood';
  const upM = feature.heightM > 0 ? Math.min(feature.heightM, 20) : wood ? TREE_M : HOUSE_M;
  ink.use(wood ? colours.wood : colours.village, 0.95);
  for (let k = 0; k + 1 < spots.length; k += 2) {
    const east = spots[k] as number;
    const north = spots[k + 1] as number;
    const z = eye.zOf(east, north, 0);
    if (z < 12 || z > SPOTS_M) continue;
    const x = eye.screenX(eye.xOf(east, north, 0), z);
    const y = eye.screenY(eye.yOf(east, north, 0), z);
    const tallPx = (eye.focalPx * upM) / z;
    // Upright in the world: the way up on the screen at this place.
    const topZ = eye.zOf(east, north, upM);
    if (topZ < 1) continue;
    const ux = eye.screenX(eye.xOf(east, north, upM), topZ) - x;
    const uy = eye.screenY(eye.yOf(east, north, upM), topZ) - y;
    const half = wood ? 0.36 : 0.6;
    const sx = -uy * half;
    const sy = ux * half;
    if (tallPx < 0.8) continue;
    if (wood) ink.triangle(x + ux, y + uy, x + sx, y + sy, x - sx, y - sy);
    else
      ink.quad(
        x - sx,
        y - sy,
        x + sx,
        y + sy,
        x + sx + ux * 0.75,
        y + sy + uy * 0.75,
        x - sx + ux * 0.75,
        y - sy + uy * 0.75,
      );
  }
}

function drawRoad(brush: Brush, colours: Colours, feature: Feature): void {
  const { outline } = feature;
  brush.ink.use(colours.road);
  for (let k = 0; k + 3 < outline.length; k += 2)
    brush.line(
      outline[k] as number,
      outline[k + 1] as number,
      0,
      outline[k + 2] as number,
      outline[k + 3] as number,
      0,
      7,
      1.4,
    );
}

/** The land on its plane: tints and outlines, trees and houses standing on it, roads and obstacles. */
export function drawLandAhead(brush: Brush, colours: Colours, land: readonly Feature[]): void {
  for (const feature of land) if (feature.triangles.length > 0) drawArea(brush, colours, feature);
  for (const feature of land) if (feature.kind === 'road') drawRoad(brush, colours, feature);
  for (const feature of land) if (feature.spots.length > 0) drawSpots(brush, colours, feature);
  brush.ink.use(colours.ink, 0.85);
  for (const feature of land)
    if (feature.kind === 'obstacle')
      brush.line(
        feature.middleEastM,
        feature.middleNorthM,
        0,
        feature.middleEastM,
        feature.middleNorthM,
        feature.heightM,
        3,
        1.5,
      );
}
