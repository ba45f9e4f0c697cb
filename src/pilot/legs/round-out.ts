import { atan, clamp, sin } from '../../maths/functions.ts';
import { G0_MPS2 } from '../../units/constants.ts';
import { mFromFt, radFromDeg } from '../../units/conversions.ts';
import type { Briefing } from '../briefing.ts';
import { pitchFor } from '../habits.ts';
import { dynamicPressurePa, holdBank, holdPitch } from '../holds/attitude.ts';
import { expectedRudder } from '../holds/balance.ts';
import { slowAlphaRad } from '../holds/path.ts';
import type { PilotMemory } from '../memory.ts';
import { beginPhase } from '../phase-name.ts';
import { TICK_S } from '../tick.ts';
import type { PilotView } from '../view.ts';
import { goAround } from './go-around.ts';

const HOLD_OFF_M = 0.35;
const SETTLING_MPS = 0.1;
const CLOSING_S = 2.7;
const SINK_GAIN = 1.1;
const SINK_LEARNING_PER_S = 0.8;
const FLARE_RADPS = radFromDeg(6);
const TAIL_MARGIN_RAD = radFromDeg(3.5);
const THROTTLE_PER_S = 0.22;
const BALLOON_M = mFromFt(12);
const DRIFTING_MPS = 1.8;
const DRIFTING_S = 1.5;

/** Nose straight with rudder, wing down against the drift: crab on final, wing low from the round-out on. */
export const straighten = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  const perRudder = b.shape.rudderSlipRad;
  const crooked = -v.headingRad / perRudder;
  m.rudderHold = clamp(m.rudderHold + 1.1 * crooked * TICK_S, -1, 1);
  m.hands.rudder = clamp(b.side * expectedRudder(b, m, m.iasMps) + m.rudderHold + 0.9 * crooked, -1, 1);
  const slipping =
    -b.feel.slipBankPerPa *
    dynamicPressurePa(m.iasMps) *
    (m.hands.rudder - b.side * expectedRudder(b, m, m.iasMps));
  const closing = clamp(-0.3 * v.yM, -1, 1);
  const drifting = v.groundspeedMps * sin(v.trackRad);
  const bank = slipping + atan((0.8 * (closing - drifting)) / G0_MPS2);
  holdBank(b, m, v, clamp(bank, -STEEPEST_RAD, STEEPEST_RAD), radFromDeg(15));
};

const STEEPEST_RAD = radFromDeg(9);

/** Sink of this habit at idle, near enough: the angle of attack at its speed does not depend on the power. */
const IDLE_SINK_MPS = -2;
const hand = { keen: 1.5, extraAlphaRad: 0 };

/** Stops the sink a foot above the ground, closes the throttle, and holds off until the wheels touch. */
export const roundOut = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  m.hands.throttle = Math.max(0, m.hands.throttle - THROTTLE_PER_S * TICK_S);
  straighten(b, m, v);
  const height = v.clearanceM - HOLD_OFF_M;
  const wanted = -SETTLING_MPS - height / CLOSING_S;
  const speed = Math.max(m.iasMps, 18);
  const short = (wanted - v.verticalSpeedMps) / speed;
  m.flareHoldRad = clamp(m.flareHoldRad + SINK_LEARNING_PER_S * short * TICK_S, -0.06, 0.06);
  const habit = b.habits[m.regime];
  const level = pitchFor(habit, IDLE_SINK_MPS) - IDLE_SINK_MPS / habit.iasMps;
  // As the speed goes the nose must come up
  hand.extraAlphaRad = slowAlphaRad(b, habit, speed);
  const pitch = level + hand.extraAlphaRad + wanted / speed + SINK_GAIN * short + m.flareHoldRad;
  const most = b.shape.tailStrikeRad - TAIL_MARGIN_RAD;
  holdPitch(b, m, v, Math.min(pitch, most), FLARE_RADPS, hand);

  const drifting = Math.abs(v.groundspeedMps * sin(v.trackRad)) > DRIFTING_MPS;
  m.driftS = drifting || Math.abs(v.yM) > b.runway.widthM / 2 ? m.driftS + TICK_S : 0;
  if (v.onGround) {
    m.touchdowns += 1;
    m.touchedS = v.timeS;
    return beginPhase(m, v, 'landing-roll');
  }
  if (v.xM > b.latestTouchdownM) return goAround(m, v, 'not down in time');
  if (m.driftS > DRIFTING_S) return goAround(m, v, 'drift not held');
  if (v.verticalSpeedMps > 0.6 && v.clearanceM > BALLOON_M && v.timeS - m.phaseFromS > 2)
    return goAround(m, v, 'ballooned');
};
