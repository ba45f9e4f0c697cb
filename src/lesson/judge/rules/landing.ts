import { degFromRad, fpmFromMps, ftFromM, ktFromMps } from '../../../units/conversions.ts';
import type { TouchdownFact } from '../../memory.ts';
import type { CircuitFacts } from '../../watch/facts.ts';
import { PRACTICE, practice } from '../limit.ts';
import { around, atMost, type Rule, type RuleWith, rule } from '../rule.ts';
import { DEG, FT, KT, M, PERCENT, plain, S, TIMES } from '../value-words.ts';
import { CENTRELINE, HEIGHT_SIDES, LEFT_OR_RIGHT, straightOn } from './legs.ts';

type TouchdownRow<K extends string> = Omit<RuleWith<K>, 'leg' | 'measure'> & {
  of(t: TouchdownFact, c: CircuitFacts): number | null | undefined;
};

const atTouchdown = <K extends string>({ of, ...row }: TouchdownRow<K>): Rule =>
  rule({
    part: 'Touchdown',
    ...row,
    leg: 'landing-roll',
    measure: (c) => (c.touchdown === null || wasGoingAround(c) ? undefined : of(c.touchdown, c)),
  });

/** Full power came before the wheels touched: a go-around may touch (FAA-H-8083-3C ch. 9), and is no landing. */
const wasGoingAround = ({ touchdown, m, circuit }: CircuitFacts): boolean =>
  touchdown?.underPower === true && m.goArounds.some((flown) => flown.circuit === circuit);

/** A short field asks for 200 ft, softness is another row, a glide is to end on the runway. */
const isShort = ({ lesson }: CircuitFacts): boolean => lesson.task.technique === 'short-field';

/** A round-out without power begins higher, and where it ends is the glide's affair (FAA-H-8083-3C p. 9-26). */
const withoutPower = ({ lesson, m }: CircuitFacts): boolean =>
  lesson.task.technique === 'glide' || m.engine !== null;

const LANDING = 'final-and-landing';

/** From the round-out to the stop. */
export const LANDING_RULES: readonly Rule[] = [
  atTouchdown({
    id: 'round-out-height',
    name: 'round-out height',
    sides: HEIGHT_SIDES,
    spoken: { low: 'You rounded out late', high: 'You rounded out high' },
    measures: 'height where the sink was being stopped',
    unit: FT,
    limits: {
      roundOutFt: {
        title: 'round out, ft',
        below: 7,
        above: 10,
        source:
          'FAA-H-8083-3C p. 9-8: round-out begun at 10 to 20 ft; a few feet either side common practice',
        sure: 'practice',
      },
    },
    say: {
      low: 'Rounded out late: look along the runway and begin a little higher.',
      high: 'Rounded out high: look further ahead, hold what you have and let it settle; a go-around is there.',
    },
    trainedBy: LANDING,
    part: 'Round-out',
    good: 15,
    bad: 45,
    of: (t) => (t.roundOutM === null ? null : ftFromM(t.roundOutM)),
    unjudged: withoutPower,
    against: (_, limits) => around(15, limits.roundOutFt),
  }),
  atTouchdown({
    id: 'float',
    name: 'float',
    spoken: { high: 'It floated a long way' },
    measures: 'from the round-out to the touch',
    unit: M,
    limits: { floatM: { title: 'float, m', ...practice(0, 300) } },
    say: { high: 'A long float is speed carried over the threshold: cross it at the approach speed.' },
    trainedBy: LANDING,
    part: 'Round-out',
    good: 180,
    bad: 520,
    of: (t) => t.floatM,
    unjudged: withoutPower,
    // In thin air the same speed on the dial is more over the ground, and floats as its square
    against: ({ lesson: { plan } }, { floatM }) => {
      const faster = plan.legs.final.tasMps / plan.legs.final.iasMps;
      const thin = faster * faster;
      return { target: 150 * thin, low: null, high: floatM.above * thin, source: floatM.source };
    },
  }),
  atTouchdown({
    id: 'touchdown-point',
    name: 'touchdown point',
    sides: { low: 'too short', high: 'too far' },
    spoken: { low: 'You touched short of the point', high: 'You touched far beyond the point' },
    measures: 'touchdown past the specified point',
    unit: FT,
    say: {
      low: 'Short of the point: the aim point slid up the windscreen. Power, and hold it still.',
      high: 'Beyond the point: too high or too fast over the threshold.',
    },
    trainedBy: LANDING,
    good: 180,
    bad: 750,
    of: (t, c) => ftFromM(t.alongM - c.lesson.runway.specifiedM),
    unjudged: withoutPower,
    against: (c, limits) => around(0, isShort(c) ? limits.shortTouchdownFt : limits.touchdownFt),
  }),
  atTouchdown({
    id: 'touchdown-in-first-half',
    name: 'touchdown in the first half',
    measures: 'touchdown past the threshold, of the landing run',
    unit: PERCENT,
    say: {
      low: 'Short of the runway: never stretch a glide.',
      high: 'Far along: flap as soon as the runway is sure.',
    },
    trainedBy: 'glide-approach',
    good: 35,
    bad: 90,
    of: (t, c) =>
      c.lesson.task.technique === 'glide' ? (100 * t.alongM) / c.lesson.runway.landingLengthM : undefined,
    against: () => ({
      target: 33,
      low: 0,
      high: 50,
      source: 'common practice: the first half of the runway',
    }),
  }),
  atTouchdown({
    id: 'touchdown-sink',
    name: 'sink at touchdown',
    sides: { low: 'too soft', high: 'too hard' },
    spoken: { high: 'You landed hard' },
    measures: 'sink at the touch',
    unit: plain('ft/min'),
    limits: {
      touchdownSinkFpm: {
        title: 'touchdown sink, ft/min',
        ...practice(100, 140, 'about 100 ft/min is gentle'),
      },
      softSinkFpm: {
        title: 'soft sink, ft/min',
        ...practice(100, 60, 'softly: two thirds of what a normal landing may have'),
      },
    },
    say: {
      high: 'A hard one: look at the far end, break the sink in time, and let it settle from a foot or two.',
    },
    trainedBy: LANDING,
    good: 90,
    bad: 480,
    of: (t) => fpmFromMps(t.sinkMps),
    against: (c, { softSinkFpm, touchdownSinkFpm }) => {
      const limit = c.lesson.task.technique === 'soft-field' ? softSinkFpm : touchdownSinkFpm;
      return { target: limit.below, low: null, high: limit.below + limit.above, source: limit.source };
    },
  }),
  atTouchdown({
    id: 'touchdown-centreline',
    name: 'touchdown from the centreline',
    sides: LEFT_OR_RIGHT,
    spoken: { low: 'You touched left of the centreline', high: 'You touched right of the centreline' },
    measures: 'touchdown from the centreline',
    unit: M,
    limits: CENTRELINE,
    say: {
      low: 'Left of the centreline: your seat belongs over it.',
      high: 'Right of the centreline: your seat belongs over it.',
    },
    trainedBy: LANDING,
    good: 1,
    bad: 11,
    of: (t) => t.acrossM,
    against: (c, { centrelineShare }) => {
      const limitM = centrelineShare.above * c.lesson.runway.widthM;
      return { target: 0, low: -limitM, high: limitM, source: centrelineShare.source };
    },
  }),
  atTouchdown({
    id: 'touchdown-drift',
    name: 'drift at touchdown',
    sides: LEFT_OR_RIGHT,
    spoken: { low: 'You touched drifting to the left', high: 'You touched drifting to the right' },
    measures: 'drift at the touch',
    unit: KT,
    limits: {
      driftKt: {
        title: 'drift, kt',
        below: 2,
        above: 2,
        source: 'FAA-S-ACS-6 IV.B: no side drift; ±2 kt common practice',
        sure: 'practice',
      },
    },
    say: {
      low: 'Drifting left at the touch: more right wing down, and keep it down through the touch.',
      high: 'Drifting right at the touch: more left wing down, and keep it down through the touch.',
    },
    trainedBy: 'crosswind-circuit',
    good: 0.6,
    bad: 5,
    of: (t) => ktFromMps(t.driftMps),
    against: (_, limits) => around(0, limits.driftKt),
  }),
  atTouchdown({
    id: 'touchdown-crab',
    name: 'alignment at touchdown',
    sides: { low: 'nose to the left', high: 'nose to the right' },
    spoken: {
      low: 'You touched with the nose still to the left',
      high: 'You touched with the nose still to the right',
    },
    measures: 'nose off the runway at the touch',
    unit: DEG,
    limits: {
      crabDeg: {
        title: 'crab, °',
        below: 5,
        above: 5,
        source: 'FAA-S-ACS-6 IV.B: axis aligned; ±5 deg common practice',
        sure: 'practice',
      },
    },
    say: {
      low: 'Nose to the left at the touch: straighten with right rudder before it.',
      high: 'Nose to the right at the touch: straighten with left rudder before it.',
    },
    trainedBy: 'crosswind-circuit',
    good: 1,
    bad: 11,
    of: (t) => degFromRad(t.crabRad),
    against: (_, limits) => around(0, limits.crabDeg),
  }),
  atTouchdown({
    id: 'touchdown-nose-first',
    name: 'nose wheel first',
    spoken: { high: 'You put the nose wheel down first' },
    measures: 'touches with the nose wheel first',
    unit: TIMES,
    say: { high: 'The nose wheel met the ground: hold off until the main wheels touch, nose high.' },
    trainedBy: LANDING,
    good: 0,
    bad: 1,
    of: (t) => (t.noseFirst ? 1 : 0),
    against: () => ({ target: 0, low: 0, high: 0, source: 'FAA-H-8083-3C ch. 9: main wheels first' }),
  }),
  atTouchdown({
    id: 'nose-held-off',
    name: 'nose wheel held off',
    measures: 'from the touch to the nose wheel',
    unit: S,
    limits: { noseUpS: { title: 'nose up, s', ...practice(1.5, 0, 'held off as long as it will stay') } },
    say: { low: 'The nose wheel came down at once: stick back, further back, until it will not stay up.' },
    trainedBy: 'soft-field',
    part: 'Landing roll',
    good: 4,
    bad: 0.2,
    of: (t, c) => (c.lesson.task.technique === 'soft-field' ? t.noseUpS : undefined),
    against: (_, { noseUpS }) => ({ target: 3, low: noseUpS.below, high: null, source: noseUpS.source }),
  }),
  atTouchdown({
    id: 'touchdown-bounces',
    name: 'bounces',
    sides: { low: 'too few', high: 'too many' },
    spoken: { high: 'It bounced' },
    measures: 'bounces',
    unit: plain('bounces'),
    say: {
      high: 'After a bounce: hold the landing attitude, power to cushion it; a high one is a go-around.',
    },
    trainedBy: 'balloon-and-bounce',
    good: 0,
    bad: 1,
    of: (t) => t.bounces,
    against: () => ({ target: 0, low: 0, high: 0, source: PRACTICE }),
  }),
  straightOn('landing-roll', {
    say: {
      low: 'Keep straight with the feet to walking pace.',
      high: 'Keep straight with the feet to walking pace.',
    },
    trainedBy: LANDING,
    part: 'Landing roll',
    // Off the runway there is no centreline
    unjudged: (c) => c.m.landedOut,
  }),
  atTouchdown({
    id: 'brakes',
    name: 'longest on the brakes',
    spoken: { high: 'You stood on the brakes' },
    measures: 'longest time on the brakes without a break',
    unit: S,
    limits: { brakeS: { title: 'brake, s', ...practice(0, 4, 'short applications, released in between') } },
    say: { high: 'Brakes in short applications: on, off, on; the speed goes first by itself.' },
    trainedBy: LANDING,
    part: 'Landing roll',
    good: 2,
    bad: 9,
    of: (t) => t.longestBrakeS,
    against: (_, limits) => atMost(0, limits.brakeS),
  }),
  {
    id: 'stop-remaining',
    leg: 'stopped',
    name: 'runway left',
    sides: { low: 'too little' },
    spoken: { low: 'You used more than the runway' },
    measures: 'runway left at the stop',
    unit: M,
    say: { low: 'The landing was over beyond the runway: a go-around was there.' },
    trainedBy: LANDING,
    part: 'Landing roll',
    good: 240,
    bad: -40,
    measure: (c) => {
      const { stop } = c.m;
      if (stop === null) return undefined;
      return c.touchdown === null ? undefined : c.lesson.runway.surfaceEndM - stop.alongM;
    },
    unjudged: (c) => c.m.landedOut,
    against: () => ({
      target: 0,
      low: 0,
      high: null,
      source: 'the landing is over when stopped on the runway',
    }),
  },
];
