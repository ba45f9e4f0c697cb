/**
 * All that anyone outside the physics may see, SI, earth axes from the landing threshold in use
 * (east and north true, up above that threshold). One object is filled again and again.
 */
export interface Snapshot {
  /** Steps since the beginning; `timeS` is step / 60. */
  step: number;
  timeS: number;
  // Where (of the lowest main wheel) and how fast over the ground
  eastM: number;
  northM: number;
  /** Of the lowest main wheel above the landing threshold. */
  heightM: number;
  /** Of the lowest main wheel above the ground below it; negative by the leg's compression. */
  wheelClearanceM: number;
  /** Of the pilot's eye. */
  eyeEastM: number;
  eyeNorthM: number;
  eyeHeightM: number;
  velocityEastMps: number;
  velocityNorthMps: number;
  verticalSpeedMps: number;
  groundspeedMps: number;
  /** True track over the ground, 0..2pi; the heading when standing still. */
  trackRadT: number;
  // Attitude and rates
  pitchRad: number;
  bankRad: number;
  headingRadT: number;
  pitchRateRadps: number;
  rollRateRadps: number;
  yawRateRadps: number;
  // Air
  alphaRad: number;
  /** + air from the right. */
  slipRad: number;
  /** What the wing feels; what the instrument shows is `shownIasMps`. */
  iasMps: number;
  /** As the airspeed indicator reads it: blocked, it reads like an altimeter. */
  shownIasMps: number;
  tasMps: number;
  dynamicPressurePa: number;
  densityKgpm3: number;
  /** Wind as the aeroplane meets it now, gust included: where it blows TO. */
  windEastMps: number;
  windNorthMps: number;
  windUpMps: number;
  /** Indicated on QNH. */
  altitudeM: number;
  /** As the instrument shows it, lagged. */
  indicatedVerticalSpeedMps: number;
  loadFactor: number;
  /** Lateral acceleration of the ball: + ball to the right, in g. */
  ball: number;
  // Engine and machine
  engineRevps: number;
  thrustN: number;
  throttle: number;
  mixture: number;
  propeller: number;
  pump: number;
  /** In the inlet, as its gauge reads it. */
  manifoldPa: number;
  /** Of the propeller's blades; 0 where they are fixed. */
  bladeRad: number;
  /** 0 to 1 of what the engine is fed with. */
  fuelPressure: number;
  carbIce: number;
  flapRad: number;
  flapDeg: number;
  /** 1 down, 0 up. */
  gear: number;
  /** Where the lever stands. */
  gearLever: number;
  /** The horn: power off or flap out in the air, and the gear not down and locked. */
  gearWarning: boolean;
  /** Faster than the gear may be moved, or flown with when it is down. */
  gearTooFast: boolean;
  // Hands
  elevator: number;
  aileron: number;
  rudder: number;
  trim: number;
  brake: number;
  flapStage: number;
  carbHeat: number;
  /** Force in the hand: degrees of elevator off trim times kPa of dynamic pressure, + pull. */
  heldPressureDegKpa: number;
  // Stall
  stallAlphaRad: number;
  /** Stalling IAS now: this flap and mass, at one g. */
  stallIasMps: number;
  warner: boolean;
  stalled: boolean;
  // Ground
  onGround: boolean;
  noseWheelOnGround: boolean;
  /** Main wheels carry this share of the weight, 0..1 and beyond. */
  weightOnWheels: number;
  parked: boolean;
  tailStrike: boolean;
  engineDead: boolean;
  /** The engine runs, and gives less than the lever asks for. */
  powerPartial: boolean;
  /** Lining and disc together, above the air's temperature; friction fades from 250 K. */
  brakeHeatK: number;
  /** The brakes hold the wheels still and the tyres slide. */
  wheelsLocked: boolean;
  /** A tyre has slid flat. */
  flatSpot: boolean;
  airspeedBlocked: boolean;
  radioFailed: boolean;
  /** Felt in the pedals, 0 to 1: what is pressed, unless there is nothing behind it. */
  brakePressure: number;
  /** Why the physics ended the flight, or null. */
  ended: 'crashed' | 'loss-of-control' | null;
  endedWhy: string;
  /** Which ground lies below: on the runway strip, or off it. */
  onRunway: boolean;
}

/** An empty Snapshot, to be filled by `observe`. */
export const newSnapshot = (): Snapshot => ({
  step: 0,
  timeS: 0,
  eastM: 0,
  northM: 0,
  heightM: 0,
  wheelClearanceM: 0,
  eyeEastM: 0,
  eyeNorthM: 0,
  eyeHeightM: 0,
  velocityEastMps: 0,
  velocityNorthMps: 0,
  verticalSpeedMps: 0,
  groundspeedMps: 0,
  trackRadT: 0,
  pitchRad: 0,
  bankRad: 0,
  headingRadT: 0,
  pitchRateRadps: 0,
  rollRateRadps: 0,
  yawRateRadps: 0,
  alphaRad: 0,
  slipRad: 0,
  iasMps: 0,
  shownIasMps: 0,
  tasMps: 0,
  dynamicPressurePa: 0,
  densityKgpm3: 0,
  windEastMps: 0,
  windNorthMps: 0,
  windUpMps: 0,
  altitudeM: 0,
  indicatedVerticalSpeedMps: 0,
  loadFactor: 1,
  ball: 0,
  engineRevps: 0,
  thrustN: 0,
  throttle: 0,
  mixture: 1,
  propeller: 1,
  pump: 0,
  manifoldPa: 0,
  bladeRad: 0,
  fuelPressure: 1,
  carbIce: 0,
  flapRad: 0,
  flapDeg: 0,
  gear: 1,
  gearLever: 1,
  gearWarning: false,
  gearTooFast: false,
  elevator: 0,
  aileron: 0,
  rudder: 0,
  trim: 0,
  brake: 0,
  flapStage: 0,
  carbHeat: 0,
  heldPressureDegKpa: 0,
  stallAlphaRad: 0,
  stallIasMps: 0,
  warner: false,
  stalled: false,
  onGround: false,
  noseWheelOnGround: false,
  weightOnWheels: 0,
  parked: false,
  tailStrike: false,
  engineDead: false,
  powerPartial: false,
  brakeHeatK: 0,
  wheelsLocked: false,
  flatSpot: false,
  airspeedBlocked: false,
  radioFailed: false,
  brakePressure: 0,
  ended: null,
  endedWhy: '',
  onRunway: false,
});
