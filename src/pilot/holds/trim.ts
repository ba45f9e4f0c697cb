import { clamp } from '../../maths/functions.ts';
import { radFromDeg } from '../../units/conversions.ts';
import type { Briefing } from '../briefing/briefing.ts';
import type { PilotMemory } from '../memory.ts';
import { TICK_S } from '../tick.ts';
import type { PilotView } from '../view.ts';
import { wheelFor } from './attitude.ts';

const WHEEL_PER_S = 0.06; // tuned
const TURNING_RAD = radFromDeg(12); // our choice: nobody trims in a turn steeper than this

/** Attitude, power, then trim: the wheel takes over what the hand has been holding, wings level. */
export const trimOut = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  if (Math.abs(v.bankRad) > TURNING_RAD) return;
  const wanted = clamp(wheelFor(b, m.feedRad + m.pitchHoldRad), -1, 1);
  const most = WHEEL_PER_S * TICK_S;
  m.hands.trim += clamp(wanted - m.hands.trim, -most, most);
};
