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
}
