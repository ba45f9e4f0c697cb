import { clamp } from '../../../maths/functions.ts';
import type { Briefing } from '../../../pilot/briefing/briefing.ts';
import { dynamicPressurePa } from '../../../pilot/holds/attitude.ts';
import type { PilotMemory } from '../../../pilot/memory.ts';
import type { PhaseName } from '../../../pilot/phase-name.ts';
import type { Ways } from '../../../pilot/pilot.ts';
import type { PilotView } from '../../../pilot/view.ts';
import { mFromFt, radFromDeg } from '../../../units/conversions.ts';
import { turnAtOwnPlace } from './own-turns.ts';
import { isStyleLeg, type Style, type StyleLeg } from './style.ts';

/** Below this nothing of a style is kept: the approach has been decided, and nobody is to learn salvage here. */
const KEPT_ABOVE_M = mFromFt(180);

/** What a style does around every look of the model pilot. */
export const waysOf = (style: Style): Ways => {
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
      seeWrong(style, b, m, v);
    },
    afterLook: (b, m, v) => {
      if (m.phase !== before.phase || !m.turning) turnAtOwnPlace(style, b, m, v, before);
      if (v.clearanceM < KEPT_ABOVE_M && m.phase !== 'downwind') return;
      setOwnPower(style, b, m, v, before.powerHold);
      setOwnFlap(style, m);
      shallowTurn(style, m);
      if (style.untrimmed !== null) holdUntrimmed(style.untrimmed, b, m, v);
    },
  };
};

/** What makes one hold a wrong speed, height or track: believing that it is right. */
const seeWrong = (style: Style, b: Briefing, m: PilotMemory, v: PilotView): void => {
  const { phase } = m;
  if (phase === 'crosswind' || phase === 'downwind') v.heightM -= style.higherM;
  if (!isStyleLeg(phase) || (m.turning && phase === 'downwind')) return;
  if (v.clearanceM < KEPT_ABOVE_M) return;
  v.iasMps -= m.turning ? inTurn(style, phase) : style.fasterMps[phase];
  const off = style.trackOffRad[phase];
  if (off === null || m.turning) return;
  v.trackRad -= off;
  if (phase === 'downwind') v.yM = b.plan.spacingM;
  if (phase === 'final') v.yM = 0;
};

/** In a turn the speed of the leg before is still being held. */
const inTurn = ({ fasterMps }: Style, onto: StyleLeg): number =>
  onto === 'final' ? fasterMps.base : fasterMps.downwind;

/** Below circuit height by this the descent has begun. */
const BEGUN_M = 15;
const LEG_BEFORE: Partial<Record<PhaseName, StyleLeg>> = { base: 'downwind', final: 'base' };

/** Downwind's is that of the descent, and is kept into the turn. */
const setOwnPower = (
  { setThrottle }: Style,
  b: Briefing,
  m: PilotMemory,
  v: PilotView,
  powerHold: number,
): void => {
  const { phase, turning } = m;
  const descending = phase === 'base' || v.xM < b.corners.base.fromX || v.heightM < b.plan.heightM - BEGUN_M;
  const leg = turning ? LEG_BEFORE[phase] : phase;
  if (leg === undefined || !isStyleLeg(leg) || (leg === 'downwind' && !descending)) return;
  const set = setThrottle[leg];
  if (set === null) return;
  m.hands.throttle = set;
  m.powerHold = powerHold;
};

const setOwnFlap = ({ mostFlap }: Style, m: PilotMemory): void => {
  const most = isStyleLeg(m.phase) ? mostFlap[m.phase] : null;
  if (most !== null) m.hands.flapStage = Math.min(m.hands.flapStage, most);
};

const shallowTurn = ({ finalBankRad }: Style, m: PilotMemory): void => {
  if (finalBankRad !== null && m.phase === 'final' && m.turning)
    m.bankWantedRad = Math.min(m.bankWantedRad, finalBankRad);
};

/** The wheel stays where it is, and the hand lets the nose go where it cannot hold it. */
const holdUntrimmed = (
  { wheel, mostDegKpa }: NonNullable<Style['untrimmed']>,
  b: Briefing,
  m: PilotMemory,
  v: Readonly<PilotView>,
): void => {
  if (!isStyleLeg(m.phase) || (m.phase === 'downwind' && v.xM > 0)) return;
  const kiloPascal = dynamicPressurePa(v.iasMps) / 1000;
  const mostRad = radFromDeg(mostDegKpa / Math.max(kiloPascal, 0.1));
  m.hands.trim = wheel;
  m.hands.elevator = clamp(
    m.hands.elevator,
    -mostRad / b.shape.elevatorDownRad,
    mostRad / b.shape.elevatorUpRad,
  );
};
