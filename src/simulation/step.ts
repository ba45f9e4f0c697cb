import { groundHeightM, onSurface } from '../aerodrome/runway.ts';
import { columnDensityKgpm3 } from '../atmosphere/air.ts';
import { iasFromTas } from '../atmosphere/airspeed.ts';
import { cos, exp, sin } from '../maths/functions.ts';
import { wrapPi } from '../units/angles.ts';
import { degFromRad, fpmFromMps, ftFromM, ktFromMps, mFromFt, radFromDeg } from '../units/conversions.ts';
import { type ChangingWind, driftedWind } from '../wind/drift.ts';
import { airVelocity, stepAir } from '../wind/moving-air.ts';
import { WIND, WIND_LENGTH } from '../wind/velocity.ts';
import { CALM } from '../wind/wind.ts';
import type { Controls } from './controls.ts';
import { ENDINGS, type Ending } from './endings.ts';
import { bladeAfter } from './engine/blades.ts';
import { moveMachine, torqueShare } from './engine/machine.ts';
import { fail } from './failures.ts';
import type { Model } from './model.ts';
import { STALL_ROUND_RAD } from './motion/airframe.ts';
import {
  brakeShare,
  discAfter,
  FLAT_SPOT_M,
  LOCKED_SIDE_GRIP,
  liningAfter,
  wheelsLock,
} from './motion/brakes.ts';
import { derivative } from './motion/forces.ts';
import { integrate } from './motion/integrate.ts';
import { INTEGRATED, NOW, NOW_LENGTH, SEEN, SEEN_LENGTH } from './places.ts';
import { STEP_HZ, STEP_S } from './scenario.ts';
import { flapEffect, newFlapEffect } from './shape.ts';
import { AT, type State } from './state.ts';

const VERTICAL_SPEED_LAG_S = 3; // estimate: of a vertical speed indicator
const VERTICAL_SPEED_KEEP = exp(-STEP_S / VERTICAL_SPEED_LAG_S);
const SKID_RAD = radFromDeg(5); // estimate: skid that lets one wing stall first
const DROP_RADPS = radFromDeg(60); // estimate: how fast that wing goes
const DROPPED_RAD = radFromDeg(60); // our choice: ends what is not modelled
const DROP_CLEAR_M = 1.5; // our choice: ends what is not modelled
const LOW_M = mFromFt(1000); // our choice: no height to recover
const PARK_MPS = 0.6; // our choice: slower is standing still
/** The legs have come to rest: slower than this up or down, and in pitch. */
const SETTLED_MPS = 0.03; // our choice: less is not seen
const SETTLED_MPS2 = 0.3; // our choice: less is not seen
const SETTLED_RADPS = 0.02; // our choice: less is not seen
/** Share of the weight that standing tyres hold without brakes (common practice). */
const STANDING_FRICTION = 0.05;
const NOSE_LEG_WEIGHTS = 3; // estimate: what a nose leg bears
const BELLY_M = 0.35; // estimate: legs gone
const LEVEL_RAD = radFromDeg(20); // our choice: ends what is not modelled
const OVERSPEED = 1.2; // estimate: over the red line by so much it breaks
const CEILING_M = 9000; // our choice: ends what is not modelled
const SLID_MOST_M = 1e4; // our choice: a bound that declares the slot

const now = new Float64Array(NOW_LENGTH);
const seen = new Float64Array(SEEN_LENGTH);
const airNow = new Float64Array(WIND_LENGTH);
const flap = newFlapEffect();
const changingWind: ChangingWind = { ...CALM };

/** Elevator from hand and wheel, held to its travel; trailing edge down positive. */
const elevatorRad = (model: Model, elevator: number, trim: number): number => {
  const s = model.shape;
  const hand = -elevator * (elevator > 0 ? s.elevatorUpRad : s.elevatorDownRad);
  const wheel = -trim * (trim > 0 ? s.trimUpRad : s.trimDownRad);
  const total = hand + wheel;
  return total < -s.elevatorUpRad ? -s.elevatorUpRad : total > s.elevatorDownRad ? s.elevatorDownRad : total;
};

/** Fills `now` with what holds over one step from this state and these controls. */
const lookAround = (model: Model, state: State, controls: Controls): void => {
  const { runway } = model;
  const east = state[AT.east] as number;
  const north = state[AT.north] as number;
  const up = state[AT.up] as number;
  const along = east * runway.sinHeading + north * runway.cosHeading;
  const across = east * runway.cosHeading - north * runway.sinHeading;
  const ground = groundHeightM(runway, along);
  const density = columnDensityKgpm3(model.air, runway.thresholdElevationM + up);

  let aE = (state[AT.velocityEast] as number) - (state[AT.windEast] as number);
  let aN = (state[AT.velocityNorth] as number) - (state[AT.windNorth] as number);
  const horizontal = Math.sqrt(aE * aE + aN * aN);
  if (horizontal > 1) {
    aE /= horizontal;
    aN /= horizontal;
  } else {
    aE = sin(state[AT.heading] as number);
    aN = cos(state[AT.heading] as number);
  }
  const { drift } = model;
  const wind =
    drift === null
      ? model.wind
      : driftedWind(model.wind, drift, (state[AT.step] as number) / STEP_HZ, changingWind);
  const wing = up - ground + model.shape.wingAboveCgM;
  stepAir(state, AT.air, wind, STEP_S, wing, horizontal, model.shape.spanM);
  airVelocity(state, AT.air, wind, up - ground, aE, aN, airNow);
  state[AT.windEast] = airNow[WIND.east] as number;
  state[AT.windNorth] = airNow[WIND.north] as number;
  state[AT.windUp] = airNow[WIND.up] as number;
  state[AT.density] = density;
  layNow(model, state, controls);
  now[NOW.rollingFriction] = onSurface(runway, along, across) ? model.runwayFriction : model.grassFriction;
};

const layNow = (model: Model, state: State, controls: Controls): void => {
  const { shape, runway } = model;
  const density = state[AT.density] as number;
  flapEffect(shape, state[AT.flapDeg] as number, flap);
  state[AT.maximumLift] = flap.maximumLift;
  state[AT.stallAlpha] = (flap.maximumLift - shape.cl0 - flap.lift) / shape.clAlpha;
  now[NOW.windEast] = state[AT.windEast] as number;
  now[NOW.windNorth] = state[AT.windNorth] as number;
  now[NOW.windUp] = state[AT.windUp] as number;
  now[NOW.density] = density;
  now[NOW.elevatorRad] = elevatorRad(model, controls.elevator, state[AT.trimWheel] as number);
  now[NOW.aileron] = controls.aileron;
  now[NOW.rudder] = controls.rudder;
  const pressed = state[AT.brakesFailed] === 1 ? 0 : controls.brake;
  now[NOW.brake] = pressed * brakeShare((state[AT.brakeHeat] as number) + (state[AT.liningHeat] as number));
  now[NOW.sideGrip] = state[AT.wheelsLocked] === 1 ? LOCKED_SIDE_GRIP : 1;
  now[NOW.throttle] = state[AT.throttle] as number;
  const share = torqueShare(model, state, controls);
  now[NOW.torqueScale] = share;
  now[NOW.engineDead] = share > 0 ? 0 : 1;
  if (shape.governed) {
    now[NOW.sinBlade] = sin(state[AT.blade] as number);
    now[NOW.cosBlade] = cos(state[AT.blade] as number);
  }
  now[NOW.flapLift] = flap.lift;
  now[NOW.flapDrag] = flap.drag;
  now[NOW.stallAlpha] = state[AT.stallAlpha] as number;
  now[NOW.maximumLift] = flap.maximumLift;
  now[NOW.flapMoment] = flap.moment;
  now[NOW.thrustMoment] = flap.thrustMoment;
  now[NOW.gear] = state[AT.gear] as number;
  now[NOW.assist] = model.scenario.assists.rudder ? 1 : 0;
  now[NOW.wingDropRadps] = (state[AT.wingDrop] as number) * DROP_RADPS;
  now[NOW.sinRunway] = runway.sinHeading;
  now[NOW.cosRunway] = runway.cosHeading;
  now[NOW.slope] = runway.slope;
  now[NOW.slopeFrom] = runway.surfaceStartM;
  now[NOW.slopeTo] = runway.surfaceEndM;
};

const hold = (state: State, at: number, low: number, high: number): void => {
  const x = state[at] as number;
  if (x > high) state[at] = high;
  else if (x < low) state[at] = low;
};

/** Angles wrapped, rates and speeds held inside their declared ranges. */
const keepInRange = (state: State): void => {
  state[AT.bank] = wrapPi(state[AT.bank] as number);
  state[AT.heading] = wrapPi(state[AT.heading] as number);
  hold(state, AT.pitch, -1.4, 1.4);
  hold(state, AT.pitchRate, -4, 4);
  hold(state, AT.rollRate, -4, 4);
  hold(state, AT.revps, 0, 90);
  hold(state, AT.east, -1e6, 1e6);
  hold(state, AT.north, -1e6, 1e6);
  for (let i = AT.velocityEast; i <= AT.velocityUp; i += 1) hold(state, i, -250, 250);
};

const end = (state: State, ending: Ending, value: number): void => {
  state[AT.ended] = ending.outcome === 'crashed' ? 1 : 2;
  state[AT.endedWhy] = ending.code;
  state[AT.endedValue] = value;
};

/** Limits and latches, decided once a step from what the last forces were. */
const decide = (model: Model, state: State, sinkMps: number, wasOnGround: boolean): void => {
  const { shape } = model;
  const alpha = seen[SEEN.alpha] as number;
  const slip = seen[SEEN.slip] as number;
  const airspeed = seen[SEEN.airspeed] as number;
  const clear = seen[SEEN.wheelHeight] as number;
  const bank = state[AT.bank] as number;
  const peak = (state[AT.stallAlpha] as number) + STALL_ROUND_RAD;
  const onGround = (seen[SEEN.mainLoad] as number) > 0;
  state[AT.onGround] = onGround ? 1 : 0;

  if (alpha > peak && airspeed > 8) state[AT.stalled] = 1;
  else if (alpha < peak - 2 * STALL_ROUND_RAD) state[AT.stalled] = 0;
  if (state[AT.stalled] === 0 || onGround) state[AT.wingDrop] = 0;
  else if (state[AT.wingDrop] === 0 && Math.abs(slip) > SKID_RAD && clear > DROP_CLEAR_M)
    state[AT.wingDrop] = slip > 0 ? -1 : 1;

  if (state[AT.wingDrop] !== 0 && Math.abs(bank) > DROPPED_RAD) {
    const low = (state[AT.up] as number) - (seen[SEEN.groundUp] as number) < LOW_M;
    return end(state, low ? ENDINGS.skiddedLow : ENDINGS.skiddedHigh, ftFromM(Math.max(0, clear)));
  }
  if (onGround && !wasOnGround && sinkMps > shape.collapseSinkMps)
    return end(state, ENDINGS.collapse, fpmFromMps(sinkMps));
  const noseLoad = seen[SEEN.noseLoad] as number;
  if (noseLoad > NOSE_LEG_WEIGHTS * shape.weightN)
    return end(state, ENDINGS.noseLeg, noseLoad / shape.weightN);
  const height = (state[AT.up] as number) - (seen[SEEN.groundUp] as number);
  if (height < shape.spanM) {
    const tip =
      height +
      shape.wingAboveCgM * cos(bank) -
      (shape.spanM / 2) * Math.abs(sin(bank)) * cos(state[AT.pitch] as number);
    if (tip < 0) return end(state, ENDINGS.wingTip, degFromRad(Math.abs(bank)));
  }
  if (height < BELLY_M) {
    const gear = state[AT.gear] as number;
    const slid = gear < 1 && sinkMps < shape.collapseSinkMps && Math.abs(bank) < LEVEL_RAD;
    return slid ? end(state, ENDINGS.belly, gear) : end(state, ENDINGS.ground, 0);
  }
  const iasMps = iasFromTas(airspeed, state[AT.density] as number);
  if (iasMps > OVERSPEED * shape.vneMps) return end(state, ENDINGS.overspeed, ktFromMps(iasMps));
  if (height > CEILING_M) return end(state, ENDINGS.ceiling, 0);

  if (onGround && (state[AT.pitch] as number) > shape.tailStrikeRad) {
    state[AT.tailStrike] = 1;
    state[AT.pitch] = shape.tailStrikeRad;
    if ((state[AT.pitchRate] as number) > 0) state[AT.pitchRate] = 0;
  }
};

/** Below walking pace the tyre is a latch: exactly still until pushed harder than it holds. */
const park = (model: Model, state: State): void => {
  const { shape } = model;
  const holds =
    shape.weightN * STANDING_FRICTION +
    shape.brakeFriction * (now[NOW.brake] as number) * (seen[SEEN.mainLoad] as number);
  const pushed = Math.abs(seen[SEEN.push] as number) > holds;
  if (state[AT.parked] === 1) {
    if (pushed) state[AT.parked] = 0;
    return;
  }
  const ve = state[AT.velocityEast] as number;
  const vn = state[AT.velocityNorth] as number;
  if (pushed || state[AT.onGround] === 0 || ve * ve + vn * vn > PARK_MPS * PARK_MPS) return;
  if ((seen[SEEN.noseLoad] as number) === 0) return;
  if (Math.abs(state[AT.velocityUp] as number) > SETTLED_MPS) return;
  // At the bottom of a compression nothing moves either
  const risen = (state[AT.velocityUp] as number) - (before[AT.velocityUp] as number);
  if (Math.abs(risen) > SETTLED_MPS2 * STEP_S) return;
  if (Math.abs(state[AT.pitchRate] as number) > SETTLED_RADPS) return;
  state[AT.parked] = 1;
};

/** Heat of the brakes, and what locked wheels do to their tyres. */
const rub = (model: Model, state: State): void => {
  const { shape } = model;
  const brake = now[NOW.brake] as number;
  const load = seen[SEEN.mainLoad] as number;
  const ve = state[AT.velocityEast] as number;
  const vn = state[AT.velocityNorth] as number;
  const speed = Math.sqrt(ve * ve + vn * vn);
  const locked = wheelsLock(shape, brake, load, speed);
  state[AT.wheelsLocked] = locked ? 1 : 0;
  state[AT.slid] = locked ? Math.min(SLID_MOST_M, (state[AT.slid] as number) + speed * STEP_S) : 0;
  if ((state[AT.slid] as number) > FLAT_SPOT_M) state[AT.flatSpot] = 1;
  // Locked, it is the tyre that rubs
  const power = locked ? 0 : shape.brakeFriction * brake * load * speed;
  const lining = state[AT.liningHeat] as number;
  state[AT.liningHeat] = liningAfter(shape, lining, power, STEP_S);
  state[AT.brakeHeat] = discAfter(state[AT.brakeHeat] as number, lining, STEP_S);
};

/** Keeps what the forces were in the last step. */
const keepSeen = (state: State): void => {
  for (let i = 0; i < SEEN_LENGTH; i += 1) state[AT.seen + i] = seen[i] as number;
};

/** Where it stood before the step, not moving. */
const stand = (state: State): void => {
  for (let i = 0; i < INTEGRATED - 1; i += 1) state[i] = before[i] as number;
  halt(state);
};

const halt = (state: State): void => {
  for (let i = AT.velocityEast; i <= AT.velocityUp; i += 1) state[i] = 0;
  state[AT.pitchRate] = 0;
  state[AT.rollRate] = 0;
};

/** What a step began with: engine speed and vertical speed, and of a parked aeroplane all that is integrated. */
const before = new Float64Array(INTEGRATED);

/**
 * One step of 1/60 s, in place. `controls` must be quantised. The same model, state and controls give the same
 * bytes in every engine. A flight that has ended stays as it is; only its clock runs on.
 */
export const step = (model: Model, state: State, controls: Controls): void => {
  if (state[AT.ended] !== 0) {
    state[AT.step] = (state[AT.step] as number) + 1;
    return;
  }
  fail(model, state);
  moveMachine(model, state, controls);
  lookAround(model, state, controls);
  const wasOnGround = state[AT.onGround] === 1;
  const sinkMps = -(
    (state[AT.velocityUp] as number) -
    now[NOW.slope]! *
      ((state[AT.velocityEast] as number) * model.runway.sinHeading +
        (state[AT.velocityNorth] as number) * model.runway.cosHeading)
  );
  before[AT.velocityUp] = state[AT.velocityUp] as number;
  before[AT.revps] = state[AT.revps] as number;
  if (state[AT.parked] === 1) for (let i = 0; i < INTEGRATED; i += 1) before[i] = state[i] as number;
  integrate(model.shape, now, state, STEP_S, seen);
  if (now[NOW.engineDead] === 1 && (state[AT.revps] as number) < 1.5) state[AT.revps] = 0;
  if (model.shape.governed)
    state[AT.blade] = bladeAfter(
      model.shape,
      state[AT.blade] as number,
      controls.propeller,
      state[AT.revps] as number,
      (state[AT.revps] as number) - (before[AT.revps] as number),
      STEP_S,
    );
  if (state[AT.parked] === 1) stand(state);
  keepInRange(state);
  decide(model, state, sinkMps, wasOnGround);
  rub(model, state);
  park(model, state);
  if (state[AT.parked] === 1) halt(state);
  const vs = state[AT.velocityUp] as number;
  state[AT.shownVerticalSpeed] = vs + ((state[AT.shownVerticalSpeed] as number) - vs) * VERTICAL_SPEED_KEEP;
  keepSeen(state);
  state[AT.step] = (state[AT.step] as number) + 1;
};

/** Fills the state's `seen` and air from where it stands, without a step: for the beginning of a flight. */
export const settle = (model: Model, state: State, controls: Controls): void => {
  layNow(model, state, controls);
  now[NOW.rollingFriction] = model.runwayFriction;
  derivative(model.shape, now, state, new Float64Array(INTEGRATED), seen);
  state[AT.onGround] = (seen[SEEN.mainLoad] as number) > 0 ? 1 : 0;
  keepSeen(state);
};
