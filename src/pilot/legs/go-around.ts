import { clamp } from '../../maths/functions.ts';
import { mFromFt, mpsFromKt, radFromDeg } from '../../units/conversions.ts';
import type { Briefing } from '../briefing/briefing.ts';
import { climbPitchRad, pitchFor } from '../briefing/habits.ts';
import { holdPitch } from '../holds/attitude.ts';
import { balance } from '../holds/balance.ts';
import { climbAt, slowAlphaRad } from '../holds/path.ts';
import { holdLine } from '../holds/track.ts';
import { trimOut } from '../holds/trim.ts';
import { beginPhase, type PilotMemory } from '../memory.ts';
import type { PilotView } from '../view.ts';

const PUSHING_RADPS = radFromDeg(5); // tuned
const PUSHING_S = 4; // tuned
const FIRST_STAGE_S = 1.5; // common practice: the first stage at once, by hand
const NEXT_STAGE_S = 4; // common practice: one stage at a time
const FIRST_OVER_STALL = 1.2; // our choice: a margin before flap comes in
const SAFE_M = mFromFt(40); // our choice: clear of the ground
const LAST_STAGE_M = mFromFt(200); // common practice: 200 ft
const POSITIVE_MPS = 0.5; // our choice: a climb that the needle shows
const SLOW_MPS = mpsFromKt(4); // our choice: below the climbing speed by so much is slow

const LOW_M = mFromFt(50); // our choice: clear of the ground
/** Over what level flight asks for: it is to go up. */
const LIFTING_RAD = radFromDeg(1.5); // tuned

const firm = { keen: 1.4, extraAlphaRad: 0, answerS: 0.3 }; // tuned
/** Slow, the nose is heavy: the pull that practice expects there. */
const MOST_EXTRA_ALPHA_RAD = 0.1; // tuned

const STEEPEST_RAD = radFromDeg(15); // our choice: bank near the ground, and more with height
const STEEPER_RAD_PER_M = radFromDeg(0.4); // tuned

/** The decision: power, attitude, configuration, in this order. */
export const goAround = (m: PilotMemory, v: Readonly<PilotView>, why: string): void => {
  // Without an engine there is nothing to go around with
  if (m.engineOut) return;
  beginPhase(m, v, 'go-around');
  m.goArounds += 1;
  m.goAroundWhy = why;
  m.levelled = false;
  m.tradeHoldRad = 0;
  m.powerHold = 0;
  m.flareHoldRad = 0;
  m.rudderHold = 0;
  m.flapFromS = v.timeS;
};

/**
 * The nose of the climb. Slow and low the aeroplane is not dropped into it: the nose stays where it carries the
 * weight at this speed until there is speed or air below.
 */
const firstPitchRad = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): number => {
  const habit = b.habits['going-around'];
  const climb = climbPitchRad(habit);
  if (v.onGround || v.clearanceM > LOW_M) return climb;
  const carrying = pitchFor(habit, 0) + slowAlphaRad(b, habit, m.iasMps);
  return Math.max(climb, Math.min(habit.highestAlphaRad, carrying + LIFTING_RAD));
};

/** Full power, a firm push into the climbing attitude, flap in stages, along the runway and round again. */
export const flyGoAround = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  m.hands.brake = 0;
  raiseFlap(b, m, v);
  const clean = m.hands.flapStage <= b.habits['take-off'].stage;
  m.regime = clean ? (m.hands.flapStage > 0 ? 'take-off' : 'climb') : 'going-around';
  // Low down the wings stay nearly level: the line can wait
  const most = Math.min(STEEPEST_RAD, b.feel.steepestLowRad / 2 + STEEPER_RAD_PER_M * v.clearanceM);
  holdLine(b, m, v, v.yM, 0, most);
  // The speed comes by itself: close to the ground nothing is traded for it
  if (v.timeS - m.phaseFromS < PUSHING_S || v.clearanceM < LOW_M) {
    m.hands.throttle = 1;
    const learnt = m.pitchHoldRad;
    firm.extraAlphaRad = clamp(slowAlphaRad(b, b.habits[m.regime], m.iasMps), 0, MOST_EXTRA_ALPHA_RAD);
    holdPitch(b, m, v, firstPitchRad(b, m, v), PUSHING_RADPS, firm);
    // What the wheels resist is not to be learnt
    if (v.onGround) m.pitchHoldRad = learnt;
  } else {
    climbAt(b, m, v, clean ? b.habits.climb.iasMps : b.habits['going-around'].iasMps);
    trimOut(b, m, v);
  }
  balance(b, m, v);
  if (clean && v.clearanceM > LAST_STAGE_M && v.timeS - m.phaseFromS > PUSHING_S) beginPhase(m, v, 'upwind');
};

/** The first stage as soon as the sink is stopped (FAA-H-8083-3C p. 9-12), the next with a positive climb and speed in hand, the last at a safe height. */
const raiseFlap = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  const { stage } = b.habits['take-off'];
  if (m.hands.flapStage <= stage) return;
  const waited = v.timeS - m.flapFromS;
  const first = m.hands.flapStage >= b.habits.landing.stage && v.timeS - m.phaseFromS < NEXT_STAGE_S;
  if (first) {
    const slow = m.iasMps < FIRST_OVER_STALL * b.feel.stallIasMps;
    const sinking = Math.min(m.verticalSpeedMps, v.verticalSpeedMps) <= 0;
    if (waited < FIRST_STAGE_S || sinking || slow || m.hands.flapStage - 1 < 1) return;
  } else {
    const ready =
      waited > NEXT_STAGE_S &&
      m.verticalSpeedMps > POSITIVE_MPS &&
      m.iasMps > b.habits['going-around'].iasMps - SLOW_MPS &&
      v.clearanceM > (m.hands.flapStage - 1 <= stage ? LAST_STAGE_M / 2 : SAFE_M);
    if (!ready) return;
  }
  m.hands.flapStage -= 1;
  m.flapFromS = v.timeS;
};
