import { atan2, atanInPlace } from '../../maths/functions.ts';
import { G0_MPS2 } from '../../units/constants.ts';
import { BLADES, BLADES_LENGTH, bladeForces } from '../engine/blades.ts';
import { idleTorqueNm, propellerThrustN, propellerTorqueNm, STANDS_REVPS } from '../engine/propeller.ts';
import { NOW, PART, part, SEEN } from '../places.ts';
import type { Shape } from '../shape.ts';
import { AT } from '../state.ts';
import {
  BREAK_RAD,
  groundEffect,
  LOWEST_LIFT,
  PLATE_DRAG,
  PLATE_LIFT,
  STALL_MOMENT,
  STALL_MOMENT_RAD,
  STALL_ROUND_RAD,
  STEADY_ALPHA_RAD,
  smooth,
} from './airframe.ts';
import { attitude, attitudeSince } from './attitude.ts';
import { LOOK_FROM_M, wheels } from './wheels.ts';

const FADE_MPS2 = 9; // alpha and slip fade below 3 m/s (our choice: no air to speak of)
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

const blades = new Float64Array(BLADES_LENGTH);

/**
 * All of it in one function, as it runs four times a step: what one part hands to the next is a local, which the
 * processor need not wait for as for a place in memory.
 */
const forces = (
  s: Shape,
  now: Float64Array,
  y: Float64Array,
  rate: Float64Array,
  seen: Float64Array,
): void => {
  // Body axes in earth axes: forward (its up component is the sine of pitch), right, up
  const st = part[PART.sinPitch]!;
  const ct = part[PART.cosPitch]!;
  const sb = part[PART.sinBank]!;
  const cb = part[PART.cosBank]!;
  const sh = part[PART.sinHeading]!;
  const ch = part[PART.cosHeading]!;
  const fE = sh * ct;
  const fN = ch * ct;
  const rE = ch * cb + sh * st * sb;
  const rN = -sh * cb + ch * st * sb;
  const rU = -ct * sb;
  const uE = ch * sb - sh * st * cb;
  const uN = -sh * sb - ch * st * cb;
  const uU = ct * cb;

  // Air velocity in body axes, w downward; angle of attack and slip; what is below
  const aE = y[AT.velocityEast]! - now[NOW.windEast]!;
  const aN = y[AT.velocityNorth]! - now[NOW.windNorth]!;
  const aU = y[AT.velocityUp]! - now[NOW.windUp]!;
  const u = aE * fE + aN * fN + aU * st;
  const v = aE * rE + aN * rN + aU * rU;
  const w = -(aE * uE + aN * uN + aU * uU);
  const v2 = u * u + v * v + w * w;
  const fade = v2 < FADE_MPS2 ? v2 / FADE_MPS2 : 1;
  const across = Math.sqrt(u * u + w * w);
  const perAcross = across > 1e-9 ? 1 / across : 0;
  const sa = w * perAcross;
  const ca = across > 1e-9 ? u * perAcross : 1;
  const airspeed = Math.sqrt(v2);
  const density = now[NOW.density]!;
  const pressure = 0.5 * density * v2;
  const qS = pressure * s.areaM2;
  // In place, and not from hand to hand: the result of a call that is not inlined would be a heap object
  if (u > 0.5) {
    seen[SEEN.alpha] = w / u;
    atanInPlace(seen, SEEN.alpha);
  } else seen[SEEN.alpha] = atan2(w, u);
  if (across > 0.5) {
    seen[SEEN.slip] = v * perAcross;
    atanInPlace(seen, SEEN.slip);
  } else seen[SEEN.slip] = atan2(v, across);
  const alpha = fade * seen[SEEN.alpha]!;
  const slip = fade * seen[SEEN.slip]!;
  seen[SEEN.alpha] = alpha;
  seen[SEEN.slip] = slip;
  seen[SEEN.airspeed] = airspeed;
  seen[SEEN.dynamicPressure] = pressure;

  const along = y[AT.east]! * now[NOW.sinRunway]! + y[AT.north]! * now[NOW.cosRunway]!;
  const from = now[NOW.slopeFrom]!;
  const to = now[NOW.slopeTo]!;
  const slopeHere = along > from && along < to ? now[NOW.slope]! : 0;
  const groundUp = now[NOW.slope]! * (along < from ? from : along > to ? to : along);
  seen[SEEN.groundUp] = groundUp;

  // Lift is linear to the stall with a rounded peak of exactly CLmax, then falls to a flat plate, which also
  // holds from behind and inverted
  const maximum = now[NOW.maximumLift]!;
  const perAirspeed = airspeed > 1e-6 ? 1 / airspeed : 0;
  const slope = s.clAlpha;
  const wingHeight = y[AT.up]! + s.wingAboveCgM - groundUp;
  const effect = wingHeight < s.spanM ? groundEffect(wingHeight / s.spanM) : 1;
  const linear = s.cl0 + now[NOW.flapLift]! + slope * alpha;
  const past = alpha - now[NOW.stallAlpha]!;
  let cl = linear;
  let plate = 0;
  if (past > STALL_ROUND_RAD) {
    plate = smooth((past - STALL_ROUND_RAD) / BREAK_RAD);
    cl = (1 - plate) * (maximum - 1.5 * (past - STALL_ROUND_RAD)) + plate * PLATE_LIFT * 2 * sa * ca;
  } else if (past > -STALL_ROUND_RAD) {
    const t = past + STALL_ROUND_RAD;
    cl = maximum - slope * STALL_ROUND_RAD + slope * (t - (t * t) / (4 * STALL_ROUND_RAD));
  } else if (linear < LOWEST_LIFT) {
    plate = smooth((LOWEST_LIFT - linear) / slope / BREAK_RAD);
    cl = (1 - plate) * LOWEST_LIFT + plate * PLATE_LIFT * 2 * sa * ca;
  }
  const cd =
    s.cd0 +
    now[NOW.flapDrag]! +
    now[NOW.gear]! * s.cdGear +
    s.inducedFactor * effect * cl * cl * (1 - plate) +
    s.cdSlip * slip * slip +
    plate * PLATE_DRAG * sa * sa;
  const lift = qS * cl;
  const drag = qS * cd;
  // The side force lies across the airflow: what it would take along it is in the slip drag already
  const side = qS * s.cyBeta * slip;
  const againstMps = (drag + side * v * perAirspeed) * perAirspeed;
  let forward = lift * sa - againstMps * u;
  const right = side - againstMps * v;
  const up = lift * ca + againstMps * w;
  const held =
    alpha > STEADY_ALPHA_RAD ? STEADY_ALPHA_RAD : alpha < -STEADY_ALPHA_RAD ? -STEADY_ALPHA_RAD : alpha;
  const deep = past < 0 ? 0 : past < STALL_MOMENT_RAD ? past : STALL_MOMENT_RAD;
  let pitching =
    qS *
      s.chordM *
      (s.cm0 +
        s.cmAlpha * held +
        s.cmElevator * now[NOW.elevatorRad]! +
        now[NOW.flapMoment]! +
        s.cmGround * (1 - effect) +
        STALL_MOMENT * deep) +
    0.25 * density * airspeed * s.areaM2 * s.chordM * s.chordM * s.cmQ * y[AT.pitchRate]!;
  seen[SEEN.lift] = lift;
  seen[SEEN.drag] = drag;

  // Thrust, engine acceleration, and the slip that hands and propeller ask for
  const revps = y[AT.revps]!;
  let thrust = 0;
  let torque = 0;
  if (s.governed) {
    bladeForces(
      s,
      density,
      revps < STANDS_REVPS ? 0 : revps,
      u,
      now[NOW.sinBlade]!,
      now[NOW.cosBlade]!,
      blades,
    );
    thrust = blades[BLADES.thrust]!;
    torque = blades[BLADES.torque]!;
  } else {
    thrust = propellerThrustN(s, density, revps, u);
    torque = propellerTorqueNm(s, density, revps, u);
  }
  let spin = 0;
  if (revps > STANDS_REVPS) {
    const throttle = now[NOW.throttle]!;
    const engine =
      now[NOW.engineDead]! > 0
        ? -s.motoringTorqueNm
        : now[NOW.torqueScale]! * (throttle * s.ratedTorqueNm + (1 - throttle) * idleTorqueNm(s, revps));
    spin = (engine - torque) / (2 * Math.PI * s.rotatingInertiaKgM2);
  }
  forward = forward + thrust;
  pitching = pitching + now[NOW.thrustMoment]! * thrust * s.chordM;
  seen[SEEN.thrust] = thrust;
  const least = 200 * s.areaM2;
  const tc = thrust > 0 ? thrust / (qS > least ? qS : least) : 0;
  const askedSlip =
    -s.rudderSlipRad * now[NOW.rudder]! +
    (1 - now[NOW.assist]!) * (s.propellerSlipRadPerTc * tc + s.adverseYawRad * now[NOW.aileron]!);

  // A leg that is not down and locked carries nothing
  const above = y[AT.up]! - groundUp;
  const middle = above - s.mainZ * uU + s.mainX * st;
  seen[SEEN.wheelHeight] = middle - s.mainY * (rU < 0 ? -rU : rU);
  seen[SEEN.mainLoad] = 0;
  seen[SEEN.noseLoad] = 0;
  let wheelsEast = 0;
  let wheelsNorth = 0;
  let wheelsUp = 0;
  let wheelsRoll = 0;
  if (above <= s.mainZ + s.mainY + LOOK_FROM_M && now[NOW.gear]! >= 1) {
    part[PART.rightUp] = rU;
    part[PART.upUp] = uU;
    part[PART.slopeHere] = slopeHere;
    part[PART.pitching] = pitching;
    wheels(s, now, y, seen);
    pitching = part[PART.pitching]!;
    wheelsEast = part[PART.wheelsEast]!;
    wheelsNorth = part[PART.wheelsNorth]!;
    wheelsUp = part[PART.wheelsUp]!;
    wheelsRoll = part[PART.wheelsRoll]!;
  }

  // Forces to ground acceleration, and what they feel like aboard
  const perMass = 1 / s.massKg;
  const east = (forward * fE + right * rE + up * uE + wheelsEast) * perMass;
  const north = (forward * fN + right * rN + up * uN + wheelsNorth) * perMass;
  const upward = (forward * st + right * rU + up * uU + wheelsUp) * perMass;
  rate[AT.east] = y[AT.velocityEast]!;
  rate[AT.north] = y[AT.velocityNorth]!;
  rate[AT.up] = y[AT.velocityUp]!;
  rate[AT.velocityEast] = east;
  rate[AT.velocityNorth] = north;
  rate[AT.velocityUp] = upward - G0_MPS2;
  rate[AT.revps] = spin;
  seen[SEEN.loadFactor] = (east * uE + north * uN + upward * uU) * PER_G;
  const ball = -(east * rE + north * rN + upward * rU) * PER_G;
  seen[SEEN.ball] = ball;
  seen[SEEN.push] =
    forward * ct - slopeHere * s.weightN * (sh * now[NOW.sinRunway]! + ch * now[NOW.cosRunway]!);

  // Yaw is the rate that lets slip settle on what is asked; on its wheels it is steered
  const q = y[AT.pitchRate]!;
  const p = y[AT.rollRate]!;
  const astray = slip - askedSlip;
  const main = seen[SEEN.mainLoad]!;
  // Whole divisions before they are needed: the processor makes them while it waits for the forces
  const perSpeed = 1 / (u > SLOWEST_MPS ? u : SLOWEST_MPS);
  const perHeld = 1 / (ct > FLATTEST ? ct : FLATTEST);
  const back = (fade * airspeed) / s.yawTimeS;
  let yaw = (p * w - G0_MPS2 * (ball + rU) + back * astray) * perSpeed;
  if (main > 0) {
    const ahead = y[AT.velocityEast]! * sh + y[AT.velocityNorth]! * ch;
    const speed = ahead < 0 ? -ahead : ahead;
    const free = speed * (s.steeringRad / s.wheelbaseM);
    const gripped = GROUND_TURN_MPS2 / (speed > 1 ? speed : 1);
    const steer = (ahead < 0 ? -1 : 1) * (free < gripped ? free : gripped);
    const freedom = seen[SEEN.noseLoad]! > 0 ? FREE_NOSE_DOWN : FREE_NOSE_UP;
    const firmness = qS / (qS + 150 * s.areaM2);
    const tendency = (1 - now[NOW.assist]!) * freedom * firmness * (astray / s.yawTimeS);
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
  rate[AT.pitchRate] = pitching / s.pitchInertiaKgM2;
  rate[AT.rollRate] = (roll - p) / s.rollTimeS + wheelsRoll;
};
