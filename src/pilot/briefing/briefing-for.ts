import { acrossM, alongM, groundHeightM } from '../../aerodrome/runway.ts';
import type { CircuitPlan, PathPoint } from '../../circuit/types.ts';
import { asin, tan } from '../../maths/functions.ts';
import type { Model } from '../../simulation/model.ts';
import { PLAIN_TASK } from '../../simulation/task.ts';
import { mFromFt, mpsFromKt, radFromDeg } from '../../units/conversions.ts';
import { aimShiftM, fenceIasMps } from '../spot.ts';
import { badGroundOf } from './bad-ground.ts';
import type { Briefing, Corner, CornerName } from './briefing.ts';
import { HALF_DENSITY_KGPM3 } from './density.ts';
import { type Habit, learn } from './habits.ts';
import { LANDING_FACTOR } from './refusal.ts';

/** Gust and crosswind that leave out the last stage of flap (FAA-H-8083-3C p. 9-20: partial flap, no figure). */
const GUSTY_MPS = mpsFromKt(4);
const STRONG_CROSSWIND_SHARE = 0.6; // our choice: of the limit, from where a stage less is the habit
/** ACS IV.B: at or within 400 ft beyond the specified point. */
const TOUCHDOWN_ZONE_M = mFromFt(400);

export const briefingFor = (model: Model, plan: CircuitPlan): Briefing => {
  const { runway, shape, scenario } = model;
  const { aeroplane, aerodrome } = scenario;
  const { speeds } = aeroplane;
  const stages = aeroplane.plan;
  const heat: 0 | 1 = aeroplane.engine.carburettor ? 1 : 0;
  const crosswindMps = plan.side * plan.legs.final.crosswindMps;
  const bumpy =
    plan.gustAdditionMps > GUSTY_MPS / 2 ||
    Math.abs(crosswindMps) > STRONG_CROSSWIND_SHARE * mpsFromKt(aeroplane.limits.crosswindKt);
  const landingStage = bumpy ? stages.finalStage : stages.landingStage;
  const circuitM = plan.heightM;
  const kt = mpsFromKt;
  // Half the gust goes on every speed near the ground
  const gusts = plan.gustAdditionMps;
  const endM = plan.legs.final.to.distanceM;
  const retractable = aeroplane.undercarriage.retractable;
  const up = { gear: retractable ? 0 : 1 } as const;
  const round = { propeller: plan.legs.downwind.steady.propeller };
  const downwind = kt(speeds.downwindKt);
  const habits: Briefing['habits'] = {
    'take-off': learn(model, stages.takeOffStage, kt(speeds.climbKt) + gusts, circuitM / 2),
    climb: learn(model, 0, kt(speeds.climbKt) + gusts, circuitM / 2, up),
    cruise: learn(model, 0, downwind, circuitM, { ...up, ...round }),
    downwind: learn(model, stages.downwindStage, downwind, circuitM, { ...up, ...round }),
    abeam: learn(model, stages.downwindStage, downwind, circuitM, { carbHeat: heat, ...round }),
    base: learn(model, stages.baseStage, kt(speeds.baseKt) + gusts, circuitM / 2, { carbHeat: heat }),
    final: learn(model, stages.finalStage, plan.approachIasMps, circuitM / 4, { carbHeat: heat }),
    landing: learn(model, landingStage, plan.approachIasMps, 0),
    'going-around': learn(model, landingStage, kt(speeds.goAroundKt) + gusts, circuitM / 4),
  };
  const zoneEndM = runway.specifiedM + TOUCHDOWN_ZONE_M;
  const lastTouchdownM = runway.surfaceEndM - LANDING_FACTOR * plan.landingRunM;
  const known = {
    shape,
    runway,
    plan,
    side: plan.side,
    rudderAssist: scenario.assists.rudder,
    circuits: scenario.circuits,
    habits,
    corners: {
      crosswind: corner(plan, 'crosswind', endM),
      downwind: corner(plan, 'downwind', endM),
      base: corner(plan, 'base', endM),
      final: corner(plan, 'final', endM),
    },
    crosswindTurnM: Math.min(mFromFt(aerodrome.circuit.crosswindTurnFt), plan.heightM - 1),
    profile: profileOf(plan, endM),
    approachTangent: tan(plan.approachRad),
    aimGroundM: groundHeightM(runway, runway.aimM),
    eyeHeightM: aeroplane.undercarriage.eyeHeightM,
    crosswindMps,
    latestTouchdownM: Math.min(Math.max(runway.landingLengthM / 3, zoneEndM), lastTouchdownM),
    lastTouchdownM,
    task: scenario.task ?? PLAIN_TASK,
    glideIasMps: kt(speeds.glideKt),
    badGround: badGroundOf(aerodrome, runway, plan.side),
    feel: {
      iasMps: kt(speeds.finalKt),
      stallIasMps: Math.sqrt(
        shape.weightN /
          (HALF_DENSITY_KGPM3 *
            shape.areaM2 *
            (aeroplane.flap.stages[landingStage]?.maximumLiftCoefficient ?? 2)),
      ),
      aileronMps: shape.spanM / 2 / shape.rollHelix,
      alphaPa: shape.weightN / shape.areaM2 / shape.clAlpha,
      elevatorPerAlpha: shape.cmAlpha / shape.cmElevator,
      powerPerClimb: powerPerClimb(habits.final),
      elevatorPerPitchRateM: (shape.cmQ / shape.cmElevator) * (shape.chordM / 2),
      groundElevatorRad: shape.cmGround / shape.cmElevator,
      steepestLowRad: Math.min(
        STEEPEST_LOW_RAD,
        TIP_SHARE * asin(Math.min(1, aeroplane.wing.heightM / (shape.spanM / 2 - shape.mainY))),
      ),
      slipBankPerPa: (shape.areaM2 * -shape.cyBeta * shape.rudderSlipRad) / shape.weightN,
      crossedAileron: (shape.rollPerSlip * shape.rudderSlipRad) / shape.rollHelix,
      rudderPerAileron: shape.adverseYawRad / shape.rudderSlipRad,
      climbRudder: (CLIMB_TC * shape.propellerSlipRadPerTc) / shape.rudderSlipRad,
    },
  };
  return { ...known, aimShiftM: aimShiftM(known), fenceIasMps: fenceIasMps(known) };
};

const powerPerClimb = ({ throttles, verticalSpeedsMps }: Habit): number => {
  const last = throttles.length - 1;
  const climb = (verticalSpeedsMps[last] ?? 0) - (verticalSpeedsMps[0] ?? 0);
  return climb > 0.5 ? ((throttles[last] ?? 1) - (throttles[0] ?? 0)) / climb : 0.1;
};

const STEEPEST_LOW_RAD = radFromDeg(10); // estimate
/** Of the bank at which the wing tip meets the ground while one wheel stands on it. */
const TIP_SHARE = 0.7; // our choice: a margin on the wing tip

/** Thrust over dynamic pressure and wing area in a full-power climb of a light single (common practice). */
const CLIMB_TC = 0.13;

const corner = (plan: CircuitPlan, onto: CornerName, endM: number): Corner => {
  const { from, to, bankRad } = plan.turns[onto];
  const x = (p: PathPoint): number => alongM(plan.runway, p.eastM, p.northM);
  const y = (p: PathPoint): number => plan.side * acrossM(plan.runway, p.eastM, p.northM);
  return {
    fromX: x(from),
    fromY: y(from),
    toX: x(to),
    toY: y(to),
    bankRad,
    toGoFromM: endM - from.distanceM,
    toGoToM: endM - to.distanceM,
  };
};

/** From the last part of downwind to the ground, read backwards. */
const profileOf = (plan: CircuitPlan, endM: number): Briefing['profile'] => {
  const beginM = plan.turns.downwind.to.distanceM;
  const points = plan.path.filter((p) => p.distanceM >= beginM && p.distanceM <= endM).reverse();
  return { toGoM: points.map((p) => endM - p.distanceM), heightM: points.map((p) => p.heightM) };
};
