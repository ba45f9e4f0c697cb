import { acrossM, alongM } from '../../aerodrome/runway.ts';
import {
  degFromRad,
  fpmFromMps,
  ftFromM,
  ktFromMps,
  nmiFromM,
  rpmFromRevps,
} from '../../units/conversions.ts';
import type { Scale } from '../../views/scales/scale.ts';

const mk = (
  id: string,
  name: string,
  unit: string,
  low: number,
  high: number,
  value: Scale['value'],
  inCockpit = true,
): Scale => ({
  id,
  name,
  unit,
  inCockpit,
  ribbon: true,
  low: () => low,
  high: () => high,
  title: () => name,
  arcs: () => [],
  ticks: () => [],
  marks: () => [],
  value,
  text: (v) => `${Math.round(v)} ${unit}`,
});
const plain = (id: string, name: string, unit: string, value: Scale['value'], places = 1): Scale => ({
  ...mk(id, name, unit, 0, 0, value, false),
  ribbon: false,
  text: (v) => `${v.toFixed(places)} ${unit}`,
});
export const SCALES: readonly Scale[] = [
  mk('airspeed', 'Airspeed', 'kt', 0, 150, (s) => ktFromMps(s.iasMps)),
  mk('altitude', 'Altitude', 'ft', 0, 2000, (s) => ftFromM(s.altitudeM)),
  mk('vertical-speed', 'Vertical speed', 'ft/min', -1500, 1500, (s) =>
    fpmFromMps(s.indicatedVerticalSpeedMps),
  ),
  mk('heading', 'Heading', '°', 0, 360, (s) => degFromRad(s.headingRadT)),
  mk('rpm', 'Power', 'rpm', 0, 2800, (s) => rpmFromRevps(s.engineRevps)),
  mk('flap', 'Flap', '°', 0, 40, (s) => s.flapDeg, false),
  mk('trim', 'Trim', '', -1, 1, (s) => s.trim, false),
  mk('held', 'Held pressure', '', -6, 6, (s) => s.heldPressureDegKpa, false),
  mk('slip', 'Slip', '', -0.3, 0.3, (s) => s.ball),
  mk('load', 'Load factor', 'g', 0, 3, (s) => s.loadFactor, false),
  plain('pitch', 'Pitch', '°', (s) => degFromRad(s.pitchRad)),
  plain('bank', 'Bank', '°', (s) => degFromRad(s.bankRad)),
  plain('track', 'Track', '°', (s) => degFromRad(s.trackRadT)),
  plain(
    'distance',
    'Distance to the threshold',
    'NM',
    (s, { runway }) => nmiFromM(-alongM(runway, s.eastM, s.northM)),
    2,
  ),
  plain('offset', 'Offset from the centreline', 'm', (s, { runway }) => acrossM(runway, s.eastM, s.northM)),
];
