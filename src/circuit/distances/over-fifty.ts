/**
 * Distances over an obstacle of 50 ft, as handbooks give them: from standing to 50 ft above the surface, and from
 * 50 ft over the threshold to a stop. The airborne part is energy over what is left of thrust after drag:
 * s = (h + (V2^2 - V1^2) / 2g) / ((T - D) / W), the method of performance textbooks; the ground part is `runs.ts`.
 */

import type { Runway } from '../../aerodrome/runway.ts';
import type { Shape } from '../../simulation/shape.ts';
import { G0_MPS2 } from '../../units/constants.ts';
import { mFromFt } from '../../units/conversions.ts';
import {
  fullThrustN,
  fullTorqueNm,
  landingRunM,
  stallTasMps,
  type TakeOffRun,
  takeOffRun,
  touchTasMps,
} from './runs.ts';

export const OBSTACLE_M = mFromFt(50);
/** Speed at 50 ft over the stall (14 CFR 23.51 and CS-23.51 of old; from memory). */
const OVER_STALL_AT_50_FT = 1.2;

const inducedCd = (shape: Shape, lift: number): number => shape.inducedFactor * lift * lift;

/** Thrust over drag, as a share of the weight, that is left to climb or to gain speed with, at a speed with the take-off flap. */
const excess = (shape: Shape, densityKgpm3: number, tasMps: number): number => {
  const stage = shape.aeroplane.flap.stages[shape.aeroplane.plan.takeOffStage]!;
  const qS = 0.5 * densityKgpm3 * tasMps * tasMps * shape.areaM2;
  const drag = shape.cd0 + shape.cdGear + stage.dragCoefficient + inducedCd(shape, shape.weightN / qS);
  const thrustN = fullThrustN(shape, densityKgpm3, fullTorqueNm(shape, densityKgpm3), tasMps);
  return (thrustN - qS * drag) / shape.weightN;
};

/** Over the ground: seconds of the airborne part times what the headwind takes. */
const overGroundM = (airM: number, meanTasMps: number, headwindMps: number): number =>
  airM - (headwindMps * airM) / meanTasMps;

/** From standing to 50 ft above the surface, metres; infinite where it never gets there. */
export function takeOffTo50FtM(
  shape: Shape,
  runway: Runway,
  densityKgpm3: number,
  headwindMps: number,
  run: TakeOffRun = takeOffRun(shape, runway, densityKgpm3, headwindMps),
): number {
  const { takeOffStage } = shape.aeroplane.plan;
  const at50Mps = Math.max(
    run.liftOffMps,
    OVER_STALL_AT_50_FT * stallTasMps(shape, takeOffStage, densityKgpm3),
  );
  const meanMps = 0.5 * (run.liftOffMps + at50Mps);
  const left = excess(shape, densityKgpm3, meanMps) - runway.slope;
  if (!(left > 0)) return Number.POSITIVE_INFINITY;
  const gainedM = (at50Mps * at50Mps - run.liftOffMps * run.liftOffMps) / (2 * G0_MPS2);
  return run.runM + overGroundM((OBSTACLE_M + gainedM) / left, meanMps, headwindMps);
}

/**
 * From 50 ft at the approach speed, the throttle closed there, to a stop. `dragOverLift` is the mean slope of the
 * glide with the landing flap between the approach speed and the touch.
 */
export function landingFrom50FtM(
  shape: Shape,
  runway: Runway,
  densityKgpm3: number,
  headwindMps: number,
  approachTasMps: number,
  dragOverLift: number,
): number {
  const touchMps = Math.min(approachTasMps, touchTasMps(shape, densityKgpm3));
  const lostM = (approachTasMps * approachTasMps - touchMps * touchMps) / (2 * G0_MPS2);
  const airM = (OBSTACLE_M + lostM) / (dragOverLift + runway.slope);
  return (
    overGroundM(airM, 0.5 * (approachTasMps + touchMps), headwindMps) +
    landingRunM(shape, runway, densityKgpm3, headwindMps)
  );
}
