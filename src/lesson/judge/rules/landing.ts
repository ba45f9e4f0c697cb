import { degFromRad, fpmFromMps, ftFromM, ktFromMps } from '../../../units/conversions.ts';
import { farthestFrom } from '../../measure.ts';
import type { TouchdownFact } from '../../memory.ts';
import { lastStretch } from '../../watch/facts.ts';
import { around, atMost, type CircuitFacts, PRACTICE, type Rule } from '../rule.ts';

type TouchdownRow = Omit<Rule, 'leg' | 'measure'> & {
  of(t: TouchdownFact, c: CircuitFacts): number | null | undefined;
};

const atTouchdown = ({ of, ...row }: TouchdownRow): Rule => ({
  ...row,
  leg: 'landing-roll',
  measure: (c) => (c.touchdown === null || wasGoingAround(c) ? undefined : of(c.touchdown, c)),
});

/** Full power came before the wheels touched: a go-around may touch (FAA-H-8083-3C chapter 9), and is no landing. */
const wasGoingAround = ({ touchdown, m, circuit }: CircuitFacts): boolean =>
  touchdown?.underPower === true && m.goArounds.some((flown) => flown.circuit === circuit);

/** A short field asks for 200 ft, softness is another row, a glide is to end on the runway. */
const isShort = ({ lesson }: CircuitFacts): boolean => lesson.task.technique === 'short-field';

/** A round-out without power begins higher, and where it ends is the glide's affair (AFH-3C p. 197). */
const withoutPower = ({ lesson, m }: CircuitFacts): boolean =>
  lesson.task.technique === 'glide' || m.engine !== null;

/** From the round-out to the stop. */
export const LANDING_RULES: readonly Rule[] = [
  atTouchdown({
    id: 'round-out-height',
    measures: 'height where the sink was being stopped',
    unit: 'ft',
    say: {
      low: 'Rounded out late: look along the runway and begin a little higher.',
      high: 'Rounded out high: look further ahead, hold what you have and let it settle; a go-around is there.',
    },
    good: 15,
    bad: 45,
    of: (t) => (t.roundOutM === null ? null : ftFromM(t.roundOutM)),
    unjudged: withoutPower,
    against: (_, limits) => around(15, limits.roundOutFt),
  }),
  atTouchdown({
    id: 'float',
    measures: 'from the round-out to the touch',
    unit: 'm',
    say: { high: 'A long float is speed carried over the threshold: cross it at the approach speed.' },
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
    measures: 'touchdown past the specified point',
    unit: 'ft',
    say: {
      low: 'Short of the point: the aim point slid up the windscreen. Power, and hold it still.',
      high: 'Beyond the point: too high or too fast over the threshold.',
    },
    good: 180,
    bad: 750,
    of: (t, c) => ftFromM(t.alongM - c.lesson.runway.specifiedM),
    unjudged: withoutPower,
    against: (c, limits) => around(0, isShort(c) ? limits.shortTouchdownFt : limits.touchdownFt),
  }),
  atTouchdown({
    id: 'touchdown-in-first-half',
    measures: 'touchdown past the threshold, of the landing run',
    unit: '%',
    say: {
      low: 'Short of the runway: never stretch a glide.',
      high: 'Far along: flap as soon as the runway is sure.',
    },
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
    measures: 'sink at the touch',
    unit: 'ft/min',
    say: { high: 'A hard one: hold off longer, and look at the far end.' },
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
    measures: 'touchdown from the centreline',
    unit: 'm',
    say: {
      low: 'Left of the centreline: your seat belongs over it.',
      high: 'Right of the centreline: your seat belongs over it.',
    },
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
    measures: 'drift at the touch',
    unit: 'kt',
    say: {
      low: 'Drifting left at the touch: more right wing down, and keep it down through the touch.',
      high: 'Drifting right at the touch: more left wing down, and keep it down through the touch.',
    },
    good: 0.6,
    bad: 5,
    of: (t) => ktFromMps(t.driftMps),
    against: (_, limits) => around(0, limits.driftKt),
  }),
  atTouchdown({
    id: 'touchdown-crab',
    measures: 'nose off the runway at the touch',
    unit: 'deg',
    say: {
      low: 'Nose to the left at the touch: straighten with right rudder before it.',
      high: 'Nose to the right at the touch: straighten with left rudder before it.',
    },
    good: 1,
    bad: 11,
    of: (t) => degFromRad(t.crabRad),
    against: (_, limits) => around(0, limits.crabDeg),
  }),
  atTouchdown({
    id: 'touchdown-nose-first',
    measures: 'touches with the nose wheel first',
    unit: 'times',
    say: { high: 'The nose wheel met the ground: hold off until the main wheels touch, nose high.' },
    good: 0,
    bad: 1,
    of: (t) => (t.noseFirst ? 1 : 0),
    against: () => ({ target: 0, low: 0, high: 0, source: 'FAA-H-8083-3C chapter 9: main wheels first' }),
  }),
  atTouchdown({
    id: 'nose-held-off',
    measures: 'from the touch to the nose wheel',
    unit: 's',
    say: { low: 'The nose wheel came down at once: stick back, further back, until it will not stay up.' },
    good: 4,
    bad: 0.2,
    of: (t, c) => (c.lesson.task.technique === 'soft-field' ? t.noseUpS : undefined),
    against: (_, { noseUpS }) => ({ target: 3, low: noseUpS.below, high: null, source: noseUpS.source }),
  }),
  atTouchdown({
    id: 'touchdown-bounces',
    measures: 'bounces',
    unit: 'bounces',
    say: {
      high: 'After a bounce: hold the landing attitude, power to cushion it; a high one is a go-around.',
    },
    good: 0,
    bad: 1,
    of: (t) => t.bounces,
    against: () => ({ target: 0, low: 0, high: 0, source: PRACTICE }),
  }),
  {
    id: 'landing-roll-centreline',
    leg: 'landing-roll',
    measures: 'furthest from the centreline',
    unit: 'm',
    say: {
      low: 'Keep straight with the feet to walking pace.',
      high: 'Keep straight with the feet to walking pace.',
    },
    good: 1,
    bad: 10,
    measure: (c) => {
      const roll = lastStretch(c, 'landing-roll');
      return roll === null ? undefined : farthestFrom(roll.trackErrorM, 0);
    },
    // Off the runway there is no centreline
    unjudged: (c) => c.m.landedOut,
    against: (c, limits) => {
      const limitM = limits.centrelineShare.above * c.lesson.runway.widthM;
      return { target: 0, low: -limitM, high: limitM, source: PRACTICE };
    },
  },
  atTouchdown({
    id: 'brakes',
    measures: 'longest time on the brakes without a break',
    unit: 's',
    say: { high: 'Brakes in short applications: on, off, on; the speed goes first by itself.' },
    good: 2,
    bad: 9,
    of: (t) => t.longestBrakeS,
    against: (_, limits) => atMost(0, limits.brakeS),
  }),
  {
    id: 'stop-remaining',
    leg: 'stopped',
    measures: 'runway left at the stop',
    unit: 'm',
    say: { low: 'The landing was over beyond the runway: a go-around was there.' },
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
