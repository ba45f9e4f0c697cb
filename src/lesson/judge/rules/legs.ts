import { wrapPi } from '../../../units/angles.ts';
import { degFromRad, ftFromM, ktFromMps } from '../../../units/conversions.ts';
import { farthestFrom, meanOf } from '../../measure.ts';
import type { TurnOnto } from '../../names.ts';
import { lastStretch, turnOntoLeg, wasExtended } from '../../watch/facts.ts';
import { SETTLE_S } from '../../watch/stretch.ts';
import { type CommonLimit, type Limit, PRACTICE, practice } from '../limit.ts';
import { around, atMost, type Live, type Rule, rule, type Sides } from '../rule.ts';
import { DEG, FT, KT, M, phrased } from '../value-words.ts';

/** Rows that are the same on every leg: height at the next turn, speed, track, balance, trim, bank, centreline. */
type Planned = 'upwind' | 'crosswind' | 'downwind' | 'base' | 'final';
/** What differs from leg to leg. */
type Own = Pick<Rule, 'trainedBy' | 'good' | 'bad'>;

export const HEIGHT_SIDES: Sides = { low: 'too low', high: 'too high' };
export const SPEED_SIDES: Sides = { low: 'too slow', high: 'too fast' };
export const LEFT_OR_RIGHT: Sides = { low: 'to the left', high: 'to the right' };

/** Height where the next turn begins, against the plan's height there. */
export const heightAtTurn = (leg: Planned, onto: TurnOnto, say: Sides, own: Own): Rule => ({
  id: `${leg}-height`,
  leg,
  name: 'height',
  sides: HEIGHT_SIDES,
  spoken: { low: `You were low at the end of ${leg}`, high: `You were high at the end of ${leg}` },
  measures: 'height where the next turn begins',
  unit: FT,
  say,
  ...own,
  measure: (c) => {
    const turn = turnOntoLeg(c, onto);
    return turn === null || lastStretch(c, leg) === null ? undefined : ftFromM(turn.fromHeightM);
  },
  // An extended downwind leaves more height at every turn after it
  unjudged: (c) => onto === 'final' && wasExtended(c),
  against: (c, limits) => around(ftFromM(c.lesson.plan.turns[onto].from.heightM), limits.heightFt),
});

/** The needle as an eye reads it. */
export const speedNow = (rank: number): Live => ({
  settleS: SETTLE_S,
  rank,
  value: ({ m }) => ktFromMps(m.smoothIasMps),
  reads: ({ s }) => ktFromMps(s.shownIasMps),
});

export const speedOn = (
  leg: Exclude<Planned, 'final'>,
  which: 'circuitSpeedKt' | 'climbSpeedKt',
  rank: number,
  say: Sides,
  own: Own,
): Rule => ({
  id: `${leg}-speed`,
  leg,
  name: 'speed',
  sides: SPEED_SIDES,
  spoken: { low: `You were slow on ${leg}`, high: `You were fast on ${leg}` },
  measures: 'airspeed furthest from the planned one, once settled',
  unit: KT,
  say,
  ...own,
  measure: (c) => {
    const stretch = lastStretch(c, leg);
    if (stretch === null) return undefined;
    const mps = farthestFrom(stretch.settledIasMps, c.lesson.plan.legs[leg].iasMps);
    return mps === null ? null : ktFromMps(mps);
  },
  against: ({ lesson: { plan } }, limits) =>
    around(ktFromMps(plan.legs[leg].iasMps), inGusts(limits[which], ktFromMps(plan.gustAdditionMps))),
  live: speedNow(rank),
});

/** The needle swings with the gusts, whoever flies: half of what they add is allowed on either side. */
const inGusts = (limit: Limit, gustKt: number): Limit =>
  gustKt === 0
    ? limit
    : {
        ...limit,
        below: limit.below + gustKt,
        above: limit.above + gustKt,
        source: `${limit.source}; in gusts half of what they add besides (${PRACTICE})`,
      };

export const trackOn = (leg: Planned, trainedBy: string): Rule => ({
  id: `${leg}-track`,
  leg,
  name: 'track',
  sides: LEFT_OR_RIGHT,
  spoken: { low: `You flew left of the track on ${leg}`, high: `You flew right of the track on ${leg}` },
  measures: 'mean track over the ground from the planned one',
  unit: DEG,
  say: {
    low: 'Track, not heading: you drifted left. Pick a point ahead and turn into the wind until it stays put.',
    high: 'Track, not heading: you drifted right. Pick a point ahead and turn into the wind until it stays put.',
  },
  trainedBy,
  good: 4,
  bad: 21,
  measure: (c) => {
    const stretch = lastStretch(c, leg);
    if (stretch === null) return undefined;
    const mean = meanOf(stretch.trackOffRad);
    return mean === null ? null : degFromRad(mean);
  },
  against: (_, limits) => around(0, limits.trackDeg),
  live: {
    settleS: SETTLE_S,
    rank: 60,
    value: ({ lesson, s }) => degFromRad(wrapPi(s.trackRadT - lesson.lines[leg].trackRadT)),
  },
});

const STEEPEST: Limit = {
  below: 0,
  above: 30,
  source: 'South African instructor training procedures: 30 deg, balanced',
  sure: 'seen',
};

/** How much bank a turn may have, by the name that a set keeps it under. */
const STEEPEST_BANK = {
  climbingBankDeg: { title: 'climbing bank, °', ...practice(0, 25, '15 to 20 deg in climbing turns') },
  levelBankDeg: { title: 'level bank, °', ...STEEPEST },
  finalBankDeg: { title: 'final bank, °', ...STEEPEST },
} as const satisfies Readonly<Record<string, CommonLimit>>;

export const bankOf = (
  onto: TurnOnto,
  which: keyof typeof STEEPEST_BANK,
  rank: number,
  high: string,
  own: Own,
): Rule =>
  rule({
    id: `turn-to-${onto}-bank`,
    leg: `turn-to-${onto}`,
    name: 'bank',
    sides: { low: 'too shallow', high: 'too steep' },
    spoken: { high: `You banked steeply in the turn to ${onto}` },
    measures: 'steepest bank',
    unit: DEG,
    limits: STEEPEST_BANK,
    say: { high },
    ...own,
    measure: (c) => {
      const turn = turnOntoLeg(c, onto);
      return turn === null || turn.bankRad.count === 0 ? undefined : degFromRad(turn.bankRad.max);
    },
    against: (c, limits) => atMost(Math.abs(degFromRad(c.lesson.plan.turns[onto].bankRad)), limits[which]),
    live: { settleS: 0, rank, value: ({ m }) => Math.abs(degFromRad(m.smoothBankRad)) },
  });

const BALL = {
  ballHundredths: {
    title: 'ball, hundredths of g (a ball’s width is 14)',
    ...practice(0, 7, 'the ball within half its width'),
  },
};

type Balance = Pick<Rule, 'id' | 'leg' | 'trainedBy' | 'measure'>;

const balance = (own: Balance): Rule =>
  rule({
    name: 'balance',
    sides: { high: 'ball out' },
    measures: 'how far the ball was out, in hundredths of g',
    unit: phrased('0.01 g', ' hundredths of g aside'),
    limits: BALL,
    say: {
      high: 'The ball was out: a foot on the side of the ball, and keep it there while power or bank change.',
    },
    good: 3,
    bad: 12,
    // With the assist the feet rest
    unjudged: (c) => c.lesson.rudderAssist,
    against: (_, limits) => atMost(0, limits.ballHundredths),
    ...own,
  });

/** In balance on a straight leg. */
export const balanceOn = (leg: Planned, trainedBy: string): Rule =>
  balance({
    id: `${leg}-balance`,
    leg,
    trainedBy,
    measure: (c) => {
      const stretch = lastStretch(c, leg);
      if (stretch === null) return undefined;
      return stretch.ball.count === 0 ? null : 100 * stretch.ball.max;
    },
  });

/** In balance in a turn: where a foot too much is a skid. */
export const balanceInTurn = (onto: TurnOnto, trainedBy: string): Rule =>
  balance({
    id: `turn-to-${onto}-balance`,
    leg: `turn-to-${onto}`,
    trainedBy,
    measure: (c) => {
      const turn = turnOntoLeg(c, onto);
      return turn === null || turn.ball.count === 0 ? undefined : 100 * turn.ball.max;
    },
  });

const LIGHT_PRESSURE = {
  trimDegKpa: {
    title: 'trim, pressure in the hand, 1 is light',
    ...practice(1, 1, 'no more than a light pressure once settled'),
  },
};

/** What the hand still holds after ten seconds of steady flight. */
export const trimOn = (leg: Planned, trainedBy: string): Rule =>
  rule({
    id: `${leg}-trim`,
    leg,
    name: 'trim',
    sides: { low: 'pushing', high: 'pulling' },
    spoken: { low: `You flew ${leg} out of trim, pushing`, high: `You flew ${leg} out of trim, pulling` },
    measures: 'pressure still held after ten seconds of steady flight',
    unit: phrased('deg kPa', ' in the hand (1 is light)'),
    limits: LIGHT_PRESSURE,
    say: {
      low: 'You were pushing: attitude for the speed first, then trim until the hand holds nothing.',
      high: 'You were pulling: attitude for the speed first, then trim until the hand holds nothing.',
    },
    trainedBy,
    good: 0.3,
    bad: 3,
    measure: (c) => {
      const stretch = lastStretch(c, leg);
      if (stretch === null) return undefined;
      return meanOf(stretch.heldDegKpa);
    },
    against: (_, limits) => around(0, limits.trimDegKpa),
    live: {
      // Ten seconds of steady flight, and the turn before them
      settleS: 15,
      rank: 70,
      value: ({ m }) => (m.steadyFromS === null ? null : m.smoothHeldDegKpa),
      say: {
        low: 'The hand is pushing: hold the attitude, and trim nose down until it holds nothing.',
        high: 'The hand is pulling: hold the attitude, and trim nose up until it holds nothing.',
      },
    },
  });

/** Of the runway's width. */
export const CENTRELINE = {
  centrelineShare: {
    title: 'centreline, of the runway’s width',
    below: 0.25,
    above: 0.25,
    source: 'FAA-S-ACS-6 IV.B: over the centreline; a quarter of the width common practice',
    sure: 'practice',
  },
} as const satisfies Readonly<Record<string, CommonLimit>>;

type Roll = Pick<Rule, 'say' | 'trainedBy' | 'part' | 'unjudged'>;

/** Straight along the runway on the wheels. */
export const straightOn = (leg: 'take-off-roll' | 'landing-roll', own: Roll): Rule =>
  rule({
    id: `${leg}-centreline`,
    leg,
    name: 'centreline',
    sides: LEFT_OR_RIGHT,
    spoken: { low: 'You swung left on the runway', high: 'You swung right on the runway' },
    measures: 'furthest from the centreline',
    unit: M,
    limits: CENTRELINE,
    good: 1,
    bad: 10,
    ...own,
    measure: (c) => {
      const roll = lastStretch(c, leg);
      return roll === null ? undefined : farthestFrom(roll.trackErrorM, 0);
    },
    against: (c, limits) => {
      const limitM = limits.centrelineShare.above * c.lesson.runway.widthM;
      return { target: 0, low: -limitM, high: limitM, source: PRACTICE };
    },
  });
