import { eastOf, groundHeightM, northOf, type Runway } from '../../aerodrome/runway.ts';
import type { SeenLights } from '../../aerodrome/slope-lights.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import { trueFromMagnetic } from '../../units/angles.ts';
import { radFromDeg } from '../../units/conversions.ts';
import type { SpokenWind } from '../frame.ts';
import type { Colours } from '../pen/colours.ts';
import { drawUnitDot } from '../units.ts';
import type { Perspective } from './perspective.ts';

const POLE_M = 6;
const SOCK_M = 3.6;
const SOCK_PARTS = 5;
/** Smaller than this the sock could not be read. */
const LEAST_POLE_PX = 15;
/** Straight out at 15 kt (FAA AC 150/5345-27, from memory); hanging in a calm. */
const STRAIGHT_AT_KT = 15;
const HANGING_RAD = radFromDeg(72);
const LEAST_UNIT_PX = 2.8;
const LEAST_STEP_PX = 7.5;

/** Places beside a runway, by threes. */
interface Beside {
  readonly units: Float64Array;
  readonly sockFoot: Float64Array;
}

const besides = new WeakMap<Runway, Beside>();

/** The windsock stands away from the slope lights, a quarter of the way down the strip. */
const besideOf = (runway: Runway): Beside => {
  let beside = besides.get(runway);
  if (beside !== undefined) return beside;
  const { lights } = runway;
  const units = (lights?.unitsAcrossM ?? []).flatMap((across) => [
    eastOf(runway, lights?.alongM ?? 0, across),
    northOf(runway, lights?.alongM ?? 0, across),
    lights?.heightM ?? 0,
  ]);
  const side = lights === null ? -runway.circuitSide : -lights.side;
  const along = Math.min(260, runway.landingLengthM * 0.3);
  const across = side * (runway.widthM / 2 + 35);
  beside = {
    units: Float64Array.from(units),
    sockFoot: Float64Array.of(
      eastOf(runway, along, across),
      northOf(runway, along, across),
      groundHeightM(runway, along),
    ),
  };
  besides.set(runway, beside);
  return beside;
};

const sockAt = new Float64Array(3);

/** Shows the surface wind; when far away it is drawn larger about its foot, in its true attitude. */
export function drawWindsock(
  perspective: Perspective,
  colours: Colours,
  runway: Runway,
  wind: SpokenWind,
): void {
  const { eye, pen, located } = perspective;
  const { sockFoot } = besideOf(runway);
  if (!perspective.locate(sockFoot, 0, 8)) return;
  const size = Math.max(1, LEAST_POLE_PX / ((eye.focalPx * POLE_M) / located[2]!));
  let x = located[3]!;
  let y = located[4]!;
  const foot = sockFoot;
  sockAt[0] = foot[0]!;
  sockAt[1] = foot[1]!;
  sockAt[2] = foot[2]! + POLE_M * size;
  if (!perspective.locate(sockAt, 0, 8)) return;
  pen.use(colours.ink, 0.9);
  pen.line(x, y, located[3]!, located[4]!, 1.3);
  x = located[3]!;
  y = located[4]!;
  const to = trueFromMagnetic(radFromDeg(wind.fromDegM), runway.variationRad) + Math.PI;
  const droop = (1 - Math.min(1, wind.kt / STRAIGHT_AT_KT)) * HANGING_RAD;
  const partM = (SOCK_M * size) / SOCK_PARTS;
  const east = Math.sin(to) * Math.cos(droop) * partM;
  const north = Math.cos(to) * Math.cos(droop) * partM;
  const down = Math.sin(droop) * partM;
  for (let k = 0; k < SOCK_PARTS; k += 1) {
    sockAt[0] = sockAt[0]! + east;
    sockAt[1] = sockAt[1]! + north;
    sockAt[2] = sockAt[2]! - down;
    if (!perspective.locate(sockAt, 0, 4)) return;
    pen.use(k % 2 === 0 ? colours.aeroplane : colours.lightWhite);
    pen.line(
      x,
      y,
      located[3]!,
      located[4]!,
      Math.max(1.6, ((0.95 - 0.1 * k) * size * eye.focalPx) / located[2]!),
    );
    x = located[3]!;
    y = located[4]!;
  }
}

/** The slope lights where they stand; never too small or too close together to tell red from white. */
export function drawUnits(
  perspective: Perspective,
  colours: Colours,
  runway: Runway,
  seen: Readonly<SeenLights> | null,
): void {
  const { lights } = runway;
  if (lights === null) return;
  const { eye, pen, located } = perspective;
  const { units } = besideOf(runway);
  const n = lights.unitsAcrossM.length;
  // From the unit nearest the runway outwards: that one keeps its place when the row has to be spread.
  if (!perspective.locate(units, 3 * (n - 1), 3)) return;
  const x = located[3]!;
  const y = located[4]!;
  const radius = Math.max(LEAST_UNIT_PX, Math.min(9, (eye.focalPx * 0.5) / located[2]!));
  if (!perspective.locate(units, 0, 3)) return;
  const dx = (located[3]! - x) / (n - 1);
  const dy = (located[4]! - y) / (n - 1);
  const step = Math.sqrt(dx * dx + dy * dy) || 1;
  const grow = Math.max(1, LEAST_STEP_PX / step);
  for (let i = 0; i < n; i += 1) {
    const out = (n - 1 - i) * grow;
    const letter = seen === null || i >= seen.units ? '-' : (seen.letters[i] ?? '-');
    drawUnitDot(pen, colours, x + dx * out, y + dy * out, radius, letter, seen?.white[i] ?? 0);
  }
}

const TRAFFIC_HALF_SPAN_M = 5.4;
const LEAST_TRAFFIC_PX = 6;
const traffic = new Float64Array(6);

/** Another aeroplane: a fuselage and wings banked as they are. */
export function drawTraffic(perspective: Perspective, colours: Colours, other: Readonly<Snapshot>): void {
  const { eye, pen, located } = perspective;
  const cosB = Math.cos(other.bankRad);
  traffic[0] = other.eastM;
  traffic[1] = other.northM;
  traffic[2] = other.heightM + 1;
  traffic[3] = other.eastM + Math.cos(other.headingRadT) * cosB * TRAFFIC_HALF_SPAN_M;
  traffic[4] = other.northM - Math.sin(other.headingRadT) * cosB * TRAFFIC_HALF_SPAN_M;
  traffic[5] = other.heightM + 1 - Math.sin(other.bankRad) * TRAFFIC_HALF_SPAN_M;
  if (!perspective.locate(traffic, 0, 6)) return;
  const x = located[3]!;
  const y = located[4]!;
  const scale = eye.focalPx / located[2]!;
  if (!perspective.locate(traffic, 3, 3)) return;
  const tx = located[3]! - x;
  const ty = located[4]! - y;
  const reach = Math.sqrt(tx * tx + ty * ty);
  const grow = Math.max(1, LEAST_TRAFFIC_PX / Math.max(0.5, reach));
  pen.use(colours.ghost);
  pen.line(x - tx * grow, y - ty * grow, x + tx * grow, y + ty * grow, Math.max(1.8, 0.4 * scale));
  pen.disc(x, y, Math.max(2.2, 0.6 * scale));
}
