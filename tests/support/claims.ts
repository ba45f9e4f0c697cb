/** Measuring what an aeroplane's file claims of itself: key of a claim -> how it is flown or solved. */
import type { Aeroplane } from '../../src/aeroplane/schema.ts';
import { isaPressurePa } from '../../src/atmosphere/isa.ts';
import { leverFor } from '../../src/simulation/engine/blades.ts';
import { manifoldPa } from '../../src/simulation/engine/engine.ts';
import type { Steady } from '../../src/simulation/performance/steady.ts';
import { SEEN } from '../../src/simulation/places.ts';
import { shapeOf } from '../../src/simulation/shape.ts';
import type { Snapshot } from '../../src/simulation/snapshot.ts';
import { AT } from '../../src/simulation/state.ts';
import {
  fpmFromMps,
  hpaFromInHg,
  hpaFromPa,
  ktFromMps,
  mpsFromFpm,
  mpsFromKt,
  paFromHpa,
  revpsFromRpm,
  rpmFromRevps,
} from '../../src/units/conversions.ts';
import { steadyAt } from './airborne.ts';
import { beginFlight, fly, type Hands, northRunway, scenarioOf } from './flight.ts';
import { bankHold, pitchHold, speedByPitch, together, verticalSpeedHold } from './holds.ts';

const THOUSAND_FT_M = 304.8;
const TURNING_REVPS = 40;
/** The throttle that gives a manifold pressure: one goes with the other in a straight line. */
const throttleFor = (staticPa: number, wantedPa: number): number => {
  const closed = manifoldPa(staticPa, 0, TURNING_REVPS);
  return (wantedPa - closed) / (manifoldPa(staticPa, 1, TURNING_REVPS) - closed);
};

const degOf = (a: Aeroplane, stage: number): number => a.flap.stages[stage]!.deg;

/** Lowest speed over the root of the load normal to the path, power off, wings level (14 CFR 25.103, from memory). */
const stallKt = (aeroplane: Aeroplane, stage: number): number => {
  const flight = beginFlight(
    scenarioOf({
      aeroplane,
      trimmed: false,
      start: { ias_kt: 62, flap_deg: degOf(aeroplane, stage), height_ft: 3000 },
    }),
  );
  const hands = together(bankHold(0), verticalSpeedHold(0), (_, c) => {
    c.throttle = 0;
  });
  let slowest = Number.POSITIVE_INFINITY;
  fly(flight, 60, hands, (seen) => {
    const load = flight.state[AT.seen + SEEN.lift]! / flight.model.shape.weightN;
    if (load > 0.5) slowest = Math.min(slowest, seen.iasMps / Math.sqrt(load));
    return seen.stalled;
  });
  return ktFromMps(slowest);
};

/** Full power against the brakes. */
const standing = (aeroplane: Aeroplane) => {
  const flight = beginFlight(scenarioOf({ aeroplane }));
  fly(flight, 15, (_, c) => {
    c.throttle = 1;
    c.brake = 1;
  });
  return flight.seen;
};

/** Level at full power: the speed at which the climb is nought, at sea level. */
const fullThrottleLevel = (aeroplane: Aeroplane) => {
  let [low, high] = [aeroplane.speeds.climbKt, aeroplane.limits.vneKt];
  for (let i = 0; i < 40; i += 1) {
    const kt = (low + high) / 2;
    if (steadyAt(aeroplane, kt, { throttle: 1, gear: gearUp(aeroplane) }).verticalSpeedMps > 0) low = kt;
    else high = kt;
  }
  return {
    kt: low,
    rpm: rpmFromRevps(steadyAt(aeroplane, low, { throttle: 1, gear: gearUp(aeroplane) }).revps),
  };
};

/** Lift-off attitude, 11 degrees, and the back pressure that lightens the nose wheel before it (common practice). */
const LIFT_OFF_RAD = 0.19;
const STICK_BACK = 0.5;

/** Brake release at full power to the wheels leaving the ground, rotating at the speed of the file. */
export const takeOffRollM = (aeroplane: Aeroplane, surface: 'tarmac' | 'grass', slopePercent = 0): number => {
  const flight = beginFlight(scenarioOf({ aeroplane, aerodrome: northRunway({ surface, slopePercent }) }));
  fly(flight, 12, (_, c) => {
    c.throttle = 1;
    c.brake = 1;
  });
  const from = flight.seen.northM;
  const rotate = mpsFromKt(aeroplane.speeds.rotateKt);
  const attitude = pitchHold(() => LIFT_OFF_RAD);
  const hands: Hands = (seen, c) => {
    c.brake = 0;
    if (seen.iasMps < rotate) c.elevator = STICK_BACK;
    else attitude(seen, c);
    c.aileron = -2 * seen.bankRad;
    c.rudder = -2 * Math.sin(seen.headingRadT);
  };
  fly(flight, 60, hands, (seen) => !seen.onGround && seen.wheelClearanceM > 0.02 && seen.iasMps > 20);
  return flight.seen.northM - from;
};

const OBSTACLE_M = 15.24;

/**
 * Brake release to 50 ft, then at 1.2 times the stalling speed (14 CFR 23.51 of old, from memory): the attitude
 * that holds it is taken up at the lift-off, at full power.
 */
export const takeOffTo50FtM = (aeroplane: Aeroplane): number => {
  const flight = beginFlight(scenarioOf({ aeroplane, aerodrome: northRunway() }));
  fly(flight, 12, (_, c) => {
    c.throttle = 1;
    c.brake = 1;
  });
  const from = flight.seen.northM;
  const rotate = mpsFromKt(aeroplane.speeds.rotateKt);
  const at50Mps = 1.2 * mpsFromKt(stallKt(aeroplane, aeroplane.plan.takeOffStage));
  const stage = degOf(aeroplane, aeroplane.plan.takeOffStage);
  const climbing = steadyAt(aeroplane, ktFromMps(at50Mps), { throttle: 1, flapDeg: stage, gear: 1 });
  const attitude = pitchHold((seen) => (seen.onGround ? LIFT_OFF_RAD : climbing.pitchRad));
  fly(
    flight,
    90,
    (seen, c) => {
      c.brake = 0;
      if (seen.iasMps < rotate) c.elevator = STICK_BACK;
      else attitude(seen, c);
      c.aileron = -2 * seen.bankRad;
      c.rudder = -2 * Math.sin(seen.headingRadT);
    },
    (seen) => seen.wheelClearanceM > OBSTACLE_M,
  );
  return flight.seen.northM - from;
};

/** Mean of what a careful pilot brakes with, in g (common practice), once the wheels carry the weight. */
const BRAKING_G = 0.2;

/**
 * 50 ft at the approach speed with the landing flap, the throttle closed there, to a stop: the path held by pitch,
 * rounded out over the last feet, the wheels braked.
 */
export const landingFrom50FtM = (aeroplane: Aeroplane): number => {
  const { plan, speeds, flap } = aeroplane;
  const full = plan.landingStage === flap.stages.length - 1;
  const ias_kt = full ? speeds.finalFullFlapKt : speeds.finalKt;
  const flight = beginFlight(
    scenarioOf({
      aeroplane,
      start: {
        east_m: 0,
        north_m: -2500,
        height_ft: 300,
        ias_kt,
        flap_deg: degOf(aeroplane, plan.landingStage),
        flight_path_deg: -3,
      },
    }),
  );
  const speed = speedByPitch(mpsFromKt(ias_kt));
  let roundOut: Hands | null = null;
  let from = 0;
  const clear = (seen: Snapshot): number => Math.max(0, seen.wheelClearanceM);
  fly(
    flight,
    200,
    (seen, c) => {
      c.aileron = -2 * seen.bankRad - seen.rollRateRadps;
      c.rudder = -2 * Math.sin(seen.headingRadT);
      if (clear(seen) < OBSTACLE_M && from === 0) from = seen.northM;
      if (from !== 0) c.throttle = 0;
      if (seen.onGround) {
        roundOut ??= verticalSpeedHold(0);
        c.elevator = 0.2;
        c.brake = seen.noseWheelOnGround
          ? Math.min(1, (BRAKING_G * 1.25) / aeroplane.undercarriage.brakeFriction)
          : 0;
      } else if (clear(seen) > ROUND_OUT_M) speed(seen, c);
      else {
        roundOut ??= softly();
        roundOut(seen, c);
      }
    },
    (seen) => seen.onGround && seen.groundspeedMps < 0.5,
  );
  return flight.seen.northM - from;
};
/** Twenty feet: a steep glide wants the upper end of 10 to 20 ft (FAA-H-8083-3C p. 9-8). */
const ROUND_OUT_M = 6;
/** The sink let away with the height left. */
const softly = (): Hands => {
  let pitchRad: number | null = null;
  const hold = pitchHold(() => pitchRad ?? 0);
  return (seen, controls) => {
    const wanted = -0.4 - Math.max(0, seen.wheelClearanceM) / 1.8;
    const lacking = (wanted - seen.verticalSpeedMps) / seen.tasMps;
    pitchRad = Math.min(0.2, (pitchRad ?? seen.pitchRad) + (1.2 * lacking) / 60);
    hold(seen, controls);
  };
};

const rpmOf = (revps: number): number => rpmFromRevps(revps);

/** Up where it can be raised: how these are flown. */
const gearUp = (a: Aeroplane): 0 | 1 => (a.undercarriage.retractable ? 0 : 1);

/** The lever where the file sets the circuit's rpm. */
const circuitLever = (a: Aeroplane): number => {
  const { circuitRpm, baseRpm } = a.plan;
  return leverFor(shapeOf(a), revpsFromRpm(circuitRpm ?? baseRpm));
};

const ISA_THOUSAND_FT_PA = isaPressurePa(THOUSAND_FT_M);

/** Level downwind. */
const downwind = (a: Aeroplane, gear: 0 | 1) =>
  steadyAt(a, a.speeds.downwindKt, {
    altitudeM: THOUSAND_FT_M,
    flapDeg: degOf(a, a.plan.downwindStage),
    flightPathRad: 0,
    gear,
    ...(a.equipment.propellerLever && { propeller: circuitLever(a) }),
  });
const manifoldInHg = ({ throttle, revps }: Steady): number =>
  hpaFromPa(manifoldPa(ISA_THOUSAND_FT_PA, throttle, revps)) / hpaFromInHg(1);

/** Sink on base with the manifold pressure of the file, by the climb of every throttle between. */
const baseByManifold = (a: Aeroplane, inHg: number): number => {
  const wanted = throttleFor(ISA_THOUSAND_FT_PA, paFromHpa(hpaFromInHg(inHg)));
  let [low, high] = [-1500, 500];
  for (let i = 0; i < 40; i += 1) {
    const fpm = (low + high) / 2;
    const asked = { altitudeM: THOUSAND_FT_M, flapDeg: degOf(a, a.plan.baseStage) };
    const { throttle } = steadyAt(a, a.speeds.baseKt, { ...asked, verticalSpeedMps: mpsFromFpm(fpm) });
    if (throttle > wanted) high = fpm;
    else low = fpm;
  }
  return -low;
};

const glide = (a: Aeroplane, gear: 0 | 1): number =>
  -1 /
  Math.tan(
    steadyAt(a, a.speeds.glideKt, { altitudeM: THOUSAND_FT_M, throttle: 0, propeller: 0, gear })
      .flightPathRad,
  );

export const MEASURES: Readonly<Record<string, (a: Aeroplane) => number>> = {
  stallCleanKt: (a) => stallKt(a, 0),
  stallFirstStageKt: (a) => stallKt(a, 1),
  stallSecondStageKt: (a) => stallKt(a, 2),
  stallFullFlapKt: (a) => stallKt(a, a.flap.stages.length - 1),
  climbFpm: (a) =>
    fpmFromMps(steadyAt(a, a.speeds.climbKt, { throttle: 1, gear: gearUp(a) }).verticalSpeedMps),
  climbGearDownFpm: (a) =>
    fpmFromMps(steadyAt(a, a.speeds.climbKt, { throttle: 1, gear: 1 }).verticalSpeedMps),
  climbRpm: (a) => rpmOf(steadyAt(a, a.speeds.climbKt, { throttle: 1 }).revps),
  staticRpm: (a) => rpmOf(standing(a).engineRevps),
  staticThrustN: (a) => standing(a).thrustN,
  levelFullThrottleKt: (a) => fullThrottleLevel(a).kt,
  levelFullThrottleRpm: (a) => fullThrottleLevel(a).rpm,
  downwindRpm: (a) => rpmOf(downwind(a, gearUp(a)).revps),
  downwindManifoldInHg: (a) => manifoldInHg(downwind(a, 0)),
  downwindGearDownManifoldInHg: (a) => manifoldInHg(downwind(a, 1)),
  baseSinkFpm: (a) =>
    a.plan.baseManifoldInHg !== undefined
      ? baseByManifold(a, a.plan.baseManifoldInHg)
      : -fpmFromMps(
          steadyAt(a, a.speeds.baseKt, {
            altitudeM: THOUSAND_FT_M,
            flapDeg: degOf(a, a.plan.baseStage),
            revps: a.plan.baseRpm / 60,
          }).verticalSpeedMps,
        ),
  glideRatio: (a) => glide(a, gearUp(a)),
  glideGearDownRatio: (a) => glide(a, 1),
  takeOffTo50FtM,
  landingFrom50FtM,
  takeOffRollTarmacM: (a) => takeOffRollM(a, 'tarmac'),
  takeOffRollGrassM: (a) => takeOffRollM(a, 'grass'),
  takeOffRollGrassUpM: (a) => takeOffRollM(a, 'grass', 2),
};
