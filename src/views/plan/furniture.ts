import { trueFromMagnetic } from '../../units/angles.ts';
import { mFromNmi, radFromDeg } from '../../units/conversions.ts';
import { headingDigits } from '../../units/format.ts';
import type { SpokenWind } from '../frame.ts';
import type { Colours } from '../pen/colours.ts';
import { keyed } from '../pen/keyed.ts';
import type { Pen } from '../pen/pen.ts';
import type { PlanCamera } from './camera.ts';

const BARS_NMI = [0.05, 0.1, 0.25, 0.5, 1, 2] as const;
const SHORTEST_BAR_PX = 70;
const ARROW_PX = 52;

const barText = keyed((nmi: number) => `${nmi} NM`);
const windText = keyed((deg: number, kt: number) => (kt === 0 ? 'calm' : `${headingDigits(deg)}° ${kt} kt`));
const gustText = keyed((kt: number) => `gusting ${kt}`);

/** A bar of a round number of nautical miles. */
export function drawScaleBar(pen: Pen, colours: Colours, camera: PlanCamera, x: number, y: number): void {
  let nmi: number = BARS_NMI[BARS_NMI.length - 1] as number;
  for (let i = BARS_NMI.length - 1; i >= 0; i -= 1) {
    const candidate = BARS_NMI[i] as number;
    if (mFromNmi(candidate) * camera.pxPerM >= SHORTEST_BAR_PX) nmi = candidate;
  }
  const lengthPx = mFromNmi(nmi) * camera.pxPerM;
  pen.use(colours.ink);
  pen.line(x, y, x + lengthPx, y, 1.8);
  pen.line(x, y - 4, x, y + 1, 1.4);
  pen.line(x + lengthPx / 2, y - 3, x + lengthPx / 2, y + 1, 1.2);
  pen.line(x + lengthPx, y - 4, x + lengthPx, y + 1, 1.4);
  pen.text('small', barText(nmi), x, y - 11);
}

/** Where the surface wind blows to, and what it is, in magnetic degrees as it is spoken. */
export function drawWind(
  pen: Pen,
  colours: Colours,
  camera: PlanCamera,
  wind: SpokenWind,
  variationRad: number,
  x: number,
  y: number,
): void {
  pen.use(colours.ink);
  if (wind.kt > 0) {
    const to = trueFromMagnetic(radFromDeg(wind.fromDegM), variationRad) + Math.PI;
    const dx = camera.directionX(to);
    const dy = camera.directionY(to);
    const half = ARROW_PX / 2;
    pen.line(x - dx * half, y - dy * half, x + dx * (half - 6), y + dy * (half - 6), 2);
    pen.arrowHead(x + dx * half, y + dy * half, dx, dy, 11);
  }
  pen.text(
    'label',
    windText(Math.round(wind.fromDegM), Math.round(wind.kt)),
    x,
    y + ARROW_PX / 2 + 14,
    'middle',
  );
  if (wind.gustKt !== null)
    pen.text('label', gustText(Math.round(wind.gustKt)), x, y + ARROW_PX / 2 + 31, 'middle');
}

/** A small needle towards true north. */
export function drawNorth(pen: Pen, colours: Colours, camera: PlanCamera, x: number, y: number): void {
  const dx = camera.directionX(0);
  const dy = camera.directionY(0);
  pen.use(colours.inkSoft);
  pen.line(x - dx * 9, y - dy * 9, x + dx * 4, y + dy * 4, 1.3);
  pen.arrowHead(x + dx * 10, y + dy * 10, dx, dy, 7);
  pen.text('small', 'N', x + dx * 19, y + dy * 19, 'middle');
}
