import { degFromRad, ftFromM, ktFromMps } from '../../../units/conversions.ts';
import { farthestFrom, meanOf } from '../../measure.ts';
import type { TurnFact } from '../../memory.ts';
import type { LegName } from '../../names.ts';
import { lastStretch, turnOntoLeg, wasExtended } from '../../watch/facts.ts';
import { around, atMost, PRACTICE, type Rule, type WhatToSay } from '../rule.ts';
import type { Limit } from '../tolerances.ts';

/** Rows that are the same on every leg: height at the next turn, speed, track, balance, trim, bank. */
type Planned = 'upwind' | 'crosswind' | 'downwind' | 'base' | 'final';
type Examples = Pick<Rule, 'good' | 'bad'>;

/** Height where the next turn begins, against the plan's height there. */
export const heightAtTurn = (leg: LegName, onto: TurnFact['onto'], say: WhatToSay, e: Examples): Rule => ({
  id: `${leg}-height`,
  leg,
  measures: 'height where the next turn begins',
  unit: 'ft',
  say,
  ...e,
  measure: (c) => {
    const turn = turnOntoLeg(c, onto);
    return turn === null || lastStretch(c, leg) === null ? undefined : ftFromM(turn.fromHeightM);
  },
  // An extended downwind leaves more height at every turn after it
  unjudged: (c) => onto === 'final' && wasExtended(c),
  against: (c, limits) => around(ftFromM(c.lesson.plan.turns[onto].from.heightM), limits.heightFt),
});

export const speedOn = (
  leg: Exclude<Planned, 'final'>,
  which: 'circuitSpeedKt' | 'climbSpeedKt',
  say: WhatToSay,
  e: Examples,
): Rule => ({
  id: `${leg}-speed`,
  leg,
  measures: 'airspeed furthest from the planned one, once settled',
  unit: 'kt',
  say,
  ...e,
  measure: (c) => {
    const stretch = lastStretch(c, leg);
    if (stretch === null) return undefined;
    const mps = farthestFrom(stretch.settledIasMps, c.lesson.plan.legs[leg].iasMps);
    return mps === null ? null : ktFromMps(mps);
  },
  against: ({ lesson: { plan } }, limits) =>
    around(ktFromMps(plan.legs[leg].iasMps), inGusts(limits[which], ktFromMps(plan.gustAdditionMps))),
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

export const trackOn = (leg: Planned): Rule => ({
  id: `${leg}-track`,
  leg,
  measures: 'mean track over the ground from the planned one',
  unit: 'deg',
  say: {
    low: 'Track, not heading: you drifted left. Pick a point ahead and turn into the wind until it stays put.',
    high: 'Track, not heading: you drifted right. Pick a point ahead and turn into the wind until it stays put.',
  },
  good: 4,
  bad: 21,
  measure: (c) => {
    const stretch = lastStretch(c, leg);
    if (stretch === null) return undefined;
    const mean = meanOf(stretch.trackOffRad);
    return mean === null ? null : degFromRad(mean);
  },
  against: (_, limits) => around(0, limits.trackDeg),
});

export const bankOf = (
  onto: TurnFact['onto'],
  which: 'climbingBankDeg' | 'levelBankDeg' | 'finalBankDeg',
  high: string,
  e: Examples,
): Rule => ({
  id: `turn-to-${onto}-bank`,
  leg: `turn-to-${onto}`,
  measures: 'steepest bank',
  unit: 'deg',
  say: { high },
  ...e,
  measure: (c) => {
    const turn = turnOntoLeg(c, onto);
    return turn === null || turn.bankRad.count === 0 ? undefined : degFromRad(turn.bankRad.max);
  },
  against: (c, limits) => atMost(Math.abs(degFromRad(c.lesson.plan.turns[onto].bankRad)), limits[which]),
});

const BALANCE: Omit<Rule, 'id' | 'leg' | 'measure'> = {
  measures: 'how far the ball was out, in hundredths of g',
  unit: '0.01 g',
  say: {
    high: 'The ball was out: a foot on the side of the ball, and keep it there while power or bank change.',
  },
  good: 3,
  bad: 12,
  // With the assist the feet rest
  unjudged: (c) => c.lesson.rudderAssist,
  against: (_, limits) => atMost(0, limits.ballHundredths),
};

/** In balance on a straight leg. */
export const balanceOn = (leg: LegName): Rule => ({
  ...BALANCE,
  id: `${leg}-balance`,
  leg,
  measure: (c) => {
    const stretch = lastStretch(c, leg);
    if (stretch === null) return undefined;
    return stretch.ball.count === 0 ? null : 100 * stretch.ball.max;
  },
});

/** In balance in a turn: where a foot too much is a skid. */
export const balanceInTurn = (onto: TurnFact['onto']): Rule => ({
  ...BALANCE,
  id: `turn-to-${onto}-balance`,
  leg: `turn-to-${onto}`,
  measure: (c) => {
    const turn = turnOntoLeg(c, onto);
    return turn === null || turn.ball.count === 0 ? undefined : 100 * turn.ball.max;
  },
});

/** What the hand still holds after ten seconds of steady flight. */
export const trimOn = (leg: LegName): Rule => ({
  id: `${leg}-trim`,
  leg,
  measures: 'pressure still held after ten seconds of steady flight',
  unit: 'deg kPa',
  say: {
    low: 'You were pushing: attitude first, then trim nose down until the hand holds nothing.',
    high: 'You were pulling: attitude first, then trim nose up until the hand holds nothing.',
  },
  good: 0.3,
  bad: 3,
  measure: (c) => {
    const stretch = lastStretch(c, leg);
    if (stretch === null) return undefined;
    return meanOf(stretch.heldDegKpa);
  },
  against: (_, limits) => around(0, limits.trimDegKpa),
});
