import { NOW, PART, part, SEEN } from '../places.ts';
import type { Shape } from '../shape.ts';
import { AT } from '../state.ts';

const DEEPEST_LEG_M = 0.4; // estimate: of a light undercarriage
const FASTEST_LEG_MPS = 6; // estimate: of a light undercarriage
const TYRE_SLOPE = 6; // side force over load per radian of tyre slip, common practice
const SLIDING_FROM_MPS = 1.5; // our choice: a bound on the sum
const ROLLING_FROM_MPS = 0.3; // our choice: a bound on the sum
export const LOOK_FROM_M = 3; // our choice: higher no wheel can touch

/** k s (1 + d s'), never negative; compression and its rate held to what a leg can do. */
const legForce = (stiffness: number, damping: number, compressionM: number, rateMps: number): number => {
  if (compressionM <= 0) return 0;
  const s = compressionM > DEEPEST_LEG_M ? DEEPEST_LEG_M : compressionM;
  const rate =
    rateMps > FASTEST_LEG_MPS ? FASTEST_LEG_MPS : rateMps < -FASTEST_LEG_MPS ? -FASTEST_LEG_MPS : rateMps;
  const force = stiffness * s * (1 + damping * rate);
  return force > 0 ? force : 0;
};

/**
 * Three legs on sloping ground: load, rolling and braking drag, side force, their pitch and roll. Adds to the pitching
 * moment in `part`, and lays there what the wheels do else.
 */
export const wheels = (s: Shape, now: Float64Array, y: Float64Array, seen: Float64Array): void => {
  const st = part[PART.sinPitch]!;
  const ct = part[PART.cosPitch]!;
  const cb = part[PART.cosBank]!;
  const rU = part[PART.rightUp]!;
  const uU = part[PART.upUp]!;
  const above = y[AT.up]! - seen[SEEN.groundUp]!;
  const middle = above - s.mainZ * uU + s.mainX * st;
  part[PART.wheelsEast] = 0;
  part[PART.wheelsNorth] = 0;
  part[PART.wheelsUp] = 0;
  part[PART.wheelsRoll] = 0;

  const sh = part[PART.sinHeading]!;
  const ch = part[PART.cosHeading]!;
  const slope = part[PART.slopeHere]!;
  const ve = y[AT.velocityEast]!;
  const vn = y[AT.velocityNorth]!;
  const sink = slope * (ve * now[NOW.sinRunway]! + vn * now[NOW.cosRunway]!) - y[AT.velocityUp]!;
  const pitchRate = y[AT.pitchRate]! * cb;
  const mainSink = sink - (s.mainX * ct + s.mainZ * st * cb) * pitchRate;
  const rollSink = s.mainY * cb * ct * y[AT.rollRate]!;
  const right = legForce(s.mainStiffness, s.legDampingSpm, -(middle + s.mainY * rU), mainSink + rollSink);
  const left = legForce(s.mainStiffness, s.legDampingSpm, -(middle - s.mainY * rU), mainSink - rollSink);
  const nose = legForce(
    s.noseStiffness,
    s.legDampingSpm,
    -(above + s.noseX * st - s.noseZ * uU),
    sink - (s.noseX * ct + s.noseZ * st * cb) * pitchRate,
  );
  const main = right + left;
  const load = main + nose;
  if (load === 0) return;
  seen[SEEN.mainLoad] = main;
  seen[SEEN.noseLoad] = nose;

  const ahead = ve * sh + vn * ch;
  const aside = ve * ch - vn * sh;
  const speed = ahead < 0 ? -ahead : ahead;
  const sense = ahead / (speed > ROLLING_FROM_MPS ? speed : ROLLING_FROM_MPS);
  const roll = -sense * (now[NOW.rollingFriction]! * load + s.brakeFriction * now[NOW.brake]! * main);
  const slide = (-TYRE_SLOPE * aside) / (speed > SLIDING_FROM_MPS ? speed : SLIDING_FROM_MPS);
  const most = s.sideFriction * now[NOW.sideGrip]!;
  const grip = slide > most ? most : slide < -most ? -most : slide;
  part[PART.wheelsEast] = roll * sh + grip * load * ch - slope * load * now[NOW.sinRunway]!;
  part[PART.wheelsNorth] = roll * ch - grip * load * sh - slope * load * now[NOW.cosRunway]!;
  part[PART.wheelsUp] = load;
  part[PART.pitching] =
    part[PART.pitching]! +
    (s.mainX * ct + s.mainZ * st) * main +
    (s.noseX * ct + s.noseZ * st) * nose +
    roll * s.mainZ;
  part[PART.wheelsRoll] = (-s.mainY * (right - left) * cb) / s.rollInertiaKgM2;
};
