import { G0_MPS2 } from '../../units/constants.ts';
import { propulsion } from '../engine/propeller.ts';
import { NOW, PART, part, SEEN } from '../places.ts';
import type { Shape } from '../shape.ts';
import { AT } from '../state.ts';
import { airflow } from './airflow.ts';
import { airframe } from './airframe.ts';
import { attitude, attitudeSince } from './attitude.ts';
import { wheels } from './wheels.ts';

const GROUND_TURN_MPS2 = 3.4; // sideways acceleration the steering may ask for (estimate: half of what the tyres grip)
const SLOWEST_MPS = 5; // below it the yaw of the air no longer grows (our choice: a bound on the sum)
const FASTEST_YAW_RADPS = 2; // our choice: a bound on the sum
const FLATTEST = 0.1; // cosine of pitch, never to divide by nothing (our choice: a bound on the sum)
/** Share of the weathercock left on its wheels, with the nose wheel down and up (estimates). */
const FREE_NOSE_DOWN = 0.15;
const FREE_NOSE_UP = 0.45; // estimate, as above

const PER_G = 1 / G0_MPS2; // derived: of G0_MPS2

/**
 * The right-hand side: fills `rate` with the rates of the twelve integrated numbers of `y`, and `seen` with what
 * the forces were. The equations, their signs and sources stand in README.md of this room.
 */
export const derivative = (
  s: Shape,
  now: Float64Array,
  y: Float64Array,
  rate: Float64Array,
  seen: Float64Array,
): void => {
  attitude(y);
  forces(s, now, y, rate, seen);
};

/** The same for a later stage of the step whose first stage was the last `derivative`. */
export const derivativeSince = (
  s: Shape,
  now: Float64Array,
  y: Float64Array,
  rate: Float64Array,
  seen: Float64Array,
): void => {
  attitudeSince(y);
  forces(s, now, y, rate, seen);
};

const forces = (
  s: Shape,
  now: Float64Array,
  y: Float64Array,
  rate: Float64Array,
  seen: Float64Array,
): void => {
  airflow(s, now, y, seen);
  airframe(s, now, y, seen);
  propulsion(s, now, y, seen);
  wheels(s, now, y, seen);
  accelerate(s, now, y, rate, seen);
  turn(s, now, y, rate, seen);
};

/** Forces to ground acceleration, and what they feel like aboard. */
const accelerate = (
  s: Shape,
  now: Float64Array,
  y: Float64Array,
  rate: Float64Array,
  seen: Float64Array,
): void => {
  const perMass = 1 / s.massKg;
  const forward = part[PART.forward]!;
  const right = part[PART.right]!;
  const up = part[PART.up]!;
  const st = part[PART.sinPitch]!;
  const east =
    (forward * part[PART.forwardEast]! +
      right * part[PART.rightEast]! +
      up * part[PART.upEast]! +
      part[PART.wheelsEast]!) *
    perMass;
  const north =
    (forward * part[PART.forwardNorth]! +
      right * part[PART.rightNorth]! +
      up * part[PART.upNorth]! +
      part[PART.wheelsNorth]!) *
    perMass;
  const upward =
    (forward * st + right * part[PART.rightUp]! + up * part[PART.upUp]! + part[PART.wheelsUp]!) * perMass;
  rate[AT.east] = y[AT.velocityEast]!;
  rate[AT.north] = y[AT.velocityNorth]!;
  rate[AT.up] = y[AT.velocityUp]!;
  rate[AT.velocityEast] = east;
  rate[AT.velocityNorth] = north;
  rate[AT.velocityUp] = upward - G0_MPS2;
  rate[AT.revps] = part[PART.spin]!;
  seen[SEEN.loadFactor] =
    (east * part[PART.upEast]! + north * part[PART.upNorth]! + upward * part[PART.upUp]!) * PER_G;
  seen[SEEN.ball] =
    -(east * part[PART.rightEast]! + north * part[PART.rightNorth]! + upward * part[PART.rightUp]!) * PER_G;
  seen[SEEN.push] =
    forward * part[PART.cosPitch]! -
    part[PART.slopeHere]! *
      s.weightN *
      (part[PART.sinHeading]! * now[NOW.sinRunway]! + part[PART.cosHeading]! * now[NOW.cosRunway]!);
};

/** Cosine of 20 degrees; rudder per radian off the runway's line; the most of it; the pedal that takes over. */
const ALIGNED = 0.94; // tuned: the assist on the ground
const FEET_PER_RAD = 3; // tuned: the assist on the ground
const MOST_FEET = 0.3; // tuned: the assist on the ground
const PEDAL_TAKES_OVER = 0.1; // our choice: more than a resting foot

/**
 * Rudder that the assist's feet give on the wheels: along the runway when nearly so, until a pedal is pressed.
 */
const assistedFeet = (now: Float64Array, part: Float64Array): number => {
  const aligned = part[PART.cosHeading]! * now[NOW.cosRunway]! + part[PART.sinHeading]! * now[NOW.sinRunway]!;
  const pedal = now[NOW.rudder]! < 0 ? -now[NOW.rudder]! : now[NOW.rudder]!;
  if (aligned < ALIGNED || pedal >= PEDAL_TAKES_OVER) return 0;
  const astray = part[PART.sinHeading]! * now[NOW.cosRunway]! - part[PART.cosHeading]! * now[NOW.sinRunway]!;
  const asked = -FEET_PER_RAD * astray;
  const held = asked > MOST_FEET ? MOST_FEET : asked < -MOST_FEET ? -MOST_FEET : asked;
  return held * (1 - pedal / PEDAL_TAKES_OVER);
};

/** Pitch, roll and yaw. Yaw is the rate that lets slip settle on what is asked; on its wheels it is steered. */
const turn = (s: Shape, now: Float64Array, y: Float64Array, rate: Float64Array, seen: Float64Array): void => {
  const st = part[PART.sinPitch]!;
  const ct = part[PART.cosPitch]!;
  const sb = part[PART.sinBank]!;
  const cb = part[PART.cosBank]!;
  const u = part[PART.u]!;
  const fade = part[PART.fade]!;
  const slip = seen[SEEN.slip]!;
  const airspeed = seen[SEEN.airspeed]!;
  const q = y[AT.pitchRate]!;
  const p = y[AT.rollRate]!;
  const astray = slip - part[PART.askedSlip]!;
  const main = seen[SEEN.mainLoad]!;
  // Whole divisions before they are needed: the processor makes them while it waits for the forces
  const perSpeed = 1 / (u > SLOWEST_MPS ? u : SLOWEST_MPS);
  const perHeld = 1 / (ct > FLATTEST ? ct : FLATTEST);
  const back = (fade * airspeed) / s.yawTimeS;
  let yaw =
    (p * part[PART.w]! - G0_MPS2 * (seen[SEEN.ball]! + part[PART.rightUp]!) + back * astray) * perSpeed;
  if (main > 0) {
    const ahead =
      y[AT.velocityEast]! * part[PART.sinHeading]! + y[AT.velocityNorth]! * part[PART.cosHeading]!;
    const speed = ahead < 0 ? -ahead : ahead;
    const free = speed * (s.steeringRad / s.wheelbaseM);
    const gripped = GROUND_TURN_MPS2 / (speed > 1 ? speed : 1);
    const steer = (ahead < 0 ? -1 : 1) * (free < gripped ? free : gripped);
    const freedom = seen[SEEN.noseLoad]! > 0 ? FREE_NOSE_DOWN : FREE_NOSE_UP;
    const pressure = part[PART.qS]! / (part[PART.qS]! + 150 * s.areaM2);
    const tendency = (1 - now[NOW.assist]!) * freedom * pressure * (astray / s.yawTimeS);
    const feet = now[NOW.assist]! * assistedFeet(now, part);
    const share = main > 0.5 * s.weightN ? 1 : main / (0.5 * s.weightN);
    yaw += share * ((steer * (now[NOW.rudder]! + feet) + tendency) * cb - yaw);
  }
  if (yaw > FASTEST_YAW_RADPS) yaw = FASTEST_YAW_RADPS;
  else if (yaw < -FASTEST_YAW_RADPS) yaw = -FASTEST_YAW_RADPS;
  seen[SEEN.yawRate] = yaw;

  const helix = (2 * airspeed) / s.spanM;
  const drop = now[NOW.wingDropRadps]!;
  const roll = drop !== 0 ? drop : fade * helix * (s.rollHelix * now[NOW.aileron]! + s.rollPerSlip * slip);
  const around = q * sb + yaw * cb;
  rate[AT.pitch] = q * cb - yaw * sb;
  rate[AT.bank] = p + st * perHeld * around;
  rate[AT.heading] = around * perHeld;
  rate[AT.pitchRate] = part[PART.pitching]! / s.pitchInertiaKgM2;
  rate[AT.rollRate] = (roll - p) / s.rollTimeS + part[PART.wheelsRoll]!;
};
