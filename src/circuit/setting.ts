import { groundHeightM, type Runway } from '../aerodrome/runway.ts';
import type { Aerodrome } from '../aerodrome/schema.ts';
import type { Aeroplane } from '../aeroplane/schema.ts';
import { type AirColumn, columnDensityKgpm3 } from '../atmosphere/air.ts';
import { tasFromIas } from '../atmosphere/airspeed.ts';
import { RHO0_KGPM3 } from '../atmosphere/isa.ts';
import { cos, sin } from '../maths/functions.ts';
import { leverFor } from '../simulation/engine/blades.ts';
import { airOf, windOf } from '../simulation/model.ts';
import { type Steady, type SteadyRequest, solveSteady } from '../simulation/performance/steady.ts';
import type { Weather } from '../simulation/scenario.ts';
import type { Shape } from '../simulation/shape.ts';
import { mFromFt, mpsFromFpm, mpsFromKt, radFromDeg, revpsFromRpm } from '../units/conversions.ts';
import { meanWind } from '../wind/profile.ts';
import { landingFrom50FtM, takeOffTo50FtM } from './distances/over-fifty.ts';
import { landingRunM, takeOffRun } from './distances/runs.ts';
import type { WindAt } from './frame.ts';
import type { LayoutRequest } from './layout-request.ts';
import { windOnRunway } from './runway-choice.ts';
import type { CircuitLeg } from './types.ts';

/** Where the aeroplane stands at the start of the take-off roll, beyond the start of the surface. */
export const LINE_UP_M = 8;

/** A start on the upwind leg is taken at this height. */
export const UPWIND_START_M = mFromFt(300);

/**
 * Banks in the circuit: level turns 25, the turn to final 20 and never above 30, climbing turns 15 to 20 degrees
 * (common practice; ceiling of 30 to final: South African flight-instructor procedures). The second row is for
 * circuits too tight for the first.
 */
export const BANKS = [
  { climbingRad: radFromDeg(15), levelRad: radFromDeg(25), finalRad: radFromDeg(20) },
  { climbingRad: radFromDeg(20), levelRad: radFromDeg(30), finalRad: radFromDeg(25) },
] as const;

/** Of an unhurried hand on the ailerons, in and out of a turn (common practice). */
const ROLL_RATE_RADPS = radFromDeg(10);

/** Upper end of what is briefed for base: 400 to 650 ft/min (common practice). */
const STEEPEST_DESCENT_MPS = mpsFromFpm(650);

/** Everything about this aeroplane, place and day that does not depend on how the circuit is chosen. */
export interface Setting {
  readonly shape: Shape;
  readonly aeroplane: Aeroplane;
  readonly aerodrome: Aerodrome;
  readonly runway: Runway;
  readonly weather: Weather;
  readonly air: AirColumn;
  readonly windAt: WindAt;
  readonly iasMps: Readonly<Record<CircuitLeg, number>>;
  readonly flapStage: Readonly<Record<CircuitLeg, number>>;
  /** At the start of each leg: up after take-off, lowered on downwind before the descent. */
  readonly gear: Readonly<Record<CircuitLeg, 0 | 1>>;
  /** Propeller lever on each leg; without one it does nothing. */
  readonly propeller: Readonly<Record<CircuitLeg, number>>;
  readonly gustAdditionMps: number;
  readonly tas: LayoutRequest['tas'];
  readonly climb: LayoutRequest['climb'];
  readonly steepestDescentMps: number;
  readonly rollRateRadps: number;
  readonly rotateIasMps: number;
  readonly takeOffRunM: number;
  readonly landingRunM: number;
  /** Over an obstacle of 50 ft, as handbooks give them. */
  readonly takeOffTo50FtM: number;
  readonly landingFrom50FtM: number;
  /** The same two on a standard day at sea level on level dry tarmac without wind: what factors multiply. */
  readonly standard: { readonly takeOffTo50FtM: number; readonly landingFrom50FtM: number };
  readonly eyeHeightM: number;
  /** Of the glide with the engine stopped, wings level, flap up: speeds through the air. */
  readonly glide: { readonly tasMps: number; readonly sinkMps: number };
  /** Steady state in still air at a height above the threshold; Error sentence when there is none. */
  readonly steadyAt: (
    request: Partial<SteadyRequest> & { iasMps: number },
    heightM: number,
    stage: number,
  ) => Steady;
}

/** Resolves aeroplane, place and day. Throws an Error sentence when the aeroplane cannot climb here. */
export function settle(
  shape: Shape,
  aeroplane: Aeroplane,
  aerodrome: Aerodrome,
  runway: Runway,
  weather: Weather,
): Setting {
  const air = airOf(weather, runway.thresholdElevationM);
  const wind = windOf(weather, runway, aerodrome.terrain);
  const { speeds, plan } = aeroplane;
  const side = runway.circuitSide;
  const circuitM = runway.circuitHeightM;

  const velocity = new Float64Array(2);
  const windAt: WindAt = (heightM) => {
    meanWind(wind, Math.max(0, heightM), velocity);
    const [east, north] = velocity as unknown as [number, number];
    return {
      xMps: east * runway.sinHeading + north * runway.cosHeading,
      yMps: side * (east * runway.cosHeading - north * runway.sinHeading),
    };
  };
  const density = (heightM: number): number => columnDensityKgpm3(air, runway.thresholdElevationM + heightM);
  const tasOf = (iasMps: number, heightM: number): number => tasFromIas(iasMps, density(heightM));

  // Half the gust factor on top of the approach speed (FAA-H-8083-3C p. 9-20; ACS "gust factor applied").
  const gustAdditionMps = weather.gustKt === null ? 0 : mpsFromKt(weather.gustKt - weather.windKt) / 2;
  const fullFlap = plan.finalStage === aeroplane.flap.stages.length - 1;
  const iasMps = {
    upwind: mpsFromKt(speeds.climbKt),
    crosswind: mpsFromKt(speeds.climbKt),
    downwind: mpsFromKt(speeds.downwindKt),
    base: mpsFromKt(speeds.baseKt),
    final: mpsFromKt(fullFlap ? speeds.finalFullFlapKt : speeds.finalKt) + gustAdditionMps,
  };
  const flapStage = {
    upwind: plan.takeOffStage,
    crosswind: 0,
    downwind: plan.downwindStage,
    base: plan.baseStage,
    final: plan.finalStage,
  };

  const raised = aeroplane.undercarriage.retractable ? 0 : 1;
  const gear = { upwind: raised, crosswind: raised, downwind: raised, base: 1, final: 1 } as const;
  const circuitLever = plan.circuitRpm === undefined ? 1 : leverFor(shape, revpsFromRpm(plan.circuitRpm));
  const propeller = { upwind: 1, crosswind: 1, downwind: circuitLever, base: 1, final: 1 };

  const solve = (request: Partial<SteadyRequest> & { iasMps: number }, heightM: number, stage: number) =>
    solveSteady(shape, air, {
      altitudeM: runway.thresholdElevationM + heightM,
      flapDeg: aeroplane.flap.stages[stage]!.deg,
      gear: 1,
      bankRad: 0,
      carbHeat: 0,
      ...request,
    });
  const steadyAt: Setting['steadyAt'] = (request, heightM, stage) => {
    const found = solve(request, heightM, stage);
    if (!found.ok) throw new Error(`${aeroplane.id} at ${aerodrome.id}: ${found.why}`);
    return found.steady;
  };
  const climbing = (leg: 'upwind' | 'crosswind', bankRad: number): number => {
    const request = { iasMps: iasMps[leg], bankRad, throttle: 1, gear: gear[leg] } as const;
    const mps = steadyAt(request, 0.6 * circuitM, flapStage[leg]).verticalSpeedMps;
    if (mps > SLOWEST_CLIMB_MPS) return mps;
    throw new Error(
      `${aeroplane.id} at ${aerodrome.id}: it must climb to fly a circuit, and it cannot today`,
    );
  };
  const idle = (speedMps: number, stage: number, heightM: number): Steady =>
    steadyAt({ iasMps: speedMps, throttle: 0 }, heightM, stage);
  const gliding = { iasMps: mpsFromKt(speeds.glideKt), throttle: 0, gear: raised, propeller: 0 } as const;
  const glide = steadyAt(gliding, circuitM / 2, 0);
  const headwindMps = -windAt(ROLLING_M).xMps;
  const crosswindMps = Math.abs(windOnRunway(runway, weather).crosswindMps);
  const rotateIasMps =
    mpsFromKt(speeds.rotateKt) +
    Math.min(MOST_ADDED_MPS, ADDED_PER_CROSSWIND * crosswindMps + gustAdditionMps);

  const landingGlide = (overApproach: number): number => {
    const { flightPathRad } = idle(overApproach * approachIasMps, plan.landingStage, 0);
    return -sin(flightPathRad) / cos(flightPathRad);
  };
  const approachIasMps = mpsFromKt(
    plan.landingStage === aeroplane.flap.stages.length - 1 ? speeds.finalFullFlapKt : speeds.finalKt,
  );
  const dragOverLift = 0.5 * (landingGlide(1) + landingGlide(SLOWED_TO));
  const level: Runway = { ...runway, surface: 'tarmac', slope: 0 };
  const run = takeOffRun(shape, runway, density(0), headwindMps, rotateIasMps);

  return {
    shape,
    aeroplane,
    aerodrome,
    runway,
    weather,
    air,
    windAt,
    iasMps,
    flapStage,
    gear,
    propeller,
    gustAdditionMps,
    tas: {
      climbMps: tasOf(iasMps.upwind, 0.6 * circuitM),
      downwindMps: tasOf(iasMps.downwind, circuitM),
      baseMps: tasOf(iasMps.base, 0.6 * circuitM),
      finalMps: tasOf(iasMps.final, 0.2 * circuitM),
    },
    climb: {
      upwindMps: climbing('upwind', 0),
      turnMps: climbing('crosswind', BANKS[0].climbingRad),
      crosswindMps: climbing('crosswind', 0),
    },
    steepestDescentMps: Math.min(
      STEEPEST_DESCENT_MPS,
      -idle(iasMps.base, flapStage.base, 0.6 * circuitM).verticalSpeedMps,
    ),
    rollRateRadps: ROLL_RATE_RADPS,
    rotateIasMps,
    takeOffRunM: run.runM,
    landingRunM: landingRunM(shape, runway, density(0), headwindMps),
    takeOffTo50FtM: takeOffTo50FtM(shape, runway, density(0), headwindMps, run),
    landingFrom50FtM: landingFrom50FtM(
      shape,
      runway,
      density(0),
      headwindMps,
      tasOf(approachIasMps + gustAdditionMps, 0),
      dragOverLift,
    ),
    standard: {
      takeOffTo50FtM: takeOffTo50FtM(shape, level, RHO0_KGPM3, 0),
      landingFrom50FtM: landingFrom50FtM(shape, level, RHO0_KGPM3, 0, approachIasMps, dragOverLift),
    },
    eyeHeightM: aeroplane.undercarriage.eyeHeightM,
    glide: { tasMps: glide.tasMps, sinkMps: -glide.verticalSpeedMps },
    steadyAt,
  };
}

/** Of the approach speed, the slowest at which the glide to the touch is taken: still flying. */
const SLOWED_TO = 0.85; // our choice: the mean of the two ends
/** Where the wing meets the wind while the wheels roll. */
const ROLLING_M = 1.5;
/** In a crosswind or gusts off a little faster, positively (common practice: up to 5 kt). */
const ADDED_PER_CROSSWIND = 0.3;
const MOST_ADDED_MPS = mpsFromKt(5);

/** Below 50 ft/min there is no circuit to plan. */
const SLOWEST_CLIMB_MPS = mpsFromFpm(50);

/** Ground under the aim point above the threshold. */
export const aimGroundM = (runway: Runway): number => groundHeightM(runway, runway.aimM);

/** Crosswind turn height above the threshold. */
export const crosswindTurnM = (aerodrome: Aerodrome): number => mFromFt(aerodrome.circuit.crosswindTurnFt);
