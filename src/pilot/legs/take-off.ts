import { clamp } from '../../maths/functions.ts';
import { mFromFt, radFromDeg } from '../../units/conversions.ts';
import type { Briefing } from '../briefing/briefing.ts';
import { climbPitchRad, type Habit, pitchFor } from '../briefing/habits.ts';
import { holdBank, holdPitch, wheelRad } from '../holds/attitude.ts';
import { slowAlphaRad } from '../holds/path.ts';
import { aileronIntoWind, steer } from '../holds/steer.ts';
import { beginPhase, type PilotMemory } from '../memory.ts';
import type { PilotView } from '../view.ts';

const LOOKING_S = 1; // estimate: a look at the needles
/** Full power with the flap still on its way, but not with landing flap. */
export const FLAP_TO_GO_DEG = 12; // our choice: less than landing flap
const ROTATING_RADPS = radFromDeg(5); // tuned
const CLEAR_M = mFromFt(8); // our choice: clear of the runway

const PULLING = { keen: 3.5, extraAlphaRad: 0, answerS: 0.3 }; // tuned

/** A little above what level flight asks for: it goes on climbing. */
const LIFTING_RAD = radFromDeg(1); // tuned

const levelPitchRad = (b: Briefing, habit: Habit, iasMps: number): number =>
  pitchFor(habit, 0) + slowAlphaRad(b, habit, iasMps);

const flying = { keen: 1.4, extraAlphaRad: 0, answerS: 0.3 }; // tuned
const MOST_EXTRA_ALPHA_RAD = 0.05; // tuned

/**
 * Nearly the nose of the climb. Where the climb is poor that nose would not lift the weight yet: then as high as
 * the weight asks for at this speed, eased as the speed builds.
 */
const attitudeRad = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): number => {
  const habit = b.habits['take-off'];
  const lifting = v.onGround
    ? habit.highestAlphaRad
    : Math.min(habit.highestAlphaRad, levelPitchRad(b, habit, m.iasMps) + LIFTING_RAD);
  return Math.max(climbPitchRad(habit) - radFromDeg(1), lifting);
};

/** From the line-up, or from a touch-and-go, to a few feet up: straight, full power, off at the rotation speed. */
export const takeOff = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  const habit = b.habits['take-off'];
  m.regime = 'take-off';
  m.touchdowns = 0;
  m.hands.brake = 0;
  m.hands.flapStage = habit.stage;
  m.hands.trim = b.shape.aeroplane.pitch.trimTakeOff;
  const deg = b.shape.aeroplane.flap.stages[habit.stage]?.deg ?? 0;
  const ready = v.timeS - m.phaseFromS > LOOKING_S && v.flapDeg < deg + FLAP_TO_GO_DEG;
  m.hands.throttle = ready ? 1 : 0;
  steer(b, m, v);
  aileronIntoWind(b, m, v);
  if (v.onGround && v.iasMps < b.plan.rotateIasMps) {
    m.hands.elevator = 0;
    m.pitchWantedRad = v.pitchRad;
    m.feedRad = wheelRad(b, m.hands.trim);
    m.pitchHoldRad = 0;
    return;
  }
  const learnt = m.pitchHoldRad;
  flying.extraAlphaRad = clamp(slowAlphaRad(b, habit, m.iasMps), 0, MOST_EXTRA_ALPHA_RAD);
  holdPitch(b, m, v, attitudeRad(b, m, v), ROTATING_RADPS, v.onGround ? PULLING : flying);
  if (v.onGround) {
    // What the wheels resist is not to be learnt
    m.pitchHoldRad = learnt;
    return;
  }
  m.rudderHold = 0;
  m.hands.rudder = 0;
  holdBank(b, m, v, 0);
  if (v.clearanceM > CLEAR_M) beginPhase(m, v, 'upwind');
};
