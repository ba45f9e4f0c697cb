import { atan, atan2, clamp, cos } from '../../maths/functions.ts';
import { wrapPi } from '../../units/angles.ts';
import { G0_MPS2 } from '../../units/constants.ts';
import { mFromFt, radFromDeg } from '../../units/conversions.ts';
import { type Briefing, STEEPEST_FINAL_BANK_RAD } from '../briefing/briefing.ts';
import type { RegimeName } from '../briefing/habits.ts';
import { selectFlap } from '../flap.ts';
import { holdBank } from '../holds/attitude.ts';
import { balance } from '../holds/balance.ts';
import { glideAt, roundOutFromM } from '../holds/glide.ts';
import { straighten } from '../holds/straighten.ts';
import { holdLine, holdTrack, turnTo } from '../holds/track.ts';
import { beginPhase, type PilotMemory } from '../memory.ts';
import type { PilotView } from '../view.ts';

/**
 * A glide from downwind, judged in seconds: those that the way will take against those that the height lasts. Base
 * when they are equal, a corner cut when they run short, flap when there are more than enough (FAA-H-8083-3C p. 9-26).
 */
const KEY_MARGIN = 0.78;
const SHORT_MARGIN = 1.04; // tuned
const FLAP_MARGIN = 1.12; // tuned
const BASE_FLAP_MARGIN = 1.3; // tuned
const TURN_BANK_RAD = radFromDeg(25); // common practice: medium bank
const TURN_TO_FINAL_RAD = radFromDeg(20); // common practice: medium bank
/** A turn sinks faster than straight flight. */
const TURN_COST = 1.2; // estimate
const LINED_UP_RAD = radFromDeg(12); // tuned
const SHALLOWEST_RAD = radFromDeg(8); // tuned
const TOWARDS_RAD = -Math.PI / 2;
const CUT_SHORT_M = 300; // tuned
const STRAIGHTEN_M = mFromFt(60); // common practice: before the round-out
const LOWEST_FLAP_M = mFromFt(120); // our choice: no change of flap below
const ROUND_OUT_M = 6; // tuned

const QUARTER = Math.PI / 2;

/** The key: from here the height just lasts, with base flap still to come and the speed of downwind in hand. */
export const isGlideKey = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): boolean =>
  m.phase === 'downwind' && !m.turning && KEY_MARGIN * wayS(b, 'key', v) >= lastsS(b, 'base', v);

/** Throttle closed, and the base turn. */
export const beginGlide = (m: PilotMemory, v: Readonly<PilotView>): void => {
  m.tradeHoldRad = 0;
  beginPhase(m, v, 'glide');
  m.glideLeg = 'base';
  m.turning = true;
};

export const flyGlide = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  const needS = wayS(b, m.turning ? 'key' : m.glideLeg, v);
  PARTS[m.glideLeg](b, m, v, needS);
  const out = m.hands.flapStage > 0 && m.glideLeg === 'final';
  glideAt(b, m, v, out ? b.plan.approachIasMps : b.glideIasMps);
  if (m.glideLeg !== 'final' || v.clearanceM > STRAIGHTEN_M) balance(b, m, v);
  if (m.glideLeg !== 'final' || v.clearanceM >= roundOutFromM(m)) return;
  m.touchdowns = 0;
  beginPhase(m, v, 'round-out');
};

type Part = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>, needS: number) => void;

const base: Part = (b, m, v, needS) => {
  if (m.turning) {
    m.turning = !turnTo(b, m, v, TOWARDS_RAD, TURN_BANK_RAD);
    return;
  }
  const short = lastsS(b, m.regime, v) < SHORT_MARGIN * needS;
  const direct = atan2(-v.yM, pointM(b) - CUT_SHORT_M - v.xM);
  holdTrack(b, m, v, short ? clamp(direct, TOWARDS_RAD, -QUARTER / 2) : TOWARDS_RAD);
  if (m.hands.flapStage < b.habits.base.stage)
    flapWhenSure(b, m, v, (needS * BASE_FLAP_MARGIN) / FLAP_MARGIN);
  if (bankToCentreline(b, v) > TURN_TO_FINAL_RAD) m.glideLeg = 'turn';
};

const turn: Part = (b, m, v) => {
  holdBank(b, m, v, clamp(bankToCentreline(b, v), SHALLOWEST_RAD, STEEPEST_FINAL_BANK_RAD));
  const left = wrapPi(-v.trackRad);
  if (left > LINED_UP_RAD || left < -QUARTER) return;
  m.glideLeg = 'final';
  m.rudderHold = 0;
  m.sideHoldRad = 0;
};

const final: Part = (b, m, v, needS) => {
  if (v.clearanceM < STRAIGHTEN_M) straighten(b, m, v);
  else holdLine(b, m, v, v.yM, 0);
  if (v.clearanceM > LOWEST_FLAP_M) flapWhenSure(b, m, v, needS);
};

const PARTS = { base, turn, final } as const;

/** Bank of the arc that ends on the centreline. */
const bankToCentreline = (b: Briefing, v: Readonly<PilotView>): number => {
  const speed = 0.5 * (v.groundspeedMps + b.plan.legs.final.groundspeedMps);
  const left = wrapPi(-v.trackRad);
  return atan((speed * speed * (1 - cos(left))) / (G0_MPS2 * Math.max(1, v.yM)));
};

/** How long the height lasts, flown so. */
const lastsS = (b: Briefing, regime: RegimeName, v: Readonly<PilotView>): number =>
  Math.max(0, v.clearanceM - ROUND_OUT_M) / Math.max(0.5, -(b.habits[regime].verticalSpeedsMps[0] ?? -3));

/** How long it takes to fly the way that is left to that point, the corners square. */
const wayS = (b: Briefing, from: PilotMemory['glideLeg'] | 'key', v: Readonly<PilotView>): number => {
  const { base: baseLeg, final: finalLeg } = b.plan.legs;
  const speed = b.glideIasMps;
  const radiusM = (speed * speed) / (G0_MPS2 * TURN_TANGENT);
  const cornerS = (TURN_COST * QUARTER * radiusM) / speed;
  const alongM = pointM(b) - v.xM;
  if (from === 'final') return Math.max(0, alongM) / finalLeg.groundspeedMps;
  if (from === 'turn') return 0.5 * cornerS + alongM / finalLeg.groundspeedMps;
  if (from === 'base') {
    const baseM = Math.max(0, v.yM - radiusM);
    return cornerS + baseM / baseLeg.groundspeedMps + (alongM - radiusM) / finalLeg.groundspeedMps;
  }
  const baseM = Math.max(0, v.yM - 2 * radiusM);
  return 2 * cornerS + baseM / baseLeg.groundspeedMps + alongM / finalLeg.groundspeedMps;
};

/** Where the glide is to end, short of the painted point by what a round-out without power floats. */
const pointM = (b: Briefing): number => Math.max(LEAST_IN_M, b.runway.aimM - FLOAT_M);
const LEAST_IN_M = 60; // our choice: never short of the threshold
const FLOAT_M = 220; // estimate: float without power

/** Of 23 degrees, a mean of the two turns. */
const TURN_TANGENT = 0.42; // derived: tan 23 deg, rounded

const STAGES: readonly RegimeName[] = ['abeam', 'base', 'final'];

/** The next stage of flap, once the height would last with it too. */
const flapWhenSure = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>, needS: number): void => {
  const next = STAGES.find((name) => b.habits[name].stage > m.hands.flapStage);
  if (next === undefined || lastsS(b, next, v) < FLAP_MARGIN * needS) return;
  if (selectFlap(b, m, v, b.habits[next].stage)) m.regime = next;
};
