import type { Slot } from '../maths/slots.ts';
import { AIR_SLOTS } from '../wind/moving-air.ts';

/**
 * All that must survive a step, one Float64Array. A snapshot, a rewind and a fork are one copy of it. The first
 * twelve are what the integrator integrates, in the order `forces.ts` wants them; then what moves once a step;
 * latches; what the forces were in the last step (for `observe`); the memory of the moving air.
 */
export type State = Float64Array;

const slot = (name: string, low: number, high: number): Slot => ({ name, low, high });

/** In their order; ranges (our choice: wider than any flight, so that a number gone wrong is seen). */
export const STATE_SLOTS: readonly Slot[] = [
  slot('eastM', -1e6, 1e6),
  slot('northM', -1e6, 1e6),
  slot('upM', -200, 15000),
  slot('velocityEastMps', -250, 250),
  slot('velocityNorthMps', -250, 250),
  slot('velocityUpMps', -250, 250),
  slot('pitchRad', -1.4, 1.4),
  slot('bankRad', -Math.PI, Math.PI),
  slot('headingRad', -Math.PI, Math.PI),
  slot('pitchRateRadps', -4, 4),
  slot('rollRateRadps', -4, 4),
  slot('engineRevps', 0, 90),
  slot('step', 0, 1e9),
  slot('throttle', 0, 1),
  slot('flapDeg', 0, 90),
  slot('gear', 0, 1),
  slot('trimWheel', -1, 1),
  slot('carbIce', 0, 1),
  slot('shownVerticalSpeedMps', -250, 250),
  slot('stalled', 0, 1),
  slot('wingDrop', -1, 1),
  slot('parked', 0, 1),
  slot('onGround', 0, 1),
  slot('ended', 0, 2),
  slot('endedWhy', 0, 9),
  slot('endedValue', -1e5, 1e5),
  slot('engineDead', 0, 1),
  slot('powerShare', 0.3, 1),
  slot('flapStuck', 0, 1),
  slot('trimStuck', 0, 1),
  slot('tailStrike', 0, 1),
  slot('windEastMps', -150, 150),
  slot('windNorthMps', -150, 150),
  slot('windUpMps', -50, 50),
  slot('densityKgpm3', 0.1, 2),
  slot('stallAlphaRad', 0, 0.5),
  slot('maximumLift', 0.5, 4),
  slot('bladeRad', 0, 1.2),
  slot('brakeHeatK', 0, 3000),
  slot('liningHeatK', 0, 3000),
  slot('slidM', 0, 1e4),
  slot('wheelsLocked', 0, 1),
  slot('flatSpot', 0, 1),
  slot('fuelPressure', 0, 1),
  slot('pumpFailed', 0, 1),
  slot('airspeedBlocked', 0, 1),
  slot('trappedPa', 0, 3e5),
  slot('radioFailed', 0, 1),
  slot('brakesFailed', 0, 1),
  slot('seen.alphaRad', -Math.PI, Math.PI),
  slot('seen.slipRad', -Math.PI, Math.PI),
  slot('seen.airspeedMps', 0, 600),
  slot('seen.dynamicPressurePa', 0, 3e5),
  slot('seen.thrustN', -2e4, 2e4),
  slot('seen.loadFactor', -500, 500),
  slot('seen.ball', -500, 500),
  slot('seen.yawRateRadps', -2, 2),
  slot('seen.mainLoadN', 0, 1e7),
  slot('seen.noseLoadN', 0, 1e7),
  slot('seen.wheelHeightM', -50, 15000),
  slot('seen.groundUpM', -500, 500),
  slot('seen.pushN', -1e6, 1e6),
  slot('seen.liftN', -2e6, 2e6),
  slot('seen.dragN', -1e6, 2e6),
  ...AIR_SLOTS,
];

/** Where each of the state's own numbers stands (definition: places). */
export const AT = {
  east: 0,
  north: 1,
  up: 2,
  velocityEast: 3,
  velocityNorth: 4,
  velocityUp: 5,
  pitch: 6,
  bank: 7,
  heading: 8,
  pitchRate: 9,
  rollRate: 10,
  revps: 11,
  step: 12,
  throttle: 13,
  flapDeg: 14,
  gear: 15,
  trimWheel: 16,
  carbIce: 17,
  shownVerticalSpeed: 18,
  stalled: 19,
  wingDrop: 20,
  parked: 21,
  onGround: 22,
  ended: 23,
  endedWhy: 24,
  endedValue: 25,
  engineDead: 26,
  powerShare: 27,
  flapStuck: 28,
  trimStuck: 29,
  tailStrike: 30,
  windEast: 31,
  windNorth: 32,
  windUp: 33,
  density: 34,
  stallAlpha: 35,
  maximumLift: 36,
  blade: 37,
  brakeHeat: 38,
  liningHeat: 39,
  slid: 40,
  wheelsLocked: 41,
  flatSpot: 42,
  fuelPressure: 43,
  pumpFailed: 44,
  airspeedBlocked: 45,
  trapped: 46,
  radioFailed: 47,
  brakesFailed: 48,
  seen: 49,
  air: 64,
} as const;

export const newState = (): State => new Float64Array(STATE_SLOTS.length);

/** A copy that shares nothing. */
export const copyState = (state: State): State => new Float64Array(state);

/** The first slot outside its declared range or not finite, or null. */
export const slotOutOfRange = (state: State): { readonly name: string; readonly value: number } | null => {
  for (let i = 0; i < STATE_SLOTS.length; i += 1) {
    const s = STATE_SLOTS[i] as Slot;
    const value = state[i] as number;
    if (!(value >= s.low && value <= s.high)) return { name: s.name, value };
  }
  return null;
};
