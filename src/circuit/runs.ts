import type { Runway } from '../aerodrome/runway.ts';
import { tasFromIas } from '../atmosphere/airspeed.ts';
import { findRoot } from '../maths/solve.ts';
import { turningAt } from '../simulation/blades.ts';
import { engineShare } from '../simulation/engine.ts';
import { leanedMixture, mixtureShare } from '../simulation/mixture.ts';
import { ROLLING_FRICTION } from '../simulation/model.ts';
import { propellerAt, propellerTorqueNm } from '../simulation/propeller.ts';
import type { Shape } from '../simulation/shape.ts';
import { G0_MPS2 } from '../units/constants.ts';
import { mpsFromKt } from '../units/conversions.ts';

const STEP_S = 0.1;
const LONGEST_S = 120;
/** The wheels leave the ground this much above the speed at which the nose is raised (common practice). */
const LIFT_OFF_OVER_ROTATION_KT = 3;
/** Mean of short, firm applications of the brakes, in g (common practice). */
const MEAN_BRAKING_G = 0.2;
/** The wheels touch this much above the stall. */
const TOUCHDOWN_OVER_STALL = 1.05;

/**
 * Ground run at full throttle to the lift-off: m dV/dt = T - D - mu (W - L) - W slope, with the propeller
 * where engine and propeller torque agree. A sum for planning; the step flies the real one.
 * Infinite when the aeroplane never gets there.
 */
export function takeOffRunM(shape: Shape, runway: Runway, densityKgpm3: number, headwindMps: number): number {
  const stage = shape.aeroplane.flap.stages[shape.aeroplane.plan.takeOffStage]!;
  const mixture = mixtureShare(leanedMixture(densityKgpm3), densityKgpm3);
  const torqueNm = shape.ratedTorqueNm * engineShare(densityKgpm3) * mixture;
  const lift = shape.cl0 + stage.liftCoefficient;
  const drag = shape.cd0 + shape.cdGear + stage.dragCoefficient + 0.5 * shape.inducedFactor * lift * lift;
  const friction = ROLLING_FRICTION[runway.surface];
  const leaveMps = tasFromIas(
    mpsFromKt(shape.aeroplane.speeds.rotateKt + LIFT_OFF_OVER_ROTATION_KT),
    densityKgpm3,
  );
  let airspeedMps = headwindMps;
  let runM = 0;
  for (let timeS = 0; timeS < LONGEST_S; timeS += STEP_S) {
    if (airspeedMps >= leaveMps) return runM;
    const axialMps = Math.max(0, airspeedMps);
    const qS = 0.5 * densityKgpm3 * axialMps * axialMps * shape.areaM2;
    const thrustN = fullThrustN(shape, densityKgpm3, torqueNm, axialMps);
    const onWheelsN = Math.max(0, shape.weightN - qS * lift);
    const netN = thrustN - qS * drag - friction * onWheelsN - shape.weightN * runway.slope;
    if (netN <= 0) return Number.POSITIVE_INFINITY;
    airspeedMps += (netN / shape.massKg) * STEP_S;
    runM += (airspeedMps - headwindMps) * STEP_S;
  }
  return Number.POSITIVE_INFINITY;
}

/** Thrust where engine and propeller torque agree, the propeller lever fully forward. */
function fullThrustN(shape: Shape, densityKgpm3: number, torqueNm: number, axialMps: number): number {
  if (shape.governed) {
    const { revps, bladeRad } = turningAt(
      shape,
      1,
      torqueNm,
      (n, blade) => propellerAt(shape, densityKgpm3, n, axialMps, blade).torqueNm,
    );
    return propellerAt(shape, densityKgpm3, revps, axialMps, bladeRad).thrustN;
  }
  const balance = (revps: number): number =>
    propellerTorqueNm(shape, densityKgpm3, revps, axialMps) - torqueNm;
  const revps = findRoot(balance, 1, 90, 1e-3) ?? 0;
  return propellerAt(shape, densityKgpm3, revps, axialMps, 0).thrustN;
}

/** From the wheels' touch to the stop with the landing flap, V^2 / 2a at the mean braking of a careful pilot. */
export function landingRunM(shape: Shape, runway: Runway, densityKgpm3: number, headwindMps: number): number {
  const stage = shape.aeroplane.flap.stages[shape.aeroplane.plan.landingStage]!;
  const stallMps = Math.sqrt(
    (2 * shape.weightN) / (densityKgpm3 * shape.areaM2 * stage.maximumLiftCoefficient),
  );
  const overGroundMps = Math.max(0, TOUCHDOWN_OVER_STALL * stallMps - headwindMps);
  const slowingMps2 = G0_MPS2 * Math.max(0.05, MEAN_BRAKING_G + runway.slope);
  return (overGroundMps * overGroundMps) / (2 * slowingMps2);
}
