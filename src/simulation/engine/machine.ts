import type { Controls } from '../controls.ts';
import type { Model } from '../model.ts';
import { STEP_S } from '../scenario.ts';
import { AT, type State } from '../state.ts';
import { FULL_ICE_LOSS, iceAfter } from './carburettor.ts';
import { engineShare } from './engine.ts';
import { mixtureShare } from './mixture.ts';

/** Without its pump the line runs dry, and fills again, in about so long (estimate). */
const FUEL_LINE_S = 1;
/** Below this share of its pressure the engine gets no fuel. */
const LEAST_FUEL_PRESSURE = 0.25; // estimate

const toward = (from: number, to: number, most: number): number =>
  to > from + most ? from + most : to < from - most ? from - most : to;

/** What moves once a step: throttle, flap, gear, wheel, ice, fuel. */
export const moveMachine = (model: Model, state: State, controls: Controls): void => {
  const { shape } = model;
  const throttle = state[AT.throttle] as number;
  state[AT.throttle] = throttle + (controls.throttle - throttle) * (STEP_S / (shape.throttleTimeS + STEP_S));
  if (state[AT.flapStuck] === 0) {
    const stage = shape.aeroplane.flap.stages[controls.flapStage];
    const target = stage ? stage.deg : (state[AT.flapDeg] as number);
    state[AT.flapDeg] = toward(state[AT.flapDeg] as number, target, shape.flapTravelDegps * STEP_S);
  }
  // The weight on the wheels keeps the gear from being raised
  if (shape.aeroplane.undercarriage.retractable && state[AT.onGround] === 0)
    state[AT.gear] = toward(state[AT.gear] as number, controls.gear, shape.gearPerS * STEP_S);
  if (state[AT.trimStuck] === 0) state[AT.trimWheel] = controls.trim;
  if (model.icing > 0 || (state[AT.carbIce] as number) > 0)
    state[AT.carbIce] = iceAfter(
      state[AT.carbIce] as number,
      model.icing,
      controls.throttle,
      controls.carbHeat,
      STEP_S,
    );
  // Where there is no pump the fuel falls to the engine by itself
  if (state[AT.pumpFailed] === 1 && shape.aeroplane.equipment.pump) {
    const pressure = state[AT.fuelPressure] as number;
    state[AT.fuelPressure] = pressure + (controls.pump - pressure) * (STEP_S / FUEL_LINE_S);
  }
};

/** Share of its rated torque that the engine has now: density, mixture, damage, heat, ice; 0 without fuel. */
export const torqueShare = (model: Model, state: State, controls: Controls): number => {
  if (state[AT.engineDead] === 1 || (state[AT.fuelPressure] as number) < LEAST_FUEL_PRESSURE) return 0;
  const density = state[AT.density] as number;
  return (
    engineShare(density) *
    mixtureShare(controls.mixture, density) *
    (state[AT.powerShare] as number) *
    (1 - model.shape.heatLoss * controls.carbHeat) *
    (1 - FULL_ICE_LOSS * (state[AT.carbIce] as number))
  );
};
