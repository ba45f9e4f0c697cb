import { cos, sin } from '../../maths/functions.ts';
import { NOW, PART, part, SEEN } from '../places.ts';
import type { Shape } from '../shape.ts';
import { AT } from '../state.ts';
import { BLADES, BLADES_LENGTH, bladeForces } from './blades.ts';

const STOPPED_DRAG = 0.03; // of rho V^2 D^2, estimate
const STANDS_REVPS = 1e-6; // our choice: not to divide by nothing

/** Torque of the closed-throttle engine: holds idle, brakes above it. */
export const idleTorqueNm = (shape: Shape, revps: number): number => {
  const torque = shape.idleTorqueNm - shape.idleTorqueSlope * (revps - shape.idleRevps);
  return torque < -shape.motoringTorqueNm ? -shape.motoringTorqueNm : torque;
};

/**
 * Thrust (N): CT(J) n^2 as a polynomial in n and V, never divided by n. Windmilling, it drags no less than the
 * stopped propeller it slows down to: less would take more power out of the air than its drag gives away.
 */
const propellerThrustN = (s: Shape, density: number, revps: number, axialMps: number): number => {
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

/** Thrust and its moment added to the body's, engine acceleration, and the slip that hands and propeller ask for. */
export const propulsion = (s: Shape, now: Float64Array, y: Float64Array, seen: Float64Array): void => {
  const revps = y[AT.revps]!;
  const density = now[NOW.density]!;
  const u = part[PART.u]!;
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
      turned,
    );
    thrust = turned[BLADES.thrust]!;
    torque = turned[BLADES.torque]!;
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
  part[PART.forward] = part[PART.forward]! + thrust;
  part[PART.pitching] = part[PART.pitching]! + now[NOW.thrustMoment]! * thrust * s.chordM;
  part[PART.spin] = spin;
  seen[SEEN.thrust] = thrust;

  const least = 200 * s.areaM2;
  const tc = thrust > 0 ? thrust / (part[PART.qS]! > least ? part[PART.qS]! : least) : 0;
  part[PART.askedSlip] =
    -s.rudderSlipRad * now[NOW.rudder]! +
    (1 - now[NOW.assist]!) * (s.propellerSlipRadPerTc * tc + s.adverseYawRad * now[NOW.aileron]!);
};
