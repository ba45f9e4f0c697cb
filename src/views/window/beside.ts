import { eastOf, groundHeightM, northOf, type Runway } from '../../aerodrome/runway.ts';
import type { SeenLights } from '../../aerodrome/slope-lights.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import { trueFromMagnetic } from '../../units/angles.ts';
import { radFromDeg } from '../../units/conversions.ts';
import type { SpokenWind } from '../frame.ts';
import type { Colours } from '../ink/colours.ts';
import { drawUnitDot } from '../units.ts';
import type { Brush } from './brush.ts';

const POLE_M = 6;
const SOCK_M = 3.6;
const SOCK_PARTS = 5;
/** Smaller than this the sock could not be read. */
const LEAST_POLE_PX = 15;
/** Straight out at 15 kt (FAA AC 150/5345-27, from memory); hanging in a calm. */
const STRAIGHT_AT_KT = 15;
const LEAST_UNIT_PX = 2.6;
const LEAST_STEP_PX = 7.5;

/** The windsock stands away from the slope lights, a quarter of the way down the strip. */
export const sockPlace = (runway: Runway): { alongM: number; acrossM: number } => {
  const side = runway.lights === null ? -runway.circuitSide : -runway.lights.side;
  return { alongM: Math.min(260, runway.landingLengthM * 0.3), acrossM: side * (runway.widthM / 2 + 35) };
};

const socks = new WeakMap<Runway, { alongM: number; acrossM: number }>();

export function drawWindsock(brush: Brush, colours: Colours, runway: Runway, wind: SpokenWind): void {
  const { eye, ink } = brush;
  let place = socks.get(runway);
  if (place === undefined) {
    place = sockPlace(runway);
    socks.set(runway, place);
  }
  const east = eastOf(runway, place.alongM, place.acrossM);
  const north = northOf(runway, place.alongM, place.acrossM);
  const ground = groundHeightM(runway, place.alongM);
  const z = eye.zOf(east, north, ground);
  if (z < 8) return;
  // When far away it is drawn larger about its foot, in its true attitude.
  const size = Math.max(1, LEAST_POLE_PX / ((eye.focalPx * POLE_M) / z));
  const top = ground + POLE_M * size;
  ink.use(colours.ink, 0.9);
  brush.line(east, north, ground, east, north, top, 0.15 * size, 1.1);
  const to = trueFromMagnetic(radFromDeg(wind.fromDegM), runway.variationRad) + Math.PI;
  const lift = Math.min(1, wind.kt / STRAIGHT_AT_KT);
  const droop = (1 - lift) * 1.25;
  const out = Math.cos(droop) * SOCK_M * size;
  const down = Math.sin(droop) * SOCK_M * size;
  for (let k = 0; k < SOCK_PARTS; k += 1) {
    const a = k / SOCK_PARTS;
    const b = (k + 1) / SOCK_PARTS;
    ink.use(k % 2 === 0 ? colours.aeroplane : colours.lightWhite);
    brush.line(
      east + Math.sin(to) * out * a,
      north + Math.cos(to) * out * a,
      top - down * a,
      east + Math.sin(to) * out * b,
      north + Math.cos(to) * out * b,
      top - down * b,
      (0.95 - 0.5 * a) * size,
      1.6,
    );
  }
}

/** The slope lights where they stand; never too small or too close together to tell red from white. */
export function drawUnits(
  brush: Brush,
  colours: Colours,
  runway: Runway,
  seen: Readonly<SeenLights> | null,
): void {
  const { lights } = runway;
  if (lights === null) return;
  const { eye, ink } = brush;
  const middleE = eastOf(runway, lights.alongM, lights.middleAcrossM);
  const middleN = northOf(runway, lights.alongM, lights.middleAcrossM);
  const z = eye.zOf(middleE, middleN, lights.heightM);
  if (z < 5) return;
  const mx = eye.screenX(eye.xOf(middleE, middleN, lights.heightM), z);
  const my = eye.screenY(eye.yOf(middleE, middleN, lights.heightM), z);
  const n = lights.unitsAcrossM.length;
  const first = lights.unitsAcrossM[0] as number;
  const fe = eastOf(runway, lights.alongM, first);
  const fn = northOf(runway, lights.alongM, first);
  const fz = eye.zOf(fe, fn, lights.heightM);
  if (fz < 2) return;
  const dx = eye.screenX(eye.xOf(fe, fn, lights.heightM), fz) - mx;
  const dy = eye.screenY(eye.yOf(fe, fn, lights.heightM), fz) - my;
  const reach = Math.sqrt(dx * dx + dy * dy) || 1;
  const least = (LEAST_STEP_PX * (n - 1)) / 2;
  const grow = Math.max(1, least / reach);
  const radius = Math.max(LEAST_UNIT_PX, Math.min(9, (eye.focalPx * 0.5) / z));
  // The outermost unit's place fixes the row; with small steps the row grows outwards from the inner unit.
  const shift = (grow - 1) * reach;
  for (let i = 0; i < n; i += 1) {
    const share = 1 - (2 * i) / (n - 1);
    const x = mx + (dx / reach) * (reach * grow * share + shift);
    const y = my + (dy / reach) * (reach * grow * share + shift);
    const letter = seen === null || i >= seen.units ? '-' : (seen.letters[i] ?? '-');
    drawUnitDot(ink, colours, x, y, radius, letter, seen?.white[i] ?? 0);
  }
}

const SPAN_M = 10.9;
const LEAST_TRAFFIC_PX = 5;

/** Another aeroplane: a fuselage dot and wings banked as they are. */
export function drawTraffic(brush: Brush, colours: Colours, other: Readonly<Snapshot>): void {
  const { eye, ink } = brush;
  const z = eye.zOf(other.eastM, other.northM, other.heightM + 1);
  if (z < 5) return;
  const x = eye.screenX(eye.xOf(other.eastM, other.northM, other.heightM + 1), z);
  const y = eye.screenY(eye.yOf(other.eastM, other.northM, other.heightM + 1), z);
  const cosB = Math.cos(other.bankRad);
  const wingE = Math.cos(other.headingRadT) * cosB;
  const wingN = -Math.sin(other.headingRadT) * cosB;
  const wingU = -Math.sin(other.bankRad);
  const half = SPAN_M / 2;
  const tipZ = eye.zOf(
    other.eastM + wingE * half,
    other.northM + wingN * half,
    other.heightM + 1 + wingU * half,
  );
  if (tipZ < 3) return;
  const tx =
    eye.screenX(
      eye.xOf(other.eastM + wingE * half, other.northM + wingN * half, other.heightM + 1 + wingU * half),
      tipZ,
    ) - x;
  const ty =
    eye.screenY(
      eye.yOf(other.eastM + wingE * half, other.northM + wingN * half, other.heightM + 1 + wingU * half),
      tipZ,
    ) - y;
  const reach = Math.sqrt(tx * tx + ty * ty);
  const grow = reach < LEAST_TRAFFIC_PX ? LEAST_TRAFFIC_PX / Math.max(0.5, reach) : 1;
  ink.use(colours.ghost);
  ink.line(
    x - tx * grow,
    y - ty * grow,
    x + tx * grow,
    y + ty * grow,
    Math.max(1.5, (eye.focalPx * 0.4) / z),
  );
  ink.disc(x, y, Math.max(1.8, (eye.focalPx * 0.6) / z));
}
