import type { Runway } from '../aerodrome/runway.ts';
import { acrossM } from '../aerodrome/runway.ts';
import { lightLetters, newSeenLights, seeLights } from '../aerodrome/slope-lights.ts';
import type { LegName } from '../lesson/names.ts';
import { atan2 } from '../maths/functions.ts';
import type { Controls } from '../simulation/controls.ts';
import type { Snapshot } from '../simulation/snapshot.ts';
import { magneticFromTrue } from '../units/angles.ts';
import { degFromRad, fpmFromMps, ftFromM, ktFromMps, rpmFromRevps } from '../units/conversions.ts';
import { fixed } from '../units/format.ts';

/** What a row is made from: the aeroplane now, and the hands of the step that begins now. */
export interface TrackMoment {
  readonly snapshot: Readonly<Snapshot>;
  readonly controls: Readonly<Controls>;
  /** Empty where nobody watched the legs. */
  readonly leg: LegName | '';
  readonly runway: Runway;
}

interface TrackColumn {
  readonly name: string;
  text(moment: TrackMoment): string;
}

const column = (name: string, text: (moment: TrackMoment) => string): TrackColumn => ({ name, text });
const ofAir = (name: string, decimals: number, value: (s: Readonly<Snapshot>) => number): TrackColumn =>
  column(name, (m) => fixed(value(m.snapshot), decimals));
const ofHands = (name: string, decimals: number, value: (c: Readonly<Controls>) => number): TrackColumn =>
  column(name, (m) => fixed(value(m.controls), decimals));

/** A direction above 0 to 360, also after rounding. */
const direction = (trueRad: number, variationRad: number): string => {
  const text = fixed(degFromRad(magneticFromTrue(trueRad, variationRad)), 2);
  return text === '0.00' ? '360.00' : text;
};

const windKt = (s: Readonly<Snapshot>): number =>
  ktFromMps(Math.sqrt(s.windEastMps * s.windEastMps + s.windNorthMps * s.windNorthMps));

const seen = newSeenLights();
const lights = (m: TrackMoment) =>
  seeLights(m.runway, m.snapshot.eyeEastM, m.snapshot.eyeNorthM, m.snapshot.eyeHeightM, seen);

/** The columns in their order: a contract that other tools read. Hands carry four decimals, as they are quantised. */
const COLUMNS: readonly TrackColumn[] = [
  ofAir('time_s', 4, (s) => s.timeS),
  column('leg', (m) => m.leg),
  ofAir('east_m', 3, (s) => s.eastM),
  ofAir('north_m', 3, (s) => s.northM),
  ofAir('height_ft', 3, (s) => ftFromM(s.heightM)),
  ofAir('altitude_ft', 2, (s) => ftFromM(s.altitudeM)),
  ofAir('ias_kt', 3, (s) => ktFromMps(s.iasMps)),
  ofAir('tas_kt', 3, (s) => ktFromMps(s.tasMps)),
  ofAir('groundspeed_kt', 3, (s) => ktFromMps(s.groundspeedMps)),
  column('heading_deg', (m) => direction(m.snapshot.headingRadT, m.runway.variationRad)),
  column('track_deg', (m) => direction(m.snapshot.trackRadT, m.runway.variationRad)),
  ofAir('pitch_deg', 3, (s) => degFromRad(s.pitchRad)),
  ofAir('bank_deg', 3, (s) => degFromRad(s.bankRad)),
  ofAir('alpha_deg', 3, (s) => degFromRad(s.alphaRad)),
  ofAir('vertical_speed_fpm', 1, (s) => fpmFromMps(s.verticalSpeedMps)),
  ofAir('load_factor_g', 3, (s) => s.loadFactor),
  ofAir('rpm', 1, (s) => rpmFromRevps(s.engineRevps)),
  ofHands('throttle', 4, (c) => c.throttle),
  ofAir('flap_deg', 2, (s) => s.flapDeg),
  ofHands('elevator', 4, (c) => c.elevator),
  ofHands('aileron', 4, (c) => c.aileron),
  ofHands('rudder', 4, (c) => c.rudder),
  ofHands('trim', 4, (c) => c.trim),
  ofHands('brake', 4, (c) => c.brake),
  column('wind_from_deg', ({ snapshot: s, runway }) =>
    windKt(s) < 0.005 ? '' : direction(atan2(-s.windEastMps, -s.windNorthMps), runway.variationRad),
  ),
  ofAir('wind_kt', 2, windKt),
  column('slope_lights', (m) => (m.runway.lights === null ? '' : lightLetters(lights(m)))),
  column('slope_angle_deg', (m) =>
    m.runway.lights === null ? '' : fixed(degFromRad(lights(m).slopeAngleRad), 4),
  ),
  column('centreline_m', (m) => fixed(acrossM(m.runway, m.snapshot.eastM, m.snapshot.northM), 3)),
  column('on_ground', (m) => (m.snapshot.onGround ? '1' : '0')),
  ofAir('sideslip_deg', 3, (s) => degFromRad(s.slipRad)),
  ofAir('held_pressure', 3, (s) => s.heldPressureDegKpa),
  ofHands('flap_stage', 0, (c) => c.flapStage),
  ofHands('gear', 0, (c) => c.gear),
  ofHands('carb_heat', 0, (c) => c.carbHeat),
];

const TRACK_COLUMNS: readonly string[] = COLUMNS.map((c) => c.name);

/** The header row, CRLF included. */
export const trackHeader = (): string => `${TRACK_COLUMNS.join(',')}\r\n`;

/** One row, CRLF included: fixed decimals, points, empty where undefined. */
export const trackRow = (moment: TrackMoment): string => {
  let line = '';
  for (let i = 0; i < COLUMNS.length; i += 1) {
    line += `${i === 0 ? '' : ','}${(COLUMNS[i] as TrackColumn).text(moment)}`;
  }
  return `${line}\r\n`;
};
