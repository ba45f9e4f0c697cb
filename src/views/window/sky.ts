import type { Colours } from '../ink/colours.ts';
import { type Ink, packed } from '../ink/ink.ts';
import type { Eye } from './eye.ts';

const FAR_PX = 5000;
const SKY_BAND_PX = 170;
const HAZE_PX = 46;

/**
 * Sky, land and the horizon between them, from the attitude alone: a direction (dx, dy, focal) in the eye's axes
 * is level where its upward part dx*rightU + dy*upU + focal*aheadU is 0. The dip of the horizon (half a degree at
 * 1,000 ft) is left out.
 */
export function drawSky(ink: Ink, colours: Colours, eye: Eye): void {
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
  const band = (fromPx: number, toPx: number, from: number, to: number): void => {
    ink.move(footX + skyX * fromPx - alongX * FAR_PX, footY + skyY * fromPx - alongY * FAR_PX);
    ink.to(footX + skyX * fromPx + alongX * FAR_PX, footY + skyY * fromPx + alongY * FAR_PX);
    ink.to(footX + skyX * toPx + alongX * FAR_PX, footY + skyY * toPx + alongY * FAR_PX);
    ink.to(footX + skyX * toPx - alongX * FAR_PX, footY + skyY * toPx - alongY * FAR_PX);
    ink.fade(from, to);
  };
  const high = packed(colours.skyHigh, 1);
  const low = packed(colours.sky, 1);
  const land = packed(colours.land, 1);
  band(SKY_BAND_PX, FAR_PX, high, high);
  band(0, SKY_BAND_PX, low, high);
  band(-FAR_PX, -HAZE_PX, land, land);
  band(-HAZE_PX, 0, land, packed(colours.haze, 1));
}

/** The line itself, drawn after the land so that it stays clear. */
export function drawHorizon(ink: Ink, colours: Colours, eye: Eye): void {
  const across = Math.sqrt(eye.rightU * eye.rightU + eye.upU * eye.upU);
  if (across < 1e-3) return;
  const skyX = eye.rightU / across;
  const skyY = -eye.upU / across;
  const off = (-eye.aheadU * eye.focalPx) / across;
  const footX = eye.middleX + skyX * off;
  const footY = eye.middleY + skyY * off;
  ink.use(colours.ink, 0.75);
  ink.line(footX + skyY * FAR_PX, footY - skyX * FAR_PX, footX - skyY * FAR_PX, footY + skyX * FAR_PX, 1.5);
}
