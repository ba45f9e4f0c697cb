import { degFromRad, ftFromM, ktFromMps, mFromFt, mpsFromKt } from '../../../units/conversions.ts';
import { baseTurnAngleRad } from '../../lesson.ts';
import { farthestFrom, meanOf } from '../../measure.ts';
import type { LegName } from '../../names.ts';
import { type CircuitFacts, lastStretch, saidOf, turnOntoLeg, wasExtended } from '../../watch/facts.ts';
import { SETTLE_S } from '../../watch/stretch.ts';
import { angleBehindWingRad } from '../../watch/turns.ts';
import { practice } from '../limit.ts';
import { around, atMost, type Moment, type Rule, rule } from '../rule.ts';
import { DEG, FLAP_STAGES, FT, KT, M } from '../value-words.ts';
import {
  balanceInTurn,
  balanceOn,
  bankOf,
  HEIGHT_SIDES,
  heightAtTurn,
  speedOn,
  straightOn,
  trackOn,
  trimOn,
} from './legs.ts';

const CLIMB_SPEED = {
  low: 'Lower the nose: attitude for the climbing speed, then trim.',
  high: 'Raise the nose a little: attitude for the climbing speed, then trim.',
};

const CLIMB = 'take-off-and-climb';
const DOWNWIND = 'downwind-and-checks';
const BASE = 'base-and-final';

const AIRBORNE: readonly LegName[] = ['upwind', 'crosswind', 'downwind', 'turn-to-base', 'base', 'final'];

const flapOverKt = ({ lesson, s }: Moment): number => {
  const { stages } = lesson.aeroplane.flap;
  const limitKt = s.flapStage === 0 ? Number.POSITIVE_INFINITY : (stages[s.flapStage]?.limitKt ?? 0);
  return Math.max(0, ktFromMps(s.iasMps - mpsFromKt(limitKt)));
};

const CLIMBING_MPS = 1; // our choice: less is level
const BELOW_M = mFromFt(50); // our choice: half of a licence test’s tolerance

/** The climb is over, and the descent that some customs begin abeam has not begun. */
const levelOnDownwind = ({ lesson, s }: Moment): boolean =>
  lesson.where.alongM > 0 &&
  !(s.verticalSpeedMps > CLIMBING_MPS && s.heightM < lesson.plan.heightM - BELOW_M);

/** From the line-up to the end of base. Ranks of what is said first, and seconds to settle (our choice: bank before speed). */
export const CIRCUIT_RULES: readonly Rule[] = [
  straightOn('take-off-roll', {
    say: {
      low: 'Straight with the feet: right rudder sooner.',
      high: 'Straight with the feet: left rudder sooner.',
    },
    trainedBy: CLIMB,
  }),
  heightAtTurn(
    'upwind',
    'crosswind',
    {
      low: 'Crosswind was turned too low: climb on to the height of the custom first.',
      high: 'Crosswind was turned late: the circuit grows long.',
    },
    { trainedBy: CLIMB, good: 740, bad: 480 },
  ),
  speedOn('upwind', 'climbSpeedKt', 40, CLIMB_SPEED, { trainedBy: CLIMB, good: 72, bad: 55 }),
  trackOn('upwind', CLIMB),
  balanceOn('upwind', CLIMB),
  trimOn('upwind', CLIMB),
  bankOf('crosswind', 'climbingBankDeg', 30, 'Climbing turns stay gentle: 15 to 20 degrees.', {
    trainedBy: CLIMB,
    good: 18,
    bad: 42,
  }),
  balanceInTurn('crosswind', CLIMB),
  heightAtTurn(
    'crosswind',
    'downwind',
    {
      low: 'Lower than planned on crosswind: climb at the climbing speed until circuit height.',
      high: 'Above circuit height: attitude, power, trim as the height comes.',
    },
    { trainedBy: CLIMB, good: 1010, bad: 1200 },
  ),
  speedOn('crosswind', 'circuitSpeedKt', 45, CLIMB_SPEED, { trainedBy: CLIMB, good: 73, bad: 96 }),
  trackOn('crosswind', CLIMB),
  bankOf('downwind', 'levelBankDeg', 30, 'A medium turn onto downwind: not above 30 degrees.', {
    trainedBy: CLIMB,
    good: 25,
    bad: 48,
  }),
  balanceInTurn('downwind', CLIMB),
  {
    id: 'downwind-height',
    leg: 'downwind',
    name: 'height',
    sides: HEIGHT_SIDES,
    spoken: { low: 'You flew downwind too low', high: 'You flew downwind too high' },
    measures: 'height furthest from circuit height while level',
    unit: FT,
    say: {
      low: 'Height first with attitude, then the power that holds it, then trim.',
      high: 'Attitude for level flight as the height comes, then the power that holds it, then trim.',
    },
    trainedBy: DOWNWIND,
    good: 1040,
    bad: 1180,
    measure: (c) => {
      const leg = lastStretch(c, 'downwind');
      if (leg === null) return undefined;
      const m = farthestFrom(leg.levelHeightM, c.lesson.plan.heightM);
      return m === null ? null : ftFromM(m);
    },
    against: (c, limits) => around(ftFromM(c.lesson.plan.heightM), limits.heightFt),
    live: {
      settleS: SETTLE_S,
      rank: 42,
      value: (now) => (levelOnDownwind(now) ? ftFromM(now.s.heightM) : null),
    },
  },
  speedOn(
    'downwind',
    'circuitSpeedKt',
    45,
    {
      low: 'Slow on downwind: a little power.',
      high: 'Fast on downwind: the power of the brief, and the flap waits.',
    },
    { trainedBy: DOWNWIND, good: 82, bad: 104 },
  ),
  trackOn('downwind', DOWNWIND),
  rule({
    id: 'downwind-spacing',
    leg: 'downwind',
    name: 'spacing',
    sides: { low: 'too close', high: 'too wide' },
    spoken: { low: 'You flew downwind too close', high: 'You flew downwind too wide' },
    measures: 'mean distance from the centreline',
    unit: M,
    limits: {
      spacingShare: {
        title: 'spacing, of the planned',
        ...practice(0.25, 0.25, 'within a quarter of the planned spacing'),
      },
    },
    say: {
      low: 'Too close: the turns will be steep and the final short. Correct the heading early, not at the turn.',
      high: 'Too wide: correct the heading early, by the place of the runway on the wing or strut.',
    },
    trainedBy: DOWNWIND,
    good: 1800,
    bad: 2700,
    measure: (c) => {
      const leg = lastStretch(c, 'downwind');
      if (leg === null) return undefined;
      const mean = meanOf(leg.trackErrorM);
      // The error is + right of the leg: on a left-hand downwind that is further out
      return mean === null ? null : c.lesson.plan.spacingM - c.lesson.plan.side * mean;
    },
    against: ({ lesson }, { spacingShare }) => {
      const { spacingM } = lesson.plan;
      const [low, high] = [(1 - spacingShare.below) * spacingM, (1 + spacingShare.above) * spacingM];
      return { target: spacingM, low, high, source: spacingShare.source };
    },
  }),
  trimOn('downwind', DOWNWIND),
  rule({
    id: 'flap-limit',
    leg: 'downwind',
    name: 'speed above the limit of the flap',
    spoken: { high: 'You flew faster than the flap allows' },
    measures: 'furthest above the limit speed of the flap that was out',
    unit: KT,
    limits: {
      flapOverKt: {
        title: 'flap over, kt',
        below: 0,
        above: 2,
        source:
          'the top of the white arc (FAA-H-8083-25 chapter 8); two knots for the needle common practice',
        sure: 'practice',
      },
    },
    say: { high: 'Flap only inside the white arc: look at the airspeed before the hand goes to the lever.' },
    trainedBy: DOWNWIND,
    good: 0,
    bad: 8,
    measure: (c) => {
      const over = c.stretches.reduce((most, stretch) => Math.max(most, stretch.flapOverMps), 0);
      return ktFromMps(over);
    },
    against: (_, limits) => atMost(0, limits.flapOverKt),
    live: { legs: AIRBORNE, settleS: 0, rank: 12, value: flapOverKt },
  }),
  rule({
    id: 'base-turn-angle',
    leg: 'turn-to-base',
    name: 'where the turn begins',
    sides: { low: 'too early', high: 'too late' },
    spoken: { low: 'You turned base early', high: 'You turned base late' },
    measures: 'how far behind the wing the threshold stood',
    unit: DEG,
    limits: {
      baseTurnDeg: {
        title: 'base turn, °',
        below: 5,
        above: 5,
        source: 'about 45 deg in nil wind (FAA-H-8083-3C p. 8-3), wind-corrected; ±5 deg common practice',
        sure: 'practice',
      },
    },
    say: {
      low: 'Turn base later: wait until the threshold lies where the brief has it behind the wing.',
      high: 'Turn base earlier in this wind: by where the threshold stands behind the wing.',
    },
    trainedBy: BASE,
    good: 47,
    bad: 62,
    measure: (c) => {
      const turn = turnOntoLeg(c, 'base');
      return turn === null ? undefined : degFromRad(angleBehindWingRad(turn));
    },
    unjudged: wasExtended,
    against: (c, limits) =>
      around(degFromRad(baseTurnAngleRad(c.lesson, turnOntoLeg(c, 'base')?.fromS ?? 0)), limits.baseTurnDeg),
  }),
  bankOf('base', 'levelBankDeg', 30, 'A medium turn onto base: not above 30 degrees.', {
    trainedBy: BASE,
    good: 26,
    bad: 48,
  }),
  balanceInTurn('base', BASE),
  heightAtTurn(
    'base',
    'final',
    {
      low: 'Low at the turn to final: less sink on base, with power.',
      high: 'High at the turn to final: the descent is set up earlier, before base.',
    },
    { trainedBy: BASE, good: 420, bad: 700 },
  ),
  speedOn(
    'base',
    'circuitSpeedKt',
    40,
    {
      low: 'Slow on base: power and attitude for the speed, then trim.',
      high: 'Fast on base: hold the attitude until the speed is there.',
    },
    { trainedBy: BASE, good: 73, bad: 91 },
  ),
  trackOn('base', BASE),
  {
    id: 'base-flap',
    leg: 'base',
    name: 'flap',
    sides: { low: 'too little', high: 'too much' },
    spoken: {
      low: 'You flew base with less flap than planned',
      high: 'You flew base with more flap than planned',
    },
    measures: 'flap stage at the end of base',
    unit: FLAP_STAGES,
    say: {
      low: 'Less flap on base than planned: speed inside the white arc, then the flap, then trim.',
      high: 'More flap on base than planned: the rest waits until final is sure.',
    },
    trainedBy: BASE,
    good: 2,
    bad: 0,
    measure: (c) => lastStretch(c, 'base')?.endFlapStage,
    // The flap of a glide is what the height allows; a go-around has it raised
    unjudged: (c) => c.lesson.task.technique === 'glide' || c.touchdown === null,
    against: ({ lesson }) => {
      const { baseStage, finalStage } = lesson.aeroplane.plan;
      const source = "the aeroplane's flap plan";
      return { target: baseStage, low: baseStage, high: Math.max(baseStage, finalStage), source };
    },
  },
  rule({
    id: 'extended-by',
    leg: 'downwind',
    name: 'how far it was extended',
    measures: 'how much later base was turned than planned',
    unit: M,
    limits: { extendM: { title: 'extend, m', ...practice(300, 300, 'about ten seconds either side') } },
    say: {
      low: 'You were asked to extend: base is turned when it is called, or when the one ahead has passed abeam.',
      high: 'Base was called before: turn when it is, and look out along final.',
    },
    trainedBy: 'extend-orbit-number-two',
    good: 1000,
    bad: 200,
    measure: (c) => {
      if (!wasExtended(c)) return undefined;
      const turn = turnOntoLeg(c, 'base');
      if (turn === null) return null;
      const { runway, plan } = c.lesson;
      const { eastM, northM } = plan.turns.base.from;
      return eastM * runway.sinHeading + northM * runway.cosHeading - turn.fromAlongM;
    },
    against: (c, limits) => around(extensionM(c), limits.extendM),
  }),
  rule({
    id: 'orbit-turned',
    leg: 'downwind',
    name: 'how far round the orbit went',
    measures: 'how far round the orbit went',
    unit: DEG,
    limits: { orbitDeg: { title: 'orbit, °', ...practice(30, 30) } },
    say: {
      low: 'The orbit was not flown all the way round, away from the runway.',
      high: 'One orbit is enough: roll out on downwind.',
    },
    trainedBy: 'extend-orbit-number-two',
    good: 355,
    bad: 90,
    measure: (c) => {
      const said = saidOf(c, 'orbit');
      return said === null ? undefined : degFromRad(said.turnedRad);
    },
    against: (_, limits) => around(360, limits.orbitDeg),
  }),
];

/** Asked for by the instruction; 1,000 m where an example has none. */
const extensionM = (c: CircuitFacts): number => {
  const asked = c.lesson.task.instructions.find((i) => i.what === 'extend' || i.what === 'number-two');
  return asked !== undefined && 'byM' in asked ? asked.byM : 1000;
};
