import type { LegName } from '../../lesson/names.ts';
import { clamp } from '../../maths/functions.ts';
import { lookup } from '../../maths/tables.ts';
import type { Briefing } from '../../pilot/briefing.ts';
import type { PilotMemory } from '../../pilot/memory.ts';
import { beginPhase, type PhaseName } from '../../pilot/phase-name.ts';
import { createPilot, type Ways } from '../../pilot/pilot.ts';
import { SLOW_HANDS_S } from '../../pilot/tick.ts';
import type { PilotView } from '../../pilot/view.ts';
import type { ControlSource } from '../../session/source.ts';
import { mFromFt, radFromDeg } from '../../units/conversions.ts';
import type { Flown } from '../flown.ts';
import { PHASE_OF } from '../look.ts';
import { isMannerLeg, type Manner, type MannerLeg } from './manner.ts';

/** Half the standard density of sea level (ISA: 1.225 kg/m3): from indicated speed to dynamic pressure. */
const HALF_DENSITY_KGPM3 = 0.6125;

/** Below this nothing of a manner is kept: the approach has been decided, and nobody is to learn salvage here. */
const KEPT_ABOVE_M = mFromFt(180);

/**
 * The model pilot with somebody's manner: it reads a needle wrong where a speed is held wrong, it turns where that
 * one turned, it leaves the power where that one left it. For all else it looks and answers as it always does.
 */
export const flyInManner = (flown: Flown, manner: Manner): ControlSource<unknown> => {
  const { model, briefing, flight } = flown;
  const pilot = createPilot(model, flight.plan, waysOf(manner), withDescent(briefing, manner.descentLateM));
  return { ...pilot, name: 'model pilot in a manner' } as ControlSource<unknown>;
};

/** As above, taking over where the lesson has seen the flight to be: no guess at a corner. */
export const takeOverOn = (source: ControlSource<unknown>, leg: LegName): ControlSource<unknown> => ({
  ...source,
  begin: (snapshot, controls) => {
    const m = source.begin(snapshot, controls) as PilotMemory;
    const phase = PHASE_OF[leg];
    if (phase === undefined) return m;
    m.phase = phase;
    m.turning = leg.startsWith('turn-');
    // Long enough ago for flap and the rest
    m.phaseFromS = m.turning ? snapshot.timeS : snapshot.timeS - SETTLED_S;
    if (phase === 'base' || phase === 'final' || (phase === 'downwind' && (m.views[0]?.xM ?? 0) <= 0))
      m.levelled = true;
    if (phase === 'final' && !m.turning) m.finalLengthM = -m.views[0]!.xM;
    return m;
  },
});
const SETTLED_S = 6;

/** The planned descent begun so much later along the circuit: level, then a steeper way to the same place. */
const withDescent = (b: Briefing, lateM: number): Briefing => {
  if (lateM === 0) return b;
  const { toGoM, heightM } = b.profile;
  const { topM, fromM } = topOfDescent(b);
  const late = (m: number): number => (m > fromM - lateM ? topM : lookup(toGoM, heightM, m));
  const early = (m: number): number => lookup(toGoM, heightM, Math.min(m, Math.max(0, m + lateM)));
  return { ...b, profile: { toGoM, heightM: toGoM.map(lateM > 0 ? late : early) } };
};

/** Circuit height of the planned descent, and what is left to fly where it begins. */
export const topOfDescent = ({ profile }: Briefing): { readonly topM: number; readonly fromM: number } => {
  const topM = profile.heightM.reduce((most, height) => Math.max(most, height), 0);
  const at = profile.heightM.findIndex((height) => height > topM - 1);
  return { topM, fromM: profile.toGoM[at] ?? 0 };
};

const waysOf = (manner: Manner): Ways => {
  const before: { phase: PhaseName; turning: boolean; phaseFromS: number; powerHold: number } = {
    phase: 'downwind',
    turning: false,
    phaseFromS: 0,
    powerHold: 0,
  };
  return {
    beforeLook: (b, m, v) => {
      before.phase = m.phase;
      before.turning = m.turning;
      before.phaseFromS = m.phaseFromS;
      before.powerHold = m.powerHold;
      seeWrong(manner, b, m, v);
    },
    afterLook: (b, m, v) => {
      if (m.phase !== before.phase || !m.turning) turnAtOwnPlace(manner, b, m, v, before);
      if (v.clearanceM < KEPT_ABOVE_M && m.phase !== 'downwind') return;
      setOwnPower(manner, b, m, v, before.powerHold);
      setOwnFlap(manner, m);
      shallowTurn(manner, m);
      if (manner.untrimmed !== null) holdUntrimmed(manner.untrimmed, b, m, v);
    },
  };
};

/** What makes one hold a wrong speed, height or track: believing that it is right. */
const seeWrong = (manner: Manner, b: Briefing, m: PilotMemory, v: PilotView): void => {
  const { phase } = m;
  if (phase === 'crosswind' || phase === 'downwind') v.heightM -= manner.higherM;
  if (!isMannerLeg(phase) || (m.turning && phase === 'downwind')) return;
  if (v.clearanceM < KEPT_ABOVE_M) return;
  v.iasMps -= m.turning ? inTurn(manner, phase) : manner.fasterMps[phase];
  const off = manner.trackOffRad[phase];
  if (off === null || m.turning) return;
  v.trackRad -= off;
  if (phase === 'downwind') v.yM = b.plan.spacingM;
  if (phase === 'final') v.yM = 0;
};

/** In a turn the speed of the leg before is still being held. */
const inTurn = ({ fasterMps }: Manner, onto: MannerLeg): number =>
  onto === 'final' ? fasterMps.base : fasterMps.downwind;

/** How far past the place where the model pilot would begin the turn. */
type Past = (b: Briefing, v: Readonly<PilotView>) => number;
const PAST: Readonly<Record<MannerLeg, { readonly from: PhaseName; readonly past: Past }>> = {
  downwind: {
    from: 'crosswind',
    past: (b, v) =>
      v.yM -
      (b.plan.spacingM -
        (b.corners.downwind.toY - b.corners.downwind.fromY) -
        SLOW_HANDS_S * v.groundspeedMps),
  },
  base: {
    from: 'downwind',
    past: (b, v) => b.corners.base.fromX + SLOW_HANDS_S * v.groundspeedMps - v.xM,
  },
  final: {
    from: 'base',
    past: (b, v) => b.corners.final.fromY + SLOW_HANDS_S * v.groundspeedMps - v.yM,
  },
};

export const pastTurnM = (onto: MannerLeg, b: Briefing, v: Readonly<PilotView>): number =>
  PAST[onto].past(b, v);

/** Below circuit height by this the descent has begun. */
const BEGUN_M = 15;
const LEG_BEFORE: Partial<Record<PhaseName, MannerLeg>> = { base: 'downwind', final: 'base' };

interface Before {
  readonly phase: PhaseName;
  readonly turning: boolean;
  readonly phaseFromS: number;
}

const LEGS: readonly MannerLeg[] = ['downwind', 'base', 'final'];

const turnAtOwnPlace = (
  manner: Manner,
  b: Briefing,
  m: PilotMemory,
  v: Readonly<PilotView>,
  before: Before,
): void => {
  for (const onto of LEGS) {
    const { from, past } = PAST[onto];
    const lateM = manner.turnLateM[onto];
    if (lateM === 0 || before.phase !== from) continue;
    const due = past(b, v) >= lateM;
    if (m.phase === onto && !due) {
      m.phase = before.phase;
      m.turning = before.turning;
      m.phaseFromS = before.phaseFromS;
    } else if (m.phase === from && due && !m.turning) beginPhase(m, v, onto);
  }
};

/** Downwind's is that of the descent, and is kept into the turn. */
const setOwnPower = (
  { setThrottle }: Manner,
  b: Briefing,
  m: PilotMemory,
  v: PilotView,
  powerHold: number,
): void => {
  const { phase, turning } = m;
  const descending = phase === 'base' || v.xM < b.corners.base.fromX || v.heightM < b.plan.heightM - BEGUN_M;
  const leg = turning ? LEG_BEFORE[phase] : phase;
  if (leg === undefined || !isMannerLeg(leg) || (leg === 'downwind' && !descending)) return;
  const set = setThrottle[leg];
  if (set === null) return;
  m.hands.throttle = set;
  m.powerHold = powerHold;
};

const setOwnFlap = ({ mostFlap }: Manner, m: PilotMemory): void => {
  const most = isMannerLeg(m.phase) ? mostFlap[m.phase] : null;
  if (most !== null) m.hands.flapStage = Math.min(m.hands.flapStage, most);
};

const shallowTurn = ({ finalBankRad }: Manner, m: PilotMemory): void => {
  if (finalBankRad !== null && m.phase === 'final' && m.turning)
    m.bankWantedRad = Math.min(m.bankWantedRad, finalBankRad);
};

/** The wheel stays where it is, and the hand lets the nose go where it cannot hold it. */
const holdUntrimmed = (
  { wheel, mostDegKpa }: NonNullable<Manner['untrimmed']>,
  b: Briefing,
  m: PilotMemory,
  v: Readonly<PilotView>,
): void => {
  if (!isMannerLeg(m.phase) || (m.phase === 'downwind' && v.xM > 0)) return;
  const kiloPascal = (HALF_DENSITY_KGPM3 * v.iasMps * v.iasMps) / 1000;
  const mostRad = radFromDeg(mostDegKpa / Math.max(kiloPascal, 0.1));
  m.hands.trim = wheel;
  m.hands.elevator = clamp(
    m.hands.elevator,
    -mostRad / b.shape.elevatorDownRad,
    mostRad / b.shape.elevatorUpRad,
  );
};
