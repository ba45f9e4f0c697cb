import { degFromRad, ktFromMps, mpsFromKt } from '../../../units/conversions.ts';
import { farthestFrom } from '../../measure.ts';
import { type CircuitFacts, saidOf } from '../../watch/facts.ts';
import { practice } from '../limit.ts';
import { around, atMost, type Rule, rule } from '../rule.ts';
import { DEG, KT, M, plain, S } from '../value-words.ts';
import { SPEED_SIDES } from './legs.ts';

/** Seconds from the words to the deed; as long as it has lasted where the deed is still to come. */
const reaction = (c: CircuitFacts, what: 'stop' | 'go-around'): number | undefined => {
  const said = saidOf(c, what);
  return said === null ? undefined : (said.obeyedS ?? c.m.endS) - said.saidS;
};

const REACTION = { reactionS: { title: 'reaction, s', ...practice(0, 4, 'acted on within four seconds') } };

/** What was decided, and what came of it: going around, abandoned take-off, engine failure. */
export const DECISION_RULES: readonly Rule[] = [
  {
    id: 'go-around',
    leg: 'go-around',
    name: 'going around when it is due',
    alone: true,
    measures: 'go-arounds that were due and not flown',
    unit: plain('ignored'),
    sentence: () => 'A go-around was due and was not flown.',
    say: { high: 'A go-around was due. It is never wrong: power, attitude, configuration.' },
    trainedBy: 'go-around',
    part: 'Approach',
    good: 0,
    bad: 1,
    measure: (c) => {
      const mine = c.m.dues.filter((d) => d.circuit === c.circuit);
      const flown = c.m.goArounds.some((g) => g.circuit === c.circuit);
      return mine.length === 0 && !flown ? undefined : mine.filter((d) => d.ignored).length;
    },
    against: () => ({
      target: 0,
      low: 0,
      high: 0,
      source: 'FAA-S-ACS-6 IV.N: a go-around in time; a go-around is never wrong',
    }),
  },
  rule({
    id: 'go-around-answer',
    leg: 'go-around',
    name: 'answer to the call',
    spoken: { high: 'You were slow to answer the call to go around' },
    measures: 'from the call to full power',
    unit: S,
    limits: REACTION,
    say: { high: 'When it is called, it is flown: full power at once, then the attitude.' },
    trainedBy: 'go-around',
    part: 'Approach',
    good: 1.5,
    bad: 7,
    measure: (c) => reaction(c, 'go-around'),
    against: (_, limits) => atMost(0, limits.reactionS),
  }),
  rule({
    id: 'stop-answer',
    leg: 'take-off-roll',
    name: 'answer to the call',
    spoken: { high: 'You were slow to close the throttle' },
    measures: 'from the call to the closed throttle',
    unit: S,
    limits: REACTION,
    say: { high: 'Close the throttle first, at once; everything else can wait.' },
    trainedBy: 'abandoned-take-off',
    good: 1.2,
    bad: 8,
    measure: (c) => reaction(c, 'stop'),
    against: (_, limits) => atMost(0, limits.reactionS),
  }),
  {
    id: 'abandoned-remaining',
    leg: 'stopped',
    name: 'runway left',
    sides: { low: 'too little' },
    spoken: { low: 'You stopped beyond the runway' },
    measures: 'runway left at the stop of an abandoned take-off',
    unit: M,
    say: { low: 'Stopped beyond the runway: the point to stop by is chosen before the take-off.' },
    trainedBy: 'abandoned-take-off',
    good: 500,
    bad: -30,
    measure: (c) => {
      const { stop } = c.m;
      if (stop === null || c.touchdown !== null) return undefined;
      return c.lesson.runway.surfaceEndM - stop.alongM;
    },
    against: () => ({ target: 0, low: 0, high: null, source: 'stopped on what is left of the runway' }),
  },
  rule({
    id: 'engine-failure-speed',
    leg: 'upwind',
    name: 'gliding speed',
    sides: SPEED_SIDES,
    spoken: {
      low: 'You let the gliding speed go with the engine stopped',
      high: 'You glided too fast with the engine stopped',
    },
    measures: 'airspeed furthest from the glide, once the nose was down',
    unit: KT,
    limits: {
      glideSpeedKt: {
        title: 'glide speed, kt',
        below: 10,
        above: 10,
        source: 'FAA-S-ACS-6 IX.B (from memory): best glide ±10 kt',
        sure: 'memory',
      },
    },
    say: {
      low: 'Nose down first, and keep the gliding speed all the way to the round-out.',
      high: 'Too fast in the glide: hold the gliding attitude; speed is height thrown away.',
    },
    trainedBy: 'engine-failure-after-take-off',
    good: 71,
    bad: 52,
    measure: (c) => {
      const { engine } = c.m;
      if (engine === null || engineCircuit(c) !== c.circuit) return undefined;
      const mps = farthestFrom(engine.iasMps, mpsFromKt(glideKt(c)));
      return mps === null ? null : ktFromMps(mps);
    },
    against: (c, limits) => around(glideKt(c), limits.glideSpeedKt),
  }),
  rule({
    id: 'engine-failure-turn',
    leg: 'upwind',
    name: 'turned from the heading',
    spoken: { high: 'You turned far from ahead with the engine stopped' },
    measures: 'furthest turned from the heading at the failure',
    unit: DEG,
    limits: {
      aheadDeg: {
        title: 'ahead, °',
        below: 30,
        above: 30,
        source:
          'New Zealand Flight Instructor Guide: a field ahead; within 30 deg as syllabus texts quote it',
        sure: 'quoted',
      },
    },
    say: { high: 'A field ahead, within 30 degrees either side: turning back low is how it goes wrong.' },
    trainedBy: 'engine-failure-after-take-off',
    good: 18,
    bad: 120,
    measure: (c) => {
      const { engine } = c.m;
      return engine === null || engineCircuit(c) !== c.circuit ? undefined : degFromRad(engine.turnedRad);
    },
    against: (_, limits) => atMost(0, limits.aheadDeg),
  }),
];

const glideKt = (c: CircuitFacts): number => c.lesson.aeroplane.speeds.glideKt;

/** The circuit in which the engine stopped. */
const engineCircuit = (c: CircuitFacts): number => {
  const failedS = c.m.engine?.failedS ?? 0;
  const all = [...c.m.stretches, c.m.now];
  return all.find((stretch) => stretch.toS >= failedS)?.circuit ?? c.circuit;
};
