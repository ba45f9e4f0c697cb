import type { Snapshot } from '../../simulation/snapshot.ts';
import { radFromDeg } from '../../units/conversions.ts';
import { WINDOW_FIELD_OF_VIEW_DEG } from '../frame.ts';
import { type Plane, viewPlanes } from './clip.ts';

/** Ground and things on it nearer than this are not drawn; the machine has its own, closer limit. */
const NEAR_M = 0.8;
const NEAR_MACHINE_M = 0.12;
/** Shapes are cut this much outside the panel, so that their edges never show. */
const OUTSIDE = 1.35;
/** The straight-ahead direction of the machine stands this far down the panel: more land than sky. */
const LEVEL_SHARE = 0.4;

/**
 * The pilot's eye: turns places into its own axes (x right, y up, z the way it looks) and those into pixels of
 * the panel. True perspective, the same scale both ways: WINDOW_FIELD_OF_VIEW_DEG across the panel's width.
 */
export class Eye {
  eastM = 0;
  northM = 0;
  heightM = 0;
  /** Axes in earth axes: east, north, up. */
  rightE = 1;
  rightN = 0;
  rightU = 0;
  upE = 0;
  upN = 0;
  upU = 1;
  aheadE = 0;
  aheadN = 1;
  aheadU = 0;
  private lookSin = 0;
  private lookCos = 1;
  /** Pixels a unit of slope. */
  focalPx = 300;
  middleX = 0;
  middleY = 0;
  groundPlanes: readonly Plane[] = [];
  machinePlanes: readonly Plane[] = [];
  private widthPx = 0;
  private heightPx = 0;

  fit(widthPx: number, heightPx: number): void {
    if (widthPx === this.widthPx && heightPx === this.heightPx) return;
    this.widthPx = widthPx;
    this.heightPx = heightPx;
    this.focalPx = widthPx / 2 / Math.tan(radFromDeg(WINDOW_FIELD_OF_VIEW_DEG) / 2);
    this.middleX = widthPx / 2;
    this.middleY = heightPx * LEVEL_SHARE;
    const slopeX = (OUTSIDE * widthPx) / 2 / this.focalPx;
    const slopeY = (OUTSIDE * heightPx * (1 - LEVEL_SHARE)) / this.focalPx;
    this.groundPlanes = viewPlanes(NEAR_M, slopeX, slopeY);
    this.machinePlanes = viewPlanes(NEAR_MACHINE_M, slopeX, slopeY);
  }

  /** Takes place and attitude; `lookRad` turns the head about the machine's own upright, + right. */
  take(snapshot: Readonly<Snapshot>, lookRad: number): void {
    this.eastM = snapshot.eyeEastM;
    this.northM = snapshot.eyeNorthM;
    this.heightM = snapshot.eyeHeightM;
    const sinH = Math.sin(snapshot.headingRadT);
    const cosH = Math.cos(snapshot.headingRadT);
    const sinP = Math.sin(snapshot.pitchRad);
    const cosP = Math.cos(snapshot.pitchRad);
    const sinB = Math.sin(snapshot.bankRad);
    const cosB = Math.cos(snapshot.bankRad);
    const sinL = Math.sin(lookRad);
    const cosL = Math.cos(lookRad);
    this.lookSin = sinL;
    this.lookCos = cosL;
    // Nose, right wing and roof of the machine: heading, then pitch, then bank (right wing down positive).
    const noseE = cosP * sinH;
    const noseN = cosP * cosH;
    const noseU = sinP;
    const roofE = -sinP * sinH;
    const roofN = -sinP * cosH;
    const roofU = cosP;
    const wingE = cosH * cosB - roofE * sinB;
    const wingN = -sinH * cosB - roofN * sinB;
    const wingU = -roofU * sinB;
    this.upE = roofE * cosB + cosH * sinB;
    this.upN = roofN * cosB - sinH * sinB;
    this.upU = roofU * cosB;
    this.aheadE = noseE * cosL + wingE * sinL;
    this.aheadN = noseN * cosL + wingN * sinL;
    this.aheadU = noseU * cosL + wingU * sinL;
    this.rightE = wingE * cosL - noseE * sinL;
    this.rightN = wingN * cosL - noseN * sinL;
    this.rightU = wingU * cosL - noseU * sinL;
  }

  // A place in earth axes, in the eye's.
  xOf(eastM: number, northM: number, heightM: number): number {
    return (
      (eastM - this.eastM) * this.rightE +
      (northM - this.northM) * this.rightN +
      (heightM - this.heightM) * this.rightU
    );
  }
  yOf(eastM: number, northM: number, heightM: number): number {
    return (
      (eastM - this.eastM) * this.upE +
      (northM - this.northM) * this.upN +
      (heightM - this.heightM) * this.upU
    );
  }
  zOf(eastM: number, northM: number, heightM: number): number {
    return (
      (eastM - this.eastM) * this.aheadE +
      (northM - this.northM) * this.aheadN +
      (heightM - this.heightM) * this.aheadU
    );
  }

  // A point of the machine seen from the eye (ahead, right, up), in the eye's axes; its y is `up` itself.
  machineX(ahead: number, right: number): number {
    return right * this.lookCos - ahead * this.lookSin;
  }
  machineZ(ahead: number, right: number): number {
    return ahead * this.lookCos + right * this.lookSin;
  }

  // Pixels.
  screenX(x: number, z: number): number {
    return this.middleX + (this.focalPx * x) / z;
  }
  screenY(y: number, z: number): number {
    return this.middleY - (this.focalPx * y) / z;
  }
}
