import { radFromDeg } from '../../units/conversions.ts';
import { NOW, PART, part, SEEN } from '../places.ts';
import type { Shape } from '../shape.ts';
import { AT } from '../state.ts';

export const STALL_ROUND_RAD = radFromDeg(2); // half width of the stall's rounding (estimate)
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
  const alpha = seen[SEEN.alpha]!;
  const slip = seen[SEEN.slip]!;
  const airspeed = seen[SEEN.airspeed]!;
  const sa = part[PART.sinAlpha]!;
  const ca = part[PART.cosAlpha]!;
  const qS = part[PART.qS]!;
  const maximum = now[NOW.maximumLift]!;
  const perAirspeed = airspeed > 1e-6 ? 1 / airspeed : 0;
  const slope = s.clAlpha;

  const wingHeight = y[AT.up]! + s.wingAboveCgM - seen[SEEN.groundUp]!;
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
  const perSpeed = (drag + side * part[PART.v]! * perAirspeed) * perAirspeed;
  part[PART.forward] = lift * sa - perSpeed * part[PART.u]!;
  part[PART.right] = side - perSpeed * part[PART.v]!;
  part[PART.up] = lift * ca + perSpeed * part[PART.w]!;

  const held =
    alpha > STEADY_ALPHA_RAD ? STEADY_ALPHA_RAD : alpha < -STEADY_ALPHA_RAD ? -STEADY_ALPHA_RAD : alpha;
  const deep = past < 0 ? 0 : past < STALL_MOMENT_RAD ? past : STALL_MOMENT_RAD;
  part[PART.pitching] =
    qS *
      s.chordM *
      (s.cm0 +
        s.cmAlpha * held +
        s.cmElevator * now[NOW.elevatorRad]! +
        now[NOW.flapMoment]! +
        s.cmGround * (1 - effect) +
        STALL_MOMENT * deep) +
    0.25 * now[NOW.density]! * airspeed * s.areaM2 * s.chordM * s.chordM * s.cmQ * y[AT.pitchRate]!;
  seen[SEEN.lift] = lift;
  seen[SEEN.drag] = drag;
};
