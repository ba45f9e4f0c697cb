import { groundHeightM, type Runway } from '../../aerodrome/runway.ts';
import { CIRCUIT_LEGS, type CircuitLeg, type CircuitPlan } from '../../circuit/types.ts';
import type { Colours } from '../ink/colours.ts';
import type { Ink } from '../ink/ink.ts';
import type { ProfileCamera } from './camera.ts';
import { LEFT_PX, TITLE_PX } from './frame.ts';
import type { Track } from './track.ts';

/** The planned heights: a corridor and its middle. */
export function drawPlannedHeights(ink: Ink, colours: Colours, track: Track): void {
  ink.use(colours.corridor, 0.17);
  ink.quads(track.corridor);
  ink.use(colours.corridor);
  ink.trace(track.line);
  ink.path(1.4);
}

/** Aim point and specified touchdown point. */
export function drawPoints(
  ink: Ink,
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
  ink.use(colours.corridorText, share);
  ink.ring(aimX, aimY, 5, 1.8);
  ink.line(spotX, spotY + 6, spotX, spotY - 9, 1.8);
  ink.move(spotX, spotY - 9);
  ink.to(spotX + 8, spotY - 6);
  ink.to(spotX, spotY - 3);
  ink.fill();
  if (spotX - aimX > ink.widthPx('small', 'touchdown point')) {
    ink.text('small', 'aim point', aimX, textY, 'middle');
    ink.text('small', 'touchdown point', spotX, textY, 'middle');
  } else {
    ink.text('small', 'aim', aimX, textY, 'middle');
    ink.text('small', 'touchdown', spotX + 6, textY);
  }
}

/** The names of the legs above their parts, where there is room. */
export function drawLegNames(
  ink: Ink,
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
    if (bx - ax < ink.widthPx(style, name) + 8) continue;
    ink.use(name === leg ? colours.corridorText : colours.inkSoft);
    ink.text(style, name, (ax + bx) / 2, TITLE_PX + 10, 'middle');
    ink.use(colours.rule, 0.8);
    if (fromX > LEFT_PX) ink.line(fromX, TITLE_PX + 4, fromX, TITLE_PX + 16, 1);
    if (toX < rightX) ink.line(toX, TITLE_PX + 4, toX, TITLE_PX + 16, 1);
  }
}
