import { acrossM, alongM, type Runway } from '../aerodrome/runway.ts';
import type { Snapshot } from '../simulation/snapshot.ts';
import { wrapPi } from '../units/angles.ts';

/**
 * What a pilot can know: the instruments, the attitude, the ground going by. No wind vector, no gust, no angle
 * of attack. In circuit axes: x along the landing direction from the threshold, y out to the circuit side; angles
 * count from x towards y, so that every turn of every circuit counts upwards and left-hand circuits are the
 * mirror image. Banks, rates of roll and yaw and the ball are + towards the circuit side too.
 */
export interface PilotView {
  timeS: number;
  xM: number;
  yM: number;
  /** Of the wheels above the landing threshold, and above the ground below them. */
  heightM: number;
  clearanceM: number;
  groundspeedMps: number;
  /** 0 upwind, a quarter turn crosswind, half a turn downwind. */
  trackRad: number;
  headingRad: number;
  verticalSpeedMps: number;
  /** How the ground comes nearer: vertical speed over the runway's slope, + away from it. */
  partingMps: number;
  pitchRad: number;
  bankRad: number;
  pitchRateRadps: number;
  rollRateRadps: number;
  iasMps: number;
  revps: number;
  flapDeg: number;
  /** 1 down and locked, by its lights. */
  gear: number;
  ball: number;
  /** As it is felt in the seat. */
  loadFactor: number;
  onGround: boolean;
  noseWheelOnGround: boolean;
  parked: boolean;
  /** The engine has stopped: heard before it is read. */
  silent: boolean;
}

export const newPilotView = (): PilotView => ({
  timeS: 0,
  xM: 0,
  yM: 0,
  heightM: 0,
  clearanceM: 0,
  groundspeedMps: 0,
  trackRad: 0,
  headingRad: 0,
  verticalSpeedMps: 0,
  partingMps: 0,
  pitchRad: 0,
  bankRad: 0,
  pitchRateRadps: 0,
  rollRateRadps: 0,
  iasMps: 0,
  revps: 0,
  flapDeg: 0,
  gear: 1,
  ball: 0,
  loadFactor: 1,
  onGround: false,
  noseWheelOnGround: false,
  parked: false,
  silent: false,
});

/** Fills `into` with what a pilot in a circuit to `side` (+1 right) sees of this snapshot. */
export const pilotView = (
  s: Readonly<Snapshot>,
  runway: Runway,
  side: 1 | -1,
  into: PilotView,
): PilotView => {
  into.timeS = s.timeS;
  into.xM = alongM(runway, s.eastM, s.northM);
  into.yM = side * acrossM(runway, s.eastM, s.northM);
  into.heightM = s.heightM;
  into.clearanceM = s.wheelClearanceM;
  into.groundspeedMps = s.groundspeedMps;
  into.trackRad = wrapPi(side * wrapPi(s.trackRadT - runway.headingRadT));
  into.headingRad = wrapPi(side * wrapPi(s.headingRadT - runway.headingRadT));
  into.verticalSpeedMps = s.verticalSpeedMps;
  const alongMps = s.velocityEastMps * runway.sinHeading + s.velocityNorthMps * runway.cosHeading;
  const sloping = into.xM > runway.surfaceStartM && into.xM < runway.surfaceEndM;
  into.partingMps = s.verticalSpeedMps - (sloping ? runway.slope * alongMps : 0);
  into.pitchRad = s.pitchRad;
  into.bankRad = side * s.bankRad;
  into.pitchRateRadps = s.pitchRateRadps;
  into.rollRateRadps = side * s.rollRateRadps;
  into.iasMps = s.shownIasMps;
  into.revps = s.engineRevps;
  into.flapDeg = s.flapDeg;
  into.gear = s.gear;
  into.ball = side * s.ball;
  into.loadFactor = s.loadFactor;
  into.onGround = s.onGround;
  into.noseWheelOnGround = s.noseWheelOnGround;
  into.parked = s.parked;
  into.silent = s.engineDead;
  return into;
};
