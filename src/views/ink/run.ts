import type { Glyphs } from './glyphs.ts';
import { FLOATS_PER_VERTEX, VERTICES_PER_QUAD } from './layout.ts';

/** Points of a run closer together than this are one, square pixels. */
export const SAME_PX2 = 0.04;
const RUN_POINTS = 8192;

/** Writes a colour as the card takes it: bytes r, g, b, a, multiplied by alpha. */
export const pack = (rgb: number, alpha: number, into: Uint32Array, at: number): void => {
  const a = Math.max(0, Math.min(1, alpha));
  const r = Math.round(((rgb >> 16) & 255) * a);
  const g = Math.round(((rgb >> 8) & 255) * a);
  const b = Math.round((rgb & 255) * a);
  into[at] = (Math.round(a * 255) << 24) | (b << 16) | (g << 8) | r;
};

/**
 * The buffer that a pen writes into, its colour, and the run of points that shapes are made of.
 *
 * The engine puts every fraction that is handed to a function it does not inline into a box on the heap; so what
 * takes numbers here is tiny and only stores them in typed arrays, and what works takes none. Once the engine has
 * warmed up a frame makes no garbage.
 */
export class Run {
  floats: Float32Array;
  /** The same memory, for colours. */
  words: Uint32Array;
  /** Vertices in use. */
  count = 0;
  /** x = map[0] u + map[1] v + map[2], y = map[3] u + map[4] v + map[5]: for `trace` and its like. */
  readonly map = new Float64Array([1, 0, 0, 0, 1, 0]);
  protected readonly run = new Float64Array(2 * RUN_POINTS);
  /** Coordinates in use in the run. */
  protected used = 0;
  protected readonly tint = new Uint32Array(4);
  /** Numbers on their way from a tiny function to a working one. */
  protected readonly given = new Float64Array(8);

  constructor(
    public glyphs: Glyphs,
    capacity = 16384,
  ) {
    this.floats = new Float32Array(capacity * FLOATS_PER_VERTEX);
    this.words = new Uint32Array(this.floats.buffer);
  }

  begin(): void {
    this.count = 0;
    this.used = 0;
  }

  /** Sets the colour of what follows. */
  use(rgb: number, alpha = 1): this {
    pack(rgb, alpha, this.tint, 0);
    return this;
  }

  protected grow(quads: number): void {
    const needed = (this.count + quads * VERTICES_PER_QUAD) * FLOATS_PER_VERTEX;
    if (needed <= this.floats.length) return;
    let { length } = this.floats;
    while (length < needed) length *= 2;
    const floats = new Float32Array(length);
    floats.set(this.floats);
    this.floats = floats;
    this.words = new Uint32Array(floats.buffer);
  }

  move(x: number, y: number): void {
    this.run[0] = x;
    this.run[1] = y;
    this.used = 2;
  }

  to(x: number, y: number): void {
    const n = this.used;
    this.run[n] = x;
    this.run[n + 1] = y;
    this.used = n + 2;
  }

  /** Makes mapped points (u, v by turns) the run. */
  trace(points: ArrayLike<number>, count = points.length >> 1): void {
    this.used = 0;
    this.traceOn(points, count);
  }

  /** Adds mapped points to the run. */
  traceOn(points: ArrayLike<number>, count = points.length >> 1): void {
    const { run, map } = this;
    const a = map[0]!;
    const b = map[1]!;
    const c = map[2]!;
    const d = map[3]!;
    const e = map[4]!;
    const f = map[5]!;
    let n = this.used;
    for (let i = 0; i < count; i += 1) {
      const u = points[2 * i] as number;
      const v = points[2 * i + 1] as number;
      run[n] = a * u + b * v + c;
      run[n + 1] = d * u + e * v + f;
      n += 2;
    }
    this.used = Math.min(n, 2 * RUN_POINTS);
  }

  /** Adds mapped points whose u and v stand in two arrays; `which` picks some of them. */
  tracePairs(
    us: ArrayLike<number>,
    vs: ArrayLike<number>,
    count: number,
    which: readonly number[] | null,
    first = 0,
  ): void {
    const { run, map } = this;
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
      run[n] = a * u + b * v + c;
      run[n + 1] = d * u + e * v + f;
      n += 2;
    }
    this.used = Math.min(n, 2 * RUN_POINTS);
  }

  /** Forgets the run. */
  lift(): void {
    this.used = 0;
  }

  /** Takes out points that lie on one another; returns how many are left. */
  protected tidy(): number {
    const { run, used } = this;
    let n = 0;
    for (let i = 0; i < used; i += 2) {
      if (n > 0) {
        const dx = run[i]! - run[n - 2]!;
        const dy = run[i + 1]! - run[n - 1]!;
        if (dx * dx + dy * dy < SAME_PX2) continue;
      }
      run[n] = run[i]!;
      run[n + 1] = run[i + 1]!;
      n += 2;
    }
    this.used = n;
    return n >> 1;
  }
}
