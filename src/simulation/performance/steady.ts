import { type AirColumn, columnDensityKgpm3 } from '../../atmosphere/air.ts';
import { tasFromIas } from '../../atmosphere/airspeed.ts';
import { asin, atan, cos, sin } from '../../maths/functions.ts';
import { solveNewton } from '../../maths/solve.ts';
import { degFromRad, fpmFromMps, ktFromMps, rpmFromRevps } from '../../units/conversions.ts';
import { governedRevps } from '../engine/blades.ts';
import { engineShare } from '../engine/engine.ts';
import { leanedMixture, mixtureShare } from '../engine/mixture.ts';
import { idleTorqueNm, propellerAt } from '../engine/propeller.ts';
import { derivative } from '../motion/forces.ts';
import { INTEGRATED, NOW, NOW_LENGTH, SEEN, SEEN_LENGTH } from '../places.ts';
import { flapEffect, newFlapEffect, type Shape } from '../shape.ts';
import { AT } from '../state.ts';

/** What is asked of a steady state; exactly one of the last four decides the flight path. */
export interface SteadyRequest {
  readonly iasMps: number;
  /** Above sea level. */
  readonly altitudeM: number;
  readonly flapDeg: number;
  readonly gear: 0 | 1;
  readonly bankRad: number;
  readonly carbHeat: 0 | 1;
  /** Propeller lever, fully forward when not given; without one it does nothing. */
  readonly propeller?: number;
  /** Mixture lever, where good hands put it when not given. */
  readonly mixture?: number;
  /** Relative to the air, + up. */
  readonly flightPathRad?: number;
  readonly verticalSpeedMps?: number;
  readonly revps?: number;
  readonly throttle?: 0 | 1;
}

/** A steady state relative to the air. */
export interface Steady {
  readonly tasMps: number;
  readonly alphaRad: number;
  readonly pitchRad: number;
  readonly bankRad: number;
  readonly flightPathRad: number;
  readonly verticalSpeedMps: number;
  readonly turnRateRadps: number;
  readonly pitchRateRadps: number;
  readonly rollRateRadps: number;
  readonly revps: number;
  readonly throttle: number;
  readonly propeller: number;
  readonly mixture: number;
  /** Of the blades of a constant-speed propeller, else 0. */
  readonly bladeRad: number;
  /** Total elevator, trailing edge down positive. */
  readonly elevatorRad: number;
  /** Wheel position that carries it hands off; beyond ±1 the wheel cannot. */
  readonly trim: number;
  readonly loadFactor: number;
}

export type SteadyResult =
  | { readonly ok: true; readonly steady: Steady }
  /** Why not, as a sentence without a full stop, with the nearest possible state where one is known. */
  | { readonly ok: false; readonly why: string };

const ALOFT_M = 1000; // our choice: out of ground effect
/** Guess of the angle at which the blades meet the air. */
const BLADE_MEETS_RAD = 0.06; // estimate: where the search begins
const y = new Float64Array(INTEGRATED);
const rate = new Float64Array(INTEGRATED);
const seen = new Float64Array(SEEN_LENGTH);
const now = new Float64Array(NOW_LENGTH);

/** The wheel position whose tab carries this much elevator. */
const trimFor = (shape: Shape, elevatorRad: number): number =>
  elevatorRad <= 0 ? -elevatorRad / shape.trimUpRad : -elevatorRad / shape.trimDownRad;

/** How the propeller stands: on a blade angle with the engine speed to be found, or the other way round. */
type Propeller =
  | { readonly bladeRad: number; readonly revps: null }
  | { readonly bladeRad: null; readonly revps: number };

const LITTLE_REVPS = 1e-6; // our choice: not to divide by nothing

const words = (request: SteadyRequest): string =>
  `${ktFromMps(request.iasMps).toFixed(0)} kt with flap ${request.flapDeg.toFixed(0)}`;

/**
 * Solves for the steady state (level, climbing, descending or turning, in balance) that this aeroplane flies at
 * an indicated speed: pitch, angle of attack, elevator, engine speed, turn rate. Uses the very `derivative` that
 * flies. Returns a sentence when the aeroplane cannot: below its stalling speed, beyond its power or elevator.
 */
export const solveSteady = (shape: Shape, air: AirColumn, request: SteadyRequest): SteadyResult => {
  if (!shape.governed) return solveWith(shape, air, request, { bladeRad: 0, revps: null });
  const revps = governedRevps(shape, request.propeller ?? 1);
  if (request.revps !== undefined && request.revps > revps - LITTLE_REVPS)
    return {
      ok: false,
      why: `the propeller is governed to ${rpmFromRevps(revps).toFixed(0)} rpm, which says nothing of the power; ask for a flight path or less than that`,
    };
  // On the fine stop while that is slower than the lever asks; else governed; else on the coarse stop
  const fine = solveWith(shape, air, request, { bladeRad: shape.fineRad, revps: null });
  if (fine.ok && fine.steady.revps <= revps) return fine;
  if (request.revps !== undefined) return fine;
  const governed = solveWith(shape, air, request, { bladeRad: null, revps });
  if (!governed.ok) return governed;
  if (governed.steady.bladeRad < shape.fineRad) return fine;
  if (governed.steady.bladeRad <= shape.coarseRad) return governed;
  return solveWith(shape, air, request, { bladeRad: shape.coarseRad, revps: null });
};

const solveWith = (
  shape: Shape,
  air: AirColumn,
  request: SteadyRequest,
  propeller: Propeller,
): SteadyResult => {
  const density = columnDensityKgpm3(air, request.altitudeM);
  const tasMps = tasFromIas(request.iasMps, density);
  const flap = flapEffect(shape, request.flapDeg, newFlapEffect());
  const mixture = request.mixture ?? leanedMixture(density);
  const share =
    engineShare(density) * mixtureShare(mixture, density) * (1 - shape.heatLoss * request.carbHeat);
  const given = request.throttle;
  const pathGiven = request.flightPathRad;
  const climbGiven = request.verticalSpeedMps;
  const revpsGiven = request.revps;
  const count = [given, pathGiven, climbGiven, revpsGiven].filter((x) => x !== undefined).length;
  if (count !== 1)
    return {
      ok: false,
      why: 'a steady state needs exactly one of flight path, vertical speed, rpm and throttle',
    };

  const qS = 0.5 * density * tasMps * tasMps * shape.areaM2;
  const cosBank = cos(request.bankRad);
  const needed = shape.weightN / cosBank / qS;
  if (needed > flap.maximumLift * 1.03) {
    const least = request.iasMps * Math.sqrt(needed / flap.maximumLift);
    return {
      ok: false,
      why: `${words(request)} is below the stalling speed; the nearest possible is ${ktFromMps(least * 1.03).toFixed(0)} kt`,
    };
  }

  now.fill(0);
  now[NOW.density] = density;
  now[NOW.torqueScale] = share;
  now[NOW.flapLift] = flap.lift;
  now[NOW.flapDrag] = flap.drag;
  now[NOW.maximumLift] = flap.maximumLift;
  now[NOW.stallAlpha] = (flap.maximumLift - shape.cl0 - flap.lift) / shape.clAlpha;
  now[NOW.flapMoment] = flap.moment;
  now[NOW.thrustMoment] = flap.thrustMoment;
  now[NOW.gear] = request.gear;
  now[NOW.assist] = 1;
  now[NOW.throttle] = given ?? 0;

  const sinBank = sin(request.bankRad);
  const residuals = (x: readonly number[]): readonly number[] => {
    const [pitch, alpha, elevator, found, turn] = x as [number, number, number, number, number];
    const revps = propeller.revps ?? found;
    if (shape.governed) {
      now[NOW.sinBlade] = sin(propeller.bladeRad ?? found);
      now[NOW.cosBlade] = cos(propeller.bladeRad ?? found);
    }
    lay(tasMps, pitch, alpha, request.bankRad, revps, turn, sinBank);
    now[NOW.elevatorRad] = elevator;
    derivative(shape, now, y, rate, seen);
    const climb = y[AT.velocityUp] as number;
    const along =
      ((rate[AT.velocityEast] as number) * (y[AT.velocityEast] as number) +
        (rate[AT.velocityNorth] as number) * (y[AT.velocityNorth] as number) +
        (rate[AT.velocityUp] as number) * climb) /
      tasMps;
    const path =
      pathGiven !== undefined
        ? (climb - tasMps * sin(pathGiven)) * 2
        : climbGiven !== undefined
          ? (climb - climbGiven) * 2
          : revpsGiven !== undefined
            ? revps - revpsGiven
            : (rate[AT.revps] as number);
    return [
      along,
      rate[AT.velocityUp] as number,
      ((seen[SEEN.yawRate] as number) - turn * cosBank * cos(pitch)) * 10,
      rate[AT.pitchRate] as number,
      path,
    ];
  };

  const alpha0 = (needed - shape.cl0 - flap.lift) / shape.clAlpha;
  const gamma0 = pathGiven ?? (climbGiven !== undefined ? climbGiven / tasMps : 0);
  const turning = propeller.revps === null;
  const atFirst = turning
    ? (revpsGiven ?? 35)
    : BLADE_MEETS_RAD + atan(tasMps / (2 * Math.PI * propeller.revps * shape.bladeRadiusM));
  const found = solveNewton(
    residuals,
    [alpha0 + gamma0, alpha0, 0, atFirst, (9.8 * sinBank) / cosBank / tasMps],
    [0.1, 0.1, 0.1, turning ? 10 : 0.1, 0.1],
    {
      tolerance: 1e-10,
      lows: [-1.2, -0.3, -1, turning ? 1 : 0.02, -2],
      highs: [1.2, 0.4, 1, turning ? 90 : 1.2, 2],
    },
  );
  if (!found.converged) {
    const path = given === undefined && revpsGiven === undefined;
    const why = path ? beyondPower(shape, air, request, gamma0 > 0 ? 1 : 0) : null;
    return { ok: false, why: why ?? `no steady state was found at ${words(request)}` };
  }
  const [pitchRad, alphaRad, elevatorRad, turned, turnRateRadps] = found.x as [
    number,
    number,
    number,
    number,
    number,
  ];
  residuals(found.x);
  const revps = propeller.revps ?? turned;
  const bladeRad = propeller.bladeRad ?? turned;
  const climb = y[AT.velocityUp] as number;
  const axial = tasMps * cos(alphaRad);
  const idle = idleTorqueNm(shape, revps);
  const torque = propellerAt(shape, density, revps, axial, bladeRad).torqueNm;
  const throttle = given ?? (torque / share - idle) / (shape.ratedTorqueNm - idle);
  if (throttle > 1 + 1e-9 || throttle < -1e-9) {
    const why = beyondPower(shape, air, request, throttle > 1 ? 1 : 0);
    return { ok: false, why: why ?? `no steady state was found at ${words(request)}` };
  }
  if (elevatorRad < -shape.elevatorUpRad || elevatorRad > shape.elevatorDownRad)
    return {
      ok: false,
      why: `${words(request)} needs ${degFromRad(elevatorRad).toFixed(1)} degrees of elevator, beyond its travel`,
    };
  return {
    ok: true,
    steady: {
      tasMps,
      alphaRad,
      pitchRad,
      bankRad: request.bankRad,
      flightPathRad: asin(climb / tasMps),
      verticalSpeedMps: climb,
      turnRateRadps,
      pitchRateRadps: y[AT.pitchRate] as number,
      rollRateRadps: y[AT.rollRate] as number,
      revps,
      throttle: Math.min(1, Math.max(0, throttle)),
      propeller: request.propeller ?? 1,
      mixture,
      bladeRad,
      elevatorRad,
      trim: trimFor(shape, elevatorRad),
      loadFactor: seen[SEEN.loadFactor] as number,
    },
  };
};

/** What is said of a path beyond full power (1) or steeper than no power gives (0); null if even that cannot be flown. */
const beyondPower = (
  shape: Shape,
  air: AirColumn,
  request: SteadyRequest,
  throttle: 0 | 1,
): string | null => {
  const edge = solveSteady(shape, air, { ...atThrottle(request), throttle });
  if (!edge.ok) return null;
  const limit = throttle === 1 ? 'needs more than full power' : 'needs less than no power';
  const { verticalSpeedMps, revps } = edge.steady;
  return `${words(request)} on this path ${limit}; the nearest possible is ${fpmFromMps(verticalSpeedMps).toFixed(0)} ft/min at ${rpmFromRevps(revps).toFixed(0)} rpm`;
};

const atThrottle = (request: SteadyRequest) => ({
  iasMps: request.iasMps,
  altitudeM: request.altitudeM,
  flapDeg: request.flapDeg,
  gear: request.gear,
  bankRad: request.bankRad,
  carbHeat: request.carbHeat,
  ...(request.propeller !== undefined && { propeller: request.propeller }),
  ...(request.mixture !== undefined && { mixture: request.mixture }),
});

/** Lays the state of a balanced steady turn, heading north, well above the ground, into `y`. */
const lay = (
  tasMps: number,
  pitch: number,
  alpha: number,
  bank: number,
  revps: number,
  turn: number,
  sinBank: number,
): void => {
  const st = sin(pitch);
  const ct = cos(pitch);
  const cf = cos(bank);
  const forward = tasMps * cos(alpha);
  const upward = -tasMps * sin(alpha);
  y[AT.east] = 0;
  y[AT.north] = 0;
  y[AT.up] = ALOFT_M;
  y[AT.velocityEast] = upward * sinBank;
  y[AT.velocityNorth] = forward * ct - upward * st * cf;
  y[AT.velocityUp] = forward * st + upward * ct * cf;
  y[AT.pitch] = pitch;
  y[AT.bank] = bank;
  y[AT.heading] = 0;
  y[AT.pitchRate] = turn * sinBank * ct;
  y[AT.rollRate] = -turn * st;
  y[AT.revps] = revps;
};
