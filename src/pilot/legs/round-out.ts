import { clamp, sin } from '../../maths/functions.ts';
import { G0_MPS2 } from '../../units/constants.ts';
import { mFromFt, radFromDeg } from '../../units/conversions.ts';
import type { Briefing } from '../briefing/briefing.ts';
import { throttleFor } from '../briefing/habits.ts';
import { holdPitch } from '../holds/attitude.ts';
import { slowAlphaRad } from '../holds/path.ts';
import { straighten } from '../holds/straighten.ts';
import { landingAttitudeRad, lastIasMps, levelAttitudeRad } from '../landing-attitude.ts';
import { beginPhase, type PilotMemory } from '../memory.ts';
import { isBumpy, shortOfPointM } from '../spot.ts';
import { isSureToStop } from '../sure-stop.ts';
import { TICK_S } from '../tick.ts';
import type { PilotView } from '../view.ts';
import { goAround } from './go-around.ts';

/** Wheels a foot up, hardly sinking, while the speed goes. */
const HOLD_OFF_M = 0.5; // tuned
const SETTLING_MPS = 0.15; // tuned
const CLOSING_S = 3.4; // tuned
const SINK_GAIN = 1.3; // tuned
const FELT_S = 0.5; // tuned
const SOON_S = 0.7; // tuned
const FASTEST_SLOWING_MPS2 = 1.5; // estimate: held off at idle
const SLOWEST_MPS = 18; // our choice: a bound on the sum
const OVER_LAST = 1.03; // tuned
const OVER_LAST_FOR = 0.14; // tuned
const SLOW_SHARE = 0.8; // tuned
const SINK_LEARNING_PER_S = 0.3; // tuned
const MOST_LEARNT_RAD = 0.06; // tuned
const FLARE_RADPS = radFromDeg(6); // tuned
const RELAXING_RADPS = radFromDeg(4); // tuned
/** Slow and still some feet up: the attitude is held, power lets it settle (FAA-H-8083-3C ch. 9, ballooning). */
const HOLDING_RADPS = radFromDeg(0.5);
const HOLDING_OVER_STALL = 1.25; // tuned
const HOLDING_M = 1.2; // tuned
const LOWEST_FROM_M = mFromFt(15); // our choice: within the 10 to 20 ft of FAA-H-8083-3C p. 9-8
const NOSE_UP_RAD = radFromDeg(0.5); // tuned
/** Higher than this after a touch it is not cushioned but given up. */
export const BOUNCE_M = mFromFt(4); // common practice
const BALLOON_M = mFromFt(12); // common practice: a balloon worth a go-around
const ROUGH_BALLOON_M = mFromFt(20); // our choice: a gust lifts as much
const BALLOONING_MPS = 0.6; // tuned
const DRIFTING_MPS = 1.8; // our choice: more is not held
const DRIFTING_S = 1.5; // our choice: a gust is over by then

const hand = { keen: 1.5, extraAlphaRad: 0, answerS: 0.15 }; // tuned

/** Stops the sink a foot above the ground, closes the throttle, and holds off until the wheels touch. */
export const roundOut = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  straighten(b, m, v);
  const habit = b.habits[m.regime];
  const level = levelAttitudeRad(habit);
  const left = clamp((m.iasMps / lastIasMps(b, habit) - OVER_LAST) / OVER_LAST_FOR, 0, 1);
  const wanted = -SETTLING_MPS - (v.clearanceM - left * HOLD_OFF_M) / CLOSING_S;
  // What is felt in the seat now is seen as sink only later
  const lacking = wanted - v.partingMps - FELT_S * G0_MPS2 * (v.loadFactor - 1);
  closeThrottle(b, m, v, lacking);
  const speed = Math.max(m.iasMps, SLOWEST_MPS);
  const short = lacking / speed;
  m.flareHoldRad = clamp(
    m.flareHoldRad + SINK_LEARNING_PER_S * short * TICK_S,
    -MOST_LEARNT_RAD,
    MOST_LEARNT_RAD,
  );
  // As the speed goes the nose must come up
  const soon = speed + SOON_S * clamp(m.iasTrendMps2, -FASTEST_SLOWING_MPS2, 0);
  hand.extraAlphaRad = slowAlphaRad(b, habit, Math.max(soon, SLOWEST_MPS));
  const sloping = (v.verticalSpeedMps - v.partingMps) / speed;
  const pitch = level + hand.extraAlphaRad + sloping + wanted / speed + SINK_GAIN * short + m.flareHoldRad;
  const most = landingAttitudeRad(b) + sloping;
  // The nose is never pushed down near the ground: a balloon is left to settle
  const near = clamp(1 - v.clearanceM / LOWEST_FROM_M, 0, 1);
  const least =
    level +
    sloping +
    near * NOSE_UP_RAD -
    (1 - near) * b.plan.approachRad +
    SLOW_SHARE * Math.max(0, hand.extraAlphaRad);
  const relaxed = Math.max(
    clamp(pitch, Math.min(least, most), most),
    m.pitchWantedRad - (ballooned(b, m, v) ? HOLDING_RADPS : RELAXING_RADPS) * TICK_S,
  );
  holdPitch(b, m, v, relaxed, FLARE_RADPS, hand);
  if (v.onGround) {
    m.touchdowns += 1;
    m.touchedS = v.timeS;
    return beginPhase(m, v, 'landing-roll');
  }
  const why = spoilt(b, m, v);
  if (why === FLOATED) m.floats += 1;
  if (why !== '') goAround(m, v, why);
};

const ballooned = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): boolean =>
  v.clearanceM > HOLDING_M && m.iasMps < HOLDING_OVER_STALL * b.feel.stallIasMps;

const FLOATED = 'not down in time';
export const NOT_SURE = 'not sure to stop';
const FURTHER_M = 40; // tuned
/** So low and so slow the wheels touch at once, whatever is decided. */
const SETTLING_M = 0.6; // our choice: too late to decide
const SETTLING_OVER_STALL = 1.15; // tuned

const CLOSING_PER_S = 0.22; // tuned
const OPENING_PER_S = 1.5; // tuned
const SHORT_M = 60; // tuned
const LATER_PER_S = 0.15; // tuned
const LEAST_IN_M = 30; // our choice: never short of the runway
const GUSTY_FROM_M = 0.8; // our choice: at idle when the wheels are about to touch
const LONG_M = 150; // tuned
const LONG_OVER_M = 60; // tuned
const GUSTY_SHARE = 0.8; // tuned
const GUSTY_OVER_M = mFromFt(10); // tuned
const SLOW_FROM_M = 1; // tuned
/** High above the ground and slow is no place to be: some power. */
const LEAST_OVER_STALL = 1.08; // tuned
const OVER_STALL_PER_M = 0.04; // tuned
const POWER_FOR_SLOW = 0.2; // tuned
const CUSHION_FROM_MPS = 1; // tuned
const CUSHION = 0.5; // tuned

/**
 * To idle while rounding out, the sooner the less of the way is left to the point; on gusty days some power stays on
 * until the wheels are near the ground (FAA-H-8083-3C ch. 9). Power again only where the aeroplane drops, is slow some feet
 * up, or would not reach the runway.
 */
const closeThrottle = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>, lacking: number): void => {
  const level = throttleFor(b.habits[m.regime], 0);
  const shortM = shortOfPointM(b, m, v);
  const touchM = b.runway.specifiedM - shortM;
  const short = clamp((LEAST_IN_M - touchM) / SHORT_M, 0, 1) * level;
  // In bumps some power stays on, unless the runway runs out
  const spare = clamp((shortM + LONG_M) / LONG_OVER_M, 0, 1);
  const bumps = isBumpy(b, m) ? GUSTY_SHARE * spare : 0;
  const gusty = clamp((v.clearanceM - GUSTY_FROM_M) / GUSTY_OVER_M, 0, 1) * bumps * level;
  const cushion = clamp(CUSHION * (lacking - CUSHION_FROM_MPS), 0, 1);
  const need = b.feel.stallIasMps * (LEAST_OVER_STALL + OVER_STALL_PER_M * v.clearanceM);
  const slow =
    v.clearanceM > SLOW_FROM_M ? clamp(POWER_FOR_SLOW * (need - 0.5 * (m.iasMps + v.iasMps)), 0, 1) : 0;
  const step = Math.max(cushion, gusty, slow, short) - m.hands.throttle;
  const closing = shortM > 0 ? LATER_PER_S : CLOSING_PER_S;
  m.hands.throttle += clamp(step, -closing * TICK_S, OPENING_PER_S * TICK_S);
};

/** Why this landing is to be given up; empty while it is good. */
const spoilt = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): string => {
  const drifting = Math.abs(v.groundspeedMps * sin(v.trackRad)) > DRIFTING_MPS;
  const aside = Math.abs(v.yM) > b.runway.widthM / 2;
  m.driftS = drifting || aside ? m.driftS + TICK_S : 0;
  // Floated once before: a little further on, as long as the margin on the landing run stays
  const latest = Math.min(b.lastTouchdownM, b.latestTouchdownM + FURTHER_M * m.floats);
  const settling = v.clearanceM < SETTLING_M && m.iasMps < SETTLING_OVER_STALL * b.feel.stallIasMps;
  if (!isSureToStop(b, m, v)) return NOT_SURE;
  if (!settling && v.xM > latest) return FLOATED;
  if (m.driftS > DRIFTING_S) return 'drift not held';
  if (m.touchdowns > 0 && v.clearanceM > BOUNCE_M) return 'bounced';
  const high = isBumpy(b, m) ? ROUGH_BALLOON_M : BALLOON_M;
  const up = v.partingMps > BALLOONING_MPS && v.clearanceM > high;
  return up && v.timeS - m.phaseFromS > 2 ? 'ballooned' : '';
};
