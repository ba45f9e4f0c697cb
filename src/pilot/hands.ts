import { clamp } from '../maths/functions.ts';
import type { Controls } from '../simulation/controls.ts';
import { STEP_S } from '../simulation/scenario.ts';

/** Where hands and feet are going; they get there at the speed of hands. */
export interface Hands {
  elevator: number;
  /** + towards the circuit side, as `rudder`. */
  aileron: number;
  rudder: number;
  trim: number;
  throttle: number;
  brake: number;
  flapStage: number;
  carbHeat: number;
  gear: number;
  propeller: number;
  mixture: number;
  pump: number;
}

/** Of full travel a second (common practice: quick hands need .3 to .5 s for a whole stick). */
const STICK_PER_S = 2.5;
const PEDAL_PER_S = 2; // estimate: an unhurried hand
const THROTTLE_PER_S = 0.95; // estimate: an unhurried hand
const WHEEL_PER_S = 0.15; // estimate: an unhurried hand
const BRAKE_PER_S = 2; // estimate: an unhurried hand
const LEVER_PER_S = 0.4; // estimate: an unhurried hand

/** A hand sets a power lever no finer than this share of its travel. */
const LEVER_NOTCHES = 200; // estimate
const notched = (lever: number): number => Math.round(LEVER_NOTCHES * lever) / LEVER_NOTCHES;

const toward = (from: number, to: number, most: number): number =>
  to > from + most ? from + most : to < from - most ? from - most : to;

/** One step of every hand towards where it is going. */
export const moveHands = (hands: Readonly<Hands>, side: 1 | -1, controls: Controls): void => {
  controls.elevator = toward(controls.elevator, clamp(hands.elevator, -1, 1), STICK_PER_S * STEP_S);
  controls.aileron = toward(controls.aileron, side * clamp(hands.aileron, -1, 1), STICK_PER_S * STEP_S);
  controls.rudder = toward(controls.rudder, side * clamp(hands.rudder, -1, 1), PEDAL_PER_S * STEP_S);
  controls.trim = toward(controls.trim, clamp(hands.trim, -1, 1), WHEEL_PER_S * STEP_S);
  controls.throttle = toward(
    controls.throttle,
    notched(clamp(hands.throttle, 0, 1)),
    THROTTLE_PER_S * STEP_S,
  );
  controls.brake = toward(controls.brake, clamp(hands.brake, 0, 1), BRAKE_PER_S * STEP_S);
  controls.flapStage = hands.flapStage;
  controls.carbHeat = hands.carbHeat;
  controls.gear = hands.gear;
  controls.propeller = toward(controls.propeller, hands.propeller, LEVER_PER_S * STEP_S);
  controls.mixture = toward(controls.mixture, hands.mixture, LEVER_PER_S * STEP_S);
  controls.pump = hands.pump;
};

export const handsOn = (controls: Readonly<Controls>, side: 1 | -1): Hands => ({
  elevator: controls.elevator,
  aileron: side * controls.aileron + 0,
  rudder: side * controls.rudder + 0,
  trim: controls.trim,
  throttle: controls.throttle,
  brake: controls.brake,
  flapStage: controls.flapStage,
  carbHeat: controls.carbHeat,
  gear: controls.gear,
  propeller: controls.propeller,
  mixture: controls.mixture,
  pump: controls.pump,
});
