import { clamp, cos, sin } from '../../maths/functions.ts';
import { flapEffect, newFlapEffect } from '../../simulation/shape.ts';
import { radFromDeg } from '../../units/conversions.ts';
import type { Briefing } from '../briefing/briefing.ts';
import { levelAttitudeRad } from '../landing-attitude.ts';
import type { PilotMemory } from '../memory.ts';
import { isBumpy } from '../spot.ts';
import { TICK_S } from '../tick.ts';
import type { PilotView } from '../view.ts';
import { dynamicPressurePa, holdPitch } from './attitude.ts';

const BACK_PRESSURE = 0.2; // tuned
const EASING_PER_S = 0.5; // tuned
const NOSE_LEVEL_RAD = radFromDeg(-1); // tuned
const NOSE_RADPS = radFromDeg(1.7); // our choice: under the 3 degrees a second of a nose let down gently
/** Of the weight, by the wing: more, and a gust lifts the wheels again. */
const CARRIED = 0.85; // our choice: a margin on what flies
const CARRIED_IN_GUSTS = 0.75; // our choice: more of a margin, as above
/** From here it is let down, while there is elevator left to do it gently with. */
const SPENT_OVER_STALL = 1.1; // tuned
const SLOWEST_MPS = 8; // our choice: slower, no elevator holds a nose

const hand = { keen: 1.2, extraAlphaRad: 0, answerS: 0.3 }; // tuned
const flap = newFlapEffect();

/**
 * The nose wheel is held off as it touched, the stick coming back as the wing lets go of the weight, until the speed
 * is spent or the room is needed; then it is let down gently (FAA-H-8083-3C ch. 9, after-landing roll). Touched fast, no
 * higher than the wing bears without flying again. Down, the stick stays back a little.
 */
export const holdNoseOff = (
  b: Briefing,
  m: PilotMemory,
  v: Readonly<PilotView>,
  roomNeeded: boolean,
): void => {
  if (v.noseWheelOnGround) {
    const most = EASING_PER_S * TICK_S;
    m.pitchWantedRad = v.pitchRad;
    m.hands.elevator += clamp(BACK_PRESSURE - m.hands.elevator, -most, most);
    return;
  }
  const { shape } = b;
  const pressure = dynamicPressurePa(Math.max(m.iasMps, SLOWEST_MPS)) * shape.areaM2;
  const lift0 = shape.cl0 + flapEffect(shape, v.flapDeg, flap).lift;
  const bearableRad =
    (((isBumpy(b, m) ? CARRIED_IN_GUSTS : CARRIED) * shape.weightN) / pressure - lift0) / shape.clAlpha;
  // On soft ground as long as it will stay
  const spent = b.task.technique !== 'soft-field' && m.iasMps < SPENT_OVER_STALL * b.feel.stallIasMps;
  const wanted = spent || roomNeeded ? NOSE_LEVEL_RAD : Math.min(m.pitchWantedRad, bearableRad);
  // What the wing has let go of stands on the main wheels, behind the centre of gravity, and pulls the nose down
  const onWheelsN = Math.max(0, shape.weightN - pressure * (lift0 + shape.clAlpha * v.pitchRad));
  const armM = shape.mainX * cos(v.pitchRad) + shape.mainZ * sin(v.pitchRad);
  const wheelsRad = (armM * onWheelsN) / (pressure * shape.chordM * shape.cmElevator);
  const habitualRad = levelAttitudeRad(b.habits[m.regime]);
  hand.extraAlphaRad = v.onGround
    ? v.pitchRad - habitualRad + wheelsRad / b.feel.elevatorPerAlpha
    : m.pitchWantedRad - habitualRad;
  const learnt = m.pitchHoldRad;
  holdPitch(b, m, v, wanted, NOSE_RADPS, hand);
  // What the wheels resist is not to be learnt
  m.pitchHoldRad = learnt;
};
