import { atan, clamp, sin } from '../../maths/functions.ts';
import { G0_MPS2 } from '../../units/constants.ts';
import { mFromFt, radFromDeg } from '../../units/conversions.ts';
import type { Briefing } from '../briefing/briefing.ts';
import { dynamicPressurePa, holdBank } from '../holds/attitude.ts';
import { glideAt } from '../holds/glide.ts';
import { beginPhase, type PilotMemory } from '../memory.ts';
import { TICK_S } from '../tick.ts';
import type { PilotView } from '../view.ts';

const FOOT = 0.9; // tuned
const FOOT_PER_S = 0.5; // tuned
const SLIP_ANSWER_S = 0.8; // tuned
const CLOSING_PER_S = 0.1; // tuned
const FASTEST_MPS = 3; // tuned
const TURNING_PER_S = 0.5; // tuned
const STEEPEST_RAD = radFromDeg(20); // tuned
const ROLL_RADPS = radFromDeg(8); // tuned
/** Straight again by here, with time to settle (the last call is at 200 ft). */
const ENOUGH_ABOVE_M = 3; // tuned
const LOWEST_M = mFromFt(280); // derived: the last call at 200 ft and the time to settle
/** Worth a slip from here. */
const SLIP_FROM_M = 8; // our choice: less is mended by power
const SLIP_ABOVE_M = mFromFt(330); // our choice: room for it above LOWEST_M

/** Height of the wheels above the slope to the aim point. */
const aboveSlopeM = (b: Briefing, v: Readonly<PilotView>): number =>
  v.heightM - (b.aimGroundM + b.approachTangent * (b.runway.aimM - v.xM) - b.eyeHeightM);

/** High on final, and high enough above the ground to be straight again in time. */
export const isSlipDue = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): boolean =>
  m.phase === 'final' && !m.turning && aboveSlopeM(b, v) > SLIP_FROM_M && v.clearanceM > SLIP_ABOVE_M;

/**
 * Wing down into the wind, opposite rudder, throttle closed: the track along the centreline, the speed with the
 * attitude (FAA-H-8083-3C p. 9-13). Straight again a little above the slope.
 */
export const flySlip = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  const intoWind = b.crosswindMps > 0 ? -1 : 1;
  const over = aboveSlopeM(b, v) < ENOUGH_ABOVE_M || v.clearanceM < LOWEST_M;
  const foot = over ? 0 : -FOOT * intoWind;
  m.rudderHold += clamp(foot - m.rudderHold, -FOOT_PER_S * TICK_S, FOOT_PER_S * TICK_S);
  m.hands.rudder = m.rudderHold;
  m.slipFoot += (m.rudderHold - m.slipFoot) * (TICK_S / SLIP_ANSWER_S);
  const slipping = -b.feel.slipBankPerPa * dynamicPressurePa(m.iasMps) * m.slipFoot;
  const closing = clamp(-CLOSING_PER_S * v.yM, -FASTEST_MPS, FASTEST_MPS);
  const short = (TURNING_PER_S * (closing - v.groundspeedMps * sin(v.trackRad))) / G0_MPS2;
  holdBank(b, m, v, clamp(slipping + atan(short), -STEEPEST_RAD, STEEPEST_RAD), ROLL_RADPS);
  m.hands.aileron += b.feel.crossedAileron * m.slipFoot;
  glideAt(b, m, v, b.plan.approachIasMps);
  if (!over || Math.abs(m.slipFoot) > 0.1) return;
  m.slipFoot = 0;
  m.rudderHold = 0;
  beginPhase(m, v, 'final');
  m.turning = false;
};
