import { degFromRad, ktFromMps, mpsFromKt } from '../../../units/conversions.ts';
import { farthestFrom } from '../../measure.ts';
import { saidOf } from '../../watch/facts.ts';
import { around, atMost, type CircuitFacts, type Rule } from '../rule.ts';

/** Seconds from the words to the deed; as long as it has lasted where the deed is still to come. */
const reaction = (c: CircuitFacts, what: 'stop' | 'go-around'): number | undefined => {
  const said = saidOf(c, what);
  return said === null ? undefined : (said.obeyedS ?? c.m.endS) - said.saidS;
};

/** What was decided, and what came of it: going around, abandoned take-off, engine failure. */
export const DECISION_RULES: readonly Rule[] = [
  {
    id: 'go-around',
    leg: 'go-around',
    measures: 'go-arounds that were due and not flown',
    unit: 'ignored',
    say: { high: 'A go-around was due. It is never wrong: power, attitude, configuration.' },
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
  {
    id: 'go-around-answer',
    leg: 'go-around',
    measures: 'from the call to full power',
    unit: 's',
    say: { high: 'When it is called, it is flown: full power at once, then the attitude.' },
    good: 1.5,
    bad: 7,
    measure: (c) => reaction(c, 'go-around'),
    against: (_, limits) => atMost(0, limits.reactionS),
  },
  {
    id: 'stop-answer',
    leg: 'take-off-roll',
    measures: 'from the call to the closed throttle',
    unit: 's',
    say: { high: 'Close the throttle first, at once; everything else can wait.' },
    good: 1.2,
    bad: 8,
    measure: (c) => reaction(c, 'stop'),
    against: (_, limits) => atMost(0, limits.reactionS),
  },
  {
    id: 'abandoned-remaining',
    leg: 'stopped',
    measures: 'runway left at the stop of an abandoned take-off',
    unit: 'm',
    say: { low: 'Stopped beyond the runway: the point to stop by is chosen before the take-off.' },
    good: 500,
    bad: -30,
    measure: (c) => {
      const { stop } = c.m;
      if (stop === null || c.touchdown !== null) return undefined;
      return c.lesson.runway.surfaceEndM - stop.alongM;
    },
    against: () => ({ target: 0, low: 0, high: null, source: 'stopped on what is left of the runway' }),
  },
  {
    id: 'engine-failure-speed',
    leg: 'upwind',
    measures: 'airspeed furthest from the glide, once the nose was down',
    unit: 'kt',
    say: {
      low: 'Nose down first, and keep the gliding speed all the way to the round-out.',
      high: 'Too fast in the glide: hold the gliding attitude; speed is height thrown away.',
    },
    good: 71,
    bad: 52,
    measure: (c) => {
      const { engine } = c.m;
      if (engine === null || engineCircuit(c) !== c.circuit) return undefined;
      const mps = farthestFrom(engine.iasMps, mpsFromKt(glideKt(c)));
      return mps === null ? null : ktFromMps(mps);
    },
    against: (c, limits) => around(glideKt(c), limits.glideSpeedKt),
  },
  {
    id: 'engine-failure-turn',
    leg: 'upwind',
    measures: 'furthest turned from the heading at the failure',
    unit: 'deg',
    say: { high: 'A field ahead, within 30 degrees either side: turning back low is how it goes wrong.' },
    good: 18,
    bad: 120,
    measure: (c) => {
      const { engine } = c.m;
      return engine === null || engineCircuit(c) !== c.circuit ? undefined : degFromRad(engine.turnedRad);
    },
    against: (_, limits) => atMost(0, limits.aheadDeg),
  },
];

const glideKt = (c: CircuitFacts): number => c.lesson.aeroplane.speeds.glideKt;

/** The circuit in which the engine stopped. */
const engineCircuit = (c: CircuitFacts): number => {
  const failedS = c.m.engine?.failedS ?? 0;
  const all = [...c.m.stretches, c.m.now];
  return all.find((stretch) => stretch.toS >= failedS)?.circuit ?? c.circuit;
};
