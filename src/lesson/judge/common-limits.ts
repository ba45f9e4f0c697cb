import type { Limit } from './tolerances.ts';

/** Limits that are the same in every set until somebody changes them. */
export interface CommonLimits {
  /** Of the planned spacing, as a share. */
  readonly spacingShare: Limit;
  readonly climbingBankDeg: Limit;
  readonly levelBankDeg: Limit;
  readonly finalBankDeg: Limit;
  readonly baseTurnDeg: Limit;
  readonly overshootM: Limit;
  /** Of the ball, in hundredths of g. */
  readonly ballHundredths: Limit;
  /** Held pressure in steady flight, degrees of elevator times kPa. */
  readonly trimDegKpa: Limit;
  readonly flapOverKt: Limit;
  /** Of the power that a card of one's own asks for. */
  readonly cardPowerRpm: Limit;
  /** Lamps of the slope lights away from half red, half white. */
  readonly lamps: Limit;
  readonly roundOutFt: Limit;
  readonly floatM: Limit;
  readonly touchdownSinkFpm: Limit;
  readonly softSinkFpm: Limit;
  /** Of the runway's width, as a share. */
  readonly centrelineShare: Limit;
  readonly driftKt: Limit;
  readonly crabDeg: Limit;
  readonly brakeS: Limit;
  readonly glideSpeedKt: Limit;
  readonly aheadDeg: Limit;
  readonly extendM: Limit;
  readonly orbitDeg: Limit;
  readonly reactionS: Limit;
  /** Mean throttle of a glide, percent. */
  readonly glidePower: Limit;
  readonly slipS: Limit;
  readonly noseUpS: Limit;
  /** Of the items of a check, of the calls that are due, of a lookout's parts. */
  readonly checksPercent: Limit;
  readonly callsPercent: Limit;
  readonly lookoutPercent: Limit;
  readonly outOfOrderItems: Limit;
  readonly readBackS: Limit;
  readonly subscaleHpa: Limit;
  /** To another aeroplane in the air, at least. */
  readonly spacingAheadM: Limit;
}

const practice = (below: number, above: number, what = ''): Limit => ({
  below,
  above,
  source: what === '' ? 'common practice' : `common practice: ${what}`,
  sure: 'practice',
});

const steepest: Limit = {
  below: 0,
  above: 30,
  source: 'South African instructor training procedures: 30 deg, balanced',
  sure: 'seen',
};

export const COMMON_LIMITS: CommonLimits = {
  spacingShare: practice(0.25, 0.25, 'within a quarter of the planned spacing'),
  climbingBankDeg: practice(0, 25, '15 to 20 deg in climbing turns'),
  levelBankDeg: steepest,
  finalBankDeg: steepest,
  baseTurnDeg: {
    below: 5,
    above: 5,
    source: 'about 45 deg in nil wind (FAA-H-8083-3C chapter 8), wind-corrected; ±5 deg common practice',
    sure: 'practice',
  },
  overshootM: practice(0, 50),
  ballHundredths: practice(0, 7, 'the ball within half its width'),
  trimDegKpa: practice(1, 1, 'no more than a light pressure once settled'),
  flapOverKt: {
    below: 0,
    above: 2,
    source: 'the top of the white arc (FAA-H-8083-25 chapter 8); two knots for the needle common practice',
    sure: 'practice',
  },
  cardPowerRpm: practice(100, 100, 'what a hand sets by the gauge'),
  lamps: practice(1, 1, 'at most one lamp off'),
  roundOutFt: {
    below: 7,
    above: 10,
    source: 'FAA-H-8083-3C p. 179: round-out begun at 10 to 20 ft; a few feet either side common practice',
    sure: 'practice',
  },
  floatM: practice(0, 300),
  touchdownSinkFpm: practice(100, 140, 'about 100 ft/min is gentle'),
  softSinkFpm: practice(100, 60, 'softly: two thirds of what a normal landing may have'),
  centrelineShare: {
    below: 0.25,
    above: 0.25,
    source: 'FAA-S-ACS-6 IV.B: over the centreline; a quarter of the width common practice',
    sure: 'practice',
  },
  driftKt: {
    below: 2,
    above: 2,
    source: 'FAA-S-ACS-6 IV.B: no side drift; ±2 kt common practice',
    sure: 'practice',
  },
  crabDeg: {
    below: 5,
    above: 5,
    source: 'FAA-S-ACS-6 IV.B: axis aligned; ±5 deg common practice',
    sure: 'practice',
  },
  brakeS: practice(0, 4, 'short applications, released in between'),
  glideSpeedKt: {
    below: 10,
    above: 10,
    source: 'FAA-S-ACS-6 IX.B (from memory): best glide ±10 kt',
    sure: 'memory',
  },
  aheadDeg: {
    below: 30,
    above: 30,
    source: 'New Zealand Flight Instructor Guide: a field ahead; within 30 deg as syllabus texts quote it',
    sure: 'quoted',
  },
  extendM: practice(300, 300, 'about ten seconds either side'),
  orbitDeg: practice(30, 30),
  reactionS: practice(0, 4, 'acted on within four seconds'),
  glidePower: practice(0, 10, 'closed, but for clearing the engine'),
  slipS: practice(3, 0, 'some seconds of it'),
  noseUpS: practice(1.5, 0, 'held off as long as it will stay'),
  checksPercent: practice(15, 0, 'one item in seven may have been forgotten'),
  callsPercent: practice(30, 0, 'most calls at their place'),
  lookoutPercent: practice(20, 0, 'the whole lookout; one direction left out is amber'),
  outOfOrderItems: practice(0, 1, 'one item out of its order'),
  readBackS: practice(0, 10, 'answered within ten seconds'),
  subscaleHpa: practice(1, 1),
  spacingAheadM: practice(700, 0, 'about four tenths of a nautical mile'),
};
