/**
 * The arrays of one evaluation of the forces and what stands where in them. Numbers travel between the parts of
 * the right-hand side through these, never as arguments: a double handed to a function that is not inlined is a
 * heap object, and this code runs 240 times a simulated second.
 */

/**
 * The twelve integrated numbers, in this order: where the centre of gravity is (east, north, up of the landing
 * threshold, m), its ground velocity (m/s), pitch, bank, heading (rad), pitch rate, roll rate (rad/s, body
 * axes), engine speed (rev/s).
 */
export const INTEGRATED = 12; // definition: a count of places

/** Constant over one step (definition: places). */
export const NOW = {
  windEast: 0,
  windNorth: 1,
  windUp: 2,
  density: 3,
  /** Trailing edge down positive. */
  elevatorRad: 4,
  aileron: 5,
  rudder: 6,
  brake: 7,
  throttle: 8,
  /** Torque is `torqueScale * (throttle * rated + (1 - throttle) * idle(n))`. */
  torqueScale: 9,
  engineDead: 10,
  flapLift: 11,
  flapDrag: 12,
  stallAlpha: 13,
  maximumLift: 14,
  flapMoment: 15,
  thrustMoment: 16,
  gear: 17,
  /** 1 when the rudder assist balances propeller, aileron and weathercock. */
  assist: 18,
  /** Roll rate of a dropped wing, or 0. */
  wingDropRadps: 19,
  rollingFriction: 20,
  // Of the ground: runway direction, its slope and the extent of the sloping part along it
  sinRunway: 21,
  cosRunway: 22,
  slope: 23,
  slopeFrom: 24,
  slopeTo: 25,
  // Of the blades, with a constant-speed propeller
  sinBlade: 26,
  cosBlade: 27,
  /** 1, or less while the wheels are locked and slide. */
  sideGrip: 28,
} as const;
export const NOW_LENGTH = 29; // definition: a count of places

/** What the forces were, for whoever looks (definition: places). */
export const SEEN = {
  alpha: 0,
  slip: 1,
  airspeed: 2,
  dynamicPressure: 3,
  thrust: 4,
  /** Specific force along body up, in g. */
  loadFactor: 5,
  /** Where the ball lies, + right, in g. */
  ball: 6,
  yawRate: 7,
  mainLoad: 8,
  noseLoad: 9,
  /** Height of the lowest main wheel above the ground below it; negative when the leg is compressed. */
  wheelHeight: 10,
  groundUp: 11,
  /** Force along the heading that would move a standing aeroplane (thrust, air, slope; no friction). */
  push: 12,
  lift: 13,
  drag: 14,
} as const;
export const SEEN_LENGTH = 15; // definition: a count of places

/** Sine and cosine of the attitude, and what the forces hand to the wheels and back (definition: places). */
export const PART = {
  sinPitch: 0,
  cosPitch: 1,
  sinBank: 2,
  cosBank: 3,
  sinHeading: 4,
  cosHeading: 5,
  // Up in body axes: of right and of up
  rightUp: 6,
  upUp: 7,
  /** Slope of the ground here, along the runway. */
  slopeHere: 8,
  pitching: 9,
  // Of the wheels, earth axes, and the roll acceleration they give
  wheelsEast: 10,
  wheelsNorth: 11,
  wheelsUp: 12,
  wheelsRoll: 13,
} as const;
const PART_LENGTH = 14; // definition: a count of places

/**
 * There is one: an evaluation fills every place before it reads it, so nothing is carried over, and an array that
 * never changes its place is quicker to reach than one handed on.
 */
export const part = new Float64Array(PART_LENGTH);
