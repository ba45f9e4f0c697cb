import { clamp } from '../../maths/functions.ts';
import { G0_MPS2 } from '../../units/constants.ts';
import { mFromFt, radFromDeg } from '../../units/conversions.ts';
import type { Briefing } from '../briefing/briefing.ts';
import type { PilotMemory } from '../memory.ts';
import { TICK_S } from '../tick.ts';
import type { PilotView } from '../view.ts';
import { holdPitch, turnAlphaRad } from './attitude.ts';

const GAINING_PER_S = 0.14; // tuned
const QUICKEST_MPS2 = 0.9; // tuned
const MOST_LACKING = 0.09; // tuned
const SPEED_SHARE = 0.8; // tuned
const LEARNING_PER_S = 0.12; // tuned
const MOST_LEARNT_RAD = radFromDeg(5); // tuned
const CHANGE_RADPS = radFromDeg(5); // tuned

const hand = { keen: 1.2, extraAlphaRad: 0, answerS: 0.3 }; // tuned

/** Throttle closed, the speed held with attitude: at the attitude that goes with it, then mended. */
export const glideAt = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>, iasMps: number): void => {
  m.hands.throttle = 0;
  m.powerHold = 0;
  const gaining = clamp(GAINING_PER_S * (iasMps - m.iasMps), -QUICKEST_MPS2, QUICKEST_MPS2);
  const lacking = clamp((gaining - m.iasTrendMps2) / G0_MPS2, -MOST_LACKING, MOST_LACKING);
  const trade = -SPEED_SHARE * lacking;
  m.tradeHoldRad = clamp(m.tradeHoldRad + LEARNING_PER_S * trade * TICK_S, -MOST_LEARNT_RAD, MOST_LEARNT_RAD);
  const expected = b.habits[m.regime].pitchesRad[0] ?? 0;
  holdPitch(b, m, v, expected + trade + m.tradeHoldRad + turnAlphaRad(b, m, v), CHANGE_RADPS, hand);
};

/** Metres forward for a metre down with the throttle closed, over the ground. */
export const glideRatio = (b: Briefing, regime: PilotMemory['regime'], groundspeedMps: number): number =>
  groundspeedMps / Math.max(0.5, -(b.habits[regime].verticalSpeedsMps[0] ?? -3));

const ROUND_OUT_S = 3.4; // tuned
const ROUND_OUT_FROM_M = mFromFt(15); // tuned
const ROUND_OUT_TO_M = mFromFt(65); // tuned

/** Height at which the round-out of a glide begins: so many seconds of its sink, held to a band. */
export const roundOutFromM = (m: PilotMemory): number =>
  clamp(-ROUND_OUT_S * m.verticalSpeedMps, ROUND_OUT_FROM_M, ROUND_OUT_TO_M);
