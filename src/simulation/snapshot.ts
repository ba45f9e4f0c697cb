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
  iasMps: number;
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
  carbIce: number;
  flapRad: number;
  flapDeg: number;
  /** 1 down, 0 up. */
  gear: number;
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
  /** Why the physics ended the flight, or null. */
  ended: 'crashed' | 'loss-of-control' | null;
  endedWhy: string;
  /** Which ground lies below: on the runway strip, or off it. */
  onRunway: boolean;
}
