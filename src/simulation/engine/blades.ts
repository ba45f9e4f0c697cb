import { findRoot } from '../../maths/solve.ts';
import type { Shape } from '../shape.ts';

/**
 * A propeller whose blade angle can change, as one blade element at three quarters of the radius (Drzewiecki's
 * representative section) in the flow that momentum theory gives the disk. With x the speed of the section round
 * the axis and V + v the flow through the disk:
 *   cl W = a (sin(beta) x - cos(beta) (V + v)),  2 rho A' (V + v) v = lift of the blades along the axis.
 * Power less what the disk takes is S cd W^3 / 2, so that no thrust is above the actuator disk's and no power
 * comes out of the air that drag has not paid for. Angles are of the zero-lift line.
 */

/** Lift of a stalled section, pulling and windmilling, and its drag per unit of lift that is missing (estimates). */
const MOST_LIFT = 1.2;
const LEAST_LIFT = -0.8; // estimate, as above

/** Where thrust and torque are laid. */
export const BLADES = { thrust: 0, torque: 1 } as const;
export const BLADES_LENGTH = 2; // definition: a count

/** Thrust (N) and torque taken (N m) at an engine speed, laid into `into`; `flow` is along the axis. */
export const bladeForces = (
  s: Shape,
  density: number,
  revps: number,
  flowMps: number,
  sinBlade: number,
  cosBlade: number,
  into: Float64Array,
): void => {
  const flow = flowMps > 0 ? flowMps : 0;
  const round = 2 * Math.PI * revps * s.bladeRadiusM;
  const strength = 0.5 * density * s.bladeAreaM2 * s.bladeLift;
  const unturned = sinBlade * round - cosBlade * flow;
  let through = flow;
  if (unturned > 0 && round > 0) {
    const disk = 2 * density * s.diskAreaM2;
    const b = disk * flow + strength * cosBlade * round;
    through += (Math.sqrt(b * b + 4 * disk * strength * round * unturned) - b) / (2 * disk);
  }
  const meets = Math.sqrt(through * through + round * round);
  const perMeets = meets > 1e-9 ? 1 / meets : 0;
  let lift = s.bladeLift * (sinBlade * round - cosBlade * through) * perMeets;
  let stalled = 0;
  if (lift > MOST_LIFT) {
    stalled = lift - MOST_LIFT;
    lift = MOST_LIFT;
  } else if (lift < LEAST_LIFT) {
    stalled = LEAST_LIFT - lift;
    lift = LEAST_LIFT;
  }
  const drag = s.bladeDrag + s.bladeDragPerLift2 * lift * lift + stalled / s.bladeLift;
  const half = 0.5 * density * s.bladeAreaM2 * meets;
  into[BLADES.thrust] = half * (lift * round - drag * through);
  into[BLADES.torque] = half * (lift * through + drag * round) * s.bladeRadiusM;
};

const MOST_RATE_RADPS = 0.2; // estimate: oil through a governor
/** Blade angle a second for each rev/s above the lever's, and for each rev/s gained (estimates). */
const BY_SPEED = 0.018;
const BY_CHANGE = 0.009; // estimate, as above

/** Engine speed that the propeller lever asks the governor for. */
export const governedRevps = (s: Shape, lever: number): number =>
  s.lowestRevps + lever * (s.ratedRevps - s.lowestRevps);

/** The lever's place for an engine speed. */
export const leverFor = (s: Shape, revps: number): number =>
  (revps - s.lowestRevps) / (s.ratedRevps - s.lowestRevps);

/**
 * Blade angle after a step: the governor turns the blades coarser when the engine is fast and when it gains speed,
 * at the rate that its oil allows, between the stops.
 */
export const bladeAfter = (
  s: Shape,
  bladeRad: number,
  lever: number,
  revps: number,
  gainedRevps: number,
  dtS: number,
): number => {
  const wanted = BY_SPEED * (revps - governedRevps(s, lever)) * dtS + BY_CHANGE * gainedRevps;
  const most = MOST_RATE_RADPS * dtS;
  const next = bladeRad + (wanted > most ? most : wanted < -most ? -most : wanted);
  return next < s.fineRad ? s.fineRad : next > s.coarseRad ? s.coarseRad : next;
};

/** Where a lever's engine speed or a stop leaves the propeller at rest with an engine torque. */
export interface Turning {
  readonly revps: number;
  readonly bladeRad: number;
}

const FASTEST_REVPS = 90; // our choice: a bound on the search

/**
 * Engine speed and blade angle at which the propeller takes just this torque, `torqueAt(revps, blade)`: on the fine
 * stop while that is slower than the lever asks, else governed, else on the coarse stop and too fast.
 */
export const turningAt = (
  s: Shape,
  lever: number,
  torqueNm: number,
  torqueAt: (revps: number, bladeRad: number) => number,
): Turning => {
  const wanted = governedRevps(s, lever);
  const onStop = (bladeRad: number): number =>
    findRoot((revps) => torqueAt(revps, bladeRad) - torqueNm, 1, FASTEST_REVPS, 1e-4) ?? FASTEST_REVPS;
  const fine = onStop(s.fineRad);
  if (fine <= wanted) return { revps: fine, bladeRad: s.fineRad };
  const blade = findRoot((bladeRad) => torqueAt(wanted, bladeRad) - torqueNm, s.fineRad, s.coarseRad, 1e-6);
  if (blade !== undefined) return { revps: wanted, bladeRad: blade };
  return { revps: onStop(s.coarseRad), bladeRad: s.coarseRad };
};
