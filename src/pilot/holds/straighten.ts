import { atan, clamp, sin } from '../../maths/functions.ts';
import { G0_MPS2 } from '../../units/constants.ts';
import { radFromDeg } from '../../units/conversions.ts';
import type { Briefing } from '../briefing/briefing.ts';
import type { PilotMemory } from '../memory.ts';
import { TICK_S } from '../tick.ts';
import type { PilotView } from '../view.ts';
import { dynamicPressurePa, holdBank } from './attitude.ts';
import { expectedRudder } from './balance.ts';

const FOOT_PER_S = 0.8; // tuned
const FOOT_FASTEST_PER_S = 0.4; // tuned
const FOOT_NOW = 0.3; // tuned
/** From the foot to the slip it makes. */
const SLIP_ANSWER_S = 0.8; // tuned
const CLOSING_PER_S = 0.3; // tuned
const FASTEST_MPS = 1.2; // tuned
const TURNING_PER_S = 0.7; // tuned
const SIDE_LEARNING_PER_S = 0.3; // tuned
const MOST_LEARNT_RAD = 0.06; // tuned
const STEEPEST_RAD = radFromDeg(10); // tuned
/** Higher up there is more room for the wing. */
const STEEPER_RAD_PER_M = radFromDeg(2); // tuned
const ROLL_RADPS = radFromDeg(12); // tuned

/**
 * Nose along the runway with the feet, wing down against the drift (FAA-H-8083-3C ch. 9, the wing-low method): the
 * rudder takes the crab off, and the bank and the crossed aileron that it will need go on with it.
 */
export const straighten = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  const crooked = -v.headingRad / b.shape.rudderSlipRad;
  const moving = clamp(FOOT_PER_S * crooked, -FOOT_FASTEST_PER_S, FOOT_FASTEST_PER_S);
  m.rudderHold = clamp(m.rudderHold + moving * TICK_S, -1, 1);
  const foot = clamp(m.rudderHold + FOOT_NOW * clamp(crooked, -0.5, 0.5), -1, 1);
  m.hands.rudder = clamp(foot + b.side * expectedRudder(b, m, m.iasMps), -1, 1);
  m.slipFoot += (foot - m.slipFoot) * (TICK_S / SLIP_ANSWER_S);
  const slipping = -b.feel.slipBankPerPa * dynamicPressurePa(m.iasMps) * m.slipFoot;
  const closing = clamp(-CLOSING_PER_S * v.yM, -FASTEST_MPS, FASTEST_MPS);
  const short = (TURNING_PER_S * (closing - v.groundspeedMps * sin(v.trackRad))) / G0_MPS2;
  m.sideHoldRad = clamp(
    m.sideHoldRad + SIDE_LEARNING_PER_S * short * TICK_S,
    -MOST_LEARNT_RAD,
    MOST_LEARNT_RAD,
  );
  const bank = slipping + atan(short) + m.sideHoldRad;
  const most = Math.min(STEEPEST_RAD, b.feel.steepestLowRad + STEEPER_RAD_PER_M * Math.max(0, v.clearanceM));
  holdBank(b, m, v, clamp(bank, -most, most), ROLL_RADPS);
  m.hands.aileron += b.feel.crossedAileron * m.slipFoot;
};
