/**
 * Cutting shapes to what an eye can see, in the eye's own axes (x right, y up, z ahead, metres), before they are
 * divided by z: behind the eye the picture would turn over. I. E. Sutherland and G. W. Hodgman, "Reentrant
 * polygon clipping", 1974. Nothing is allocated per shape, and no numbers are handed from call to call.
 */
const MOST_CORNERS = 128;

/** Half spaces as a, b, c, d by fours: a*x + b*y + c*z + d is not negative inside. */
export type Planes = Float64Array;

/** Slopes of the view's sides from straight ahead, all positive for a middle inside the view. */
export interface Sides {
  left: number;
  right: number;
  up: number;
  down: number;
}

export const newPlanes = (): Planes => new Float64Array(20);

/** Fills `planes` with everything ahead of `nearM` within the sides. */
export function setPlanes(planes: Planes, nearM: number, sides: Sides): Planes {
  planes.fill(0);
  planes[2] = 1;
  planes[3] = -nearM;
  planes[4] = -1;
  planes[6] = sides.right;
  planes[8] = 1;
  planes[10] = sides.left;
  planes[13] = -1;
  planes[14] = sides.up;
  planes[17] = 1;
  planes[18] = sides.down;
  return planes;
}

/** A convex or concave outline being cut; x, y, z by threes in `corners` up to `count`. */
export class Clipper {
  corners = new Float64Array(3 * MOST_CORNERS);
  count = 0;
  private spare = new Float64Array(3 * MOST_CORNERS);

  begin(): void {
    this.count = 0;
  }

  add(x: number, y: number, z: number): void {
    const at = 3 * this.count;
    this.corners[at] = x;
    this.corners[at + 1] = y;
    this.corners[at + 2] = z;
    this.count += 1;
  }

  /** Cuts by every plane; returns how many corners are left (0: nothing to be seen). */
  cut(planes: Planes): number {
    for (let p = 0; p < planes.length && this.count > 0; p += 4) this.cutBy(planes, p);
    return this.count;
  }

  private cutBy(planes: Planes, p: number): void {
    const a = planes[p]!;
    const b = planes[p + 1]!;
    const c = planes[p + 2]!;
    const d = planes[p + 3]!;
    const from = this.corners;
    const into = this.spare;
    const n = this.count;
    let at = 0;
    let ax = from[3 * n - 3]!;
    let ay = from[3 * n - 2]!;
    let az = from[3 * n - 1]!;
    let sa = a * ax + b * ay + c * az + d;
    for (let i = 0; i < n; i += 1) {
      const bx = from[3 * i]!;
      const by = from[3 * i + 1]!;
      const bz = from[3 * i + 2]!;
      const sb = a * bx + b * by + c * bz + d;
      if (sa >= 0 !== sb >= 0) {
        const share = sa / (sa - sb);
        into[at] = ax + share * (bx - ax);
        into[at + 1] = ay + share * (by - ay);
        into[at + 2] = az + share * (bz - az);
        at += 3;
      }
      if (sb >= 0) {
        into[at] = bx;
        into[at + 1] = by;
        into[at + 2] = bz;
        at += 3;
      }
      ax = bx;
      ay = by;
      az = bz;
      sa = sb;
    }
    this.corners = into;
    this.spare = from;
    this.count = Math.min(MOST_CORNERS - 2, at / 3);
  }
}

/** Cuts a line given as two places (six numbers) in place; false when nothing of it can be seen. */
export function cutSegment(ends: Float64Array, planes: Planes): boolean {
  for (let p = 0; p < planes.length; p += 4) {
    const a = planes[p]!;
    const b = planes[p + 1]!;
    const c = planes[p + 2]!;
    const d = planes[p + 3]!;
    const sa = a * ends[0]! + b * ends[1]! + c * ends[2]! + d;
    const sb = a * ends[3]! + b * ends[4]! + c * ends[5]! + d;
    if (sa < 0 && sb < 0) return false;
    if (sa >= 0 && sb >= 0) continue;
    const share = sa / (sa - sb);
    const keep = sa < 0 ? 0 : 3;
    for (let k = 0; k < 3; k += 1) ends[keep + k] = ends[k]! + share * (ends[3 + k]! - ends[k]!);
  }
  return true;
}
