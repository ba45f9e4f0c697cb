import { radFromDeg } from '../units/conversions.ts';
import { part } from './places.ts';
import type { Shape } from './shape.ts';

const ROUND_RAD = radFromDeg(2); // half width of the stall's rounding (estimate)
const BREAK_RAD = radFromDeg(12); // from the peak to the flat plate (estimate)
const LOWEST_LIFT = -0.9; // estimate: stall of an inverted wing
const PLATE_LIFT = 1.1; // of sin 2 alpha (estimate)
const PLATE_DRAG = 1.8; // of sin^2 alpha (estimate)
const STEADY_ALPHA_RAD = 0.4; // beyond it the tail's moment no longer grows (estimate)
/** Nose-down moment per radian past the rounding's start, and the most of it (estimates). */
const STALL_MOMENT = -0.7;
const STALL_MOMENT_RAD = 0.135; // estimate

/** Wieselsberger's factor on induced drag at h/b, clamped at 1/15, blended to 1 at h = b. */
export const groundEffect = (heightOverSpan: number): number => {
  if (heightOverSpan >= 1) return 1;
  const x = heightOverSpan < 1 / 15 ? 1 / 15 : heightOverSpan;
  if (x <= 0.5) return 1 - (1 - 1.32 * x) / (1.05 + 7.4 * x);
  const atHalf = 1 - (1 - 1.32 * 0.5) / (1.05 + 7.4 * 0.5);
  return atHalf + (1 - atHalf) * (x - 0.5) * 2;
};

const smooth = (t: number): number => (t < 1 ? t * t * (3 - 2 * t) : 1);

/**
 * Lift, drag and side force of the airframe as body forces, and its pitching moment. Lift is linear to the stall
 * with a rounded peak of exactly CLmax, then falls to a flat plate, which also holds from behind and inverted.
 */
export const airframe = (s: Shape, now: Float64Array, y: Float64Array, seen: Float64Array): void => {
  const alpha = seen[0]!;
  const slip = seen[1]!;
  const airspeed = seen[2]!;
  const sa = part[17]!;
  const ca = part[18]!;
  const qS = part[20]!;
  const maximum = now[14]!;
  const perAirspeed = airspeed > 1e-6 ? 1 / airspeed : 0;
  const slope = s.clAlpha;

  const wingHeight = y[2]! + s.wingAboveCgM - seen[11]!;
  const effect = wingHeight < s.spanM ? groundEffect(wingHeight / s.spanM) : 1;

  const linear = s.cl0 + now[11]! + slope * alpha;
  const past = alpha - now[13]!;
  let cl = linear;
  let plate = 0;
  if (past > ROUND_RAD) {
    plate = smooth((past - ROUND_RAD) / BREAK_RAD);
    cl = (1 - plate) * (maximum - 1.5 * (past - ROUND_RAD)) + plate * PLATE_LIFT * 2 * sa * ca;
  } else if (past > -ROUND_RAD) {
    const t = past + ROUND_RAD;
    cl = maximum - slope * ROUND_RAD + slope * (t - (t * t) / (4 * ROUND_RAD));
  } else if (linear < LOWEST_LIFT) {
    plate = smooth((LOWEST_LIFT - linear) / slope / BREAK_RAD);
    cl = (1 - plate) * LOWEST_LIFT + plate * PLATE_LIFT * 2 * sa * ca;
  }
  const cd =
    s.cd0 +
    now[12]! +
    now[17]! * s.cdGear +
    s.inducedFactor * effect * cl * cl * (1 - plate) +
    s.cdSlip * slip * slip +
    plate * PLATE_DRAG * sa * sa;
  const lift = qS * cl;
  const drag = qS * cd;
  // The side force lies across the airflow: what it would take along it is in the slip drag already
  const side = qS * s.cyBeta * slip;
  const perSpeed = (drag + side * part[15]! * perAirspeed) * perAirspeed;
  part[22] = lift * sa - perSpeed * part[14]!;
  part[23] = side - perSpeed * part[15]!;
  part[24] = lift * ca + perSpeed * part[16]!;

  const held =
    alpha > STEADY_ALPHA_RAD ? STEADY_ALPHA_RAD : alpha < -STEADY_ALPHA_RAD ? -STEADY_ALPHA_RAD : alpha;
  const deep = past < 0 ? 0 : past < STALL_MOMENT_RAD ? past : STALL_MOMENT_RAD;
  part[25] =
    qS *
      s.chordM *
      (s.cm0 +
        s.cmAlpha * held +
        s.cmElevator * now[4]! +
        now[15]! +
        s.cmGround * (1 - effect) +
        STALL_MOMENT * deep) +
    0.25 * now[3]! * airspeed * s.areaM2 * s.chordM * s.chordM * s.cmQ * y[9]!;
  seen[13] = lift;
  seen[14] = drag;
};
