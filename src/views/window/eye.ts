import type { Snapshot } from '../../simulation/snapshot.ts';
import { radFromDeg } from '../../units/conversions.ts';
import { WINDOW_FIELD_OF_VIEW_DEG } from '../frame.ts';
import { newPlanes, type Sides, setPlanes } from './clip.ts';

/** Ground and things on it nearer than this are not drawn; the machine has its own, closer limit. */
const NEAR_M = 0.8;
const NEAR_MACHINE_M = 0.12;
/** Shapes are cut this far outside the panel, so that their edges never show. */
const OUTSIDE_PX = 60;
/** The straight-ahead direction of the machine stands this far down the panel: more land than sky. */
const LEVEL_SHARE = 0.4;

const HALF_FIELD = Math.tan(radFromDeg(WINDOW_FIELD_OF_VIEW_DEG) / 2);

/** Where numbers of the eye stand in `axes`. */
const PLACE = 0;
const RIGHT = 3;
const UP = 6;
const AHEAD = 9;

/**
 * The pilot's eye: turns places into its own axes (x right, y up, z the way it looks) and those into pixels of
 * the panel. True perspective, the same scale both ways: WINDOW_FIELD_OF_VIEW_DEG across the panel's width.
 */
export class Eye {
  /** Place, then right, up and ahead as unit vectors; all east, north, up. */
  readonly axes = new Float64Array(12);
  lookSin = 0;
  lookCos = 1;
  /** Pixels a unit of slope. */
  focalPx = 300;
  middleX = 0;
  middleY = 0;
  readonly groundPlanes = newPlanes();
  readonly machinePlanes = newPlanes();
  private readonly sides: Sides = { left: 1, right: 1, up: 1, down: 1 };

  /** The whole view: the stated field across the panel. */
  fit(widthPx: number, heightPx: number): void {
    this.focalPx = widthPx / 2 / HALF_FIELD;
    this.middleX = widthPx / 2;
    this.middleY = heightPx * LEVEL_SHARE;
    this.cutAt(widthPx, heightPx);
  }

  /** A closer look, so many times larger, at a place given in the eye's axes (x, y, z). */
  fitCloser(widthPx: number, heightPx: number, focalPx: number, place: Float64Array): void {
    this.focalPx = focalPx;
    this.middleX = widthPx / 2 - (focalPx * place[0]!) / place[2]!;
    this.middleY = heightPx * 0.55 + (focalPx * place[1]!) / place[2]!;
    this.cutAt(widthPx, heightPx);
  }

  private cutAt(widthPx: number, heightPx: number): void {
    const { sides, focalPx, middleX, middleY } = this;
    sides.left = (middleX + OUTSIDE_PX) / focalPx;
    sides.right = (widthPx - middleX + OUTSIDE_PX) / focalPx;
    sides.up = (middleY + OUTSIDE_PX) / focalPx;
    sides.down = (heightPx - middleY + OUTSIDE_PX) / focalPx;
    setPlanes(this.groundPlanes, NEAR_M, sides);
    setPlanes(this.machinePlanes, NEAR_MACHINE_M, sides);
  }

  /** Takes place and attitude; `lookRad` turns the head about the machine's own upright, + right. */
  take(snapshot: Readonly<Snapshot>, lookRad: number): void {
    const { axes } = this;
    axes[PLACE] = snapshot.eyeEastM;
    axes[PLACE + 1] = snapshot.eyeNorthM;
    axes[PLACE + 2] = snapshot.eyeHeightM;
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
    // Nose, roof and right wing of the machine: heading, then pitch, then bank (right wing down positive).
    const noseE = cosP * sinH;
    const noseN = cosP * cosH;
    const noseU = sinP;
    const roofE = -sinP * sinH;
    const roofN = -sinP * cosH;
    const roofU = cosP;
    const wingE = cosH * cosB - roofE * sinB;
    const wingN = -sinH * cosB - roofN * sinB;
    const wingU = -roofU * sinB;
    axes[UP] = roofE * cosB + cosH * sinB;
    axes[UP + 1] = roofN * cosB - sinH * sinB;
    axes[UP + 2] = roofU * cosB;
    axes[AHEAD] = noseE * cosL + wingE * sinL;
    axes[AHEAD + 1] = noseN * cosL + wingN * sinL;
    axes[AHEAD + 2] = noseU * cosL + wingU * sinL;
    axes[RIGHT] = wingE * cosL - noseE * sinL;
    axes[RIGHT + 1] = wingN * cosL - noseN * sinL;
    axes[RIGHT + 2] = wingU * cosL - noseU * sinL;
  }

  /** Upward part of the right, up and ahead axes: the attitude of the picture. */
  get rightU(): number {
    return this.axes[RIGHT + 2]!;
  }
  get upU(): number {
    return this.axes[UP + 2]!;
  }
  get aheadU(): number {
    return this.axes[AHEAD + 2]!;
  }

  /** Puts a place (east, north, height at `at` of `places`) in the eye's axes at `to` of `into`. */
  bring(places: ArrayLike<number>, at: number, into: Float64Array, to: number): void {
    const { axes } = this;
    const e = (places[at] as number) - axes[0]!;
    const n = (places[at + 1] as number) - axes[1]!;
    const u = (places[at + 2] as number) - axes[2]!;
    into[to] = e * axes[3]! + n * axes[4]! + u * axes[5]!;
    into[to + 1] = e * axes[6]! + n * axes[7]! + u * axes[8]!;
    into[to + 2] = e * axes[9]! + n * axes[10]! + u * axes[11]!;
  }

  /** The same for a point of the machine seen from the eye: ahead, right, up. */
  bringMachine(points: ArrayLike<number>, at: number, into: Float64Array, to: number): void {
    const ahead = points[at] as number;
    const right = points[at + 1] as number;
    into[to] = right * this.lookCos - ahead * this.lookSin;
    into[to + 1] = points[at + 2] as number;
    into[to + 2] = ahead * this.lookCos + right * this.lookSin;
  }

  // Pixels.
  screenX(x: number, z: number): number {
    return this.middleX + (this.focalPx * x) / z;
  }
  screenY(y: number, z: number): number {
    return this.middleY - (this.focalPx * y) / z;
  }
}
