import { acrossM, alongM, type Runway } from '../../aerodrome/runway.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import { wrapPi } from '../../units/angles.ts';

/** A snapshot seen from the runway: what leg detection and facts look at. One object is filled again and again. */
export interface Where {
  timeS: number;
  /** Along the landing direction from the threshold, and to the right of the centreline. */
  alongM: number;
  acrossM: number;
  /** Off the centreline towards the circuit side. */
  outM: number;
  /** Track over the ground from the landing direction, + towards the circuit side: 0 upwind, 90 deg crosswind. */
  trackRad: number;
  /** + wing down towards the circuit side. */
  bankRad: number;
  /** Wheels above the landing threshold, and above the ground below them. */
  heightM: number;
  clearM: number;
  verticalSpeedMps: number;
  groundspeedMps: number;
  throttle: number;
  onGround: boolean;
  onRunway: boolean;
  parked: boolean;
}

export const newWhere = (): Where => ({
  timeS: 0,
  alongM: 0,
  acrossM: 0,
  outM: 0,
  trackRad: 0,
  bankRad: 0,
  heightM: 0,
  clearM: 0,
  verticalSpeedMps: 0,
  groundspeedMps: 0,
  throttle: 0,
  onGround: true,
  onRunway: true,
  parked: false,
});

/** `side` is +1 for a circuit flown to the right, -1 to the left. */
export const lookFrom = (runway: Runway, side: 1 | -1, s: Readonly<Snapshot>, into: Where): void => {
  into.timeS = s.timeS;
  into.alongM = alongM(runway, s.eastM, s.northM);
  into.acrossM = acrossM(runway, s.eastM, s.northM);
  into.outM = side * into.acrossM;
  into.trackRad = wrapPi(side * wrapPi(s.trackRadT - runway.headingRadT));
  into.bankRad = side * s.bankRad;
  into.heightM = s.heightM;
  into.clearM = s.wheelClearanceM;
  into.verticalSpeedMps = s.verticalSpeedMps;
  into.groundspeedMps = s.groundspeedMps;
  into.throttle = s.throttle;
  into.onGround = s.onGround;
  into.onRunway = s.onRunway;
  into.parked = s.parked;
};
