import { clamp } from '../../maths/functions.ts';
import { G0_MPS2 } from '../../units/constants.ts';
import { mFromFt } from '../../units/conversions.ts';
import type { Briefing } from '../briefing/briefing.ts';
import { TAKE_OFF_FACTOR } from '../briefing/refusal.ts';
import { holdNoseOff } from '../holds/nose-wheel.ts';
import { aileronIntoWind, steer } from '../holds/steer.ts';
import { beginPhase, type PilotMemory } from '../memory.ts';
import { isSureToStop } from '../sure-stop.ts';
import { TICK_S } from '../tick.ts';
import type { PilotView } from '../view.ts';
import { goAround } from './go-around.ts';
import { BOUNCE_M, NOT_SURE } from './round-out.ts';
import { FLAP_TO_GO_DEG } from './take-off.ts';

const HOP_M = mFromFt(1.5); // our choice: higher is a bounce
const BRAKE_ON_S = 1.6; // tuned
const BRAKE_OFF_S = 0.9; // tuned
const LIGHTEST = 0.4; // tuned
const FIRMEST = 0.75; // tuned
const STOP_SHORT_M = 60; // our choice: of the end
const NOSE_DOWN_S = 1.2; // tuned

/** Straight with the feet, nose wheel held off, ailerons into wind, brakes in short applications. */
export const rollOut = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  m.hands.throttle = 0;
  steer(b, m, v);
  aileronIntoWind(b, m, v);
  holdNoseOff(b, m, v, roomNeeded(b, m, v));
  if (!v.onGround) return inTheAirAgain(b, m, v);
  m.airborneS = 0;
  const down = v.noseWheelOnGround && v.timeS - m.touchedS > NOSE_DOWN_S;
  if (down && m.landings + 1 < b.circuits && roomToGo(b, v)) {
    m.landings += 1;
    m.levelled = false;
    return beginPhase(m, v, 'take-off');
  }
  brake(b, m, v, down);
};

/** No room to let the nose wheel wait for: another take-off is to follow, or the end of the runway comes near. */
const roomNeeded = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): boolean => {
  if (m.landings + 1 < b.circuits) return true;
  const roomM = b.runway.surfaceEndM - STOP_SHORT_M - HELD_OFF_S * v.groundspeedMps - v.xM;
  return v.groundspeedMps * v.groundspeedMps > 2 * PRESSING_MPS2 * roomM;
};
const HELD_OFF_S = 4; // estimate: what holding off and letting down take

/** A hop is held; a bounce is cushioned by a new round-out, or given up. */
const inTheAirAgain = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  m.hands.brake = 0;
  m.airborneS += TICK_S;
  if (v.clearanceM > BOUNCE_M) return goAround(m, v, 'bounced');
  if (v.clearanceM <= HOP_M) return;
  if (isSureToStop(b, m, v)) beginPhase(m, v, 'round-out');
  else goAround(m, v, NOT_SURE);
};

/** Enough runway to set the flap while rolling and for the rest of a take-off run, with the margin of the whole. */
const roomToGo = (b: Briefing, v: Readonly<PilotView>): boolean => {
  const { stage } = b.habits['take-off'];
  const deg = b.shape.aeroplane.flap.stages[stage]?.deg ?? 0;
  const settingS = SETTLING_S + Math.max(0, v.flapDeg - deg - FLAP_TO_GO_DEG) / b.shape.flapTravelDegps;
  const later = Math.max(0, v.groundspeedMps - ROLLING_DOWN_MPS2 * settingS);
  const slower = v.iasMps - (v.groundspeedMps - later);
  const lift = LIFT_OVER_ROTATE * b.plan.rotateIasMps;
  const share = 1 - Math.min(1, Math.max(0, slower * Math.abs(slower)) / (lift * lift));
  const settingM = 0.5 * (v.groundspeedMps + later) * settingS;
  return b.runway.surfaceEndM - v.xM > settingM + b.plan.takeOffRunM * TAKE_OFF_FACTOR * share;
};
/** The wheels leave the ground a little faster than the nose does. */
const LIFT_OVER_ROTATE = 1.13; // estimate
/** Hands to the levers, and what the wheels lose meanwhile (common practice). */
const SETTLING_S = 2.5;
const ROLLING_DOWN_MPS2 = 1.2; // estimate: rolling and dragging with closed throttle

/** Deceleration that ends with some of the runway left. */
export const neededMps2 = (b: Briefing, v: Readonly<PilotView>): number => {
  const roomM = Math.max(LEAST_ROOM_M, b.runway.surfaceEndM - STOP_SHORT_M - v.xM);
  return (v.groundspeedMps * v.groundspeedMps) / (2 * roomM);
};

/** Short applications with releases, as firm as the room left asks for; where it runs out, firm and kept on. */
const brake = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>, noseDown: boolean): void => {
  const needed = neededMps2(b, v);
  const pressed = needed > PRESSING_MPS2;
  const early = pressed ? PRESSED_OVER_STALL : BRAKING_OVER_STALL;
  if (!noseDown || m.iasMps > early * b.feel.stallIasMps) {
    m.hands.brake = 0;
    return;
  }
  m.brakeS = (m.brakeS + TICK_S) % (BRAKE_ON_S + BRAKE_OFF_S);
  const firm = clamp(needed / (ON_SHARE * b.shape.brakeFriction * G0_MPS2), LIGHTEST, pressed ? 1 : FIRMEST);
  const held = needed > HELD_MPS2 || v.groundspeedMps < WALKING_MPS || m.brakeS < BRAKE_ON_S;
  m.hands.brake = held ? firm : 0;
};

const LEAST_ROOM_M = 20; // our choice: kept at the end
const PRESSING_MPS2 = 1.2; // estimate: short applications of light disc brakes
/** More than short applications give. */
const HELD_MPS2 = 1.6; // estimate
const BRAKING_OVER_STALL = 1; // our choice: the wings have let go of the weight
const PRESSED_OVER_STALL = 1.2; // tuned
/** Of the time with the brakes on, and of the weight on the main wheels. */
const ON_SHARE = 0.5; // tuned
const WALKING_MPS = 6; // our choice: so slow the brakes are held on
