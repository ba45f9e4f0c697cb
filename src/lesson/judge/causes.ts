import {
  degFromRad,
  fpmFromMps,
  ftFromM,
  ktFromMps,
  mpsFromKt,
  radFromDeg,
  rpmFromRevps,
} from '../../units/conversions.ts';
import { lastWhere } from '../last-where.ts';
import { meanOf } from '../measure.ts';
import type { LandingFact } from '../memory.ts';
import { type CircuitFacts, lastStretch, saidOf, turnOntoLeg, wasExtended } from '../watch/facts.ts';
import type { CauseId } from './cause-words.ts';
import type { Band, CauseReport, ItemReport } from './report.ts';

/**
 * What lies behind rows that are outside: found from what was watched, by rule. Nothing is said of a landing or an
 * approach whose rows are all inside. How much counts: estimates, chosen on days 1 to 3 of tests/stories/first-line.
 */
const HIGH_DESCENT_FT = 100; // our choice: as much as a height may be off
const LITTLE_POWER = 0.8; // our choice: of what holds the slope
const LEVELLED_HIGH_FT = 10; // common practice: the hold-off is flown within a few feet
const BALLOON_FT = 3; // common practice: less is a hold-off
const PUSHED_RAD = radFromDeg(3); // our choice: more than a check of the nose
const PUSHED_FROM_FT = 3; // our choice: lower it is the touch
const FAST_MPS = mpsFromKt(7); // our choice: beyond what the approach allows a needle
const GUST_MPS = mpsFromKt(5); // our choice: more than still air gives
const QUICK_RADPS = radFromDeg(3.5); // our choice: quicker than a round-out that follows the ground
const POWERED_S = 4; // our choice: longer than a lever on its way
const DROPPED_FT = 4; // common practice: a foot or two is a landing
const LOCKED_S = 0.5; // our choice: longer than a tyre chirps
const RAISED_RAD = radFromDeg(0.75); // our choice: less is no round-out
const STILL_CRABBED_RAD = radFromDeg(4); // our choice: most of what is allowed at the touch
const SLOW_KT = 10; // FAA-S-ACS-6 IX.B (from memory): best glide ±10 kt
const TURNED_BACK_RAD = radFromDeg(90); // definition: back is behind the wing

interface Looked {
  readonly c: CircuitFacts;
  /** Bands of the circuit's rows, by id and by side: `float:high`. */
  outside(id: string, side?: 'low' | 'high'): Band | null;
  /** Whether the row is looked at. */
  judged(id: string): boolean;
}

const found = (id: CauseId, { c }: Looked, atS: number, amount: number, band: Band | null): CauseReport => ({
  id,
  circuit: c.circuit,
  at_s: Math.round(100 * atS) / 100,
  amount: Math.round(amount),
  band: band === 'red' ? 'red' : 'amber',
});

const worst = (...bands: readonly (Band | null)[]): Band | null =>
  bands.includes('red') ? 'red' : bands.includes('amber') ? 'amber' : null;

/** The descent begun late, seen where base was turned; a circuit that was too high all along is another thing. */
const lateDescent = (l: Looked): CauseReport | null => {
  const { c } = l;
  const turn = turnOntoLeg(c, 'base');
  if (turn === null || wasExtended(c) || c.m.engine !== null || c.lesson.task.technique === 'glide')
    return null;
  const { plan } = c.lesson;
  const highFt = ftFromM(turn.fromHeightM - plan.turns.base.from.heightM);
  if (plan.descentFrom !== 'abeam' || highFt < HIGH_DESCENT_FT) return null;
  if (l.outside('downwind-height', 'high') !== null || l.outside('base-turn-angle', 'low') !== null)
    return null;
  const band = spoiltOn(l, 'base-height', 'final-height', 'final-lights', 'gate-500', 'gate-300', 'gate-200');
  return band && found('descent-late', l, turn.fromS, highFt, band);
};

/** What came of an approach: the worst of some rows, or a safety stop. */
const spoiltOn = (l: Looked, ...rows: readonly string[]): Band | null =>
  worst(...rows.map((id) => l.outside(id)), l.c.m.safety.length > 0 ? 'red' : null);

/** Low or slow down final, on less power than the slope takes. */
const littlePower = (l: Looked): CauseReport | null => {
  const { c } = l;
  const final = lastStretch(c, 'final');
  if (final === null || c.m.engine !== null || c.lesson.task.technique !== 'normal') return null;
  const low = c.m.gates.some(
    (g) => g.circuit === c.circuit && g.faults?.some((f) => f === 'low' || f === 'slow'),
  );
  const band = worst(l.outside('final-lights', 'low'), low || c.m.landedOut ? 'red' : null);
  if (band === null || l.outside('base-turn-angle', 'high') !== null) return null;
  const { steady } = c.lesson.plan.legs.final;
  const revps = meanOf(final.settledRevps);
  if (revps === null || steady.revps === 0) return null;
  return revps < LITTLE_POWER * steady.revps
    ? found('little-power', l, final.fromS, rpmFromRevps(steady.revps - revps), band)
    : null;
};

const turnedBack = (l: Looked): CauseReport | null => {
  const { engine } = l.c.m;
  if (engine === null || engine.turnedRad < TURNED_BACK_RAD || l.outside('engine-failure-turn') === null)
    return null;
  return found('turned-back', l, engine.failedS, degFromRad(engine.turnedRad), 'red');
};

/** The engine stopped, and the speed was gone before the nose was down. */
const lateNose = (l: Looked): CauseReport | null => {
  const { m, lesson } = l.c;
  const band = l.outside('engine-failure-speed', 'low');
  if (m.engine === null || band === null) return null;
  const first = m.engine.firstIasMps;
  const slowest = first === undefined || first.count === 0 ? null : ktFromMps(first.min);
  return slowest !== null && slowest < lesson.aeroplane.speeds.glideKt - SLOW_KT
    ? found('nose-late', l, m.engine.failedS, slowest, band)
    : null;
};

/** Told to stop on the take-off run: the throttle comes first. */
const brakedFirst = (l: Looked): CauseReport | null => {
  const said = saidOf(l.c, 'stop');
  if (said?.brakedFirst !== true || !l.judged('stop-answer')) return null;
  return found('braked-first', l, said.saidS, 0, l.outside('abandoned-remaining') ?? 'amber');
};

/** What made it climb again; power that was kept on is told by itself. */
const balloon = (l: Looked, fact: LandingFact, band: Band): CauseReport | null => {
  const climbedFt = ftFromM(fact.balloonM);
  const levelFt = fact.levelM === null ? 0 : ftFromM(fact.levelM);
  const quick = fact.pulledRadps > QUICK_RADPS;
  if (quick && (climbedFt > BALLOON_FT || levelFt > LEVELLED_HIGH_FT))
    return found('rounded-out-quickly', l, fact.fromS, Math.max(levelFt, ftFromM(fact.lowestM)), band);
  if (climbedFt < BALLOON_FT) return null;
  if (fact.balloonGustMps > GUST_MPS) return found('balloon-gust', l, fact.fromS, climbedFt, band);
  if (fact.overMps > FAST_MPS) return found('balloon-fast', l, fact.fromS, climbedFt, band);
  return fact.poweredS > POWERED_S ? null : found('balloon-pulled', l, fact.fromS, climbedFt, band);
};

/** What was done from the screen height to the touch, in the order in which it was done. */
const inTheHoldOff = (l: Looked, fact: LandingFact): readonly (CauseReport | null)[] => {
  const hard = l.outside('touchdown-sink');
  const far = worst(
    l.outside('float', 'high'),
    l.outside('touchdown-point', 'high'),
    l.outside('stop-remaining'),
    l.c.m.ranOffAt === 'end' ? 'red' : null,
  );
  const flat = l.outside('touchdown-nose-first');
  const bounced = l.outside('touchdown-bounces');
  const band = worst(hard, far, flat, bounced);
  const { fromS } = fact;
  if (band === null) return [];
  const at = (id: CauseId, amount: number, holds: boolean, of: Band | null = band): CauseReport | null =>
    holds && of !== null ? found(id, l, fromS, amount, of) : null;
  const levelFt = fact.levelM === null ? 0 : ftFromM(fact.levelM);
  const fromFt = fact.fromM === null ? 0 : ftFromM(fact.fromM);
  const ballooned = balloon(l, fact, band);
  const powered = fact.poweredS > POWERED_S;
  const climbed = ballooned !== null || ftFromM(fact.balloonM) > BALLOON_FT;
  const levelled = levelFt > LEVELLED_HIGH_FT && !climbed;
  const pushed = fact.pushedRad > PUSHED_RAD && ftFromM(fact.pushedFromM) > PUSHED_FROM_FT;
  const touch = l.c.touchdown;
  const sinkFpm = fpmFromMps(touch?.sinkMps ?? 0);
  const never = fact.levelM === null && !climbed && !pushed;
  const raised = fact.highestPitchRad - fact.pitchRad > RAISED_RAD;
  const met = worst(hard, flat, bounced);
  return [
    at('carried-speed', ktFromMps(fact.overMps), fact.overMps > FAST_MPS, far),
    at('levelled-high', levelFt, levelled, worst(hard, far)),
    ballooned,
    at('landed-flat', sinkFpm, never && !raised, met),
    at('rounded-out-late', sinkFpm, never && raised, met),
    at('power-kept', fact.poweredS, powered && !levelled, worst(far, bounced)),
    at('pushed', degFromRad(fact.pushedRad), pushed && (climbed || levelFt > PUSHED_FROM_FT), met),
    at('dropped', fromFt, fromFt > DROPPED_FT && !levelled && !pushed && !climbed, hard),
  ];
};

const onTheWheels = (l: Looked, fact: LandingFact): readonly (CauseReport | null)[] => {
  const touch = l.c.touchdown;
  const crabbed = l.outside('touchdown-crab');
  const kept = fact.crabRad !== null && Math.abs(fact.crabRad) > STILL_CRABBED_RAD;
  return [
    crabbed !== null && kept && touch !== null
      ? found('not-straightened', l, touch.atS, Math.abs(degFromRad(touch.crabRad)), crabbed)
      : null,
    fact.lockedS > LOCKED_S && touch !== null
      ? found('brakes-locked', l, touch.atS, fact.lockedS, worst(l.outside('brakes'), 'amber'))
      : null,
  ];
};

/** Of one circuit, the earliest first. */
export const causesOf = (c: CircuitFacts, items: readonly ItemReport[]): readonly CauseReport[] => {
  const looked: Looked = {
    c,
    judged: (id) => items.some((i) => i.id === id && i.circuit === c.circuit),
    outside: (id, side) => {
      const item = items.find((i) => i.id === id && i.circuit === c.circuit);
      if (item === undefined || (item.band !== 'amber' && item.band !== 'red')) return null;
      const low = item.low !== null && item.value !== null && item.value < item.low;
      return side === undefined || (side === 'low') === low ? item.band : null;
    },
  };
  // A memory that was kept before landings were watched has none
  const landing = lastWhere(c.m.landings ?? [], (fact) => fact.circuit === c.circuit && fact.touched);
  return [
    brakedFirst(looked),
    lateNose(looked),
    turnedBack(looked),
    lateDescent(looked),
    littlePower(looked),
    ...(landing === null || c.m.engine !== null
      ? []
      : [...inTheHoldOff(looked, landing), ...onTheWheels(looked, landing)]),
  ].filter((cause) => cause !== null);
};
