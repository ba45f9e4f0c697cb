import { G0_MPS2 } from '../units/constants.ts';
import { airflow } from './airflow.ts';
import { airframe } from './airframe.ts';
import { attitude, attitudeSince } from './attitude.ts';
import { part } from './places.ts';
import { propulsion } from './propeller.ts';
import type { Shape } from './shape.ts';
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
 * the forces were. The equations, their signs and sources stand in DEVELOPERS.md, "The model".
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
  const forward = part[22]!;
  const right = part[23]!;
  const up = part[24]!;
  const st = part[0]!;
  const east = (forward * part[6]! + right * part[8]! + up * part[11]! + part[27]!) * perMass;
  const north = (forward * part[7]! + right * part[9]! + up * part[12]! + part[28]!) * perMass;
  const upward = (forward * st + right * part[10]! + up * part[13]! + part[29]!) * perMass;
  rate[0] = y[3]!;
  rate[1] = y[4]!;
  rate[2] = y[5]!;
  rate[3] = east;
  rate[4] = north;
  rate[5] = upward - G0_MPS2;
  rate[11] = part[26]!;
  seen[5] = (east * part[11]! + north * part[12]! + upward * part[13]!) * PER_G;
  seen[6] = -(east * part[8]! + north * part[9]! + upward * part[10]!) * PER_G;
  seen[12] = forward * part[1]! - part[21]! * s.weightN * (part[4]! * now[21]! + part[5]! * now[22]!);
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
  const aligned = part[5]! * now[22]! + part[4]! * now[21]!;
  const pedal = now[6]! < 0 ? -now[6]! : now[6]!;
  if (aligned < ALIGNED || pedal >= PEDAL_TAKES_OVER) return 0;
  const astray = part[4]! * now[22]! - part[5]! * now[21]!;
  const asked = -FEET_PER_RAD * astray;
  const held = asked > MOST_FEET ? MOST_FEET : asked < -MOST_FEET ? -MOST_FEET : asked;
  return held * (1 - pedal / PEDAL_TAKES_OVER);
};

/** Pitch, roll and yaw. Yaw is the rate that lets slip settle on what is asked; on its wheels it is steered. */
const turn = (s: Shape, now: Float64Array, y: Float64Array, rate: Float64Array, seen: Float64Array): void => {
  const st = part[0]!;
  const ct = part[1]!;
  const sb = part[2]!;
  const cb = part[3]!;
  const u = part[14]!;
  const fade = part[19]!;
  const slip = seen[1]!;
  const airspeed = seen[2]!;
  const q = y[9]!;
  const p = y[10]!;
  const astray = slip - part[31]!;
  const main = seen[8]!;
  // Whole divisions before they are needed: the processor makes them while it waits for the forces
  const perSpeed = 1 / (u > SLOWEST_MPS ? u : SLOWEST_MPS);
  const perHeld = 1 / (ct > FLATTEST ? ct : FLATTEST);
  const back = (fade * airspeed) / s.yawTimeS;
  let yaw = (p * part[16]! - G0_MPS2 * (seen[6]! + part[10]!) + back * astray) * perSpeed;
  if (main > 0) {
    const ahead = y[3]! * part[4]! + y[4]! * part[5]!;
    const speed = ahead < 0 ? -ahead : ahead;
    const free = speed * (s.steeringRad / s.wheelbaseM);
    const gripped = GROUND_TURN_MPS2 / (speed > 1 ? speed : 1);
    const steer = (ahead < 0 ? -1 : 1) * (free < gripped ? free : gripped);
    const freedom = seen[9]! > 0 ? FREE_NOSE_DOWN : FREE_NOSE_UP;
    const pressure = part[20]! / (part[20]! + 150 * s.areaM2);
    const tendency = (1 - now[18]!) * freedom * pressure * (astray / s.yawTimeS);
    const feet = now[18]! * assistedFeet(now, part);
    const share = main > 0.5 * s.weightN ? 1 : main / (0.5 * s.weightN);
    yaw += share * ((steer * (now[6]! + feet) + tendency) * cb - yaw);
  }
  if (yaw > FASTEST_YAW_RADPS) yaw = FASTEST_YAW_RADPS;
  else if (yaw < -FASTEST_YAW_RADPS) yaw = -FASTEST_YAW_RADPS;
  seen[7] = yaw;

  const helix = (2 * airspeed) / s.spanM;
  const drop = now[19]!;
  const roll = drop !== 0 ? drop : fade * helix * (s.rollHelix * now[5]! + s.rollPerSlip * slip);
  const around = q * sb + yaw * cb;
  rate[6] = q * cb - yaw * sb;
  rate[7] = p + st * perHeld * around;
  rate[8] = around * perHeld;
  rate[9] = part[25]! / s.pitchInertiaKgM2;
  rate[10] = (roll - p) / s.rollTimeS + part[30]!;
};
