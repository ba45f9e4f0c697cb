import { atan, atan2, sinCosInto } from '../maths/functions.ts';
import { G0_MPS2 } from '../units/constants.ts';
import type { Shape } from './shape.ts';

/**
 * The flight model's right-hand side: forces and moments from one state, flat and without allocation. The
 * equations, their signs and their sources stand in DEVELOPERS.md, "The model".
 *
 * The twelve integrated numbers, in this order: where the centre of gravity is (east, north, up of the landing
 * threshold, m), its ground velocity (m/s), pitch, bank, heading (rad), pitch rate, roll rate (rad/s, body
 * axes), engine speed (rev/s).
 */
export const INTEGRATED = 12;

/** Constant over one step. `NOW` names the places of its array. */
export const NOW = {
  windEast: 0,
  windNorth: 1,
  windUp: 2,
  density: 3,
  elevatorRad: 4,
  aileron: 5,
  rudder: 6,
  brake: 7,
  /** Torque with the throttle where it is: `torqueScale * (throttle * rated + (1 - throttle) * idle(n))`. */
  throttle: 8,
  torqueScale: 9,
  engineDead: 10,
  flapLift: 11,
  flapDrag: 12,
  stallAlpha: 13,
  maximumLift: 14,
  flapMoment: 15,
  thrustMoment: 16,
  gear: 17,
  /** 1 when the rudder assist balances propeller, aileron and weathercock. */
  assist: 18,
  /** Roll rate of a dropped wing, or 0. */
  wingDropRadps: 19,
  rollingFriction: 20,
  // Of the ground: runway direction, its slope and the extent of the sloping part along it
  sinRunway: 21,
  cosRunway: 22,
  slope: 23,
  slopeFrom: 24,
  slopeTo: 25,
} as const;
export const NOW_LENGTH = 26;

/** What the forces were, for whoever looks: `SEEN` names the places. */
export const SEEN = {
  alpha: 0,
  slip: 1,
  airspeed: 2,
  dynamicPressure: 3,
  thrust: 4,
  /** Specific force along body up and body right, in g. */
  loadFactor: 5,
  ball: 6,
  yawRate: 7,
  mainLoad: 8,
  noseLoad: 9,
  /** Height of the lowest main wheel above the ground below it; negative when the leg is compressed. */
  wheelHeight: 10,
  groundUp: 11,
  /** Force along the heading that would move a standing aeroplane (thrust, air, slope; no friction). */
  push: 12,
  lift: 13,
  drag: 14,
} as const;
export const SEEN_LENGTH = 15;

const FADE_MPS2 = 9; // alpha and slip fade below 3 m/s
const ROUND_RAD = (2 * Math.PI) / 180; // half width of the stall's rounding
const BREAK_RAD = (12 * Math.PI) / 180; // from the peak to the flat plate
const LOWEST_LIFT = -0.9;
const DEEPEST_LEG_M = 0.4;
const TYRE_SLOPE = 6; // side force per radian of tyre slip over load, common practice
const GROUND_TURN_MPS2 = 3.4; // sideways acceleration the steering may ask for
const STOPPED_PROPELLER_DRAG = 0.03; // of rho V^2 D^2, estimate

/** Wieselsberger's factor on induced drag at h/b, clamped at 1/15, blended to 1 at h = b. */
export const groundEffect = (heightOverSpan: number): number => {
  if (heightOverSpan >= 1) return 1;
  const x = heightOverSpan < 1 / 15 ? 1 / 15 : heightOverSpan;
  if (x <= 0.5) return 1 - (1 - 1.32 * x) / (1.05 + 7.4 * x);
  const atHalf = 1 - (1 - 1.32 * 0.5) / (1.05 + 7.4 * 0.5);
  return atHalf + (1 - atHalf) * (x - 0.5) * 2;
};

/** Lift coefficient: linear, a rounded peak of exactly CLmax, then down to a flat plate. */
export const liftCoefficient = (
  alpha: number,
  linear: number,
  slope: number,
  maximum: number,
  stallAlpha: number,
  sin2: number,
): number => {
  const past = alpha - stallAlpha;
  if (past > -ROUND_RAD) {
    if (past < ROUND_RAD) {
      const t = past + ROUND_RAD;
      return maximum - slope * ROUND_RAD + slope * (t - (t * t) / (4 * ROUND_RAD));
    }
    const t = (past - ROUND_RAD) / BREAK_RAD;
    const s = t < 1 ? t * t * (3 - 2 * t) : 1;
    return (1 - s) * (maximum - 1.5 * (past - ROUND_RAD)) + s * 1.1 * sin2;
  }
  if (linear >= LOWEST_LIFT) return linear;
  const t = (LOWEST_LIFT - linear) / slope / BREAK_RAD;
  const s = t < 1 ? t * t * (3 - 2 * t) : 1;
  return (1 - s) * LOWEST_LIFT + s * 1.1 * sin2;
};

/** Torque of the closed-throttle engine: holds idle, brakes above it. */
export const idleTorqueNm = (shape: Shape, revps: number): number => {
  const torque = shape.idleTorqueNm - shape.idleTorqueSlope * (revps - shape.idleRevps);
  return torque < -shape.motoringTorqueNm ? -shape.motoringTorqueNm : torque;
};

/** Thrust (N): a polynomial in n and V, never divided by n; a stopped propeller only drags. */
export const propellerThrustN = (s: Shape, density: number, revps: number, axialMps: number): number => {
  const d = s.diameterM;
  const d2 = d * d;
  if (revps < 1e-6) return -STOPPED_PROPELLER_DRAG * density * axialMps * Math.abs(axialMps) * d2;
  const n2 = revps * revps;
  const v = axialMps > 0 ? axialMps : 0;
  const t = density * d2 * (s.ct0 * n2 * d2 + s.ct1 * revps * v * d + s.ct2 * v * v);
  const low = s.ctLow * density * n2 * d2 * d2;
  return t > low ? t : low;
};

/** Torque the propeller takes (N m); negative when the air drives it. */
export const propellerTorqueNm = (s: Shape, density: number, revps: number, axialMps: number): number => {
  const d = s.diameterM;
  const d2 = d * d;
  const v = axialMps > 0 ? axialMps : 0;
  return (
    (density * d2 * d * (s.cp0 * revps * revps * d2 + s.cp1 * revps * v * d + s.cp2 * v * v)) / (2 * Math.PI)
  );
};

const sc = new Float64Array(2);

/** Fills `rate` with the rates of `y` and `seen` with what the forces were. */
export const derivative = (
  s: Shape,
  now: Float64Array,
  y: Float64Array,
  rate: Float64Array,
  seen: Float64Array,
): void => {
  const up = y[2] as number;
  const ve = y[3] as number;
  const vn = y[4] as number;
  const vu = y[5] as number;
  const q = y[9] as number;
  const p = y[10] as number;
  const revps = y[11] as number;
  sinCosInto(sc, 0, y[6] as number);
  const st = sc[0] as number;
  const ct = sc[1] as number;
  sinCosInto(sc, 0, y[7] as number);
  const sf = sc[0] as number;
  const cf = sc[1] as number;
  sinCosInto(sc, 0, y[8] as number);
  const sh = sc[0] as number;
  const ch = sc[1] as number;

  // Body axes in earth axes: forward, right, up
  const fE = sh * ct;
  const fN = ch * ct;
  const rE = ch * cf + sh * st * sf;
  const rN = -sh * cf + ch * st * sf;
  const rU = -ct * sf;
  const uE = ch * sf - sh * st * cf;
  const uN = -sh * sf - ch * st * cf;
  const uU = ct * cf;

  // Air velocity in body axes (w downward)
  const aE = ve - (now[0] as number);
  const aN = vn - (now[1] as number);
  const aU = vu - (now[2] as number);
  const u = aE * fE + aN * fN + aU * st;
  const v = aE * rE + aN * rN + aU * rU;
  const w = -(aE * uE + aN * uN + aU * uU);
  const v2 = u * u + v * v + w * w;
  const airspeed = Math.sqrt(v2);
  const fade = v2 < FADE_MPS2 ? v2 / FADE_MPS2 : 1;
  const across = Math.sqrt(u * u + w * w);
  const alpha = fade * (u > 0.5 ? atan(w / u) : atan2(w, u));
  const slip = fade * (across > 0.5 ? atan(v / across) : atan2(v, across));
  const sa = across > 1e-9 ? w / across : 0;
  const ca = across > 1e-9 ? u / across : 1;

  const density = now[3] as number;
  const qS = 0.5 * density * v2 * s.areaM2;

  // Ground below
  const along = (y[0] as number) * (now[21] as number) + (y[1] as number) * (now[22] as number);
  const from = now[24] as number;
  const to = now[25] as number;
  const sloping = along > from && along < to;
  const slope = sloping ? (now[23] as number) : 0;
  const groundUp = (now[23] as number) * (along < from ? from : along > to ? to : along);

  // Lift and drag
  const wingHeight = up + s.wingAboveCgM - groundUp;
  const effect = wingHeight < s.spanM ? groundEffect(wingHeight / s.spanM) : 1;
  const stallAlpha = now[13] as number;
  const linear = s.cl0 + (now[11] as number) + s.clAlpha * alpha;
  const cl = liftCoefficient(alpha, linear, s.clAlpha, now[14] as number, stallAlpha, 2 * sa * ca);
  const past = alpha - stallAlpha - ROUND_RAD;
  const under = LOWEST_LIFT - linear;
  let plate = past > 0 ? past / BREAK_RAD : under > 0 ? under / s.clAlpha / BREAK_RAD : 0;
  if (plate > 1) plate = 1;
  const cd =
    s.cd0 +
    (now[12] as number) +
    (now[17] as number) * s.cdGear +
    s.inducedFactor * effect * cl * cl * (1 - plate) +
    s.cdSlip * slip * slip +
    plate * 1.8 * sa * sa;
  const lift = qS * cl;
  const drag = qS * cd;

  // Engine and propeller
  const thrust = propellerThrustN(s, density, revps, u);
  let spin = 0;
  if (revps > 1e-6) {
    const idle = idleTorqueNm(s, revps);
    const throttle = now[8] as number;
    const scale = now[9] as number;
    const engine =
      (now[10] as number) > 0
        ? -s.motoringTorqueNm
        : scale * (throttle * s.ratedTorqueNm + (1 - throttle) * idle);
    spin = (engine - propellerTorqueNm(s, density, revps, u)) / (2 * Math.PI * s.rotatingInertiaKgM2);
  }

  // Body forces of the air
  const dOverV = airspeed > 1e-6 ? drag / airspeed : 0;
  const fx = thrust + lift * sa - dOverV * u;
  const fy = qS * s.cyBeta * slip - dOverV * v;
  const fup = lift * ca + dOverV * w;

  // Pitching moment of the air
  const alphaHeld = alpha > 0.4 ? 0.4 : alpha < -0.4 ? -0.4 : alpha;
  const stallNose =
    past > -ROUND_RAD ? (past < 0.1 ? -(past + ROUND_RAD) * 0.7 : -(0.1 + ROUND_RAD) * 0.7) : 0;
  let pitching =
    qS *
      s.chordM *
      (s.cm0 +
        s.cmAlpha * alphaHeld +
        s.cmElevator * (now[4] as number) +
        (now[15] as number) +
        s.cmGround * (1 - effect) +
        stallNose) +
    0.25 * density * airspeed * s.areaM2 * s.chordM * s.chordM * s.cmQ * q +
    (now[16] as number) * thrust * s.chordM;

  // What the slip tends to: rudder, propeller, aileron
  const assist = now[18] as number;
  const qFloor = qS > 200 * s.areaM2 ? qS : 200 * s.areaM2;
  const tc = thrust > 0 ? thrust / qFloor : 0;
  const asked =
    -s.rudderSlipRad * (now[6] as number) +
    (1 - assist) * (s.propellerSlipRadPerTc * tc + s.adverseYawRad * (now[5] as number));

  // Wheels
  let mainLoad = 0;
  let noseLoad = 0;
  let wheelHeight = 0;
  let gE = 0;
  let gN = 0;
  let gU = 0;
  let rolling = 0;
  const lowest = up - groundUp - s.mainZ * uU + s.mainX * st;
  const half = s.mainY * (rU < 0 ? -rU : rU);
  wheelHeight = lowest - half;
  const nearGround = up - groundUp < s.mainZ + s.mainY + 3;
  if (nearGround) {
    const vAlong = ve * (now[21] as number) + vn * (now[22] as number);
    const sinkRate = vu - slope * vAlong;
    const thetaDot = q * cf;
    const mainSwing = (s.mainX * ct + s.mainZ * st * cf) * thetaDot;
    const rollSwing = s.mainY * cf * ct * p;
    // Right main, left main, nose: compression, its rate, force
    const rightS = -(lowest + s.mainY * rU);
    const leftS = -(lowest - s.mainY * rU);
    const rightRate = -(sinkRate + mainSwing - rollSwing);
    const leftRate = -(sinkRate + mainSwing + rollSwing);
    const right = legForce(s.mainStiffness, s.legDampingSpm, rightS, rightRate);
    const left = legForce(s.mainStiffness, s.legDampingSpm, leftS, leftRate);
    const noseS = -(up - groundUp + s.noseX * st - s.noseZ * uU);
    const noseRate = -(sinkRate + (s.noseX * ct + s.noseZ * st * cf) * thetaDot);
    noseLoad = legForce(s.noseStiffness, s.legDampingSpm, noseS, noseRate);
    mainLoad = right + left;
    const load = mainLoad + noseLoad;
    if (load > 0) {
      const vh = ve * sh + vn * ch;
      const vl = ve * ch - vn * sh;
      const speed = vh < 0 ? -vh : vh;
      const sense = vh / (speed > 0.3 ? speed : 0.3);
      const roll = -sense * ((now[20] as number) * load + s.brakeFriction * (now[7] as number) * mainLoad);
      let side = (-TYRE_SLOPE * vl) / (speed > 1.5 ? speed : 1.5);
      side = side > s.sideFriction ? s.sideFriction : side < -s.sideFriction ? -s.sideFriction : side;
      const lateral = side * load;
      gE = roll * sh + lateral * ch - slope * load * (now[21] as number);
      gN = roll * ch - lateral * sh - slope * load * (now[22] as number);
      gU = load;
      pitching +=
        (s.mainX * ct + s.mainZ * st) * mainLoad + (s.noseX * ct + s.noseZ * st) * noseLoad + roll * s.mainZ;
      rolling = (-s.mainY * (right - left) * cf) / s.rollInertiaKgM2;
    }
  }

  // Accelerations
  const m = s.massKg;
  const accE = (fx * fE + fy * rE + fup * uE + gE) / m;
  const accN = (fx * fN + fy * rN + fup * uN + gN) / m;
  const accU = (fx * st + fy * rU + fup * uU + gU) / m;
  const ball = (accE * rE + accN * rN + accU * rU) / G0_MPS2;
  const load = (accE * uE + accN * uN + accU * uU) / G0_MPS2;

  // Yaw: in the air the rate that lets slip settle on what is asked; on its wheels steering and weathercock
  const uHeld = u > 5 ? u : 5;
  let yaw = (ball * G0_MPS2 - G0_MPS2 * rU + p * w + (fade * airspeed * (slip - asked)) / s.yawTimeS) / uHeld;
  if (mainLoad > 0) {
    const vh = ve * sh + vn * ch;
    const speed = vh < 0 ? -vh : vh;
    const free = speed * (s.steeringRad / s.wheelbaseM);
    const gripped = GROUND_TURN_MPS2 / (speed > 1 ? speed : 1);
    const steer = (vh < 0 ? -1 : 1) * (free < gripped ? free : gripped);
    const freedom = noseLoad > 0 ? 0.15 : 0.45;
    const pressure = qS / (qS + 150 * s.areaM2);
    const tendency = (1 - assist) * freedom * pressure * ((slip - asked) / s.yawTimeS);
    const onWheels = (steer * (now[6] as number) + tendency) * cf;
    const share = mainLoad > 0.5 * s.weightN ? 1 : mainLoad / (0.5 * s.weightN);
    yaw += share * (onWheels - yaw);
  }
  if (yaw > 2) yaw = 2;
  else if (yaw < -2) yaw = -2;

  // Roll
  const helix = (2 * airspeed) / s.spanM;
  const drop = now[19] as number;
  const rollAsked =
    drop !== 0 ? drop : fade * helix * (s.rollHelix * (now[5] as number) + s.rollPerSlip * slip);

  rate[0] = ve;
  rate[1] = vn;
  rate[2] = vu;
  rate[3] = accE;
  rate[4] = accN;
  rate[5] = accU - G0_MPS2;
  const turn = q * sf + yaw * cf;
  const ctHeld = ct > 0.1 ? ct : 0.1;
  rate[6] = q * cf - yaw * sf;
  rate[7] = p + (st / ctHeld) * turn;
  rate[8] = turn / ctHeld;
  rate[9] = pitching / s.pitchInertiaKgM2;
  rate[10] = (rollAsked - p) / s.rollTimeS + rolling;
  rate[11] = spin;

  seen[0] = alpha;
  seen[1] = slip;
  seen[2] = airspeed;
  seen[3] = 0.5 * density * v2;
  seen[4] = thrust;
  seen[5] = load;
  seen[6] = -ball;
  seen[7] = yaw;
  seen[8] = mainLoad;
  seen[9] = noseLoad;
  seen[10] = wheelHeight;
  seen[11] = groundUp;
  seen[12] = fx * ct - slope * s.weightN * (sh * (now[21] as number) + ch * (now[22] as number));
  seen[13] = lift;
  seen[14] = drag;
};

/** k s (1 + d s'), never negative; compression and its rate held to what a leg can do. */
const legForce = (stiffness: number, damping: number, compressionM: number, rateMps: number): number => {
  if (compressionM <= 0) return 0;
  const s = compressionM > DEEPEST_LEG_M ? DEEPEST_LEG_M : compressionM;
  const rate = rateMps > 6 ? 6 : rateMps < -6 ? -6 : rateMps;
  const force = stiffness * s * (1 + damping * rate);
  return force > 0 ? force : 0;
};
