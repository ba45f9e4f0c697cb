import { acrossM, alongM, groundHeightM, type Runway } from '../aerodrome/runway.ts';
import type { CircuitPlan, PathPoint } from '../circuit/types.ts';
import { asin, tan } from '../maths/functions.ts';
import type { Model } from '../simulation/model.ts';
import type { Shape } from '../simulation/shape.ts';
import { PLAIN_TASK, type Task } from '../simulation/task.ts';
import { mFromFt, mpsFromKt, radFromDeg } from '../units/conversions.ts';
import { HALF_DENSITY_KGPM3 } from './density.ts';
import { type Habit, learn } from './habits.ts';
import { badGroundOf, type Outline } from './legs/land-ahead.ts';
import { LANDING_FACTOR } from './refusal.ts';
import { aimShiftM, fenceIasMps } from './spot.ts';

/** Ways of flying that a pilot has a habit for. */
export type RegimeName =
  | 'take-off'
  | 'climb'
  | 'cruise'
  | 'downwind'
  | 'abeam'
  | 'base'
  | 'final'
  | 'landing'
  | 'going-around';

/** A corner of the planned circuit, circuit axes. */
export interface Corner {
  readonly fromX: number;
  readonly fromY: number;
  readonly toX: number;
  readonly toY: number;
  readonly bankRad: number;
  /** Left to fly to the ground, from where it begins and from where it ends. */
  readonly toGoFromM: number;
  readonly toGoToM: number;
}

type CornerName = keyof CircuitPlan['turns'];

/** What the pilot knows before the flight: the circuit, the aeroplane's habits, the forecast on the runway. */
export interface Briefing {
  readonly shape: Shape;
  readonly runway: Runway;
  readonly plan: CircuitPlan;
  readonly side: 1 | -1;
  readonly rudderAssist: boolean;
  readonly circuits: number;
  readonly habits: Readonly<Record<RegimeName, Habit>>;
  readonly corners: Readonly<Record<CornerName, Corner>>;
  /** No crosswind turn below this height of the wheels. */
  readonly crosswindTurnM: number;
  /** The planned descent: height of the wheels by what is left to fly, rising. */
  readonly profile: { readonly toGoM: readonly number[]; readonly heightM: readonly number[] };
  readonly approachTangent: number;
  readonly aimGroundM: number;
  readonly eyeHeightM: number;
  /** Forecast across the runway, + pushes towards the circuit side. */
  readonly crosswindMps: number;
  /** Landing beyond here is given up, at first; and never beyond the second. */
  readonly latestTouchdownM: number;
  readonly lastTouchdownM: number;
  /** Beyond the painted aim point, for today's wind. */
  readonly aimShiftM: number;
  /** Aimed at over the threshold. */
  readonly fenceIasMps: number;
  /** What the exercise asks for beyond the plain circuit. */
  readonly task: Task;
  readonly glideIasMps: number;
  /** Woods, water and houses of the map, in circuit axes. */
  readonly badGround: readonly Outline[];
  readonly feel: Feel;
}

/** What hands have learnt about this aeroplane's answers. */
export interface Feel {
  /** Stick gains are learnt at this speed. */
  readonly iasMps: number;
  /** Stalling speed with the landing flap. */
  readonly stallIasMps: number;
  /** Aileron for a roll of one radian a second, times the speed it is done at. */
  readonly aileronMps: number;
  /** Angle of attack that carries the weight, times dynamic pressure. */
  readonly alphaPa: number;
  /** Elevator (trailing edge up) for one radian of angle of attack. */
  readonly elevatorPerAlpha: number;
  /** Throttle for one metre a second of climb at a held speed. */
  readonly powerPerClimb: number;
  /** Elevator for one radian a second of pitching, times the speed. */
  readonly elevatorPerPitchRateM: number;
  /** Elevator to hold the nose up when the ground flattens the flow completely. */
  readonly groundElevatorRad: number;
  /** Bank at the touch that keeps the wing tip well clear of it. */
  readonly steepestLowRad: number;
  /** Bank that balances the slip of full rudder, per pascal of dynamic pressure. */
  readonly slipBankPerPa: number;
  /** Aileron against the roll that full rudder's slip makes. */
  readonly crossedAileron: number;
  /** Right rudder that balances full power at the climbing speed. */
  readonly climbRudder: number;
  /** Rudder that goes with the aileron. */
  readonly rudderPerAileron: number;
}

/** Gust and crosswind from which the last stage of flap is left out (AFH-3C p. 191: partial flap, without a figure). */
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

/** The turn to final is not flown steeper than this, whatever the plan: South African FI procedures allow 30 deg. */
export const STEEPEST_FINAL_BANK_RAD = radFromDeg(26);
