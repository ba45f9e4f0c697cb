import type { Part } from './rule.ts';

export const CAUSE_IDS = [
  'turned-back',
  'nose-late',
  'braked-first',
  'descent-late',
  'little-power',
  'carried-speed',
  'levelled-high',
  'rounded-out-quickly',
  'balloon-pulled',
  'balloon-fast',
  'balloon-gust',
  'landed-flat',
  'rounded-out-late',
  'power-kept',
  'pushed',
  'dropped',
  'not-straightened',
  'brakes-locked',
] as const;
export type CauseId = (typeof CAUSE_IDS)[number];

/** What is said of a cause: what was seen, the number second; what to do next time; what trains it. */
export interface CauseWords {
  readonly says: (amount: number) => string;
  /** The same as a clause: "It began when ...", "Then ...". */
  readonly short: (amount: number) => string;
  readonly next: string;
  /** Rows that say no more than it does. */
  readonly covers: readonly string[];
  readonly trainedBy: string;
  readonly part: Part;
}

const LANDING = 'final-and-landing';
const BALLOON = 'balloon-and-bounce';
const AGAIN = 'hold the attitude, a little power, and let it settle; a high one is a go-around';

/** FAA-H-8083-3C ch. 9, on faulty approaches and landings; the words are an instructor's (common practice). */
export const CAUSE_WORDS: Readonly<Record<CauseId, CauseWords>> = {
  'turned-back': {
    says: (deg) => `You turned back with the engine stopped: ${deg} degrees from ahead.`,
    short: (deg) => `you turned back with the engine stopped, ${deg} degrees`,
    next: 'A field ahead, within 30 degrees either side, at the gliding speed: the runway behind is out of reach.',
    covers: ['engine-failure-turn'],
    trainedBy: 'engine-failure-after-take-off',
    part: 'Upwind and take-off',
  },
  'nose-late': {
    says: (kt) => `You put the nose down late when the engine stopped: the speed fell to ${kt} kt.`,
    short: (kt) => `you put the nose down late, and the speed fell to ${kt} kt`,
    next: 'The gliding attitude at once, then the field ahead, then everything else.',
    covers: ['engine-failure-speed'],
    trainedBy: 'engine-failure-after-take-off',
    part: 'Upwind and take-off',
  },
  'braked-first': {
    says: () => 'You braked with the power still on, told to stop.',
    short: () => 'you braked with the power still on',
    next: 'Throttle first, then straight with the feet, then the brakes.',
    covers: [],
    trainedBy: 'abandoned-take-off',
    part: 'Upwind and take-off',
  },
  'descent-late': {
    says: (ft) => `You began the descent late: ${ft} ft above the plan where base was turned.`,
    short: (ft) => `you began the descent late, ${ft} ft high at the turn to base`,
    next: 'Set the descent up where the brief has it: power, attitude, trim.',
    covers: ['base-height', 'final-height'],
    trainedBy: 'base-and-final',
    part: 'Base',
  },
  'little-power': {
    says: (rpm) => `You had too little power on final, and came low: ${rpm} rpm less than holds the slope.`,
    short: (rpm) => `you had too little power on final, ${rpm} rpm less than holds the slope`,
    next: 'Low is mended with power first, until two and two; if it is still low at the gate, go around.',
    covers: ['final-lights'],
    trainedBy: 'too-low-on-final',
    part: 'Final',
  },
  'carried-speed': {
    says: (kt) => `You crossed the threshold fast, and it floated: ${kt} kt above the approach speed.`,
    short: (kt) => `you crossed the threshold ${kt} kt too fast`,
    next: 'The speed is settled and trimmed by the gate; what is too much there becomes float.',
    covers: ['float'],
    trainedBy: LANDING,
    part: 'Final',
  },
  'levelled-high': {
    says: (ft) => `You rounded out high and levelled off there: at ${ft} ft.`,
    short: (ft) => `you levelled off high, at ${ft} ft`,
    next: 'Look along the runway, round out by the ground coming up; level and too high, add power and go around.',
    covers: ['round-out-height', 'float'],
    trainedBy: LANDING,
    part: 'Round-out',
  },
  'rounded-out-quickly': {
    says: (ft) => `You rounded out too quickly: level, or climbing again, at ${ft} ft.`,
    short: (ft) => `you rounded out too quickly, and were level at ${ft} ft`,
    next: `Let the nose come up as the ground comes up. Too high: ${AGAIN}.`,
    covers: ['round-out-height'],
    trainedBy: BALLOON,
    part: 'Round-out',
  },
  'balloon-pulled': {
    says: (ft) => `You pulled too much in the round-out, and it ballooned: ${ft} ft up again.`,
    short: (ft) => `you pulled too much in the round-out, and it went up ${ft} ft again`,
    next: `Only as much as stops the sink. Ballooned: ${AGAIN}.`,
    covers: [],
    trainedBy: BALLOON,
    part: 'Round-out',
  },
  'balloon-fast': {
    says: (ft) => `You rounded out fast, and it ballooned: ${ft} ft up again.`,
    short: (ft) => `you rounded out fast, and it went up ${ft} ft again`,
    next: `With speed in hand the nose comes up more slowly. Ballooned: ${AGAIN}.`,
    covers: [],
    trainedBy: BALLOON,
    part: 'Round-out',
  },
  'balloon-gust': {
    says: (ft) => `A gust lifted it in the round-out: ${ft} ft up again.`,
    short: (ft) => `a gust lifted it ${ft} ft in the round-out`,
    next: `In gusts: ${AGAIN}.`,
    covers: [],
    trainedBy: 'gusty-day',
    part: 'Round-out',
  },
  'landed-flat': {
    says: (fpm) => `You hardly rounded out, and flew it on flat: sinking ${fpm} ft/min at the touch.`,
    short: () => 'you hardly rounded out, and flew it on flat',
    next: 'The nose comes up through the round-out and the hold-off, until the main wheels touch by themselves.',
    covers: ['round-out-height', 'touchdown-sink', 'touchdown-nose-first'],
    trainedBy: LANDING,
    part: 'Round-out',
  },
  'rounded-out-late': {
    says: (fpm) => `You rounded out late and too little: still sinking ${fpm} ft/min at the touch.`,
    short: () => 'you rounded out late',
    next: 'Look along the runway to its end, and begin the round-out a little higher.',
    covers: ['round-out-height', 'touchdown-sink'],
    trainedBy: LANDING,
    part: 'Round-out',
  },
  'power-kept': {
    says: (s) => `You kept power on in the round-out, and it floated: for ${s} s in the last feet.`,
    short: (s) => `you kept power on in the last feet, for ${s} s`,
    next: 'Idle as the sink is stopped, with the hand still on the lever.',
    covers: ['float'],
    trainedBy: LANDING,
    part: 'Round-out',
  },
  pushed: {
    says: (deg) => `You pushed in the hold-off: the nose went down ${deg} degrees close to the ground.`,
    short: (deg) => `you pushed in the hold-off, ${deg} degrees`,
    next: 'Too high or going up again is no reason to push: hold the attitude, add power, or go around.',
    covers: [],
    trainedBy: BALLOON,
    part: 'Hold-off',
  },
  dropped: {
    says: (ft) => `It was let drop in the hold-off: from ${ft} ft.`,
    short: (ft) => `it dropped from ${ft} ft`,
    next: 'With the speed gone and height left: a little power, or go around.',
    covers: ['touchdown-sink'],
    trainedBy: LANDING,
    part: 'Hold-off',
  },
  'not-straightened': {
    says: (deg) => `You touched with the crab still on: the nose was ${deg} degrees off the runway.`,
    short: (deg) => `you left the crab on, ${deg} degrees`,
    next: 'Straighten with the foot just before the touch, the wing down into the wind.',
    covers: ['touchdown-crab'],
    trainedBy: 'crosswind-circuit',
    part: 'Touchdown',
  },
  'brakes-locked': {
    says: (s) => `You stood on the brakes until the wheels locked: for ${s} s.`,
    short: (s) => `you locked the brakes, for ${s} s`,
    next: 'Brakes in short applications: on, off, on; the speed goes first by itself.',
    covers: ['brakes'],
    trainedBy: LANDING,
    part: 'Landing roll',
  },
};
