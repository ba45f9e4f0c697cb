import { clamp } from '../../maths/functions.ts';
import { G0_MPS2 } from '../../units/constants.ts';
import { mFromFt, radFromDeg } from '../../units/conversions.ts';
import type { Briefing } from '../briefing/briefing.ts';
import { climbPitchRad, type Habit, pitchFor, throttleFor } from '../briefing/habits.ts';
import type { PilotMemory } from '../memory.ts';
import { TICK_S } from '../tick.ts';
import type { PilotView } from '../view.ts';
import { dynamicPressurePa, holdPitch, turnAlphaRad } from './attitude.ts';

/**
 * Power and attitude together, as a pilot moves them. First what habit expects for the path that is wanted; then
 * the corrections, which know that power feeds path and speed together while pitch only trades one for the
 * other. How much of the pitch listens to the path and how much to the speed says which way it is flown: level
 * flight holds height with pitch, an approach holds speed with pitch and sink with power.
 */
interface Manner {
  /** Of the pitch, in radians for a radian of path and for a hundredth of g of acceleration. */
  readonly pathShare: number;
  readonly speedShare: number;
}
const LEVEL: Manner = { pathShare: 1.2, speedShare: 0.25 }; // tuned
const DESCENT: Manner = { pathShare: 0.5, speedShare: 0.8 }; // tuned
/** Near the ground the nose points where it must go and stays there. */
const LOW: Manner = { pathShare: 0.9, speedShare: 0.35 }; // tuned
const LOW_M = mFromFt(80); // our choice: where the manner changes
const CLIMB: Manner = { pathShare: 0, speedShare: 0.9 }; // tuned

const GAINING_PER_S = 0.14; // tuned
const QUICKEST_MPS2 = 0.7; // tuned
const MOST_LACKING = 0.07; // tuned
const ROUGH_MPS = 0.6; // tuned
const IN_A_GUST = 0.4; // tuned
const POWER_GAIN = 0.5; // tuned
const POWER_LEARNING_PER_S = 0.12; // tuned
const PITCH_LEARNING_PER_S = 0.12; // tuned
const MOST_LEARNT_RAD = radFromDeg(6); // tuned
const MOST_POWER = 0.35; // tuned
const CHANGE_RADPS = radFromDeg(3); // tuned
/** The path is changed by a twelfth of a g at most, spread out as an unhurried pilot does. */
const PATH_CHANGE_MPS2 = 0.8; // tuned

/** Angle of attack that goes with flying slower than the habit. */
export const slowAlphaRad = (b: Briefing, habit: Habit, iasMps: number): number =>
  b.feel.alphaPa * (1 / dynamicPressurePa(Math.max(iasMps, 15)) - 1 / dynamicPressurePa(habit.iasMps));

const steerPath = (
  b: Briefing,
  m: PilotMemory,
  v: Readonly<PilotView>,
  habit: Habit,
  wantedMps: number,
  iasMps: number,
  manner: Manner,
  fixedPower: boolean,
): void => {
  const most = PATH_CHANGE_MPS2 * TICK_S;
  m.pathWantedMps += clamp(wantedMps - m.pathWantedMps, -most, most);
  const speed = Math.max(m.iasMps, 20);
  const gaining = clamp(GAINING_PER_S * (iasMps - m.iasMps), -QUICKEST_MPS2, QUICKEST_MPS2);
  // In gusts a needle that jumps is let jump, upwards most of all: what a gust lends it takes back
  const gust = b.plan.gustAdditionMps > 0 && gaining < m.iasTrendMps2 ? IN_A_GUST : 1;
  const calm = gust / (1 + m.roughnessMps / ROUGH_MPS);
  const lacking = clamp((calm * (gaining - m.iasTrendMps2)) / G0_MPS2, -MOST_LACKING, MOST_LACKING);
  const steep = fixedPower ? 0 : (m.pathWantedMps - m.verticalSpeedMps) / speed;

  if (!fixedPower) {
    const perRad = b.feel.powerPerClimb * speed;
    const power = throttleFor(habit, m.pathWantedMps) + m.powerHold + POWER_GAIN * perRad * (steep + lacking);
    if (power > 0.01 && power < 0.99)
      m.powerHold = clamp(
        m.powerHold + POWER_LEARNING_PER_S * perRad * (steep + lacking) * TICK_S,
        -MOST_POWER,
        MOST_POWER,
      );
    m.hands.throttle = clamp(power, 0, 1);
  }
  const trade = manner.pathShare * steep - manner.speedShare * lacking;
  m.tradeHoldRad = clamp(
    m.tradeHoldRad + PITCH_LEARNING_PER_S * trade * TICK_S,
    -MOST_LEARNT_RAD,
    MOST_LEARNT_RAD,
  );
  hand.extraAlphaRad = clamp(slowAlphaRad(b, habit, m.iasMps), -0.06, 0.06);
  const expected = fixedPower ? climbPitchRad(habit) : pitchFor(habit, m.pathWantedMps) + hand.extraAlphaRad;
  if (fixedPower) hand.extraAlphaRad = 0;
  const wanted = expected + trade + m.tradeHoldRad + turnAlphaRad(b, m, v);
  // Just above the ground with full power the nose stays above level, slow or not: the speed comes by itself
  const least = fixedPower && v.clearanceM < LOW_M ? pitchFor(habit, 0) : wanted;
  holdPitch(b, m, v, Math.max(wanted, least), CHANGE_RADPS, hand);
};

const hand = { keen: 1, extraAlphaRad: 0, answerS: 0.3 }; // tuned

/** Full power, the speed held with attitude. */
export const climbAt = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>, iasMps: number): void => {
  m.hands.throttle = 1;
  m.pathWantedMps = m.verticalSpeedMps;
  steerPath(b, m, v, b.habits[m.regime], m.verticalSpeedMps, iasMps, CLIMB, true);
};

/** Sink by power, speed by pitch: a descent at `verticalSpeedMps` and `iasMps`. */
export const descendAt = (
  b: Briefing,
  m: PilotMemory,
  v: Readonly<PilotView>,
  verticalSpeedMps: number,
  iasMps: number,
): void => {
  const manner = v.clearanceM < LOW_M ? LOW : DESCENT;
  steerPath(b, m, v, b.habits[m.regime], verticalSpeedMps, iasMps, manner, false);
};

const CLOSING_PER_S = 0.18; // tuned
const FASTEST_MPS = 2.5; // tuned

/** Level flight: height by pitch, speed by power. */
export const holdLevel = (
  b: Briefing,
  m: PilotMemory,
  v: Readonly<PilotView>,
  heightM: number,
  iasMps: number,
): void => {
  const wanted = clamp(CLOSING_PER_S * (heightM - v.heightM), -FASTEST_MPS, FASTEST_MPS);
  steerPath(b, m, v, b.habits[m.regime], wanted, iasMps, LEVEL, false);
};
