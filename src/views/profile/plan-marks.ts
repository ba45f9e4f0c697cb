import { groundHeightM, type Runway } from '../../aerodrome/runway.ts';
import { CIRCUIT_LEGS, type CircuitLeg, type CircuitPlan } from '../../circuit/types.ts';
import type { Colours } from '../pen/colours.ts';
import type { Pen } from '../pen/pen.ts';
import type { ProfileCamera } from './camera.ts';
import { LEFT_PX, TITLE_PX } from './frame.ts';
import type { Track } from './track.ts';

/** The planned heights: a corridor and its middle. */
export function drawPlannedHeights(pen: Pen, colours: Colours, track: Track): void {
  pen.use(colours.corridor, 0.17);
  pen.quads(track.corridor);
  pen.use(colours.corridor);
  pen.trace(track.line);
  pen.path(1.4);
}

/** Aim point and specified touchdown point. */
export function drawPoints(
  pen: Pen,
  colours: Colours,
  camera: ProfileCamera,
  track: Track,
  runway: Runway,
  share: number,
): void {
  if (share < 0.05) return;
  const aimX = camera.x(track.thresholdM + runway.aimM);
  const aimY = camera.y(groundHeightM(runway, runway.aimM));
  const spotX = camera.x(track.thresholdM + runway.specifiedM);
  const spotY = camera.y(groundHeightM(runway, runway.specifiedM));
  const textY = camera.groundY + 16;
  pen.use(colours.corridorText, share);
  pen.ring(aimX, aimY, 5, 1.8);
  pen.line(spotX, spotY + 6, spotX, spotY - 9, 1.8);
  pen.move(spotX, spotY - 9);
  pen.to(spotX + 8, spotY - 6);
  pen.to(spotX, spotY - 3);
  pen.fill();
  if (spotX - aimX > pen.widthPx('small', 'touchdown point')) {
    pen.text('small', 'aim point', aimX, textY, 'middle');
    pen.text('small', 'touchdown point', spotX, textY, 'middle');
  } else {
    pen.text('small', 'aim', aimX, textY, 'middle');
    pen.text('small', 'touchdown', spotX + 6, textY);
  }
}

/** The names of the legs above their parts, where there is room. */
export function drawLegNames(
  pen: Pen,
  colours: Colours,
  camera: ProfileCamera,
  plan: CircuitPlan,
  track: Track,
  leg: string,
  rightX: number,
): void {
  for (let k = 0; k < CIRCUIT_LEGS.length; k += 1) {
    const name = CIRCUIT_LEGS[k] as CircuitLeg;
    const { from, to } = plan.legs[name];
    const fromX = camera.x(from.distanceM);
    const toX = camera.x(Math.min(to.distanceM, track.thresholdM));
    const ax = Math.max(LEFT_PX, fromX);
    const bx = Math.min(rightX, toX);
    const style = name === leg ? 'strong' : 'label';
    if (bx - ax < pen.widthPx(style, name) + 8) continue;
    pen.use(name === leg ? colours.corridorText : colours.inkSoft);
    pen.text(style, name, (ax + bx) / 2, TITLE_PX + 10, 'middle');
    pen.use(colours.rule, 0.8);
    if (fromX > LEFT_PX) pen.line(fromX, TITLE_PX + 4, fromX, TITLE_PX + 16, 1);
    if (toX < rightX) pen.line(toX, TITLE_PX + 4, toX, TITLE_PX + 16, 1);
  }
}
