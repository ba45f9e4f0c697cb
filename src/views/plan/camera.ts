import type { Pen } from '../pen/pen.ts';

/**
 * Where the plan looks: which direction is up, how many pixels a metre has, and which place is in the middle.
 * Earth axes in, pixels of the panel out; no objects are made.
 */
export class PlanCamera {
  /** True direction that points up. */
  upRad = 0;
  pxPerM = 0.05;
  /** The place in the middle, metres right of and up from the threshold in the turned axes. */
  rightM = 0;
  aheadM = 0;
  /** Pixel of that place. */
  middleX = 0;
  middleY = 0;
  private sin = 0;
  private cos = 1;

  /** Call after changing `upRad`. */
  turn(upRad: number): void {
    this.upRad = upRad;
    this.sin = Math.sin(upRad);
    this.cos = Math.cos(upRad);
  }

  /** Looks where another looks. */
  copy(other: PlanCamera): void {
    this.turn(other.upRad);
    this.pxPerM = other.pxPerM;
    this.rightM = other.rightM;
    this.aheadM = other.aheadM;
    this.middleX = other.middleX;
    this.middleY = other.middleY;
  }

  /** Metres to the right on the screen. */
  rightOf(eastM: number, northM: number): number {
    return eastM * this.cos - northM * this.sin;
  }
  /** Metres up the screen. */
  aheadOf(eastM: number, northM: number): number {
    return eastM * this.sin + northM * this.cos;
  }
  /** The last placed point: pixels x and y. */
  readonly px = new Float64Array(2);

  /** Puts a place's pixels in `px`. */
  place(at: { readonly eastM: number; readonly northM: number }): void {
    const { sin, cos, pxPerM, px } = this;
    px[0] = this.middleX + (at.eastM * cos - at.northM * sin - this.rightM) * pxPerM;
    px[1] = this.middleY - (at.eastM * sin + at.northM * cos - this.aheadM) * pxPerM;
  }
  /** Screen direction of a true bearing: unit vector, y down. */
  directionX(bearingRad: number): number {
    return Math.sin(bearingRad - this.upRad);
  }
  directionY(bearingRad: number): number {
    return -Math.cos(bearingRad - this.upRad);
  }

  /** Makes the pen's map this camera: `trace` and its like then take metres east and north. */
  aim(pen: Pen): void {
    const { map } = pen;
    const { sin, cos, pxPerM } = this;
    map[0] = cos * pxPerM;
    map[1] = -sin * pxPerM;
    map[2] = this.middleX - this.rightM * pxPerM;
    map[3] = -sin * pxPerM;
    map[4] = -cos * pxPerM;
    map[5] = this.middleY + this.aheadM * pxPerM;
  }
}
