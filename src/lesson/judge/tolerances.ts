import {
  type CommonLimit,
  DOCUMENT_LIMITS,
  type DocumentLimits,
  type Limit,
  type LimitsWith,
} from './limit.ts';
import { ALL_RULES } from './rules.ts';

/**
 * The documents that flights are judged by, each a set of limits: its own figures, and beside them those limits that
 * no document differs in, which the rows bring along. Sets are data: the page can offer and change them.
 */
export interface ToleranceSet {
  readonly id: string;
  readonly title: string;
  readonly allowed: LimitsWith<string>;
}

/** What the rows bring along, by name. */
const COMMON: Readonly<Record<string, CommonLimit>> = Object.assign(
  {},
  ...ALL_RULES.map(({ limits }) => limits ?? {}),
);

const COMMON_LIMITS: Readonly<Record<string, Limit>> = Object.fromEntries(
  Object.entries(COMMON).map(([name, { title: _, ...limit }]) => [name, limit]),
);

/** What every limit is called, documents' first: "height, ft". */
export const LIMIT_TITLES: Readonly<Record<string, string>> = {
  ...DOCUMENT_LIMITS,
  ...Object.fromEntries(Object.entries(COMMON).map(([name, { title }]) => [name, title])),
};

const set = (id: string, title: string, document: DocumentLimits): ToleranceSet => ({
  id,
  title,
  allowed: { ...document, ...COMMON_LIMITS },
});

const limit = (below: number, above: number, source: string, sure: Limit['sure']): Limit => ({
  below,
  above,
  source,
  sure,
});
const HEADING_EASA = 'AMC1 FCL.235: heading ±10 deg, held against the track over the ground';
const HALF_AS_MUCH = 'common practice: half as much again as the FAA licence test';

/** The same in every test that has been looked at (AMC1 FCL.235). */
const trackDeg = limit(10, 10, HEADING_EASA, 'quoted');

export const FAA_LICENCE_TEST = set('licence-test-faa', 'Licence test, FAA', {
  heightFt: limit(100, 100, 'FAA-S-ACS-6 III.B: altitude ±100 ft', 'seen'),
  trackDeg,
  circuitSpeedKt: limit(10, 10, 'FAA-S-ACS-6 III.B: airspeed ±10 kt', 'seen'),
  climbSpeedKt: limit(5, 10, 'FAA-S-ACS-6 IV.A: Vy +10/-5 kt', 'seen'),
  approachSpeedKt: limit(5, 10, 'FAA-S-ACS-6 IV.B: approach speed +10/-5 kt', 'seen'),
  touchdownFt: limit(0, 400, 'FAA-S-ACS-6 IV.B: at or within 400 ft beyond the point', 'seen'),
  shortTouchdownFt: limit(0, 200, 'FAA-S-ACS-6 IV.F: within 200 ft beyond the point', 'seen'),
});

export const FIRST_LESSONS = set('first-lessons', 'First lessons', {
  heightFt: limit(150, 150, HALF_AS_MUCH, 'practice'),
  trackDeg: limit(15, 15, HALF_AS_MUCH, 'practice'),
  circuitSpeedKt: limit(15, 15, HALF_AS_MUCH, 'practice'),
  // The low side of a climb or an approach is not for widening
  climbSpeedKt: limit(5, 15, HALF_AS_MUCH, 'practice'),
  approachSpeedKt: limit(5, 15, HALF_AS_MUCH, 'practice'),
  touchdownFt: limit(0, 600, HALF_AS_MUCH, 'practice'),
  shortTouchdownFt: limit(0, 300, HALF_AS_MUCH, 'practice'),
});

export const EASA_LICENCE_TEST = set('licence-test-easa', 'Licence test, EASA and UK', {
  heightFt: limit(150, 150, 'AMC1 FCL.235: height ±150 ft', 'quoted'),
  trackDeg,
  circuitSpeedKt: limit(15, 15, 'AMC1 FCL.235: all other speeds ±15 kt', 'quoted'),
  climbSpeedKt: limit(5, 15, 'AMC1 FCL.235: take-off and approach +15/-5 kt', 'quoted'),
  approachSpeedKt: limit(5, 15, 'AMC1 FCL.235: take-off and approach +15/-5 kt', 'quoted'),
  touchdownFt: limit(0, 400, 'common practice; the test names no figure', 'practice'),
  shortTouchdownFt: limit(0, 200, 'common practice; the test names no figure', 'practice'),
});

const FROM_MEMORY = 'FAA commercial ACS (from memory)';

export const COMMERCIAL = set('commercial', 'Commercial', {
  heightFt: limit(100, 100, 'FAA commercial ACS III.B: altitude ±100 ft', 'seen'),
  trackDeg,
  circuitSpeedKt: limit(10, 10, 'FAA commercial ACS III.B: airspeed ±10 kt', 'seen'),
  climbSpeedKt: limit(5, 5, `${FROM_MEMORY}: ±5 kt`, 'memory'),
  approachSpeedKt: limit(5, 5, `${FROM_MEMORY}: ±5 kt`, 'memory'),
  touchdownFt: limit(0, 200, `${FROM_MEMORY}: within 200 ft beyond the point`, 'memory'),
  shortTouchdownFt: limit(0, 100, `${FROM_MEMORY}: within 100 ft beyond the point`, 'memory'),
});

export const TOLERANCE_SETS: readonly ToleranceSet[] = [
  FIRST_LESSONS,
  FAA_LICENCE_TEST,
  EASA_LICENCE_TEST,
  COMMERCIAL,
];
export const DEFAULT_TOLERANCES = FAA_LICENCE_TEST;
