import type { Snapshot } from '../../simulation/snapshot.ts';
import { wrapPi } from '../../units/angles.ts';
import { degFromRad } from '../../units/conversions.ts';
import { headingDigits } from '../../units/format.ts';
import type { Colours } from '../pen/colours.ts';
import { keyed } from '../pen/keyed.ts';
import type { Pen } from '../pen/pen.ts';
import type { PlanCamera } from './camera.ts';

/**
 * Seen from above, in half spans: ahead and right by turns, the right half from nose to tail; the left half
 * mirrors it. Our own drawing of no particular aeroplane. High wing: straight, ahead of the cabin's middle;
 * low wing: tapered.
 */
const OUTLINES = {
  high: [
    0.62, 0, 0.6, 0.08, 0.26, 0.11, 0.24, 1, 0, 1, -0.05, 0.12, -0.55, 0.05, -0.58, 0.34, -0.72, 0.34, -0.76,
    0,
  ],
  low: [
    0.7, 0, 0.64, 0.08, 0.24, 0.12, 0.1, 0.98, -0.06, 0.98, -0.16, 0.13, -0.58, 0.05, -0.62, 0.36, -0.74,
    0.36, -0.8, 0,
  ],
} as const;

/** Quads (ahead, right) that fill the right half. */
const PARTS = {
  high: [
    [0.62, 0, 0.6, 0.08, -0.58, 0.05, -0.76, 0],
    [0.26, 0, 0.24, 1, 0, 1, -0.05, 0],
    [-0.54, 0, -0.57, 0.34, -0.72, 0.34, -0.76, 0],
    [0.5, 0, 0.3, 0.12, -0.1, 0.12, -0.4, 0],
  ],
  low: [
    [0.7, 0, 0.64, 0.08, -0.6, 0.05, -0.8, 0],
    [0.26, 0, 0.1, 0.98, -0.06, 0.98, -0.18, 0],
    [-0.56, 0, -0.62, 0.36, -0.74, 0.36, -0.78, 0],
    [0.5, 0, 0.26, 0.13, -0.16, 0.13, -0.45, 0],
  ],
} as const;

/** Half span on the plan: not to scale until one zooms in. */
const HALF_SPAN_PX = 17;
/** The two lines end where heading and track would take it in this time. */
const AHEAD_S = 30;
const SHORTEST_LINE_PX = 42;
const LONGEST_LINE_PX = 150;

/** Outline of both halves and the filling quads, ahead and right by turns. */
interface Shape {
  readonly outline: Float64Array;
  readonly quads: Float64Array;
}
const shapeOf = (wing: 'high' | 'low'): Shape => {
  const right = OUTLINES[wing];
  const outline: number[] = [...right];
  for (let k = right.length - 2; k >= 0; k -= 2) outline.push(right[k] as number, -(right[k + 1] as number));
  const quads = PARTS[wing].flatMap((part) => [
    ...part,
    ...part.map((value, i) => (i % 2 === 1 ? -value : value)),
  ]);
  return { outline: Float64Array.from(outline), quads: Float64Array.from(quads) };
};
const SHAPES: Readonly<Record<'high' | 'low', Shape>> = { high: shapeOf('high'), low: shapeOf('low') };

/** A silhouette about the place in map[2] and map[5], its nose along a unit direction on the screen. */
export function drawSilhouette(
  pen: Pen,
  wing: 'high' | 'low',
  dirX: number,
  dirY: number,
  halfSpanPx: number,
  fill: number,
  halo: number,
): void {
  const { map } = pen;
  map[0] = dirX * halfSpanPx;
  map[1] = -dirY * halfSpanPx;
  map[3] = dirY * halfSpanPx;
  map[4] = dirX * halfSpanPx;
  const { outline, quads } = SHAPES[wing];
  pen.use(halo);
  pen.trace(outline);
  pen.path(2.6, true);
  pen.use(fill);
  pen.quads(quads);
}

const headingText = keyed((deg: number) => `heading ${headingDigits(deg)}`);
const trackText = keyed((deg: number) => `track ${headingDigits(deg)}`);
const driftText = keyed((deg: number) =>
  deg === 0 ? 'no drift' : `drift ${Math.abs(deg)}° ${deg > 0 ? 'right' : 'left'}`,
);

/** Which side the figures stand on; kept so that they do not flicker. */
export interface LabelSide {
  side: 1 | -1;
  across: boolean;
  above: boolean;
}

/** Heading line, track line, and the wedge between them: drift. */
export function drawHeadingAndTrack(
  pen: Pen,
  colours: Colours,
  camera: PlanCamera,
  snapshot: Readonly<Snapshot>,
  variationRad: number,
  widthPx: number,
  heightPx: number,
  label: LabelSide,
): void {
  camera.place(snapshot);
  const x = camera.px[0]!;
  const y = camera.px[1]!;
  const moving = snapshot.groundspeedMps > 2;
  const lengthPx = Math.min(
    LONGEST_LINE_PX,
    Math.max(SHORTEST_LINE_PX, snapshot.groundspeedMps * AHEAD_S * camera.pxPerM),
  );
  const hx = camera.directionX(snapshot.headingRadT);
  const hy = camera.directionY(snapshot.headingRadT);
  const drift = moving ? wrapPi(snapshot.trackRadT - snapshot.headingRadT) : 0;
  if (moving && !snapshot.onGround) {
    const parts = 6;
    pen.use(colours.aeroplane, 0.22);
    pen.move(x, y);
    for (let i = 0; i <= parts; i += 1) {
      const bearing = snapshot.headingRadT + (drift * i) / parts;
      pen.to(x + camera.directionX(bearing) * lengthPx, y + camera.directionY(bearing) * lengthPx);
    }
    pen.fill();
    pen.use(colours.aeroplane);
    const tx = camera.directionX(snapshot.trackRadT);
    const ty = camera.directionY(snapshot.trackRadT);
    pen.line(x, y, x + tx * lengthPx, y + ty * lengthPx, 1.6);
    pen.arrowHead(x + tx * (lengthPx + 6), y + ty * (lengthPx + 6), tx, ty, 8);
  }
  pen.use(colours.ink);
  pen.dashed(x, y, x + hx * lengthPx, y + hy * lengthPx, 1.5, 7, 4);

  if (x < widthPx * 0.45) label.side = 1;
  else if (x > widthPx * 0.72) label.side = -1;
  const rows = moving && !snapshot.onGround ? 3 : 1;
  const plateWidth = 92;
  const rowsPx = rows * 16;
  // Flying across the panel the figures stand below or above, otherwise beside: never on the lines ahead.
  if (Math.abs(hx) > 0.75) label.across = true;
  else if (Math.abs(hx) < 0.6) label.across = false;
  if (y > heightPx - 110) label.above = true;
  else if (y < heightPx - 150) label.above = false;
  const align = label.across ? 'middle' : label.side === 1 ? 'left' : 'right';
  const lx = label.across ? x : x + label.side * 28;
  const top = label.across ? (label.above ? y - 22 - rowsPx + 8 : y + 32) : y - 8 * (rows - 1) + 4;
  const plateX = label.across ? lx - plateWidth / 2 : label.side === 1 ? lx - 4 : lx + 4 - plateWidth;
  const headingDeg = Math.round(degFromRad(snapshot.headingRadT - variationRad));
  const text = headingText(headingDeg);
  pen.use(colours.paper, 0.78);
  pen.rect(plateX, top - 10, plateWidth, rowsPx + 4);
  pen.use(colours.ink);
  pen.text('small', text, lx, top, align);
  if (rows === 1) return;
  pen.use(colours.aeroplaneText);
  pen.text(
    'small',
    trackText(Math.round(degFromRad(snapshot.trackRadT - variationRad))),
    lx,
    top + 16,
    align,
  );
  pen.text('small', driftText(Math.round(degFromRad(drift))), lx, top + 32, align);
}

/** The aeroplane itself; true to scale once that is larger than its sign. */
export function drawAeroplane(
  pen: Pen,
  colours: Colours,
  camera: PlanCamera,
  snapshot: Readonly<Snapshot>,
  wing: 'high' | 'low',
  spanM: number,
  fill: number,
): void {
  camera.place(snapshot);
  pen.map[2] = camera.px[0]!;
  pen.map[5] = camera.px[1]!;
  drawSilhouette(
    pen,
    wing,
    camera.directionX(snapshot.headingRadT),
    camera.directionY(snapshot.headingRadT),
    Math.max(HALF_SPAN_PX, (spanM / 2) * camera.pxPerM),
    fill,
    colours.paper,
  );
}
