import { type AirColumn, columnDensityKgpm3 } from '../atmosphere/air.ts';
import { RHO0_KGPM3 } from '../atmosphere/isa.ts';
import { asin, cos, sin } from '../maths/functions.ts';
import { solveNewton } from '../maths/solve.ts';
import { degFromRad, fpmFromMps, ktFromMps, rpmFromRevps } from '../units/conversions.ts';
import { engineShare } from './engine.ts';
import { derivative } from './forces.ts';
import { INTEGRATED, NOW, NOW_LENGTH, SEEN_LENGTH } from './places.ts';
import { idleTorqueNm, propellerTorqueNm } from './propeller.ts';
import { flapEffect, newFlapEffect, type Shape } from './shape.ts';

/** What is asked of a steady state; exactly one of the last four decides the flight path. */
export interface SteadyRequest {
  readonly iasMps: number;
  /** Above sea level. */
  readonly altitudeM: number;
  readonly flapDeg: number;
  readonly gear: 0 | 1;
  readonly bankRad: number;
  readonly carbHeat: 0 | 1;
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

const ALOFT_M = 1000;
const y = new Float64Array(INTEGRATED);
const rate = new Float64Array(INTEGRATED);
const seen = new Float64Array(SEEN_LENGTH);
const now = new Float64Array(NOW_LENGTH);

/** The wheel position whose tab carries this much elevator. */
export const trimFor = (shape: Shape, elevatorRad: number): number =>
  elevatorRad <= 0 ? -elevatorRad / shape.trimUpRad : -elevatorRad / shape.trimDownRad;

const words = (request: SteadyRequest): string =>
  `${ktFromMps(request.iasMps).toFixed(0)} kt with flap ${request.flapDeg.toFixed(0)}`;

/**
 * Solves for the steady state (level, climbing, descending or turning, in balance) that this aeroplane flies at
 * an indicated speed: pitch, angle of attack, elevator, engine speed, turn rate. Uses the very `derivative` that
 * flies. Returns a sentence when the aeroplane cannot: below its stalling speed, beyond its power or elevator.
 */
export const solveSteady = (shape: Shape, air: AirColumn, request: SteadyRequest): SteadyResult => {
  const density = columnDensityKgpm3(air, request.altitudeM);
  const tasMps = request.iasMps * Math.sqrt(RHO0_KGPM3 / density);
  const flap = flapEffect(shape, request.flapDeg, newFlapEffect());
  const share = engineShare(density) * (1 - shape.heatLoss * request.carbHeat);
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
    const [pitch, alpha, elevator, revps, turn] = x as [number, number, number, number, number];
    lay(tasMps, pitch, alpha, request.bankRad, revps, turn, sinBank);
    now[NOW.elevatorRad] = elevator;
    derivative(shape, now, y, rate, seen);
    const climb = y[5] as number;
    const along =
      ((rate[3] as number) * (y[3] as number) +
        (rate[4] as number) * (y[4] as number) +
        (rate[5] as number) * climb) /
      tasMps;
    const path =
      pathGiven !== undefined
        ? (climb - tasMps * sin(pathGiven)) * 2
        : climbGiven !== undefined
          ? (climb - climbGiven) * 2
          : revpsGiven !== undefined
            ? revps - revpsGiven
            : (rate[11] as number);
    return [
      along,
      rate[5] as number,
      ((seen[7] as number) - turn * cosBank * cos(pitch)) * 10,
      rate[9] as number,
      path,
    ];
  };

  const alpha0 = (needed - shape.cl0 - flap.lift) / shape.clAlpha;
  const gamma0 = pathGiven ?? (climbGiven !== undefined ? climbGiven / tasMps : 0);
  const found = solveNewton(
    residuals,
    [alpha0 + gamma0, alpha0, 0, revpsGiven ?? 35, (9.8 * sinBank) / cosBank / tasMps],
    [0.1, 0.1, 0.1, 10, 0.1],
    { tolerance: 1e-10, lows: [-1.2, -0.3, -1, 1, -2], highs: [1.2, 0.4, 1, 90, 2] },
  );
  if (!found.converged) {
    const path = given === undefined && revpsGiven === undefined;
    const why = path ? beyondPower(shape, air, request, gamma0 > 0 ? 1 : 0) : null;
    return { ok: false, why: why ?? `no steady state was found at ${words(request)}` };
  }
  const [pitchRad, alphaRad, elevatorRad, revps, turnRateRadps] = found.x as [
    number,
    number,
    number,
    number,
    number,
  ];
  residuals(found.x);
  const climb = y[5] as number;
  const axial = tasMps * cos(alphaRad);
  const idle = idleTorqueNm(shape, revps);
  const torque = propellerTorqueNm(shape, density, revps, axial);
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
      pitchRateRadps: y[9] as number,
      rollRateRadps: y[10] as number,
      revps,
      throttle: Math.min(1, Math.max(0, throttle)),
      elevatorRad,
      trim: trimFor(shape, elevatorRad),
      loadFactor: seen[5] as number,
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
  y[0] = 0;
  y[1] = 0;
  y[2] = ALOFT_M;
  y[3] = upward * sinBank;
  y[4] = forward * ct - upward * st * cf;
  y[5] = forward * st + upward * ct * cf;
  y[6] = pitch;
  y[7] = bank;
  y[8] = 0;
  y[9] = turn * sinBank * ct;
  y[10] = -turn * st;
  y[11] = revps;
};
