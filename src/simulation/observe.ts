import { onSurface } from '../aerodrome/runway.ts';
import { columnIndicatedAltitudeM } from '../atmosphere/air.ts';
import { iasFromTas } from '../atmosphere/airspeed.ts';
import { RHO0_KGPM3 } from '../atmosphere/isa.ts';
import { atan2InPlace } from '../maths/functions.ts';
import { wrapTwoPi } from '../units/angles.ts';
import { degFromRad, radFromDeg } from '../units/conversions.ts';
import type { Controls } from './controls.ts';
import { endingOf } from './endings.ts';
import { manifoldPa } from './engine/engine.ts';
import { staticPa } from './failures.ts';
import type { Model } from './model.ts';
import { attitude } from './motion/attitude.ts';
import { PART, part, SEEN } from './places.ts';
import { STEP_HZ } from './scenario.ts';
import type { Snapshot } from './snapshot.ts';
import { AT, type State } from './state.ts';

/** The warner sounds this much alpha before the stall. */
const WARNER_RAD = radFromDeg(5); // our choice: gives the 5 kt of pre-2017 14 CFR 23.207, from memory
const WARNER_FROM_MPS = 15; // our choice: no horn while standing in wind

/** Where the track is worked out of its two parts: it takes the place of the first. */
const TRACK = { east: 0, north: 1, angle: 0 } as const;
const track = new Float64Array(2);

const at = (state: State, place: number): number => state[AT.seen + place] as number;

/** Share of full throttle below which a landing is expected (common practice). */
const CLOSED_THROTTLE = 0.15;

const lookAtGear = (
  { shape }: Model,
  state: State,
  controls: Readonly<Controls>,
  into: Pick<Snapshot, 'gearWarning' | 'gearTooFast' | 'iasMps'>,
): void => {
  const { undercarriage, plan } = shape.aeroplane;
  const gear = state[AT.gear] as number;
  const landing = controls.throttle < CLOSED_THROTTLE || controls.flapStage > plan.takeOffStage;
  into.gearWarning = undercarriage.retractable && gear < 1 && landing && state[AT.onGround] === 0;
  const limitMps = gear === 1 ? shape.gearExtendedMps : shape.gearOperatingMps;
  into.gearTooFast = undercarriage.retractable && gear > 0 && into.iasMps > limitMps;
};

/** Fills `into` with all that may be seen of this state. */
export const observe = (
  model: Model,
  state: State,
  controls: Readonly<Controls>,
  into: Snapshot,
): Snapshot => {
  const { shape, runway } = model;
  const east = state[AT.east] as number;
  const north = state[AT.north] as number;
  const up = state[AT.up] as number;
  const ve = state[AT.velocityEast] as number;
  const vn = state[AT.velocityNorth] as number;
  const pitch = state[AT.pitch] as number;
  const bank = state[AT.bank] as number;
  const heading = state[AT.heading] as number;
  attitude(state);
  const sp = part[PART.sinPitch] as number;
  const cp = part[PART.cosPitch] as number;
  const sb = part[PART.sinBank] as number;
  const cb = part[PART.cosBank] as number;
  const sh = part[PART.sinHeading] as number;
  const ch = part[PART.cosHeading] as number;
  const ground = at(state, SEEN.groundUp);
  // From the attitude, not from the last force stage, which saw the wheels a hair away
  const clear = up - ground - shape.mainZ * cp * cb + shape.mainX * sp - shape.mainY * cp * Math.abs(sb);

  // Whole to the engine as well: a remainder of it, which many take, is then no call
  into.step = (state[AT.step] as number) | 0;
  into.timeS = into.step / STEP_HZ;
  into.eastM = east;
  into.northM = north;
  into.wheelClearanceM = clear;
  into.heightM = ground + (clear > 0 ? clear : 0);
  const above = shape.eyeAboveCgM;
  into.eyeEastM = east + shape.eyeX * sh * cp + above * (ch * sb - sh * sp * cb);
  into.eyeNorthM = north + shape.eyeX * ch * cp + above * (-sh * sb - ch * sp * cb);
  into.eyeHeightM = up + shape.eyeX * sp + above * cp * cb;
  into.velocityEastMps = ve;
  into.velocityNorthMps = vn;
  into.verticalSpeedMps = state[AT.velocityUp] as number;
  into.groundspeedMps = Math.sqrt(ve * ve + vn * vn);
  track[TRACK.angle] = heading;
  if (into.groundspeedMps > 0.5) {
    track[TRACK.east] = ve;
    track[TRACK.north] = vn;
    atan2InPlace(track, TRACK.angle);
  }
  into.trackRadT = wrapTwoPi(track[TRACK.angle] as number);

  into.pitchRad = pitch;
  into.bankRad = bank;
  into.headingRadT = wrapTwoPi(heading);
  into.pitchRateRadps = state[AT.pitchRate] as number;
  into.rollRateRadps = state[AT.rollRate] as number;
  into.yawRateRadps = at(state, SEEN.yawRate);

  into.alphaRad = at(state, SEEN.alpha);
  into.slipRad = at(state, SEEN.slip);
  into.tasMps = at(state, SEEN.airspeed);
  into.densityKgpm3 = state[AT.density] as number;
  into.iasMps = iasFromTas(into.tasMps, into.densityKgpm3);
  const pressurePa = staticPa(model, state);
  into.shownIasMps =
    state[AT.airspeedBlocked] === 1
      ? Math.sqrt((2 * Math.max(0, (state[AT.trapped] as number) - pressurePa)) / RHO0_KGPM3)
      : into.iasMps;
  into.dynamicPressurePa = at(state, SEEN.dynamicPressure);
  into.windEastMps = state[AT.windEast] as number;
  into.windNorthMps = state[AT.windNorth] as number;
  into.windUpMps = state[AT.windUp] as number;
  into.altitudeM = columnIndicatedAltitudeM(model.air, runway.thresholdElevationM + into.heightM);
  into.indicatedVerticalSpeedMps = state[AT.shownVerticalSpeed] as number;
  into.loadFactor = at(state, SEEN.loadFactor);
  into.ball = at(state, SEEN.ball);

  into.engineRevps = state[AT.revps] as number;
  into.thrustN = at(state, SEEN.thrust);
  into.throttle = controls.throttle;
  into.mixture = controls.mixture;
  into.propeller = controls.propeller;
  into.pump = controls.pump;
  into.manifoldPa = manifoldPa(pressurePa, state[AT.throttle] as number, into.engineRevps);
  into.bladeRad = shape.governed ? (state[AT.blade] as number) : 0;
  into.fuelPressure = state[AT.fuelPressure] as number;
  into.carbIce = state[AT.carbIce] as number;
  into.flapDeg = state[AT.flapDeg] as number;
  into.flapRad = radFromDeg(into.flapDeg);
  into.gear = state[AT.gear] as number;
  into.gearLever = controls.gear;
  lookAtGear(model, state, controls, into);

  into.elevator = controls.elevator;
  into.aileron = controls.aileron;
  into.rudder = controls.rudder;
  into.trim = state[AT.trimWheel] as number;
  into.brake = controls.brake;
  into.flapStage = controls.flapStage;
  into.carbHeat = controls.carbHeat;
  const pull = controls.elevator * (controls.elevator > 0 ? shape.elevatorUpRad : shape.elevatorDownRad);
  into.heldPressureDegKpa = (degFromRad(pull) * into.dynamicPressurePa) / 1000;

  into.stallAlphaRad = state[AT.stallAlpha] as number;
  into.stallIasMps = Math.sqrt(
    (2 * shape.weightN) / (RHO0_KGPM3 * shape.areaM2 * (state[AT.maximumLift] as number)),
  );
  into.warner = into.alphaRad > into.stallAlphaRad - WARNER_RAD && into.tasMps > WARNER_FROM_MPS;
  into.stalled = state[AT.stalled] === 1;

  into.onGround = state[AT.onGround] === 1;
  into.noseWheelOnGround = at(state, SEEN.noseLoad) > 0;
  into.weightOnWheels = (at(state, SEEN.mainLoad) + at(state, SEEN.noseLoad)) / shape.weightN;
  into.parked = state[AT.parked] === 1;
  into.tailStrike = state[AT.tailStrike] === 1;
  into.engineDead = state[AT.engineDead] === 1;
  into.powerPartial = (state[AT.powerShare] as number) < 1 && !into.engineDead;
  into.brakeHeatK = (state[AT.brakeHeat] as number) + (state[AT.liningHeat] as number);
  into.wheelsLocked = state[AT.wheelsLocked] === 1;
  into.flatSpot = state[AT.flatSpot] === 1;
  into.airspeedBlocked = state[AT.airspeedBlocked] === 1;
  into.radioFailed = state[AT.radioFailed] === 1;
  into.brakePressure = state[AT.brakesFailed] === 1 ? 0 : controls.brake;
  const ending = state[AT.ended] === 0 ? null : endingOf(state[AT.endedWhy] as number);
  into.ended = ending === null ? null : ending.outcome;
  into.endedWhy = ending === null ? '' : ending.sentence(state[AT.endedValue] as number);
  const along = east * runway.sinHeading + north * runway.cosHeading;
  const across = east * runway.cosHeading - north * runway.sinHeading;
  into.onRunway = onSurface(runway, along, across);
  return into;
};
