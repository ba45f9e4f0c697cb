import { acrossM, alongM } from '../../../src/aerodrome/runway.ts';
import type { CircuitPlan } from '../../../src/circuit/types.ts';
import type { Snapshot } from '../../../src/simulation/snapshot.ts';
import { wrapPi } from '../../../src/units/angles.ts';
import { degFromRad, ftFromM, ktFromMps, rpmFromRevps } from '../../../src/units/conversions.ts';
import { type Luck, wandered } from './luck.ts';
import type { Person } from './person.ts';

/**
 * What a student sees at one glance: instruments and the ground, misread a little. Along the landing direction
 * from the threshold, across to the circuit's side; angles of track and heading count towards that side: 0 upwind,
 * 90 crosswind, 180 downwind, 270 base. Banks are + towards the circuit's side.
 */
export interface Glance {
  timeS: number;
  alongM: number;
  acrossM: number;
  heightFt: number;
  clearanceFt: number;
  iasKt: number;
  verticalFpm: number;
  /** By the ground coming up, where it is near. */
  seenFpm: number;
  groundspeedMps: number;
  trackDeg: number;
  headingDeg: number;
  bankDeg: number;
  pitchDeg: number;
  pitchRateDegps: number;
  /** Of the line from the aim point, above the planned slope. */
  slopeOffDeg: number;
  /** How much steeper the way down is than the line to the aim point: where the ground stands still. */
  steeperDeg: number;
  rpm: number;
  throttle: number;
  held: number;
  flapStage: number;
  gearLever: number;
  onGround: boolean;
  noseWheelOnGround: boolean;
  parked: boolean;
  engineDead: boolean;
}

export interface Misreading {
  speedKt: number;
  heightFt: number;
  headingDeg: number;
  slopeDeg: number;
  acrossShare: number;
  flareFt: number;
}

export const noMisreading = (): Misreading => ({
  speedKt: 0,
  heightFt: 0,
  headingDeg: 0,
  slopeDeg: 0,
  acrossShare: 0,
  flareFt: 0,
});

export const misread = (errors: Misreading, person: Person, sinceS: number, luck: Luck): void => {
  for (const key of Object.keys(errors) as (keyof Misreading)[])
    errors[key] = wandered(errors[key], person.wander[key], sinceS, luck);
};

/** 0 to 360. */
const turnOf = (deg: number): number => ((deg % 360) + 360) % 360;

/** `ahead`: the runway is in the window, and headings are seen against it. */
export const glanceAt = (
  s: Readonly<Snapshot>,
  plan: CircuitPlan,
  errors: Readonly<Misreading>,
  ahead = false,
): Glance => {
  const headingDeg = ahead ? 0.3 * errors.headingDeg : errors.headingDeg;
  const { runway, side } = plan;
  const along = alongM(runway, s.eastM, s.northM);
  const across = side * acrossM(runway, s.eastM, s.northM);
  const rel = (rad: number): number => turnOf(degFromRad(side * wrapPi(rad - runway.headingRadT)));
  const slope = Math.atan2(s.eyeHeightM - runway.slope * runway.aimM, Math.max(30, runway.aimM - along));
  return {
    timeS: s.timeS,
    alongM: along,
    acrossM: across * (1 + errors.acrossShare),
    heightFt: ftFromM(s.heightM) + errors.heightFt,
    clearanceFt: ftFromM(s.wheelClearanceM) + errors.flareFt,
    iasKt: ktFromMps(s.shownIasMps) + errors.speedKt,
    verticalFpm: ftFromM(s.indicatedVerticalSpeedMps) * 60,
    seenFpm: ftFromM(s.verticalSpeedMps) * 60 * (1 + 4 * errors.acrossShare),
    groundspeedMps: s.groundspeedMps,
    trackDeg: turnOf(rel(s.trackRadT) + headingDeg),
    headingDeg: turnOf(rel(s.headingRadT) + headingDeg),
    bankDeg: side * degFromRad(s.bankRad),
    pitchDeg: degFromRad(s.pitchRad),
    pitchRateDegps: degFromRad(s.pitchRateRadps),
    slopeOffDeg: degFromRad(slope - plan.approachRad) + errors.slopeDeg,
    steeperDeg:
      degFromRad(Math.atan2(-s.verticalSpeedMps, Math.max(5, s.groundspeedMps)) - slope) +
      2 * errors.slopeDeg,
    rpm: rpmFromRevps(s.engineRevps),
    throttle: s.throttle,
    held: s.heldPressureDegKpa,
    flapStage: s.flapStage,
    gearLever: s.gearLever,
    onGround: s.onGround,
    noseWheelOnGround: s.noseWheelOnGround,
    parked: s.parked,
    engineDead: s.engineDead,
  };
};

/** The shorter way from one direction to another, -180 to 180. */
export const turnTo = (from: number, to: number): number => turnOf(to - from + 180) - 180;
