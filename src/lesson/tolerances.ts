/**
 * How far from its target a quantity may be. Every limit names its source; reference numbers of documents as
 * published. Sets are data: the page can offer and change them.
 */
export interface Limit {
  /** Below and above the target. */
  readonly below: number;
  readonly above: number;
  readonly source: string;
}

export interface ToleranceSet {
  readonly id: string;
  readonly title: string;
  readonly heightFt: Limit;
  readonly trackDeg: Limit;
  readonly circuitSpeedKt: Limit;
  readonly climbSpeedKt: Limit;
  readonly approachSpeedKt: Limit;
  /** Beyond the specified point. */
  readonly touchdownFt: Limit;
}

const practice = (below: number, above: number): Limit => ({ below, above, source: 'common practice' });
const HEADING_EASA = 'AMC1 FCL.235: heading ±10 deg, held against the track over the ground';

export const FAA_LICENCE_TEST: ToleranceSet = {
  id: 'licence-test-faa',
  title: 'Licence test, FAA',
  heightFt: { below: 100, above: 100, source: 'FAA-S-ACS-6 III.B: altitude ±100 ft' },
  trackDeg: { below: 10, above: 10, source: HEADING_EASA },
  circuitSpeedKt: { below: 10, above: 10, source: 'FAA-S-ACS-6 III.B: airspeed ±10 kt' },
  climbSpeedKt: { below: 5, above: 10, source: 'FAA-S-ACS-6 IV.A: Vy +10/-5 kt' },
  approachSpeedKt: { below: 5, above: 10, source: 'FAA-S-ACS-6 IV.B: approach speed +10/-5 kt' },
  touchdownFt: { below: 0, above: 400, source: 'FAA-S-ACS-6 IV.B: at or within 400 ft beyond the point' },
};

export const EASA_LICENCE_TEST: ToleranceSet = {
  id: 'licence-test-easa',
  title: 'Licence test, EASA and UK',
  heightFt: { below: 150, above: 150, source: 'AMC1 FCL.235: height ±150 ft' },
  trackDeg: { below: 10, above: 10, source: HEADING_EASA },
  circuitSpeedKt: { below: 15, above: 15, source: 'AMC1 FCL.235: all other speeds ±15 kt' },
  climbSpeedKt: { below: 5, above: 15, source: 'AMC1 FCL.235: take-off and approach +15/-5 kt' },
  approachSpeedKt: { below: 5, above: 15, source: 'AMC1 FCL.235: take-off and approach +15/-5 kt' },
  touchdownFt: practice(0, 400),
};

export const COMMERCIAL: ToleranceSet = {
  id: 'commercial',
  title: 'Commercial',
  heightFt: { below: 100, above: 100, source: 'FAA commercial ACS III.B: altitude ±100 ft' },
  trackDeg: { below: 10, above: 10, source: HEADING_EASA },
  circuitSpeedKt: { below: 10, above: 10, source: 'FAA commercial ACS III.B: airspeed ±10 kt' },
  climbSpeedKt: { below: 5, above: 5, source: 'FAA commercial ACS (from memory): ±5 kt' },
  approachSpeedKt: { below: 5, above: 5, source: 'FAA commercial ACS (from memory): ±5 kt' },
  touchdownFt: {
    below: 0,
    above: 200,
    source: 'FAA commercial ACS (from memory): within 200 ft beyond the point',
  },
};

export const TOLERANCE_SETS: readonly ToleranceSet[] = [FAA_LICENCE_TEST, EASA_LICENCE_TEST, COMMERCIAL];
export const DEFAULT_TOLERANCES = FAA_LICENCE_TEST;
