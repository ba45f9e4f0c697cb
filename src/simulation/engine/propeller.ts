import { cos, sin } from '../../maths/functions.ts';
import type { Shape } from '../shape.ts';
import { BLADES, BLADES_LENGTH, bladeForces } from './blades.ts';

const STOPPED_DRAG = 0.03; // of rho V^2 D^2, estimate
export const STANDS_REVPS = 1e-6; // our choice: not to divide by nothing

/** Torque of the closed-throttle engine: holds idle, brakes above it. */
export const idleTorqueNm = (shape: Shape, revps: number): number => {
  const torque = shape.idleTorqueNm - shape.idleTorqueSlope * (revps - shape.idleRevps);
  return torque < -shape.motoringTorqueNm ? -shape.motoringTorqueNm : torque;
};

/**
 * Thrust (N): CT(J) n^2 as a polynomial in n and V, never divided by n. Windmilling, it drags no less than the
 * stopped propeller it slows down to: less would take more power out of the air than its drag gives away.
 */
export const propellerThrustN = (s: Shape, density: number, revps: number, axialMps: number): number => {
  const d = s.diameterM;
  const d2 = d * d;
  if (revps < STANDS_REVPS) return -STOPPED_DRAG * density * axialMps * Math.abs(axialMps) * d2;
  const n2 = revps * revps;
  const v = axialMps > 0 ? axialMps : 0;
  const t = density * d2 * (s.ct0 * n2 * d2 + s.ct1 * revps * v * d + s.ct2 * v * v);
  const turning = s.ctLow * n2 * d2;
  const standing = -STOPPED_DRAG * v * v;
  const low = density * d2 * (turning < standing ? turning : standing);
  return t > low ? t : low;
};

/** Torque the propeller takes (N m): CP(J) n^2 likewise; negative when the air drives it. */
export const propellerTorqueNm = (s: Shape, density: number, revps: number, axialMps: number): number => {
  const d = s.diameterM;
  const d2 = d * d;
  const v = axialMps > 0 ? axialMps : 0;
  return (
    (density * d2 * d * (s.cp0 * revps * revps * d2 + s.cp1 * revps * v * d + s.cp2 * v * v)) / (2 * Math.PI)
  );
};

const turned = new Float64Array(BLADES_LENGTH);

/** Thrust and torque of either kind of propeller at a blade angle (which a fixed one does not have). */
export const propellerAt = (
  s: Shape,
  density: number,
  revps: number,
  axialMps: number,
  bladeRad: number,
): { readonly thrustN: number; readonly torqueNm: number } => {
  if (!s.governed)
    return {
      thrustN: propellerThrustN(s, density, revps, axialMps),
      torqueNm: propellerTorqueNm(s, density, revps, axialMps),
    };
  bladeForces(s, density, revps, axialMps, sin(bladeRad), cos(bladeRad), turned);
  return { thrustN: turned[BLADES.thrust]!, torqueNm: turned[BLADES.torque]! };
};
