import type { Runway } from '../../aerodrome/runway.ts';
import { tasFromIas } from '../../atmosphere/airspeed.ts';
import { findRoot } from '../../maths/solve.ts';
import { turningAt } from '../../simulation/engine/blades.ts';
import { engineShare } from '../../simulation/engine/engine.ts';
import { leanedMixture, mixtureShare } from '../../simulation/engine/mixture.ts';
import { propellerAt, propellerTorqueNm } from '../../simulation/engine/propeller.ts';
import { ROLLING_FRICTION } from '../../simulation/model.ts';
import type { Shape } from '../../simulation/shape.ts';
import { G0_MPS2 } from '../../units/constants.ts';
import { mpsFromKt } from '../../units/conversions.ts';

const STEP_S = 0.1;
const LONGEST_S = 120;
/** From the stick coming back to the wheels leaving the ground, gaining speed all the while (common practice). */
const ROTATING_S = 2;
/** Mean of short, firm applications of the brakes, in g (common practice). */
const MEAN_BRAKING_G = 0.2;
/** The wheels touch this much above the stall. */
const TOUCHDOWN_OVER_STALL = 1.05;

/** True stalling speed with a stage of flap, wings level. */
export const stallTasMps = (shape: Shape, stage: number, densityKgpm3: number): number =>
  Math.sqrt(
    (2 * shape.weightN) /
      (densityKgpm3 * shape.areaM2 * shape.aeroplane.flap.stages[stage]!.maximumLiftCoefficient),
  );

/** Through the air as the main wheels touch, with the landing flap. */
export const touchTasMps = (shape: Shape, densityKgpm3: number): number =>
  TOUCHDOWN_OVER_STALL * stallTasMps(shape, shape.aeroplane.plan.landingStage, densityKgpm3);

/** What the wheels leave the ground with. */
export interface TakeOffRun {
  /** Infinite when the aeroplane never gets there. */
  readonly runM: number;
  /** Through the air at the lift-off. */
  readonly liftOffMps: number;
}

const NEVER: TakeOffRun = { runM: Number.POSITIVE_INFINITY, liftOffMps: 0 };

/** Torque at full throttle in this air, leaned for it. */
export const fullTorqueNm = (shape: Shape, densityKgpm3: number): number =>
  shape.ratedTorqueNm * engineShare(densityKgpm3) * mixtureShare(leanedMixture(densityKgpm3), densityKgpm3);

/**
 * Ground run at full throttle to the lift-off: m dV/dt = T - D - mu (W - L) - W slope, with the propeller
 * where engine and propeller torque agree. The headwind is the one at the height of the wing, not the reported
 * one; the nose is raised at `rotateIasMps`. A sum for planning; the step flies the real one.
 */
export function takeOffRun(
  shape: Shape,
  runway: Runway,
  densityKgpm3: number,
  headwindMps: number,
  rotateIasMps = mpsFromKt(shape.aeroplane.speeds.rotateKt),
): TakeOffRun {
  const stage = shape.aeroplane.flap.stages[shape.aeroplane.plan.takeOffStage]!;
  const torqueNm = fullTorqueNm(shape, densityKgpm3);
  const lift = shape.cl0 + stage.liftCoefficient;
  const drag = shape.cd0 + shape.cdGear + stage.dragCoefficient + 0.5 * shape.inducedFactor * lift * lift;
  const friction = ROLLING_FRICTION[runway.surface];
  const rotateMps = tasFromIas(rotateIasMps, densityKgpm3);
  let airspeedMps = headwindMps;
  let runM = 0;
  let rotatingS = 0;
  for (let timeS = 0; timeS < LONGEST_S; timeS += STEP_S) {
    if (rotatingS >= ROTATING_S) return { runM, liftOffMps: airspeedMps };
    if (airspeedMps >= rotateMps) rotatingS += STEP_S;
    const axialMps = Math.max(0, airspeedMps);
    const qS = 0.5 * densityKgpm3 * axialMps * axialMps * shape.areaM2;
    const thrustN = fullThrustN(shape, densityKgpm3, torqueNm, axialMps);
    const onWheelsN = Math.max(0, shape.weightN - qS * lift);
    const netN = thrustN - qS * drag - friction * onWheelsN - shape.weightN * runway.slope;
    if (netN <= 0) return NEVER;
    airspeedMps += (netN / shape.massKg) * STEP_S;
    runM += (airspeedMps - headwindMps) * STEP_S;
  }
  return NEVER;
}

/** Thrust where engine and propeller torque agree, the propeller lever fully forward. */
export function fullThrustN(shape: Shape, densityKgpm3: number, torqueNm: number, axialMps: number): number {
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
  const overGroundMps = Math.max(0, touchTasMps(shape, densityKgpm3) - headwindMps);
  const slowingMps2 = G0_MPS2 * Math.max(0.05, MEAN_BRAKING_G + runway.slope);
  return (overGroundMps * overGroundMps) / (2 * slowingMps2);
}
