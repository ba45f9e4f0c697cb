import { clampedAlpha } from './colours.ts';

/** Points closer together than this are one, square pixels. */
export const SAME_PX2 = 0.04;
const MOST_POINTS = 8192;

/**
 * The points that shapes are made of, and the colour of what follows.
 *
 * The engine puts every fraction that is handed to a function it does not inline into a box on the heap; so what
 * takes numbers here is tiny and only stores them in typed arrays, and what works takes none. Once the engine has
 * warmed up a frame makes no garbage.
 */
export class Points {
  /** x = map[0] u + map[1] v + map[2], y = map[3] u + map[4] v + map[5]: for `trace` and its like. */
  readonly map = new Float64Array([1, 0, 0, 0, 1, 0]);
  protected readonly points = new Float64Array(2 * MOST_POINTS);
  /** Coordinates in use in `points`. */
  protected used = 0;
  protected rgb = 0;
  /** Alpha of the colour in use. */
  protected readonly alpha = new Float64Array(1);
  /** Numbers on their way from a tiny function to a working one. */
  protected readonly given = new Float64Array(8);

  /** Sets the colour of what follows. */
  use(rgb: number, alpha = 1): this {
    this.rgb = rgb;
    this.alpha[0] = clampedAlpha(alpha);
    return this;
  }

  move(x: number, y: number): void {
    this.points[0] = x;
    this.points[1] = y;
    this.used = 2;
  }

  to(x: number, y: number): void {
    const n = this.used;
    this.points[n] = x;
    this.points[n + 1] = y;
    this.used = n + 2;
  }

  /** Makes mapped points (u, v by turns) the points in use. */
  trace(points: ArrayLike<number>, count = points.length >> 1): void {
    this.used = 0;
    this.traceOn(points, count);
  }

  /** Adds mapped points. */
  traceOn(from: ArrayLike<number>, count = from.length >> 1): void {
    const { points, map } = this;
    const a = map[0]!;
    const b = map[1]!;
    const c = map[2]!;
    const d = map[3]!;
    const e = map[4]!;
    const f = map[5]!;
    let n = this.used;
    for (let i = 0; i < count; i += 1) {
      const u = from[2 * i] as number;
      const v = from[2 * i + 1] as number;
      points[n] = a * u + b * v + c;
      points[n + 1] = d * u + e * v + f;
      n += 2;
    }
    this.used = Math.min(n, 2 * MOST_POINTS);
  }

  /** Adds mapped points whose u and v stand in two arrays; `which` picks some of them. */
  tracePairs(
    us: ArrayLike<number>,
    vs: ArrayLike<number>,
    count: number,
    which: readonly number[] | null,
    first = 0,
  ): void {
    const { points, map } = this;
    const a = map[0]!;
    const b = map[1]!;
    const c = map[2]!;
    const d = map[3]!;
    const e = map[4]!;
    const f = map[5]!;
    let n = this.used;
    for (let k = first; k < count; k += 1) {
      const i = which === null ? k : (which[k] as number);
      const u = us[i] as number;
      const v = vs[i] as number;
      points[n] = a * u + b * v + c;
      points[n + 1] = d * u + e * v + f;
      n += 2;
    }
    this.used = Math.min(n, 2 * MOST_POINTS);
  }

  /** Forgets the points. */
  lift(): void {
    this.used = 0;
  }

  /** Takes out points that lie on one another, the last one of a closed line too; returns how many are left. */
  protected tidy(closed: boolean): number {
    const { points, used } = this;
    let n = 0;
    for (let i = 0; i < used; i += 2) {
      if (n > 0) {
        const dx = points[i]! - points[n - 2]!;
        const dy = points[i + 1]! - points[n - 1]!;
        if (dx * dx + dy * dy < SAME_PX2) continue;
      }
      points[n] = points[i]!;
      points[n + 1] = points[i + 1]!;
      n += 2;
    }
    this.used = n;
    if (!closed || n <= 4) return n >> 1;
    const dx = points[0]! - points[n - 2]!;
    const dy = points[1]! - points[n - 1]!;
    return dx * dx + dy * dy < SAME_PX2 ? (n >> 1) - 1 : n >> 1;
  }
}
