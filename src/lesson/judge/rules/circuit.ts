import { degFromRad, ftFromM, ktFromMps } from '../../../units/conversions.ts';
import { baseTurnAngleRad } from '../../lesson.ts';
import { farthestFrom, meanOf } from '../../measure.ts';
import { lastStretch, saidOf, turnOntoLeg, wasExtended } from '../../watch/facts.ts';
import { angleBehindWingRad } from '../../watch/turns.ts';
import { around, atMost, PRACTICE, type Rule } from '../rule.ts';
import { balanceInTurn, balanceOn, bankOf, heightAtTurn, speedOn, trackOn, trimOn } from './legs.ts';

const CLIMB_SPEED = {
  low: 'Lower the nose: attitude for the climbing speed, then trim.',
  high: 'Raise the nose a little: attitude for the climbing speed, then trim.',
};

/** From the line-up to the end of base. */
export const CIRCUIT_RULES: readonly Rule[] = [
  {
    id: 'take-off-roll-centreline',
    leg: 'take-off-roll',
    measures: 'furthest from the centreline',
    unit: 'm',
    say: {
      low: 'Straight with the feet: right rudder sooner.',
      high: 'Straight with the feet: left rudder sooner.',
    },
    good: 1,
    bad: 10,
    measure: (c) => {
      const run = lastStretch(c, 'take-off-roll');
      return run === null ? undefined : farthestFrom(run.trackErrorM, 0);
    },
    against: (c, limits) => {
      const limitM = limits.centrelineShare.above * c.lesson.runway.widthM;
      return { target: 0, low: -limitM, high: limitM, source: PRACTICE };
    },
  },
  heightAtTurn(
    'upwind',
    'crosswind',
    {
      low: 'Crosswind was turned too low: climb on to the height of the custom first.',
      high: 'Crosswind was turned late: the circuit grows long.',
    },
    { good: 740, bad: 480 },
  ),
  speedOn('upwind', 'climbSpeedKt', CLIMB_SPEED, { good: 72, bad: 55 }),
  trackOn('upwind'),
  balanceOn('upwind'),
  trimOn('upwind'),
  bankOf('crosswind', 'climbingBankDeg', 'Climbing turns stay gentle: 15 to 20 degrees.', {
    good: 18,
    bad: 42,
  }),
  balanceInTurn('crosswind'),
  heightAtTurn(
    'crosswind',
    'downwind',
    {
      low: 'Lower than planned on crosswind: climb at the climbing speed until circuit height.',
      high: 'Above circuit height: attitude, power, trim as the height comes.',
    },
    { good: 1010, bad: 1200 },
  ),
  speedOn('crosswind', 'circuitSpeedKt', CLIMB_SPEED, { good: 73, bad: 96 }),
  trackOn('crosswind'),
  bankOf('downwind', 'levelBankDeg', 'A medium turn onto downwind: not above 30 degrees.', {
    good: 25,
    bad: 48,
  }),
  balanceInTurn('downwind'),
  {
    id: 'downwind-height',
    leg: 'downwind',
    measures: 'height furthest from circuit height while level',
    unit: 'ft',
    say: {
      low: 'Height first with attitude, then the power that holds it, then trim.',
      high: 'Lower the nose a little, then the power that holds the height, then trim.',
    },
    good: 1040,
    bad: 1180,
    measure: (c) => {
      const leg = lastStretch(c, 'downwind');
      if (leg === null) return undefined;
      const m = farthestFrom(leg.levelHeightM, c.lesson.plan.heightM);
      return m === null ? null : ftFromM(m);
    },
    against: (c, limits) => around(ftFromM(c.lesson.plan.heightM), limits.heightFt),
  },
  speedOn(
    'downwind',
    'circuitSpeedKt',
    { low: 'Slow on downwind: a little power.', high: 'Fast on downwind: less power, or the flap waits.' },
    { good: 82, bad: 104 },
  ),
  trackOn('downwind'),
  {
    id: 'downwind-spacing',
    leg: 'downwind',
    measures: 'mean distance from the centreline',
    unit: 'm',
    say: {
      low: 'Too close: the turns will be steep and the final short. Correct the heading early, not at the turn.',
      high: 'Too wide: correct the heading early, by the place of the runway on the wing or strut.',
    },
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
  },
  trimOn('downwind'),
  {
    id: 'flap-limit',
    leg: 'downwind',
    measures: 'furthest above the limit speed of the flap that was out',
    unit: 'kt',
    say: { high: 'Flap only inside the white arc: look at the airspeed before the hand goes to the lever.' },
    good: 0,
    bad: 8,
    measure: (c) => {
      const over = c.stretches.reduce((most, stretch) => Math.max(most, stretch.flapOverMps), 0);
      return ktFromMps(over);
    },
    against: (_, limits) => atMost(0, limits.flapOverKt),
  },
  {
    id: 'base-turn-angle',
    leg: 'turn-to-base',
    measures: 'how far behind the wing the threshold stood',
    unit: 'deg',
    say: {
      low: 'Base was turned early: wait until the threshold lies where the brief has it behind the wing.',
      high: 'Base was turned late: in this wind the turn comes earlier.',
    },
    good: 47,
    bad: 62,
    measure: (c) => {
      const turn = turnOntoLeg(c, 'base');
      return turn === null ? undefined : degFromRad(angleBehindWingRad(turn));
    },
    unjudged: wasExtended,
    against: (c, limits) =>
      around(degFromRad(baseTurnAngleRad(c.lesson, turnOntoLeg(c, 'base')?.fromS ?? 0)), limits.baseTurnDeg),
  },
  bankOf('base', 'levelBankDeg', 'A medium turn onto base: not above 30 degrees.', { good: 26, bad: 48 }),
  balanceInTurn('base'),
  heightAtTurn(
    'base',
    'final',
    {
      low: 'Low at the turn to final: less sink on base, with power.',
      high: 'High at the turn to final: power off earlier, the descent set up before base.',
    },
    { good: 420, bad: 700 },
  ),
  speedOn(
    'base',
    'circuitSpeedKt',
    {
      low: 'Slow on base: lower the nose.',
      high: 'Fast on base: hold the attitude until the speed is there.',
    },
    { good: 73, bad: 91 },
  ),
  trackOn('base'),
  {
    id: 'base-flap',
    leg: 'base',
    measures: 'flap stage at the end of base',
    unit: 'stage',
    say: {
      low: 'Less flap on base than planned: speed inside the white arc, then the flap, then trim.',
      high: 'More flap on base than planned: the rest waits until final is sure.',
    },
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
  {
    id: 'extended-by',
    leg: 'downwind',
    measures: 'how much later base was turned than planned',
    unit: 'm',
    say: {
      low: 'You were asked to extend: base is turned when it is called, or when the one ahead has passed abeam.',
      high: 'Base was called before: turn when it is, and look out along final.',
    },
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
  },
  {
    id: 'orbit-turned',
    leg: 'downwind',
    measures: 'how far round the orbit went',
    unit: 'deg',
    say: {
      low: 'The orbit was not flown all the way round, away from the runway.',
      high: 'One orbit is enough: roll out on downwind.',
    },
    good: 355,
    bad: 90,
    measure: (c) => {
      const said = saidOf(c, 'orbit');
      return said === null ? undefined : degFromRad(said.turnedRad);
    },
    against: (_, limits) => around(360, limits.orbitDeg),
  },
];

/** Asked for by the instruction; 1,000 m where an example has none. */
const extensionM = (c: Parameters<Rule['measure']>[0]): number => {
  const asked = c.lesson.task.instructions.find((i) => i.what === 'extend' || i.what === 'number-two');
  return asked !== undefined && 'byM' in asked ? asked.byM : 1000;
};
