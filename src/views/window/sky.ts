import type { PaletteColour } from '../palette.ts';
import type { Colours } from '../pen/colours.ts';
import type { Pen } from '../pen/pen.ts';
import type { Eye } from './eye.ts';

const FAR_PX = 5000;
const SKY_BAND_PX = 170;
const HAZE_PX = 46;

/** Strips along the horizon, pixels above it, fading from colour to colour. */
interface Band {
  readonly fromPx: number;
  readonly toPx: number;
  readonly from: PaletteColour;
  readonly to: PaletteColour;
}
const BANDS: readonly Band[] = [
  { fromPx: SKY_BAND_PX, toPx: FAR_PX, from: 'skyHigh', to: 'skyHigh' },
  { fromPx: 0, toPx: SKY_BAND_PX, from: 'sky', to: 'skyHigh' },
  { fromPx: -FAR_PX, toPx: -HAZE_PX, from: 'land', to: 'land' },
  { fromPx: -HAZE_PX, toPx: 0, from: 'land', to: 'haze' },
];

/**
 * Sky, land and the horizon between them, from the attitude alone: a direction (dx, dy, focal) in the eye's axes
 * is level where its upward part dx*rightU + dy*upU + focal*aheadU is 0. The dip of the horizon (half a degree at
 * 1,000 ft) is left out.
 */
export function drawSky(pen: Pen, colours: Colours, eye: Eye): void {
  const across = Math.sqrt(eye.rightU * eye.rightU + eye.upU * eye.upU);
  if (across < 1e-3) return;
  // Screen directions, y down: towards the sky, and along the horizon.
  const skyX = eye.rightU / across;
  const skyY = -eye.upU / across;
  const alongX = -skyY;
  const alongY = skyX;
  const off = (-eye.aheadU * eye.focalPx) / across;
  const footX = eye.middleX + skyX * off;
  const footY = eye.middleY + skyY * off;
  for (let k = 0; k < BANDS.length; k += 1) {
    const band = BANDS[k] as Band;
    const fromX = footX + skyX * band.fromPx;
    const fromY = footY + skyY * band.fromPx;
    const toX = footX + skyX * band.toPx;
    const toY = footY + skyY * band.toPx;
    pen.move(fromX - alongX * FAR_PX, fromY - alongY * FAR_PX);
    pen.to(fromX + alongX * FAR_PX, fromY + alongY * FAR_PX);
    pen.to(toX + alongX * FAR_PX, toY + alongY * FAR_PX);
    pen.to(toX - alongX * FAR_PX, toY - alongY * FAR_PX);
    pen.use(colours[band.from]);
    pen.fade(colours[band.to]);
  }
}

/** The line itself, drawn after the land so that it stays clear. */
export function drawHorizon(pen: Pen, colours: Colours, eye: Eye): void {
  const across = Math.sqrt(eye.rightU * eye.rightU + eye.upU * eye.upU);
  if (across < 1e-3) return;
  const skyX = eye.rightU / across;
  const skyY = -eye.upU / across;
  const off = (-eye.aheadU * eye.focalPx) / across;
  const footX = eye.middleX + skyX * off;
  const footY = eye.middleY + skyY * off;
  pen.use(colours.ink, 0.75);
  pen.line(footX + skyY * FAR_PX, footY - skyX * FAR_PX, footX - skyY * FAR_PX, footY + skyX * FAR_PX, 1.5);
}
