import type { Runway } from '../../aerodrome/runway.ts';
import type { SeenLights } from '../../aerodrome/slope-lights.ts';
import { mFromNmi } from '../../units/conversions.ts';
import type { Colours } from '../pen/colours.ts';
import type { Pen } from '../pen/pen.ts';
import { drawUnitDot } from '../units.ts';
import type { PlanCamera } from './camera.ts';

/** Narrower than this the strip would be lost on the plan. */
const NARROWEST_PX = 7;
const CLOSEST_UNITS_PX = 8;
const TICKS_NMI = 0.5;
const CENTRELINE_NMI = 3;
/** From this scale on the points of the runway have their names. */
const NAMED_PX_PER_M = 0.16;

/** What lies on a runway, u metres along and v half widths to the right: laid out once for every runway. */
interface Signs {
  readonly strip: Float64Array;
  readonly stripes: Float64Array;
  readonly edges: Float64Array;
  readonly thresholds: Float64Array;
  readonly arrows: Float64Array;
  readonly ticks: Float64Array;
  readonly centreline: Float64Array;
}

const box = (fromM: number, toM: number, left: number, right: number): number[] => [
  ...[fromM, left, toM, left],
  ...[toM, right, fromM, right],
];

const signsOf = (runway: Runway): Signs => {
  const { surfaceStartM, surfaceEndM } = runway;
  const stripes: number[] = [];
  // Centreline stripes 30 m with gaps of 20 m: ICAO Annex 14 vol. I 5.2.3 (from memory).
  if (runway.surface === 'tarmac')
    for (let m = 40; m + 30 < surfaceEndM - 30; m += 50) stripes.push(...box(m, m + 30, -0.13, 0.13));
  const arrows: number[] = [];
  for (let m = -12; m - 30 > surfaceStartM; m -= 50) arrows.push(m - 30, -0.6, m, 0, m, 0, m - 30, 0.6);
  const ticks: number[] = [];
  for (let d = TICKS_NMI; d <= CENTRELINE_NMI; d += TICKS_NMI) {
    const half = Number.isInteger(d) ? 1.6 : 1.1;
    ticks.push(-mFromNmi(d), -half, -mFromNmi(d), half);
  }
  return {
    strip: Float64Array.from(box(surfaceStartM, surfaceEndM, -1, 1)),
    stripes: Float64Array.from(stripes),
    edges: Float64Array.of(surfaceStartM, -0.93, surfaceEndM, -0.93, surfaceStartM, 0.93, surfaceEndM, 0.93),
    thresholds: Float64Array.of(0, -1, 0, 1),
    arrows: Float64Array.from(arrows),
    ticks: Float64Array.from(ticks),
    centreline: Float64Array.of(0, 0, -mFromNmi(CENTRELINE_NMI), 0),
  };
};

const kept = new WeakMap<Runway, Signs>();
const signsFor = (runway: Runway): Signs => {
  let signs = kept.get(runway);
  if (signs === undefined) {
    signs = signsOf(runway);
    kept.set(runway, signs);
  }
  return signs;
};

/** Makes the pen's map the runway's own axes; returns half the strip's width in pixels. */
const aim = (pen: Pen, camera: PlanCamera, runway: Runway, leastHalfPx: number): number => {
  const halfPx = Math.max(leastHalfPx, (runway.widthM * camera.pxPerM) / 2);
  const { map } = pen;
  camera.place(THRESHOLD);
  const alongX = camera.directionX(runway.headingRadT);
  const alongY = camera.directionY(runway.headingRadT);
  map[0] = alongX * camera.pxPerM;
  map[1] = -alongY * halfPx;
  map[2] = camera.px[0]!;
  map[3] = alongY * camera.pxPerM;
  map[4] = alongX * halfPx;
  map[5] = camera.px[1]!;
  return halfPx;
};
const THRESHOLD = { eastM: 0, northM: 0 } as const;

/** The extended centreline with a tick at every half mile from the threshold. */
export function drawCentreline(pen: Pen, colours: Colours, camera: PlanCamera, runway: Runway): void {
  const signs = signsFor(runway);
  aim(pen, camera, runway, NARROWEST_PX / 2);
  pen.use(colours.ink, 0.45);
  pen.trace(signs.centreline);
  pen.dashedPath(1.2, 9, 6);
  pen.segments(signs.ticks, 1.2);
  camera.aim(pen);
}

/** The strip with its markings, its two names, aim point and specified touchdown point. */
export function drawRunway(pen: Pen, colours: Colours, camera: PlanCamera, runway: Runway): void {
  const signs = signsFor(runway);
  const { pxPerM } = camera;
  const halfPx = aim(pen, camera, runway, NARROWEST_PX / 2);
  pen.use(colours[runway.surface]);
  pen.quads(signs.strip);
  pen.use(colours.ink, 0.75);
  pen.trace(signs.strip);
  pen.path(1, true);
  pen.use(colours.marking, 0.95);
  if (runway.surface === 'tarmac' && halfPx > 6) pen.segments(signs.edges, 1);
  pen.quads(signs.stripes);
  pen.quads(signs.arrows);
  pen.segments(signs.thresholds, 1.8);

  // Screen steps: a metre along, a pixel to the right.
  const { map } = pen;
  const x = map[2]!;
  const y = map[5]!;
  const alongX = map[0]!;
  const alongY = map[3]!;
  const rightX = map[1]! / halfPx;
  const rightY = map[4]! / halfPx;
  // On the side away from the lights, so that nothing overlaps.
  const free = runway.lights?.side === 1 ? -1 : 1;
  const markPx = free * (halfPx + 13);
  const { aimM, specifiedM } = runway;
  pen.use(colours.corridorText);
  pen.ring(x + alongX * aimM, y + alongY * aimM, Math.max(3.2, halfPx * 0.55), 1.6);
  pen.line(
    x + alongX * specifiedM + rightX * free * halfPx,
    y + alongY * specifiedM + rightY * free * halfPx,
    x + alongX * specifiedM + rightX * free * (halfPx + 9),
    y + alongY * specifiedM + rightY * free * (halfPx + 9),
    1.8,
  );
  if (pxPerM > NAMED_PX_PER_M) {
    const align = rightX * free > 0.3 ? 'left' : rightX * free < -0.3 ? 'right' : 'middle';
    const sx = x + rightX * markPx;
    const sy = y + rightY * markPx;
    pen.text('small', 'aim point', sx + alongX * aimM, sy + alongY * aimM, align);
    pen.text('small', 'touchdown point', sx + alongX * specifiedM, sy + alongY * specifiedM, align);
  }

  pen.use(colours.ink);
  const gapM = 13 / pxPerM;
  const farM = runway.surfaceEndM + gapM;
  const nearM = runway.surfaceStartM - gapM;
  pen.text('strong', runway.otherDesignator, x + alongX * farM, y + alongY * farM, 'middle');
  pen.text(
    'strong',
    runway.designator,
    x + alongX * nearM + rightX * free * 16,
    y + alongY * nearM + rightY * free * 16,
    'middle',
  );
  camera.aim(pen);
}

/** The units of the slope lights beside the strip, as they are seen now. */
export function drawRunwayLights(
  pen: Pen,
  colours: Colours,
  camera: PlanCamera,
  runway: Runway,
  lights: Readonly<SeenLights> | null,
): void {
  if (runway.lights === null) return;
  const halfPx = aim(pen, camera, runway, NARROWEST_PX / 2);
  const { pxPerM } = camera;
  const { map } = pen;
  const x = map[2]!;
  const y = map[5]!;
  const alongX = map[0]!;
  const alongY = map[3]!;
  const rightX = map[1]! / halfPx;
  const rightY = map[4]! / halfPx;
  const { unitsAcrossM, alongM, side } = runway.lights;
  const n = unitsAcrossM.length;
  const apartM = Math.abs((unitsAcrossM[0] ?? 0) - (unitsAcrossM[1] ?? 0));
  const stepPx = Math.max(CLOSEST_UNITS_PX, apartM * pxPerM);
  const nearestPx = Math.max(halfPx + 7, Math.abs(unitsAcrossM[n - 1] ?? 0) * pxPerM);
  for (let i = 0; i < n; i += 1) {
    const right = side * (nearestPx + (n - 1 - i) * stepPx);
    const letter = lights === null || i >= lights.units ? '-' : (lights.letters[i] ?? '-');
    drawUnitDot(
      pen,
      colours,
      x + alongX * alongM + rightX * right,
      y + alongY * alongM + rightY * right,
      3,
      letter,
      lights?.white[i] ?? 0,
    );
  }
  camera.aim(pen);
}
