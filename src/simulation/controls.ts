/** What the hands do for one step: dimensionless, quantised before it is used and recorded. */
export interface Controls {
  /** -1..1, + nose up. */
  elevator: number;
  /** -1..1, + rolls right. */
  aileron: number;
  /** -1..1, + nose right. */
  rudder: number;
  /** Position of the trim wheel, -1..1, + nose up. */
  trim: number;
  throttle: number;
  mixture: number;
  propeller: number;
  brake: number;
  /** 0, 1, 2 ...: index into the aeroplane's flap stages. */
  flapStage: number;
  /** 0 or 1. */
  carbHeat: number;
  pump: number;
  /** 1 down, 0 up. */
  gear: number;
}

export interface ControlRange {
  readonly name: keyof Controls;
  /** The column of the controls file. */
  readonly column: string;
  readonly low: number;
  readonly high: number;
  readonly whole: boolean;
}

/** The one table of controls: names, columns of the controls file, ranges (definition: shares of travel). Order is the recording's order. */
export const CONTROLS: readonly ControlRange[] = [
  { name: 'elevator', column: 'elevator', low: -1, high: 1, whole: false },
  { name: 'aileron', column: 'aileron', low: -1, high: 1, whole: false },
  { name: 'rudder', column: 'rudder', low: -1, high: 1, whole: false },
  { name: 'trim', column: 'trim', low: -1, high: 1, whole: false },
  { name: 'throttle', column: 'throttle', low: 0, high: 1, whole: false },
  { name: 'mixture', column: 'mixture', low: 0, high: 1, whole: false },
  { name: 'propeller', column: 'propeller', low: 0, high: 1, whole: false },
  { name: 'brake', column: 'brake', low: 0, high: 1, whole: false },
  { name: 'flapStage', column: 'flap_stage', low: 0, high: 9, whole: true },
  { name: 'carbHeat', column: 'carb_heat', low: 0, high: 1, whole: true },
  { name: 'pump', column: 'pump', low: 0, high: 1, whole: true },
  { name: 'gear', column: 'gear', low: 0, high: 1, whole: true },
];

export const neutralControls = (): Controls => ({
  elevator: 0,
  aileron: 0,
  rudder: 0,
  trim: 0,
  throttle: 0,
  mixture: 1,
  propeller: 1,
  brake: 0,
  flapStage: 0,
  carbHeat: 0,
  pump: 0,
  gear: 1,
});

const clamp = (x: number, low: number, high: number) => (x < low ? low : x > high ? high : x);

/** One lever: clamped, to the nearest step; what is not a number becomes 0. */
const lever = (x: number, low: number, high: number): number =>
  x === x ? Math.round(clamp(x, low, high) * 10000) / 10000 + 0 : 0;
const stage = (x: number, high: number): number => (x === x ? Math.round(clamp(x, 0, high)) + 0 : 0);

/**
 * Clamps and quantises in place; what is not a number becomes 0. `topStage` is the aeroplane's last flap stage.
 * Written out over the table's ranges, because it runs every step (a test holds the two together).
 */
export const quantiseControls = (controls: Controls, topStage: number): void => {
  controls.elevator = lever(controls.elevator, -1, 1);
  controls.aileron = lever(controls.aileron, -1, 1);
  controls.rudder = lever(controls.rudder, -1, 1);
  controls.trim = lever(controls.trim, -1, 1);
  controls.throttle = lever(controls.throttle, 0, 1);
  controls.mixture = lever(controls.mixture, 0, 1);
  controls.propeller = lever(controls.propeller, 0, 1);
  controls.brake = lever(controls.brake, 0, 1);
  controls.flapStage = stage(controls.flapStage, topStage);
  controls.carbHeat = stage(controls.carbHeat, 1);
  controls.pump = stage(controls.pump, 1);
  controls.gear = stage(controls.gear, 1);
};

/**
 * The same where most levers stand as they stood in `last`, which was quantised: those are taken from there (not left
 * alone, for the sake of a nought's sign).
 */
export const quantiseMoved = (controls: Controls, topStage: number, last: Readonly<Controls>): void => {
  controls.elevator = controls.elevator === last.elevator ? last.elevator : lever(controls.elevator, -1, 1);
  controls.aileron = controls.aileron === last.aileron ? last.aileron : lever(controls.aileron, -1, 1);
  controls.rudder = controls.rudder === last.rudder ? last.rudder : lever(controls.rudder, -1, 1);
  controls.trim = controls.trim === last.trim ? last.trim : lever(controls.trim, -1, 1);
  controls.throttle = controls.throttle === last.throttle ? last.throttle : lever(controls.throttle, 0, 1);
  controls.mixture = controls.mixture === last.mixture ? last.mixture : lever(controls.mixture, 0, 1);
  controls.propeller =
    controls.propeller === last.propeller ? last.propeller : lever(controls.propeller, 0, 1);
  controls.brake = controls.brake === last.brake ? last.brake : lever(controls.brake, 0, 1);
  controls.flapStage =
    controls.flapStage === last.flapStage ? last.flapStage : stage(controls.flapStage, topStage);
  controls.carbHeat = controls.carbHeat === last.carbHeat ? last.carbHeat : stage(controls.carbHeat, 1);
  controls.pump = controls.pump === last.pump ? last.pump : stage(controls.pump, 1);
  controls.gear = controls.gear === last.gear ? last.gear : stage(controls.gear, 1);
};

export const copyControls = (from: Controls, into: Controls): void => {
  into.elevator = from.elevator;
  into.aileron = from.aileron;
  into.rudder = from.rudder;
  into.trim = from.trim;
  into.throttle = from.throttle;
  into.mixture = from.mixture;
  into.propeller = from.propeller;
  into.brake = from.brake;
  into.flapStage = from.flapStage;
  into.carbHeat = from.carbHeat;
  into.pump = from.pump;
  into.gear = from.gear;
};
