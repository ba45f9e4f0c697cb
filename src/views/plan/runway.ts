import { eastOf, northOf, type Runway } from '../../aerodrome/runway.ts';
import type { SeenLights } from '../../aerodrome/slope-lights.ts';
import { mFromNmi } from '../../units/conversions.ts';
import type { Colours } from '../ink/colours.ts';
import type { Ink } from '../ink/ink.ts';
import { drawUnitDot } from '../units.ts';
import type { PlanCamera } from './camera.ts';

/** Narrower than this the strip would be lost on the plan. */
const NARROWEST_PX = 7;
const CLOSEST_UNITS_PX = 8;
const TICKS_NMI = 0.5;
const CENTRELINE_NMI = 3;

/** Axes of the runway on the screen; one object, filled per frame. */
class Axes {
  originX = 0;
  originY = 0;
  /** A metre along. */
  alongX = 0;
  alongY = 0;
  /** A pixel to the right of the landing direction. */
  rightX = 0;
  rightY = 0;

  fill(camera: PlanCamera, runway: Runway): void {
    this.originX = camera.x(0, 0);
    this.originY = camera.y(0, 0);
    this.alongX = camera.x(eastOf(runway, 1, 0), northOf(runway, 1, 0)) - this.originX;
    this.alongY = camera.y(eastOf(runway, 1, 0), northOf(runway, 1, 0)) - this.originY;
    const length = Math.sqrt(this.alongX * this.alongX + this.alongY * this.alongY) || 1;
    this.rightX = -this.alongY / length;
    this.rightY = this.alongX / length;
  }
  x(alongM: number, rightPx: number): number {
    return this.originX + this.alongX * alongM + this.rightX * rightPx;
  }
  y(alongM: number, rightPx: number): number {
    return this.originY + this.alongY * alongM + this.rightY * rightPx;
  }
}

const axes = new Axes();

/** The extended centreline with a tick at every half mile from the threshold. */
export function drawCentreline(ink: Ink, colours: Colours, camera: PlanCamera, runway: Runway): void {
  axes.fill(camera, runway);
  ink.use(colours.ink, 0.45);
  const endM = -mFromNmi(CENTRELINE_NMI);
  ink.dashed(axes.x(0, 0), axes.y(0, 0), axes.x(endM, 0), axes.y(endM, 0), 1.2, 9, 6);
  for (let d = TICKS_NMI; d <= CENTRELINE_NMI; d += TICKS_NMI) {
    const at = -mFromNmi(d);
    const half = Number.isInteger(d) ? 6 : 4;
    ink.line(axes.x(at, -half), axes.y(at, -half), axes.x(at, half), axes.y(at, half), 1.2);
  }
}

/** A bar across the strip: from and to along, left and right in pixels from the centreline. */
const bar = (ink: Ink, fromM: number, toM: number, leftPx: number, rightPx: number): void => {
  ink.move(axes.x(fromM, leftPx), axes.y(fromM, leftPx));
  ink.to(axes.x(toM, leftPx), axes.y(toM, leftPx));
  ink.to(axes.x(toM, rightPx), axes.y(toM, rightPx));
  ink.to(axes.x(fromM, rightPx), axes.y(fromM, rightPx));
  ink.fill();
};

function drawMarkings(ink: Ink, colours: Colours, runway: Runway, halfPx: number, pxPerM: number): void {
  ink.use(colours.marking, 0.95);
  const edgePx = Math.max(0.6, 0.9 * pxPerM);
  if (runway.surface === 'tarmac' && halfPx > 6) {
    bar(ink, runway.surfaceStartM, runway.surfaceEndM, -halfPx, -halfPx + edgePx);
    bar(ink, runway.surfaceStartM, runway.surfaceEndM, halfPx - edgePx, halfPx);
  }
  const dashHalfPx = Math.max(0.5, 0.45 * pxPerM);
  // Centreline stripes 30 m with gaps of 20 m: ICAO Annex 14 vol. I 5.2.3 (from memory).
  const clearM = halfPx > 6 ? 60 : 20;
  for (let m = clearM; m + 30 < runway.surfaceEndM - clearM; m += 50)
    bar(ink, m, m + 30, -dashHalfPx, dashHalfPx);
  // The threshold, and the displaced part before it with its arrows.
  const barM = Math.max(1.8, 1.6 / pxPerM);
  bar(ink, 0, barM, -halfPx, halfPx);
  if (runway.surfaceStartM < -10) {
    const sizePx = Math.max(4, halfPx * 0.8);
    const pitchM = Math.max(40, (sizePx * 2.4) / pxPerM);
    const length = Math.sqrt(axes.alongX * axes.alongX + axes.alongY * axes.alongY) || 1;
    for (let m = -6 / pxPerM; m - sizePx / pxPerM > runway.surfaceStartM; m -= pitchM)
      ink.arrowHead(axes.x(m, 0), axes.y(m, 0), axes.alongX / length, axes.alongY / length, sizePx);
  }
}

/** The strip with its markings, its two names, aim point, specified touchdown point and slope-light units. */
export function drawRunway(
  ink: Ink,
  colours: Colours,
  camera: PlanCamera,
  runway: Runway,
  lights: Readonly<SeenLights> | null,
): void {
  axes.fill(camera, runway);
  const pxPerM = camera.pxPerM;
  const halfPx = Math.max(NARROWEST_PX, runway.widthM * pxPerM) / 2;
  ink.use(colours[runway.surface]);
  bar(ink, runway.surfaceStartM, runway.surfaceEndM, -halfPx, halfPx);
  ink.use(colours.ink, 0.75);
  ink.move(axes.x(runway.surfaceStartM, -halfPx), axes.y(runway.surfaceStartM, -halfPx));
  ink.to(axes.x(runway.surfaceEndM, -halfPx), axes.y(runway.surfaceEndM, -halfPx));
  ink.to(axes.x(runway.surfaceEndM, halfPx), axes.y(runway.surfaceEndM, halfPx));
  ink.to(axes.x(runway.surfaceStartM, halfPx), axes.y(runway.surfaceStartM, halfPx));
  ink.path(1, true);
  drawMarkings(ink, colours, runway, halfPx, pxPerM);

  // On the side away from the lights, so that nothing overlaps.
  const free = runway.lights?.side === -1 || runway.lights === null ? 1 : -1;
  const markPx = halfPx + 4;
  ink.use(colours.corridorText);
  const aimX = axes.x(runway.aimM, 0);
  const aimY = axes.y(runway.aimM, 0);
  ink.ring(aimX, aimY, Math.max(3.2, halfPx * 0.55), 1.6);
  const spot = runway.specifiedM;
  ink.line(
    axes.x(spot, free * halfPx),
    axes.y(spot, free * halfPx),
    axes.x(spot, free * (markPx + 5)),
    axes.y(spot, free * (markPx + 5)),
    1.8,
  );
  if (pxPerM > 0.16) {
    const align = axes.rightX * free > 0.3 ? 'left' : axes.rightX * free < -0.3 ? 'right' : 'middle';
    ink.text(
      'small',
      'aim point',
      axes.x(runway.aimM, free * (markPx + 9)),
      axes.y(runway.aimM, free * (markPx + 9)),
      align,
    );
    ink.text(
      'small',
      'touchdown point',
      axes.x(spot, free * (markPx + 9)),
      axes.y(spot, free * (markPx + 9)),
      align,
    );
  }

  ink.use(colours.ink);
  const gapM = 13 / pxPerM;
  ink.text(
    'strong',
    runway.otherDesignator,
    axes.x(runway.surfaceEndM + gapM, 0),
    axes.y(runway.surfaceEndM + gapM, 0),
    'middle',
  );
  const nameM = runway.surfaceStartM - gapM;
  ink.text('strong', runway.designator, axes.x(nameM, free * 15), axes.y(nameM, free * 15), 'middle');

  if (runway.lights === null) return;
  const { unitsAcrossM, alongM, side } = runway.lights;
  const stepPx = Math.max(
    CLOSEST_UNITS_PX,
    Math.abs(((unitsAcrossM[0] ?? 0) - (unitsAcrossM[1] ?? 0)) * pxPerM),
  );
  const nearestPx = Math.max(halfPx + 7, Math.abs(unitsAcrossM[unitsAcrossM.length - 1] ?? 0) * pxPerM);
  for (let i = 0; i < unitsAcrossM.length; i += 1) {
    const rightPx = side * (nearestPx + (unitsAcrossM.length - 1 - i) * stepPx);
    const letter = lights === null || i >= lights.units ? '-' : (lights.letters[i] ?? '-');
    drawUnitDot(
      ink,
      colours,
      axes.x(alongM, rightPx),
      axes.y(alongM, rightPx),
      3,
      letter,
      lights?.white[i] ?? 0,
    );
  }
}
