import { clamp, sin } from '../../maths/functions.ts';
import type { Briefing } from '../briefing/briefing.ts';
import type { PilotMemory } from '../memory.ts';
import { TICK_S } from '../tick.ts';
import type { PilotView } from '../view.ts';
import { expectedRudder } from './balance.ts';

const CLOSING_PER_S = 0.3; // tuned
const FASTEST_MPS = 1.2; // tuned
const TURNING_PER_S = 0.9; // tuned
const LEARNING_PER_S = 0.5; // tuned
const GRIP_MPS2 = 3; // estimate: what nose wheel and rudder can ask of the tyres

/** Along the centreline on the wheels, by feet. */
export const steer = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  const speed = Math.max(v.groundspeedMps, 2);
  const closing = clamp(-CLOSING_PER_S * v.yM, -FASTEST_MPS, FASTEST_MPS);
  const short = closing - v.groundspeedMps * sin(v.headingRad);
  const wantedRadps = (TURNING_PER_S * short) / speed;
  const full = Math.min((speed * b.shape.steeringRad) / b.shape.wheelbaseM, GRIP_MPS2 / speed);
  m.rudderHold = clamp(m.rudderHold + (LEARNING_PER_S * wantedRadps * TICK_S) / full, -0.6, 0.6);
  m.hands.rudder = b.side * expectedRudder(b, m, v.iasMps) + m.rudderHold + wantedRadps / full;
};

/** Aileron into the forecast wind, full at walking pace, less as the speed grows. */
export const aileronIntoWind = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  const wind = clamp(b.crosswindMps / STRONG_MPS, -1, 1);
  const fading = clamp(1 - (0.75 * v.iasMps) / b.plan.rotateIasMps, 0.25, 1);
  m.hands.aileron = -wind * fading;
};

const STRONG_MPS = 5; // our choice: from here the stick goes into wind whole
