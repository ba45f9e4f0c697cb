import { GATES_FT } from '../../../circuit/stabilised.ts';
import { ftFromM, ktFromMps } from '../../../units/conversions.ts';
import { lastWhere } from '../../last-where.ts';
import { farthestFrom, meanOf } from '../../measure.ts';
import { type CircuitFacts, lastStretch, turnOntoLeg, wasExtended } from '../../watch/facts.ts';
import { lampsNow } from '../../watch/stretch.ts';
import { practice } from '../limit.ts';
import { around, atMost, type Rule, rule } from '../rule.ts';
import { FLAP_STAGES, FT, KT, M, PERCENT, phrased, plain, S } from '../value-words.ts';
import { balanceInTurn, bankOf, HEIGHT_SIDES, SPEED_SIDES, speedNow, trackOn, trimOn } from './legs.ts';

/** 500 ft stands in that note; a circuit's own gates are practice (`src/circuit/stabilised.ts`). */
const gateSource = (heightFt: number): string => {
  const gate = heightFt === GATES_FT[0] ? 'visual conditions, ALAR 7.1' : 'common practice';
  return `stabilised: Flight Safety Foundation ALAR 7.1 and FAA-S-ACS-6 IV.B; gate at ${heightFt} ft: ${gate}`;
};

const gateRow = (heightFt: number): Rule => ({
  id: `gate-${heightFt}`,
  leg: 'final',
  name: `stabilised at ${heightFt} ft`,
  measures: `what was not stabilised at ${heightFt} ft`,
  unit: plain('faults'),
  sentence: (count, title) =>
    `${title}: no, ${count === 1 ? 'one thing was' : `${count} things were`} not as it should be.`,
  say: { high: 'Not stabilised at the gate: go around, and set the approach up earlier.' },
  trainedBy: 'final-and-landing',
  part: 'Approach',
  good: 0,
  bad: 2,
  measure: (c) => gateOf(c, heightFt)?.why.length,
  unjudged: (c) => gateOf(c, heightFt)?.decides === false || wasAnswered(c, heightFt),
  against: () => ({ target: 0, low: 0, high: 0, source: gateSource(heightFt) }),
});

const gateOf = (c: CircuitFacts, heightFt: number) =>
  lastWhere(c.m.gates, (g) => g.circuit === c.circuit && g.heightFt === heightFt);

/** Gone around at once: that was the right answer, and a go-around is never wrong. */
const wasAnswered = (c: CircuitFacts, heightFt: number): boolean =>
  c.m.dues.some(
    ({ circuit, gateFt, answered, ignored }) =>
      circuit === c.circuit && gateFt === heightFt && answered && !ignored,
  );

/** Four lamps, all of them red. */
const ALL_RED = -2; // definition: of four lamps, beyond half of them

/** Whoever sank on under four reds, or came down short, was not inside whatever the mean says. */
const sankUnderReds = (c: CircuitFacts): boolean => {
  const [first] = c.stretches;
  const last = c.stretches[c.stretches.length - 1];
  const short = c.m.landedOut && c.touchdown !== null && c.touchdown.alongM < 0;
  const mine = (atS: number): boolean => atS >= (first?.fromS ?? 0) && atS <= (last?.toS ?? 0);
  return short || c.m.safety.some(({ id, atS }) => id === 'four-reds' && mine(atS));
};

const GLIDE_LEGS = ['base', 'turn-to-final', 'final'] as const;

/** From the turn to final down to the last gate. Ranks of what is said first, and seconds to settle (our choice: bank and speed low down). */
export const APPROACH_RULES: readonly Rule[] = [
  bankOf(
    'final',
    'finalBankDeg',
    10,
    'Never above 30 degrees in the turn to final: fly through and come back, or go around.',
    { trainedBy: 'base-and-final', good: 22, bad: 50 },
  ),
  balanceInTurn('final', 'base-and-final'),
  rule({
    id: 'final-overshoot',
    leg: 'turn-to-final',
    name: 'overshoot of the centreline',
    sides: { low: 'too far', high: 'too far' },
    spoken: { high: 'You turned final late and flew through the centreline' },
    measures: 'how far beyond the centreline the turn went',
    unit: M,
    limits: { overshootM: { title: 'overshoot, m', ...practice(0, 50) } },
    say: { high: 'The turn to final began late: lead it, more with the wind on your tail on base.' },
    trainedBy: 'base-and-final',
    good: 12,
    bad: 140,
    measure: (c) => turnOntoLeg(c, 'final')?.overshootM,
    against: (_, limits) => atMost(0, limits.overshootM),
  }),
  {
    id: 'final-height',
    leg: 'final',
    name: 'height',
    sides: HEIGHT_SIDES,
    spoken: { low: 'You were low when final began', high: 'You were high when final began' },
    measures: 'height where the turn to final was complete',
    unit: FT,
    say: {
      low: 'Low when final began: power first, then pitch; level until the picture is right.',
      high: 'High when final began: set up base earlier, and use the flap that is planned.',
    },
    trainedBy: 'base-and-final',
    good: 330,
    bad: 560,
    measure: (c) => {
      const leg = lastStretch(c, 'final');
      return turnOntoLeg(c, 'final') === null || leg === null ? undefined : ftFromM(leg.fromHeightM);
    },
    unjudged: (c) => c.lesson.task.technique === 'glide' || wasExtended(c),
    against: (c, limits) => around(ftFromM(c.lesson.plan.rollOutOnFinalHeightM), limits.heightFt),
  },
  {
    id: 'final-speed',
    leg: 'final',
    name: 'speed',
    sides: SPEED_SIDES,
    spoken: { low: 'You were slow on final', high: 'You were fast on final' },
    measures: 'airspeed furthest from the approach speed, once settled',
    unit: KT,
    say: {
      low: 'Slow on final: power first, then the attitude that holds the speed, then trim.',
      high: 'Fast on final: it becomes float. Attitude for the speed, and trim, before the gate.',
    },
    trainedBy: 'final-and-landing',
    good: 67,
    bad: 84,
    measure: (c) => {
      const leg = lastStretch(c, 'final');
      if (leg === null) return undefined;
      const mps = farthestFrom(leg.settledIasMps, c.lesson.plan.approachIasMps);
      return mps === null ? null : ktFromMps(mps);
    },
    against: (c, limits) => {
      const target = ktFromMps(c.lesson.plan.approachIasMps);
      // On the low side amber ends at the greater of target - 7.5 kt and 1.2 Vs
      const stallKt = ktFromMps(lastStretch(c, 'final')?.endStallIasMps ?? 0);
      return { ...around(target, limits.approachSpeedKt), amberLow: Math.max(target - 7.5, 1.2 * stallKt) };
    },
    live: {
      ...speedNow(20),
      say: {
        'power-for-sink': {
          low: 'Slow: lower the nose for the speed, power for the sink.',
          high: 'Fast: raise the nose a little for the speed, then less power.',
        },
        'point-with-pitch': {
          low: 'Slow: more power, and the nose stays on the aim point.',
          high: 'Fast: less power, and the nose stays on the aim point.',
        },
      },
    },
  },
  trackOn('final', 'crosswind-circuit'),
  trimOn('final', 'final-and-landing'),
  {
    id: 'final-flap',
    leg: 'final',
    name: 'flap',
    sides: { low: 'too little', high: 'too much' },
    spoken: {
      low: 'You came in with less flap than planned',
      high: 'You came in with more flap than planned',
    },
    measures: 'flap stage at the end of final',
    unit: FLAP_STAGES,
    say: {
      low: 'Less flap than planned: the flap belongs before the gate.',
      high: 'More flap than planned for this approach.',
    },
    trainedBy: 'final-and-landing',
    part: 'Approach',
    good: 2,
    bad: 0,
    measure: (c) => lastStretch(c, 'final')?.endFlapStage,
    // The flap of a glide is what the height allows; a go-around has it raised
    unjudged: (c) => c.lesson.task.technique === 'glide' || c.touchdown === null,
    against: ({ lesson }) => {
      const { finalStage, landingStage } = lesson.aeroplane.plan;
      const source = "the aeroplane's flap plan";
      return { target: finalStage, low: finalStage, high: Math.max(finalStage, landingStage), source };
    },
  },
  rule({
    id: 'final-lights',
    leg: 'final',
    name: 'slope lights',
    sides: HEIGHT_SIDES,
    spoken: { low: 'You came down final too low', high: 'You came down final too high' },
    measures:
      'lamps showing white beyond half of them, on the mean; all red where it sank on under four reds',
    unit: phrased('lamps', ' lamps off two and two'),
    limits: { lamps: { title: 'lamps', ...practice(1, 1, 'at most one lamp off') } },
    say: {
      low: 'Too much red: less sink with power until two and two, before the 200 ft call.',
      high: 'Too much white: the way down is set up earlier, at the approach speed; still high at the gate, go around.',
    },
    trainedBy: 'final-and-landing',
    part: 'Approach',
    good: 0.3,
    bad: 2,
    measure: (c) => {
      if (c.lesson.runway.lights === null) return undefined;
      const leg = lastStretch(c, 'final');
      if (leg === null) return undefined;
      return sankUnderReds(c) ? ALL_RED : meanOf(leg.lamps);
    },
    unjudged: (c) => c.lesson.task.technique === 'glide',
    against: (_, limits) => around(0, limits.lamps),
    live: {
      settleS: 4,
      rank: 25,
      value: ({ m, lesson }) => lampsNow(m, lesson),
      say: {
        'power-for-sink': {
          low: 'Low: power for less sink, and hold the speed with the attitude.',
          high: 'High: less power for more sink, and hold the speed with the attitude.',
        },
        'point-with-pitch': {
          low: 'Low: power first; then the nose to where the aim point stands still.',
          high: 'High: nose down to the aim point, less power for the speed.',
        },
      },
    },
  }),
  rule({
    id: 'glide-power',
    leg: 'final',
    name: 'power in the glide',
    measures: 'mean throttle from base to the round-out of a glide',
    unit: PERCENT,
    limits: {
      glidePower: { title: 'glide power', ...practice(0, 10, 'closed, but for clearing the engine') },
    },
    say: { high: 'Power was needed: the key came too late or too wide for today. Turn in earlier.' },
    trainedBy: 'glide-approach',
    part: 'Approach',
    good: 2,
    bad: 40,
    measure: (c) => {
      if (c.lesson.task.technique !== 'glide' || c.circuit > 1) return undefined;
      const flown = GLIDE_LEGS.map((leg) => lastStretch(c, leg)).filter((leg) => leg !== null);
      const count = flown.reduce((sum, { throttle }) => sum + throttle.count, 0);
      return count === 0 ? null : (100 * flown.reduce((sum, { throttle }) => sum + throttle.sum, 0)) / count;
    },
    against: (_, limits) => atMost(0, limits.glidePower),
  }),
  rule({
    id: 'slip-used',
    leg: 'final',
    name: 'time in the slip',
    measures: 'time spent slipping on final',
    unit: S,
    limits: { slipS: { title: 'slip, s', ...practice(3, 0, 'some seconds of it') } },
    say: { low: 'The height was lost otherwise: wing down, full opposite rudder, and hold the attitude.' },
    trainedBy: 'slip-to-lose-height',
    part: 'Approach',
    good: 9,
    bad: 0,
    measure: (c) => {
      if (c.lesson.task.technique !== 'slip' || c.circuit > 1) return undefined;
      return lastStretch(c, 'final')?.slippedS;
    },
    against: (_, { slipS }) => ({ target: 6, low: slipS.below, high: null, source: slipS.source }),
  }),
  gateRow(500),
  gateRow(300),
  gateRow(200),
];
