import { degFromRad } from '../../units/conversions.ts';
import { fixed } from '../../units/format.ts';

/** A point of a track: seconds, metres east and north of the landing threshold, metres above sea level. */
export interface TrackPoint {
  readonly timeS: number;
  readonly eastM: number;
  readonly northM: number;
  readonly altitudeM: number;
}

/**
 * WGS 84 (NIMA TR8350.2): radii of curvature at the equator. The aerodromes are invented and lie nowhere, so
 * the landing threshold is put at 0 N 0 E, and the flight begins at midnight UTC on 1 January 2000.
 */
const EQUATOR_M = 6378137;
const FLATTENING = 1 / 298.257223563;
const MERIDIAN_M = EQUATOR_M * (1 - FLATTENING) * (1 - FLATTENING);
const S_PER_DAY = 86400;

export const NOWHERE =
  'Invented aerodrome: the landing threshold is put at 0 N 0 E and the start at 2000-01-01.';

export const latitudeText = (p: TrackPoint): string => fixed(degFromRad(p.northM / MERIDIAN_M), 8);
export const longitudeText = (p: TrackPoint): string => fixed(degFromRad(p.eastM / EQUATOR_M), 8);

const two = (n: number): string => String(n).padStart(2, '0');

/** ISO 8601 in UTC: `2000-01-01T00:01:01.500Z`. */
export const instantText = (timeS: number): string => {
  const milli = Math.round(timeS * 1000);
  const wholeS = Math.floor(milli / 1000);
  const day = 1 + Math.floor(wholeS / S_PER_DAY);
  const s = wholeS % S_PER_DAY;
  const fraction = String(milli - wholeS * 1000).padStart(3, '0');
  return `2000-01-${two(day)}T${two(Math.floor(s / 3600))}:${two(Math.floor(s / 60) % 60)}:${two(s % 60)}.${fraction}Z`;
};
