import type { Pen } from '../pen/pen.ts';

/** Distance along the circuit to x, height above the landing threshold to y; one scale each for everything. */
export class ProfileCamera {
  leftM = 0;
  pxPerM = 0.1;
  /** Pixels a metre of height. */
  pxPerHeightM = 0.4;
  leftX = 0;
  groundY = 0;

  x(distanceM: number): number {
    return this.leftX + (distanceM - this.leftM) * this.pxPerM;
  }
  y(heightM: number): number {
    return this.groundY - heightM * this.pxPerHeightM;
  }
  /** How many times heights are drawn larger than distances. */
  get exaggeration(): number {
    return this.pxPerHeightM / this.pxPerM;
  }

  /** Makes the pen's map this camera: `trace` and its like then take distance and height. */
  aim(pen: Pen): void {
    const { map } = pen;
    map[0] = this.pxPerM;
    map[1] = 0;
    map[2] = this.leftX - this.leftM * this.pxPerM;
    map[3] = 0;
    map[4] = -this.pxPerHeightM;
    map[5] = this.groundY;
  }
}
