import { atan, atan2, clamp, cos } from '../../maths/functions.ts';
import { wrapPi } from '../../units/angles.ts';
import { G0_MPS2 } from '../../units/constants.ts';
import { mFromFt, mpsFromFpm, mpsFromKt, radFromDeg } from '../../units/conversions.ts';
import { type Briefing, STEEPEST_FINAL_BANK_RAD } from '../briefing/briefing.ts';
import { plannedSink } from '../descent.ts';
import { selectFlap } from '../flap.ts';
import { holdBank } from '../holds/attitude.ts';
import { balance } from '../holds/balance.ts';
import { descendAt } from '../holds/path.ts';
import { straighten } from '../holds/straighten.ts';
import { holdLine } from '../holds/track.ts';
import { trimOut } from '../holds/trim.ts';
import { beginPhase, type PilotMemory } from '../memory.ts';
import { isBumpy, roughShiftM, shortOfPointM } from '../spot.ts';
import { unstableAtGate } from '../stabilised.ts';
import type { PilotView } from '../view.ts';
import { goAround } from './go-around.ts';

const ROLLING_OUT_RAD = radFromDeg(12); // tuned
const SHALLOWEST_RAD = radFromDeg(8); // tuned
const FINAL_BANK_RAD = radFromDeg(15); // common practice: no more on final
const LINED_UP_M = 40; // tuned
const LANDING_FLAP_M = mFromFt(230); // our choice: time to settle before the last gate
/** Wing down instead of crab from here (common practice: established before the round-out). */
const STRAIGHTEN_M = mFromFt(60);
/** In rough air some knots more, as with half the gust of a report. */
const ROUGH_SHARE = 2; // tuned
const ROUGH_FROM_MPS = 0.5; // tuned
const MOST_ROUGH_MPS = mpsFromKt(5); // common practice: five knots more in rough air
const FENCE_M = mFromFt(150); // tuned
/** Low and too far along: the throttle is closed early. */
const LATE_M = mFromFt(25); // tuned
const LONG_M = 25; // tuned
const LEAST_SHARE = 0.4; // tuned
const SINKING_MPS = 0.5; // tuned
const LONG_OVER_M = 60; // tuned
const CORRECTING_PER_S = 0.12; // tuned
const MOST_EXTRA_MPS = mpsFromFpm(250); // tuned
/** As many seconds of sink above the ground (tuned), held to about the 10 to 20 ft of FAA-H-8083-3C p. 9-8; fast sinks: above. */
const ROUND_OUT_S = 3.4;
const SLIP_SHARE = 0.4; // tuned
const ROUND_OUT_FROM_M = mFromFt(16); // tuned
const ROUND_OUT_TO_M = mFromFt(30); // tuned

/** The arc that ends on the centreline: V^2 / (g R) with R = y / (1 - cos of what is left to turn). */
const turnToCentreline = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  const left = wrapPi(-v.trackRad);
  if (left < ROLLING_OUT_RAD && left > -Math.PI / 2) {
    m.turning = false;
    m.finalLengthM = b.runway.aimM - v.xM;
    m.rudderHold = 0;
    m.sideHoldRad = 0;
    return;
  }
  // The wind will have changed the speed over the ground by the time the turn is done
  const speed = 0.5 * (v.groundspeedMps + b.plan.legs.final.groundspeedMps);
  const speed2 = speed * speed;
  const needed = v.yM > 1 ? atan((speed2 * (1 - cos(left))) / (G0_MPS2 * v.yM)) : STEEPEST_FINAL_BANK_RAD;
  holdBank(b, m, v, clamp(needed, SHALLOWEST_RAD, STEEPEST_FINAL_BANK_RAD));
};

/** The last of the approach goes to the pilot's own aim point. */
const MOST_SHIFT_M = 115; // our choice: no further from the painted point
const SHIFTING_FROM_M = mFromFt(190); // tuned
const SHIFTING_OVER_M = mFromFt(80); // tuned

/** Sink that holds the eye on the slope to the aim point: level below it, a little quicker above. */
const slopeSinkMps = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): number => {
  const own = Math.min(MOST_SHIFT_M, b.aimShiftM + roughShiftM(m));
  const shift = own * clamp((SHIFTING_FROM_M - v.heightM) / SHIFTING_OVER_M, 0, 1);
  const onSlopeM = b.aimGroundM + b.approachTangent * (b.runway.aimM + shift - v.xM) - b.eyeHeightM;
  const steady = -b.approachTangent * v.groundspeedMps;
  return clamp(steady + CORRECTING_PER_S * (onSlopeM - v.heightM), steady - MOST_EXTRA_MPS, 0);
};

/** Below the slope there is no more flap: level, or less sink, with power and the flap as it is (FAA-H-8083-3C ch. 9). */
const isLow = (b: Briefing, v: Readonly<PilotView>): boolean =>
  atan2(v.heightM + b.eyeHeightM - b.aimGroundM, b.runway.aimM - v.xM) < b.plan.approachRad - LOW_RAD;
const LOW_RAD = radFromDeg(0.25); // our choice: half of what is still stabilised

/** Centreline by drift, aim point still in the windscreen, power for the slope and pitch for the speed. */
export const flyFinal = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  if (m.turning) turnToCentreline(b, m, v);
  const low = v.clearanceM < STRAIGHTEN_M;
  if (low && !m.turning) straighten(b, m, v);
  else if (!m.turning) holdLine(b, m, v, v.yM, 0, FINAL_BANK_RAD);
  if (!m.turning && !isLow(b, v) && selectFlap(b, m, v, b.habits.final.stage) && m.regime !== 'landing')
    m.regime = 'final';
  const settled = !m.turning && Math.abs(v.yM) < LINED_UP_M && v.heightM > LANDING_FLAP_M;
  if (settled && !isLow(b, v) && selectFlap(b, m, v, b.habits.landing.stage)) m.regime = 'landing';
  const sink = m.turning ? plannedSink(b, m, v).verticalSpeedMps : slopeSinkMps(b, m, v);
  const rough = clamp(ROUGH_SHARE * (m.roughnessMps - ROUGH_FROM_MPS), 0, MOST_ROUGH_MPS);
  const smooth = clamp(1 - m.roughnessMps / ROUGH_FROM_MPS, 0, 1);
  const slower = v.clearanceM < FENCE_M ? smooth * (b.plan.approachIasMps - b.fenceIasMps) : 0;
  descendAt(b, m, v, sink, b.plan.approachIasMps - slower + rough);
  const sinking = m.verticalSpeedMps < sink - SINKING_MPS;
  if (v.clearanceM < LATE_M && !sinking && !isBumpy(b, m))
    m.hands.throttle *= clamp(1 + (shortOfPointM(b, m, v) + LONG_M) / LONG_OVER_M, LEAST_SHARE, 1);
  trimOut(b, m, v);
  if (!low) balance(b, m, v);
  const why = unstableAtGate(b, m, v);
  if (why !== '') return goAround(m, v, why);
  // With the wings down and the feet across it takes longer to stop the sink
  const slipping = 1 + SLIP_SHARE * Math.abs(m.slipFoot);
  const from = clamp(
    -ROUND_OUT_S * slipping * Math.min(m.verticalSpeedMps, v.verticalSpeedMps),
    ROUND_OUT_FROM_M,
    ROUND_OUT_TO_M,
  );
  if (v.clearanceM >= from) return;
  m.touchdowns = 0;
  beginPhase(m, v, 'round-out');
};
