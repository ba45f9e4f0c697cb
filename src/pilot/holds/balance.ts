import { clamp } from '../../maths/functions.ts';
import type { Briefing } from '../briefing/briefing.ts';
import type { PilotMemory } from '../memory.ts';
import { TICK_S } from '../tick.ts';
import type { PilotView } from '../view.ts';

/** Full rudder moves the ball about two tenths of g at approach speed; half of that is corrected at a time. */
const BALL_GAIN = 2; // tuned
const LEARNING_PER_S = 0.8; // tuned

/** Rudder that habit expects with this much power, + right: against the propeller, and with the aileron. */
export const expectedRudder = (b: Briefing, m: PilotMemory, iasMps: number): number => {
  if (b.rudderAssist) return 0;
  const climb = b.habits.climb.iasMps;
  const ias = Math.max(iasMps, 0.6 * climb);
  return (m.hands.throttle * b.feel.climbRudder * climb * climb) / (ias * ias);
};

/** In balance: the foot on the side of the ball. With the assist the feet rest. */
export const balance = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  if (b.rudderAssist) {
    m.rudderHold = 0;
    m.hands.rudder = 0;
    return;
  }
  m.rudderHold = clamp(m.rudderHold + LEARNING_PER_S * v.ball * TICK_S, -0.5, 0.5);
  const adverse = b.feel.rudderPerAileron * m.hands.aileron;
  m.hands.rudder = b.side * expectedRudder(b, m, m.iasMps) + adverse + m.rudderHold + BALL_GAIN * v.ball;
};
