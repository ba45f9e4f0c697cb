import { part } from './places.ts';
import type { Shape } from './shape.ts';

const DEEPEST_LEG_M = 0.4; // estimate: of a light undercarriage
const FASTEST_LEG_MPS = 6; // estimate: of a light undercarriage
const TYRE_SLOPE = 6; // side force over load per radian of tyre slip, common practice
const SLIDING_FROM_MPS = 1.5; // our choice: a bound on the sum
const ROLLING_FROM_MPS = 0.3; // our choice: a bound on the sum
const LOOK_FROM_M = 3; // our choice: higher no wheel can touch

/** k s (1 + d s'), never negative; compression and its rate held to what a leg can do. */
const legForce = (stiffness: number, damping: number, compressionM: number, rateMps: number): number => {
  if (compressionM <= 0) return 0;
  const s = compressionM > DEEPEST_LEG_M ? DEEPEST_LEG_M : compressionM;
  const rate =
    rateMps > FASTEST_LEG_MPS ? FASTEST_LEG_MPS : rateMps < -FASTEST_LEG_MPS ? -FASTEST_LEG_MPS : rateMps;
  const force = stiffness * s * (1 + damping * rate);
  return force > 0 ? force : 0;
};

/** Three legs on sloping ground: load, rolling and braking drag, side force, their pitch and roll. */
export const wheels = (s: Shape, now: Float64Array, y: Float64Array, seen: Float64Array): void => {
  const st = part[0]!;
  const ct = part[1]!;
  const cb = part[3]!;
  const rU = part[10]!;
  const uU = part[13]!;
  const above = y[2]! - seen[11]!;
  const middle = above - s.mainZ * uU + s.mainX * st;
  seen[10] = middle - s.mainY * (rU < 0 ? -rU : rU);
  seen[8] = 0;
  seen[9] = 0;
  part[27] = 0;
  part[28] = 0;
  part[29] = 0;
  part[30] = 0;
  if (above > s.mainZ + s.mainY + LOOK_FROM_M) return;
  // A leg that is not down and locked carries nothing
  if (now[17]! < 1) return;

  const sh = part[4]!;
  const ch = part[5]!;
  const slope = part[21]!;
  const ve = y[3]!;
  const vn = y[4]!;
  const sink = slope * (ve * now[21]! + vn * now[22]!) - y[5]!;
  const pitchRate = y[9]! * cb;
  const mainSink = sink - (s.mainX * ct + s.mainZ * st * cb) * pitchRate;
  const rollSink = s.mainY * cb * ct * y[10]!;
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
  seen[8] = main;
  seen[9] = nose;

  const ahead = ve * sh + vn * ch;
  const aside = ve * ch - vn * sh;
  const speed = ahead < 0 ? -ahead : ahead;
  const sense = ahead / (speed > ROLLING_FROM_MPS ? speed : ROLLING_FROM_MPS);
  const roll = -sense * (now[20]! * load + s.brakeFriction * now[7]! * main);
  const slide = (-TYRE_SLOPE * aside) / (speed > SLIDING_FROM_MPS ? speed : SLIDING_FROM_MPS);
  const most = s.sideFriction * now[28]!;
  const grip = slide > most ? most : slide < -most ? -most : slide;
  part[27] = roll * sh + grip * load * ch - slope * load * now[21]!;
  part[28] = roll * ch - grip * load * sh - slope * load * now[22]!;
  part[29] = load;
  part[25] =
    part[25]! + (s.mainX * ct + s.mainZ * st) * main + (s.noseX * ct + s.noseZ * st) * nose + roll * s.mainZ;
  part[30] = (-s.mainY * (right - left) * cb) / s.rollInertiaKgM2;
};
