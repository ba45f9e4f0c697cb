import { CHECK_WORDS, type CheckName } from '../../circuit/checks.ts';
import { leanedMixture } from '../../simulation/engine/mixture.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import { mpsFromKt, rpmFromRevps } from '../../units/conversions.ts';
import { thousandsTo } from '../../units/format.ts';
import type { Lesson } from '../lesson.ts';
import { FULL_POWER } from '../watch/full-power.ts';
import type { ItemFact, ProcedureMemory } from './memory.ts';

/**
 * How an item of a check is done. `worked`: by working the control, and no tick stands for it. `set`: the control is
 * put where it belongs, or ticked while it stands there. `read`: looked at and ticked. `asked`: said in the right
 * words.
 */
export interface CheckDoing {
  readonly how: 'worked' | 'set' | 'read' | 'asked';
  /** The control stands where it belongs. */
  readonly stands?: (lesson: Lesson, s: Readonly<Snapshot>, p: ProcedureMemory) => boolean;
  /** One look at the working of it; true when it is done. */
  readonly work?: (item: ItemFact, s: Readonly<Snapshot>) => boolean;
}

const PRESSED = 0.5; // our choice: when a lever counts as moved
const LET_GO = 0.05; // our choice: when a lever counts as moved
const NEARLY_FULL = 0.7; // our choice: when a lever counts as moved
const HOT_S = 10; // common practice: ten seconds of heat
const NOTED_S = 2.5; // our choice: a movement held, not brushed
const TRIM_MARK = 0.12; // our choice: how near counts as set
const SUBSCALE_HPA = 0.6; // our choice: half a hectopascal of dial and a little
const RICH_ENOUGH = 0.1; // our choice: how near counts as set
const FINE = 0.95; // our choice: when a lever counts as moved

const READ: CheckDoing = { how: 'read' };

const flapAt = (stage: (lesson: Lesson) => number): CheckDoing => ({
  how: 'set',
  stands: (lesson, s) => s.flapStage === stage(lesson),
});

const pumpAt = (on: 0 | 1): CheckDoing => ({ how: 'set', stands: (_, s) => s.pump === on });

/** What trying the brakes may find. */
export const NO_PRESSURE = 'no pressure';

/** Pressed, felt, let go. */
const brakes: CheckDoing = {
  how: 'worked',
  work: (item, s) => {
    if (s.brake > PRESSED) {
      item.workS ??= s.timeS;
      item.kept = Math.max(item.kept, s.brakePressure);
      item.note = item.kept > PRESSED ? 'pressure firm' : NO_PRESSURE;
    }
    return item.workS !== null && s.brake < LET_GO;
  },
};

/** Hot for ten seconds, the fall of the rpm noted. */
const heatTried: CheckDoing = {
  how: 'worked',
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

/** The four stops of the stick, in the order in which `kept` has a bit for each. */
const WAYS: readonly { readonly name: string; readonly at: (s: Readonly<Snapshot>) => number }[] = [
  { name: 'back', at: ({ elevator }) => elevator },
  { name: 'forward', at: ({ elevator }) => -elevator },
  { name: 'left', at: ({ aileron }) => -aileron },
  { name: 'right', at: ({ aileron }) => aileron },
];
const ALL_WAYS = 15; // definition: four bits, one for each way

/** Stick to all four stops; noted is which are still to be tried. */
const fullAndFree: CheckDoing = {
  how: 'worked',
  work: (item, s) => {
    const before = item.kept;
    WAYS.forEach(({ at }, i) => {
      if (at(s) > NEARLY_FULL) item.kept |= 1 << i;
    });
    if (item.kept === before) return false;
    const left = WAYS.filter((_, i) => (item.kept & (1 << i)) === 0).map(({ name }) => name);
    item.note = left.length === 0 ? '' : `still ${left.join(', ')}`;
    item.workS ??= s.timeS;
    return item.kept === ALL_WAYS;
  },
};

const flapBelowWhite: CheckDoing = {
  how: 'set',
  stands: ({ aeroplane }, s) => {
    const stage = aeroplane.plan.downwindStage;
    const limitKt = aeroplane.flap.stages[stage]?.limitKt ?? 0;
    return s.flapStage === stage && (stage === 0 || s.iasMps <= mpsFromKt(limitKt));
  },
};

const flapOneUp: CheckDoing = {
  how: 'worked',
  work: (item, s) => {
    // `kept` is the stage that was out, plus one
    if (item.kept === 0) item.kept = s.flapStage + 1;
    return s.flapStage < item.kept - 1 || item.kept === 1;
  },
};

/** How each item of the one table (`src/circuit/checks.ts`) is done. */
const DOING: Readonly<Record<CheckName, CheckDoing>> = {
  brakes,
  heatTried,
  fullAndFree,
  flapBelowWhite,
  flapOneUp,
  heatCold: { how: 'set', stands: (_, s) => s.carbHeat === 0 },
  gearDown: { how: 'set', stands: (_, s) => s.gearLever === 1 && s.gear === 1 },
  gearUp: { how: 'set', stands: (_, s) => s.gearLever === 0 },
  propellerFine: { how: 'set', stands: (_, s) => s.propeller > FINE },
  mixtureRich: {
    how: 'set',
    stands: (_, s) => s.mixture >= leanedMixture(s.densityKgpm3) - RICH_ENOUGH,
  },
  subscale: {
    how: 'set',
    stands: ({ procedures }, _, p) => Math.abs(p.subscaleHpa - (procedures?.qnhHpa ?? 0)) < SUBSCALE_HPA,
  },
  pumpOn: pumpAt(1),
  pumpOff: pumpAt(0),
  trim: {
    how: 'set',
    stands: ({ aeroplane }, s) => Math.abs(s.trim - aeroplane.pitch.trimTakeOff) < TRIM_MARK,
  },
  flapTakeOff: flapAt(({ aeroplane }) => aeroplane.plan.takeOffStage),
  flapLanding: {
    how: 'set',
    stands: ({ aeroplane: { plan } }, s) =>
      s.flapStage >= plan.finalStage && s.flapStage <= plan.landingStage,
  },
  flapUp: flapAt(() => 0),
  compass: READ,
  fuel: READ,
  engine: READ,
  harness: READ,
  lights: READ,
  runwayClear: READ,
  ifItStops: { how: 'asked' },
  toesOff: { how: 'set', stands: (_, s) => s.brake < LET_GO },
  fullPower: { how: 'worked', work: (_, s) => s.throttle > FULL_POWER },
  attitude: { how: 'worked', work: (_, s) => s.throttle > FULL_POWER && s.verticalSpeedMps > 0 },
  flapAllUp: { how: 'worked', work: (_, s) => s.flapStage === 0 && s.verticalSpeedMps > 0 },
};

/** What doing an item means where a tick does not count, said before it is due. */
const BY_DOING: Partial<Readonly<Record<CheckName, string>>> = {
  brakes: 'press them and feel: a tick does not count',
  heatTried: 'set it hot and wait: a tick does not count',
  fullAndFree: 'move the stick: a tick does not count',
  fullPower: 'done by the throttle',
  attitude: 'done by climbing away',
  flapOneUp: 'done by the flap lever',
  flapAllUp: 'done by the flap lever, climbing',
  ifItStops: 'choose the words',
};

export const doingWords = (name: CheckName): string => BY_DOING[name] ?? '';

/** One item of a check, as it is called and as it is done. */
export interface CheckItem extends CheckDoing {
  readonly id: string;
  readonly name: CheckName;
}

const NAMES = Object.keys(CHECK_WORDS) as readonly CheckName[];

const ITEMS = new Map(NAMES.map((name) => [name, { id: CHECK_WORDS[name].id, name, ...DOING[name] }]));

export const itemNamed = (name: CheckName): CheckItem => ITEMS.get(name) as CheckItem;
