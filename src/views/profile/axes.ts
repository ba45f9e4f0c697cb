import { groundHeightM, type Runway } from '../../aerodrome/runway.ts';
import { ftFromM, mFromFt, mFromNmi, nmiFromM } from '../../units/conversions.ts';
import { fixed, thousandsTo } from '../../units/format.ts';
import type { Gate } from '../frame.ts';
import type { Colours } from '../pen/colours.ts';
import type { Pen } from '../pen/pen.ts';
import type { ProfileCamera } from './camera.ts';
import { LEFT_PX, RIGHT_PX, TOP_PX } from './frame.ts';
import type { Track } from './track.ts';

const TICKS_NMI = [0.1, 0.25, 0.5, 1] as const;
const TICK_APART_PX = 90;
const MOST_TICKS = 40;
const HEIGHTS_FT = [100, 200, 500, 1000] as const;
const MOST_HEIGHTS = 5;
const TEXT_APART_PX = 12;

const tickTexts = new Map<number, readonly string[]>();
/** Miles at the k-th tick of a step, all with as many decimals as the step. */
const tickText = (step: number, k: number): string => {
  let texts = tickTexts.get(step);
  if (texts === undefined) {
    texts = Array.from({ length: MOST_TICKS }, (_, i) => fixed(i * step, step === 0.25 ? 2 : 1));
    tickTexts.set(step, texts);
  }
  return texts[k] ?? '';
};
const feetTexts = new Map<number, string>();
const feetText = (ft: number): string => {
  let text = feetTexts.get(ft);
  if (text === undefined) {
    text = `${thousandsTo(ft, 1)} ft`;
    feetTexts.set(ft, text);
  }
  return text;
};

/** Round heights, for the circuit unrolled; `share` is how much of them is seen. */
export function drawHeights(
  pen: Pen,
  colours: Colours,
  camera: ProfileCamera,
  width: number,
  share: number,
): void {
  if (share < 0.02) return;
  const topFt = ftFromM((camera.groundY - TOP_PX) / camera.pxPerHeightM);
  let step: number = HEIGHTS_FT[HEIGHTS_FT.length - 1] as number;
  for (let k = HEIGHTS_FT.length - 1; k >= 0; k -= 1)
    if (topFt / (HEIGHTS_FT[k] as number) <= MOST_HEIGHTS) step = HEIGHTS_FT[k] as number;
  for (let ft = step; ft < topFt; ft += step) {
    const y = camera.y(mFromFt(ft));
    pen.use(colours.rule, 0.5 * share);
    pen.dashed(LEFT_PX, y, width - RIGHT_PX, y, 1, 2, 5);
    pen.use(colours.inkSoft, share);
    pen.text('small', feetText(ft), width - RIGHT_PX + 6, y);
  }
}

/** The gates of the approach, from the lowest up; a text that would touch the one below is left out. */
export function drawGates(
  pen: Pen,
  colours: Colours,
  camera: ProfileCamera,
  gates: readonly Gate[],
  width: number,
  share: number,
): void {
  if (share < 0.02) return;
  let lastY = Infinity;
  for (let g = gates.length - 1; g >= 0; g -= 1) {
    const gate = gates[g] as Gate;
    const y = camera.y(mFromFt(gate.heightFt));
    if (y < TOP_PX) continue;
    pen.use(colours.caution, 0.85 * share);
    pen.dashed(LEFT_PX, y, width - RIGHT_PX, y, 1.2, 7, 5);
    if (lastY - y < TEXT_APART_PX) continue;
    lastY = y;
    pen.use(colours.cautionText, share);
    pen.text('small', gate.text, width - RIGHT_PX + 6, y);
  }
}

/** The runway as a bar, its threshold at a distance along the path. */
function drawStrip(pen: Pen, camera: ProfileCamera, runway: Runway, thresholdM: number): void {
  const ax = camera.x(thresholdM + runway.surfaceStartM);
  const bx = camera.x(thresholdM + runway.surfaceEndM);
  const ay = camera.y(groundHeightM(runway, runway.surfaceStartM));
  const by = camera.y(groundHeightM(runway, runway.surfaceEndM));
  pen.move(ax, ay - 1);
  pen.to(bx, by - 1);
  pen.to(bx, by + 5);
  pen.to(ax, ay + 5);
  pen.fill();
}

/** The ground, and the runway where the circuit begins and where it ends. */
export function drawGround(
  pen: Pen,
  colours: Colours,
  camera: ProfileCamera,
  track: Track,
  width: number,
  height: number,
): void {
  const y = camera.groundY;
  pen.use(colours.paper);
  pen.rect(0, y, width, height - y);
  pen.use(colours.ink, 0.7);
  pen.line(LEFT_PX - 4, y, width - RIGHT_PX, y, 1.2);
  pen.use(colours[track.runway.surface]);
  drawStrip(pen, camera, track.runway, -track.startAlongM);
  drawStrip(pen, camera, track.runway, track.thresholdM);
}

/** Nautical miles before the threshold, as close together as there is room for them. */
export function drawMiles(
  pen: Pen,
  colours: Colours,
  camera: ProfileCamera,
  track: Track,
  share: number,
): void {
  if (share < 0.05) return;
  const y = camera.groundY;
  let step: number = TICKS_NMI[TICKS_NMI.length - 1] as number;
  for (let k = TICKS_NMI.length - 1; k >= 0; k -= 1)
    if (mFromNmi(TICKS_NMI[k] as number) * camera.pxPerM > TICK_APART_PX) step = TICKS_NMI[k] as number;
  const farthest = nmiFromM(track.thresholdM - camera.leftM);
  for (let k = 0; k * step <= farthest && k < MOST_TICKS; k += 1) {
    const x = camera.x(track.thresholdM - mFromNmi(k * step));
    if (x < LEFT_PX) break;
    pen.use(colours.ink, 0.7 * share);
    pen.line(x, y, x, y + (k === 0 ? 9 : 6), 1.2);
    pen.use(colours.ink, share);
    pen.text('small', k === 0 ? 'threshold' : tickText(step, k), x, y + 16, k === 0 ? 'right' : 'middle');
  }
}
