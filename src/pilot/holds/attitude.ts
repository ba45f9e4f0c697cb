import { clamp } from '../../maths/functions.ts';
import { groundEffect } from '../../simulation/motion/airframe.ts';
import { radFromDeg } from '../../units/conversions.ts';
import type { Briefing } from '../briefing/briefing.ts';
import { HALF_DENSITY_KGPM3 } from '../briefing/density.ts';
import { elevatorFor } from '../briefing/habits.ts';
import type { PilotMemory } from '../memory.ts';
import { TICK_S } from '../tick.ts';
import type { PilotView } from '../view.ts';

/**
 * Attitude by stick. The hand first makes the movement that habit expects (for flap, power, bank), then mends what
 * it sees: a proportional part, the rate of pitch, and a slow part that the trim wheel takes over. Gains for a
 * reaction of 0.2 s and a short period of 3 to 4 rad/s: the loop crosses over near 1.5 rad/s.
 */
const PITCH_GAIN = 0.42; // tuned
const PITCH_RATE_GAIN = 0.1; // tuned
const MOST_PUSHED_RAD = radFromDeg(7); // tuned
const MOST_PULLED_RAD = radFromDeg(10); // tuned
const PITCH_LEARNING_PER_S = 0.3; // tuned
const MOST_LEARNT_RAD = radFromDeg(8); // tuned
const EXPECTING_S = 0.7; // tuned
/** From the thought to the nose or the wing being there: reaction, stick, answer. */
const PITCH_ANSWER_S = 0.3; // estimate
const BANK_ANSWER_S = 0.45; // tuned
const HIGHEST_RAD = radFromDeg(16); // our choice: no higher, whatever the needle asks
const TOUCHING_M = 2; // our choice: below it the hold-off has its own limit
const ROUNDING_RAD = radFromDeg(2.5); // tuned
const LOWEST_RAD = radFromDeg(-12); // our choice: no lower, whatever the needle asks

/** The elevator angle of a hand's position, and back; trailing edge up positive. */
const handFor = (b: Briefing, upRad: number): number =>
  upRad > 0 ? upRad / b.shape.elevatorUpRad : upRad / b.shape.elevatorDownRad;

export const wheelRad = (b: Briefing, trim: number): number =>
  trim * (trim > 0 ? b.shape.trimUpRad : b.shape.trimDownRad);

export const wheelFor = (b: Briefing, upRad: number): number =>
  upRad > 0 ? upRad / b.shape.trimUpRad : upRad / b.shape.trimDownRad;

export const dynamicPressurePa = (iasMps: number): number => HALF_DENSITY_KGPM3 * iasMps * iasMps;

/** Angle of attack beyond what level flight needs, from the bank. */
export const turnAlphaRad = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): number => {
  const bank = Math.abs(v.bankRad);
  // 1/cos - 1 by its series, good to 1 % up to 35 degrees
  const extra = bank * bank * (0.5 + (5 / 24) * bank * bank);
  return (extra * b.feel.alphaPa) / dynamicPressurePa(Math.max(m.iasMps, 20));
};

/** Pitches towards `wantedRad`, no quicker than `rateRadps`. */
export const holdPitch = (
  b: Briefing,
  m: PilotMemory,
  v: Readonly<PilotView>,
  wantedRad: number,
  rateRadps: number,
  how: Readonly<PitchHand> = EASY,
): void => {
  const most = rateRadps * TICK_S;
  const aim = clamp(wantedRad, LOWEST_RAD, highestRad(b, m, v));
  const step = clamp(aim - m.pitchWantedRad, -most, most);
  m.pitchWantedRad += step;
  m.pitchExpectedRad += (m.pitchWantedRad - m.pitchExpectedRad) * (TICK_S / how.answerS);
  // A large upset is not met with a large stick: the answer would come too late and be too much
  const off = m.pitchExpectedRad - v.pitchRad;
  const error = clamp(off, -MOST_PUSHED_RAD, MOST_PULLED_RAD);
  const ias = Math.max(m.iasMps, 12);
  const soft = clamp((b.feel.iasMps * b.feel.iasMps) / (ias * ias), 0.4, 2.5);
  const upset = Math.abs(off) > MOST_PUSHED_RAD;
  const learning = upset ? 0 : soft * how.keen * PITCH_LEARNING_PER_S * TICK_S * error;
  m.pitchHoldRad = clamp(m.pitchHoldRad + learning, -MOST_LEARNT_RAD, MOST_LEARNT_RAD);
  const feed = elevatorFor(b.habits[m.regime], m.hands.throttle) + groundFeed(b, v);
  m.feedRad += (feed - m.feedRad) * (TICK_S / EXPECTING_S);
  const swing = (b.feel.elevatorPerPitchRateM * step) / TICK_S / ias;
  const expected = b.feel.elevatorPerAlpha * (turnAlphaRad(b, m, v) + how.extraAlphaRad) + swing;
  const now = soft * (how.keen * PITCH_GAIN * error - PITCH_RATE_GAIN * v.pitchRateRadps);
  m.hands.elevator = handFor(b, m.feedRad + m.pitchHoldRad + expected + now - wheelRad(b, m.hands.trim));
};

/** Slow or sinking, the nose goes no higher above the path than the wing can bear: power mends the rest. */
const highestRad = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): number => {
  if (v.clearanceM < TOUCHING_M) return HIGHEST_RAD;
  const path = m.verticalSpeedMps / Math.max(m.iasMps, 15);
  const pulling = m.phase === 'round-out' ? ROUNDING_RAD : 0;
  const highest = path + b.habits[m.regime].highestAlphaRad + pulling;
  return Math.min(HIGHEST_RAD, Math.max(LOWEST_RAD, highest));
};

/** How the hand holds the stick: sharper than usual, and what angle of attack beyond the habit's it expects. */
export interface PitchHand {
  keen: number;
  extraAlphaRad: number;
  /** How long the nose may take to follow the thought. */
  answerS: number;
}
const EASY: PitchHand = { keen: 1, extraAlphaRad: 0, answerS: PITCH_ANSWER_S };

/** Near the ground the nose grows heavy: the pull that practice expects. */
const groundFeed = (b: Briefing, v: Readonly<PilotView>): number => {
  const over = (v.clearanceM + b.shape.aeroplane.wing.heightM) / b.shape.spanM;
  return over >= 1 ? 0 : b.feel.groundElevatorRad * (1 - groundEffect(over));
};

const ROLL_GAIN_PER_S = 1.3; // tuned
const ROLL_RATE_GAIN = 0.15; // tuned
const ROLL_LEARNING_PER_S = 0.25; // tuned
const ROLL_RATE_RADPS = radFromDeg(10); // tuned
const STEEPEST_RAD = radFromDeg(30); // our choice: most bank of a circuit, as published for its turns

/** Banks towards `wantedRad` (+ towards the circuit side) at an unhurried rate. */
export const holdBank = (
  b: Briefing,
  m: PilotMemory,
  v: Readonly<PilotView>,
  wantedRad: number,
  rateRadps = ROLL_RATE_RADPS,
): void => {
  const most = rateRadps * TICK_S;
  const step = clamp(clamp(wantedRad, -STEEPEST_RAD, STEEPEST_RAD) - m.bankWantedRad, -most, most);
  m.bankWantedRad += step;
  m.bankExpectedRad += (m.bankWantedRad - m.bankExpectedRad) * (TICK_S / BANK_ANSWER_S);
  const error = m.bankExpectedRad - v.bankRad;
  const perRate = b.feel.aileronMps / Math.max(v.iasMps, 15);
  m.bankHold = clamp(m.bankHold + ROLL_LEARNING_PER_S * perRate * error * TICK_S, -0.6, 0.6);
  m.hands.aileron =
    perRate * (step / TICK_S + ROLL_GAIN_PER_S * error - ROLL_RATE_GAIN * v.rollRateRadps) + m.bankHold;
};
