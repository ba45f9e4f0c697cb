/**
 * Cutting shapes to what an eye can see, in the eye's own axes (x right, y up, z ahead, metres), before they are
 * divided by z: behind the eye the picture would turn over. I. E. Sutherland and G. W. Hodgman, "Reentrant
 * polygon clipping", 1974. Nothing is allocated per shape.
 */
const MOST_CORNERS = 128;

/** A half space: a*x + b*y + c*z + d is not negative inside. */
export interface Plane {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}

/** Everything ahead of `nearM` within the slopes given, right and left, up and down. */
export const viewPlanes = (nearM: number, slopeX: number, slopeY: number): readonly Plane[] => [
  { a: 0, b: 0, c: 1, d: -nearM },
  { a: -1, b: 0, c: slopeX, d: 0 },
  { a: 1, b: 0, c: slopeX, d: 0 },
  { a: 0, b: -1, c: slopeY, d: 0 },
  { a: 0, b: 1, c: slopeY, d: 0 },
];

const side = (plane: Plane, x: number, y: number, z: number): number =>
  plane.a * x + plane.b * y + plane.c * z + plane.d;

/** A convex or concave outline being cut; x, y, z by threes in `corners` up to `count`. */
export class Clipper {
  corners = new Float64Array(3 * MOST_CORNERS);
  count = 0;
  private spare = new Float64Array(3 * MOST_CORNERS);

  begin(): void {
    this.count = 0;
  }

  add(x: number, y: number, z: number): void {
    if (this.count >= MOST_CORNERS) return;
    const at = 3 * this.count;
    this.corners[at] = x;
    this.corners[at + 1] = y;
    this.corners[at + 2] = z;
    this.count += 1;
  }

  /** Cuts by every plane; returns how many corners are left (0: nothing to be seen). */
  cut(planes: readonly Plane[]): number {
    for (let p = 0; p < planes.length && this.count > 0; p += 1) this.cutBy(planes[p] as Plane);
    return this.count;
  }

  private cutBy(plane: Plane): void {
    const from = this.corners;
    const n = this.count;
    this.corners = this.spare;
    this.spare = from;
    this.count = 0;
    for (let i = 0; i < n; i += 1) {
      const j = (i + 1) % n;
      const ax = from[3 * i] as number;
      const ay = from[3 * i + 1] as number;
      const az = from[3 * i + 2] as number;
      const bx = from[3 * j] as number;
      const by = from[3 * j + 1] as number;
      const bz = from[3 * j + 2] as number;
      const sa = side(plane, ax, ay, az);
      const sb = side(plane, bx, by, bz);
      if (sa >= 0) this.add(ax, ay, az);
      if (sa >= 0 === sb >= 0) continue;
      const share = sa / (sa - sb);
      this.add(ax + share * (bx - ax), ay + share * (by - ay), az + share * (bz - az));
    }
  }
}

/** A line being cut. */
export class SegmentClipper {
  ax = 0;
  ay = 0;
  az = 0;
  bx = 0;
  by = 0;
  bz = 0;

  set(ax: number, ay: number, az: number, bx: number, by: number, bz: number): void {
    this.ax = ax;
    this.ay = ay;
    this.az = az;
    this.bx = bx;
    this.by = by;
    this.bz = bz;
  }

  /** False when nothing of it can be seen. */
  cut(planes: readonly Plane[]): boolean {
    for (let p = 0; p < planes.length; p += 1) {
      const plane = planes[p] as Plane;
      const sa = side(plane, this.ax, this.ay, this.az);
      const sb = side(plane, this.bx, this.by, this.bz);
      if (sa < 0 && sb < 0) return false;
      if (sa >= 0 && sb >= 0) continue;
      const share = sa / (sa - sb);
      const x = this.ax + share * (this.bx - this.ax);
      const y = this.ay + share * (this.by - this.ay);
      const z = this.az + share * (this.bz - this.az);
      if (sa < 0) this.set(x, y, z, this.bx, this.by, this.bz);
      else this.set(this.ax, this.ay, this.az, x, y, z);
    }
    return true;
  }
}
