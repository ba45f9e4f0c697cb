import { eastOf, groundHeightM, northOf } from '../aerodrome/runway.ts';
import { columnDensityKgpm3 } from '../atmosphere/air.ts';
import { atan, cos, sin } from '../maths/functions.ts';
import { wrapPi } from '../units/angles.ts';
import { mFromFt, radFromDeg } from '../units/conversions.ts';
import { beginAir } from '../wind/moving-air.ts';
import { meanWind } from '../wind/profile.ts';
import { WIND, WIND_LENGTH } from '../wind/velocity.ts';
import { type Controls, neutralControls, quantiseControls } from './controls.ts';
import { propellerAt } from './engine/propeller.ts';
import type { Model } from './model.ts';
import type { Shape } from './shape.ts';
import { AT, newState, type State } from './state.ts';
import { settle } from './step.ts';

/** Of the line-up beyond the start of the surface. */
const LINE_UP_M = 8; // our choice: the tail clear of the edge

const air = new Float64Array(WIND_LENGTH);

/** How the controls stand before the first step: the steady state's, or ready for take-off. */
export const startControls = (model: Model): Controls => {
  const controls = neutralControls();
  const { shape, start } = model;
  controls.trim = shape.aeroplane.pitch.trimTakeOff;
  if (start === null) controls.flapStage = shape.aeroplane.plan.takeOffStage;
  else {
    controls.throttle = start.steady.throttle;
    controls.propeller = start.steady.propeller;
    controls.mixture = start.steady.mixture;
    controls.flapStage = start.stage;
    controls.gear = start.air.gear === 'down' ? 1 : 0;
    if (model.scenario.start.trimmed) controls.trim = start.steady.trim;
    else controls.elevator = elevatorFor(shape, start.steady.elevatorRad, controls.trim);
    if (!model.scenario.assists.rudder) controls.rudder = balancingRudder(model);
  }
  quantiseControls(controls, model.topStage);
  return controls;
};

/** The hand's share of an elevator angle when the wheel stands at `trim`. */
const elevatorFor = (shape: Shape, elevatorRad: number, trim: number): number => {
  const wheel = -trim * (trim > 0 ? shape.trimUpRad : shape.trimDownRad);
  const hand = elevatorRad - wheel;
  return hand <= 0 ? -hand / shape.elevatorUpRad : -hand / shape.elevatorDownRad;
};

/** Rudder that keeps the start in balance against the propeller, when no assist does it. */
const balancingRudder = (model: Model): number => {
  const { shape, start, runway } = model;
  if (start === null) return 0;
  const density = columnDensityKgpm3(model.air, runway.thresholdElevationM + mFromFt(start.air.height_ft));
  const { tasMps, revps, alphaRad, bladeRad } = start.steady;
  const { thrustN } = propellerAt(shape, density, revps, tasMps * cos(alphaRad), bladeRad);
  const tc = Math.max(0, thrustN) / (0.5 * density * tasMps * tasMps * shape.areaM2);
  return (shape.propellerSlipRadPerTc * tc) / shape.rudderSlipRad;
};

/** The state before the first step. */
export const begin = (model: Model): State => {
  const state = newState();
  const { shape, runway, start } = model;
  beginAir(state, AT.air, model.airSeed);
  state[AT.powerShare] = 1;
  state[AT.gear] = 1;
  state[AT.fuelPressure] = 1;
  state[AT.blade] = start === null ? shape.fineRad : start.steady.bladeRad;
  const controls = startControls(model);
  state[AT.trimWheel] = controls.trim;
  state[AT.throttle] = controls.throttle;
  state[AT.flapDeg] = shape.aeroplane.flap.stages[controls.flapStage]?.deg ?? 0;
  if (start === null) {
    const along = runway.surfaceStartM + LINE_UP_M;
    state[AT.east] = eastOf(runway, along, 0);
    state[AT.north] = northOf(runway, along, 0);
    state[AT.up] = groundHeightM(runway, along) + shape.aeroplane.undercarriage.cgHeightM;
    state[AT.pitch] = atan(runway.slope);
    state[AT.heading] = wrapPi(runway.headingRadT);
    state[AT.revps] = shape.idleRevps;
    state[AT.parked] = 1;
  } else {
    const { steady } = start;
    const heading = radFromDeg(start.air.heading_deg) + runway.variationRad;
    const pitch = steady.pitchRad;
    const bank = steady.bankRad;
    const upU = cos(pitch) * cos(bank);
    const wheelBelow =
      shape.mainZ * upU - shape.mainX * sin(pitch) + shape.mainY * cos(pitch) * Math.abs(sin(bank));
    state[AT.east] = start.air.east_m;
    state[AT.north] = start.air.north_m;
    state[AT.up] = mFromFt(start.air.height_ft) + wheelBelow;
    const forward = steady.tasMps * cos(steady.alphaRad);
    const upward = -steady.tasMps * sin(steady.alphaRad);
    const ahead = forward * cos(pitch) - upward * sin(pitch) * cos(bank);
    const right = upward * sin(bank);
    const along = start.air.east_m * runway.sinHeading + start.air.north_m * runway.cosHeading;
    meanWind(model.wind, (state[AT.up] as number) - groundHeightM(runway, along), air);
    state[AT.velocityEast] = ahead * sin(heading) + right * cos(heading) + (air[WIND.east] as number);
    state[AT.velocityNorth] = ahead * cos(heading) - right * sin(heading) + (air[WIND.north] as number);
    state[AT.velocityUp] = steady.verticalSpeedMps;
    state[AT.shownVerticalSpeed] = steady.verticalSpeedMps;
    state[AT.pitch] = pitch;
    state[AT.bank] = bank;
    state[AT.heading] = wrapPi(heading);
    state[AT.pitchRate] = steady.pitchRateRadps;
    state[AT.rollRate] = steady.rollRateRadps;
    state[AT.revps] = steady.revps;
    state[AT.gear] = controls.gear;
  }
  state[AT.density] = columnDensityKgpm3(model.air, runway.thresholdElevationM + (state[AT.up] as number));
  meanWind(model.wind, state[AT.up] as number, air);
  state[AT.windEast] = air[WIND.east] as number;
  state[AT.windNorth] = air[WIND.north] as number;
  settle(model, state, controls);
  return state;
};
