import { COMMON_LIMITS, type CommonLimits } from './common-limits.ts';

/**
 * How far from its target a quantity may be. Every limit names its source; reference numbers of documents as
 * published. Sets are data: the page can offer and change them.
 */
export interface Limit {
  /** Below and above the target. */
  readonly below: number;
  readonly above: number;
  readonly source: string;
  /**
   * How sure the figure is: seen in the document or a copy of it, in a text that quotes it, remembered only, or
   * common practice without a document.
   */
  readonly sure: 'seen' | 'quoted' | 'memory' | 'practice' | 'own';
}

/** The limits that differ from test to test. */
export interface TestLimits {
  readonly heightFt: Limit;
  readonly trackDeg: Limit;
  readonly circuitSpeedKt: Limit;
  readonly climbSpeedKt: Limit;
  readonly approachSpeedKt: Limit;
  /** Beyond the specified point. */
  readonly touchdownFt: Limit;
  readonly shortTouchdownFt: Limit;
}

export type Limits = TestLimits & CommonLimits;
export type LimitName = keyof Limits;

export interface ToleranceSet extends Limits {
  readonly id: string;
  readonly title: string;
}

const limit = (below: number, above: number, source: string, sure: Limit['sure']): Limit => ({
  below,
  above,
  source,
  sure,
});
const HEADING_EASA = 'AMC1 FCL.235: heading ±10 deg, held against the track over the ground';
const HALF_AS_MUCH = 'common practice: half as much again as the FAA licence test';

export const FAA_LICENCE_TEST: ToleranceSet = {
  id: 'licence-test-faa',
  title: 'Licence test, FAA',
  heightFt: limit(100, 100, 'FAA-S-ACS-6 III.B: altitude ±100 ft', 'seen'),
  trackDeg: limit(10, 10, HEADING_EASA, 'quoted'),
  circuitSpeedKt: limit(10, 10, 'FAA-S-ACS-6 III.B: airspeed ±10 kt', 'seen'),
  climbSpeedKt: limit(5, 10, 'FAA-S-ACS-6 IV.A: Vy +10/-5 kt', 'seen'),
  approachSpeedKt: limit(5, 10, 'FAA-S-ACS-6 IV.B: approach speed +10/-5 kt', 'seen'),
  touchdownFt: limit(0, 400, 'FAA-S-ACS-6 IV.B: at or within 400 ft beyond the point', 'seen'),
  shortTouchdownFt: limit(0, 200, 'FAA-S-ACS-6 IV.F: within 200 ft beyond the point', 'seen'),
  ...COMMON_LIMITS,
};

export const FIRST_LESSONS: ToleranceSet = {
  ...FAA_LICENCE_TEST,
  id: 'first-lessons',
  title: 'First lessons',
  heightFt: limit(150, 150, HALF_AS_MUCH, 'practice'),
  trackDeg: limit(15, 15, HALF_AS_MUCH, 'practice'),
  circuitSpeedKt: limit(15, 15, HALF_AS_MUCH, 'practice'),
  // The low side of a climb or an approach is not for widening
  climbSpeedKt: limit(5, 15, HALF_AS_MUCH, 'practice'),
  approachSpeedKt: limit(5, 15, HALF_AS_MUCH, 'practice'),
  touchdownFt: limit(0, 600, HALF_AS_MUCH, 'practice'),
  shortTouchdownFt: limit(0, 300, HALF_AS_MUCH, 'practice'),
};

export const EASA_LICENCE_TEST: ToleranceSet = {
  ...FAA_LICENCE_TEST,
  id: 'licence-test-easa',
  title: 'Licence test, EASA and UK',
  heightFt: limit(150, 150, 'AMC1 FCL.235: height ±150 ft', 'quoted'),
  circuitSpeedKt: limit(15, 15, 'AMC1 FCL.235: all other speeds ±15 kt', 'quoted'),
  climbSpeedKt: limit(5, 15, 'AMC1 FCL.235: take-off and approach +15/-5 kt', 'quoted'),
  approachSpeedKt: limit(5, 15, 'AMC1 FCL.235: take-off and approach +15/-5 kt', 'quoted'),
  touchdownFt: limit(0, 400, 'common practice; the test names no figure', 'practice'),
  shortTouchdownFt: limit(0, 200, 'common practice; the test names no figure', 'practice'),
};

const FROM_MEMORY = 'FAA commercial ACS (from memory)';

export const COMMERCIAL: ToleranceSet = {
  ...FAA_LICENCE_TEST,
  id: 'commercial',
  title: 'Commercial',
  heightFt: limit(100, 100, 'FAA commercial ACS III.B: altitude ±100 ft', 'seen'),
  circuitSpeedKt: limit(10, 10, 'FAA commercial ACS III.B: airspeed ±10 kt', 'seen'),
  climbSpeedKt: limit(5, 5, `${FROM_MEMORY}: ±5 kt`, 'memory'),
  approachSpeedKt: limit(5, 5, `${FROM_MEMORY}: ±5 kt`, 'memory'),
  touchdownFt: limit(0, 200, `${FROM_MEMORY}: within 200 ft beyond the point`, 'memory'),
  shortTouchdownFt: limit(0, 100, `${FROM_MEMORY}: within 100 ft beyond the point`, 'memory'),
};

export const TOLERANCE_SETS: readonly ToleranceSet[] = [
  FIRST_LESSONS,
  FAA_LICENCE_TEST,
  EASA_LICENCE_TEST,
  COMMERCIAL,
];
export const DEFAULT_TOLERANCES = FAA_LICENCE_TEST;
