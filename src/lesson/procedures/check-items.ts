import type { Aeroplane } from '../../aeroplane/schema.ts';
import { leanedMixture } from '../../simulation/mixture.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import { degFromRad, mpsFromKt, rpmFromRevps } from '../../units/conversions.ts';
import { fixed, headingDigits, thousandsTo } from '../../units/format.ts';
import type { Lesson } from '../lesson.ts';
import type { ItemFact, ProcedureMemory } from './memory.ts';

/**
 * One item of a check. `worked`: done by working the control, and no tick stands for it. `set`: the control is put
 * where it belongs, or ticked while it stands there. `read`: looked at and ticked. `asked`: said in the right words.
 */
export interface CheckItem {
  readonly id: string;
  readonly how: 'worked' | 'set' | 'read' | 'asked';
  readonly words: (lesson: Lesson) => string;
  readonly aboard?: (aeroplane: Aeroplane) => boolean;
  /** The control stands where it belongs. */
  readonly stands?: (lesson: Lesson, s: Readonly<Snapshot>, p: ProcedureMemory) => boolean;
  /** One look at the working of it; true when it is done. */
  readonly work?: (item: ItemFact, s: Readonly<Snapshot>) => boolean;
}

const PRESSED = 0.5;
const LET_GO = 0.05;
const NEARLY_FULL = 0.7;
const HOT_S = 10;
const NOTED_S = 2.5;
const TRIM_MARK = 0.12;
const SUBSCALE_HPA = 0.6;
const RICH_ENOUGH = 0.1;

const flapDeg = ({ aeroplane }: Lesson, stage: number): string =>
  stage === 0 ? 'up' : `${fixed(aeroplane.flap.stages[stage]?.deg ?? 0)}°`;

const flapAt = (id: string, stage: (lesson: Lesson) => number, words: string): CheckItem => ({
  id,
  how: 'set',
  words: (lesson) => `${words}${flapDeg(lesson, stage(lesson))}`,
  stands: (lesson, s) => s.flapStage === stage(lesson),
});

const pumpAt = (on: 0 | 1): CheckItem => ({
  id: 'pump',
  how: 'set',
  words: () => (on ? 'fuel pump on, pressure' : 'fuel pump off, pressure holds'),
  aboard: ({ equipment }) => equipment.pump,
  stands: (_, s) => s.pump === on,
});

const heatCold: CheckItem = {
  id: 'heat',
  how: 'set',
  words: () => 'carburettor heat cold',
  aboard: ({ engine }) => engine.carburettor,
  stands: (_, s) => s.carbHeat === 0,
};

const gearDown: CheckItem = {
  id: 'gear',
  how: 'set',
  words: () => 'gear down, green',
  aboard: ({ undercarriage }) => undercarriage.retractable,
  stands: (_, s) => s.gearLever === 1 && s.gear === 1,
};

const gearUp: CheckItem = {
  id: 'gear',
  how: 'set',
  words: () => 'gear up, climbing',
  aboard: ({ undercarriage }) => undercarriage.retractable,
  stands: (_, s) => s.gearLever === 0,
};

const propellerFine: CheckItem = {
  id: 'propeller',
  how: 'set',
  words: () => 'propeller fully fine',
  aboard: ({ equipment }) => equipment.propellerLever,
  stands: (_, s) => s.propeller > 0.95,
};

const mixtureRich: CheckItem = {
  id: 'mixture',
  how: 'set',
  words: () => 'mixture rich, leaned only for power in thin air',
  aboard: ({ equipment }) => equipment.mixture,
  stands: (_, s) => s.mixture >= leanedMixture(s.densityKgpm3) - RICH_ENOUGH,
};

const subscale: CheckItem = {
  id: 'altimeter',
  how: 'set',
  words: ({ procedures }) => `altimeter on QNH ${fixed(procedures?.qnhHpa ?? 0)}`,
  stands: ({ procedures }, _, p) => Math.abs(p.subscaleHpa - (procedures?.qnhHpa ?? 0)) < SUBSCALE_HPA,
};

/** Pressed, felt, let go. */
const brakes: CheckItem = {
  id: 'brakes',
  how: 'worked',
  words: () => 'brakes: press, pressure firm, off',
  work: (item, s) => {
    if (s.brake > PRESSED) {
      item.workS ??= s.timeS;
      item.kept = Math.max(item.kept, s.brakePressure);
      item.note = item.kept > PRESSED ? 'pressure firm' : 'no pressure';
    }
    return item.workS !== null && s.brake < LET_GO;
  },
};

/** Hot for ten seconds, the fall of the rpm noted. */
const heatTried: CheckItem = {
  id: 'heat',
  how: 'worked',
  words: () => 'carburettor heat hot ten seconds, note the rpm',
  aboard: ({ engine }) => engine.carburettor,
  work: (item, s) => {
    if (s.carbHeat === 0) {
      item.workS = null;
      item.kept = s.engineRevps;
      return false;
    }
    item.workS ??= s.timeS;
    if (item.kept === 0) item.kept = s.engineRevps;
    const fellRpm = Math.max(0, rpmFromRevps(item.kept - s.engineRevps));
    // Noted before the throttle makes up for it
    if (s.timeS - item.workS < NOTED_S) item.note = `rpm fell by ${thousandsTo(fellRpm, 10)}`;
    return s.timeS - item.workS >= HOT_S;
  },
};

const WAYS = 15;

/** Stick to all four stops; `kept` is a bit for each. */
const fullAndFree: CheckItem = {
  id: 'controls',
  how: 'worked',
  words: () => 'controls full and free: stick fully back, forward, left and right',
  work: (item, s) => {
    if (s.elevator > NEARLY_FULL) item.kept |= 1;
    if (s.elevator < -NEARLY_FULL) item.kept |= 2;
    if (s.aileron > NEARLY_FULL) item.kept |= 4;
    if (s.aileron < -NEARLY_FULL) item.kept |= 8;
    return item.kept === WAYS;
  },
};

const read = (id: string, words: string): CheckItem => ({ id, how: 'read', words: () => words });

const compass: CheckItem = {
  id: 'compass',
  how: 'read',
  words: ({ runway }) =>
    `compass agrees with runway ${runway.designator}: ${headingDigits(degFromRad(runway.headingRadM))}`,
};

const flapBelowWhite: CheckItem = {
  ...flapAt('flap', ({ aeroplane }) => aeroplane.plan.downwindStage, 'inside the white arc: flap '),
  stands: ({ aeroplane }, s) => {
    const stage = aeroplane.plan.downwindStage;
    const limitKt = aeroplane.flap.stages[stage]?.limitKt ?? 0;
    return s.flapStage === stage && (stage === 0 || s.iasMps <= mpsFromKt(limitKt));
  },
};

/** Landing flap, or what the approach is planned with where more is not wanted. */
const flapLanding: CheckItem = {
  ...flapAt('flap', ({ aeroplane }) => aeroplane.plan.landingStage, 'landing flap '),
  stands: ({ aeroplane: { plan } }, s) => s.flapStage >= plan.finalStage && s.flapStage <= plan.landingStage,
};

/** Items by name; the lists put them in order. */
export const ITEMS = {
  brakes,
  heatTried,
  heatCold,
  gearDown,
  gearUp,
  propellerFine,
  mixtureRich,
  subscale,
  fullAndFree,
  compass,
  flapBelowWhite,
  pumpOn: pumpAt(1),
  pumpOff: pumpAt(0),
  trim: {
    id: 'trim',
    how: 'set',
    words: () => 'trim at the take-off mark',
    stands: ({ aeroplane }, s) => Math.abs(s.trim - aeroplane.pitch.trimTakeOff) < TRIM_MARK,
  } as CheckItem,
  flapTakeOff: flapAt('flap', ({ aeroplane }) => aeroplane.plan.takeOffStage, 'flap '),
  flapLanding,
  flapUp: flapAt('flap', () => 0, 'flap '),
  fuel: read('fuel', 'fuel: tank, contents enough to go around'),
  engine: read('engine', 'temperatures and pressures in the green'),
  harness: read('harness', 'hatches and harnesses secure'),
  lights: read('lights', 'landing light and strobes'),
  ifItStops: {
    id: 'if-it-stops',
    how: 'asked',
    words: () => 'say what you do if the engine stops',
  } as CheckItem,
  runwayClear: read('runway', 'runway clear'),
  toesOff: {
    id: 'toes',
    how: 'set',
    words: () => 'toes off the brakes',
    stands: (_, s) => s.brake < LET_GO,
  } as CheckItem,
  fullPower: {
    id: 'power',
    how: 'worked',
    words: () => 'power: full, smoothly',
    work: (_, s) => s.throttle > 0.9,
  } as CheckItem,
  attitude: {
    id: 'attitude',
    how: 'worked',
    words: ({ aeroplane }) => `attitude: sink stopped, then ${aeroplane.speeds.goAroundKt} kt`,
    work: (_, s) => s.throttle > 0.9 && s.verticalSpeedMps > 0,
  } as CheckItem,
  flapOneUp: {
    id: 'flap',
    how: 'worked',
    words: () => 'configuration: flap up one stage',
    work: (item, s) => {
      // `kept` is the stage that was out, plus one
      if (item.kept === 0) item.kept = s.flapStage + 1;
      return s.flapStage < item.kept - 1 || item.kept === 1;
    },
  } as CheckItem,
  flapAllUp: {
    id: 'flap-up',
    how: 'worked',
    words: () => 'flap up by stages, climbing',
    work: (_, s) => s.flapStage === 0 && s.verticalSpeedMps > 0,
  } as CheckItem,
} as const satisfies Readonly<Record<string, CheckItem>>;
