import { FLOATS_PER_VERTEX, VERTICES_PER_QUAD } from './layout.ts';
import { pack } from './run.ts';
import { Strokes } from './strokes.ts';

/** Half width given to fills, so that the shader never thins them. */
export const SOLID = 1e4;
const FLOATS_PER_QUAD = FLOATS_PER_VERTEX * VERTICES_PER_QUAD;

/** A circle by 32 points, x and y by turns. */
const ROUND_PARTS = 32;
const ROUND = Float64Array.from({ length: 2 * ROUND_PARTS }, (_, i) =>
  i % 2 === 0 ? Math.cos((Math.PI * i) / ROUND_PARTS) : Math.sin((Math.PI * (i - 1)) / ROUND_PARTS),
);

/** Filled shapes, by quads; a triangle repeats its last corner. */
export class Fills extends Strokes {
  /** A quad of the run's points i, j, k, l in one colour. */
  protected corners(i: number, j: number, k: number, l: number): void {
    const { floats, words, glyphs, run } = this;
    const u = glyphs.whiteU;
    const v = glyphs.whiteV;
    const colour = this.tint[0]!;
    const at = this.count * FLOATS_PER_VERTEX;
    floats[at] = run[2 * i]!;
    floats[at + 1] = run[2 * i + 1]!;
    floats[at + 8] = run[2 * j]!;
    floats[at + 9] = run[2 * j + 1]!;
    floats[at + 16] = run[2 * k]!;
    floats[at + 17] = run[2 * k + 1]!;
    floats[at + 24] = run[2 * l]!;
    floats[at + 25] = run[2 * l + 1]!;
    for (let m = 0; m < FLOATS_PER_QUAD; m += FLOATS_PER_VERTEX) {
      floats[at + m + 2] = u;
      floats[at + m + 3] = v;
      floats[at + m + 4] = 0;
      floats[at + m + 5] = SOLID;
      words[at + m + 6] = colour;
    }
    this.count += VERTICES_PER_QUAD;
  }

  /** Fills the run as a convex shape. */
  fill(): void {
    const n = this.used >> 1;
    this.grow(n >> 1);
    for (let i = 1; i + 1 < n; i += 2) this.corners(0, i, i + 1, Math.min(i + 2, n - 1));
  }

  /** Fills a run of four as a strip that fades from the colour in use, at its first side, to another. */
  fade(rgb: number): void {
    const before = this.count;
    this.fill();
    const at = before * FLOATS_PER_VERTEX;
    pack(rgb, 1, this.words, at + 22);
    pack(rgb, 1, this.words, at + 30);
  }

  /** Mapped triangles: corner numbers by threes into points u, v. */
  triangles(points: ArrayLike<number>, corners: ArrayLike<number>): void {
    const { run, map } = this;
    const a = map[0]!;
    const b = map[1]!;
    const c = map[2]!;
    const d = map[3]!;
    const e = map[4]!;
    const f = map[5]!;
    this.grow(corners.length);
    for (let k = 0; k + 2 < corners.length; k += 3) {
      for (let m = 0; m < 3; m += 1) {
        const at = 2 * (corners[k + m] as number);
        const u = points[at] as number;
        const v = points[at + 1] as number;
        run[2 * m] = a * u + b * v + c;
        run[2 * m + 1] = d * u + e * v + f;
      }
      this.corners(0, 1, 2, 2);
    }
    this.used = 0;
  }

  /** Mapped quads: u, v of four corners by eights. */
  quads(points: ArrayLike<number>): void {
    const { run, map } = this;
    const a = map[0]!;
    const b = map[1]!;
    const c = map[2]!;
    const d = map[3]!;
    const e = map[4]!;
    const f = map[5]!;
    this.grow(points.length >> 3);
    for (let k = 0; k + 7 < points.length; k += 8) {
      for (let m = 0; m < 4; m += 1) {
        const u = points[k + 2 * m] as number;
        const v = points[k + 2 * m + 1] as number;
        run[2 * m] = a * u + b * v + c;
        run[2 * m + 1] = d * u + e * v + f;
      }
      this.corners(0, 1, 2, 3);
    }
    this.used = 0;
  }

  /** A sign of given form (x, y by turns, a convex outline of pixels) at each mapped point. */
  signs(points: ArrayLike<number>, form: readonly number[], scale: number): void {
    const { run, map } = this;
    const a = map[0]!;
    const b = map[1]!;
    const c = map[2]!;
    const d = map[3]!;
    const e = map[4]!;
    const f = map[5]!;
    for (let k = 0; k + 1 < points.length; k += 2) {
      const u = points[k] as number;
      const v = points[k + 1] as number;
      const x = a * u + b * v + c;
      const y = d * u + e * v + f;
      for (let m = 0; m + 1 < form.length; m += 2) {
        run[m] = x + scale * (form[m] as number);
        run[m + 1] = y + scale * (form[m + 1] as number);
      }
      this.used = form.length;
      this.fill();
    }
  }

  rect(x: number, y: number, width: number, height: number): void {
    this.move(x, y);
    this.to(x + width, y);
    this.to(x + width, y + height);
    this.to(x, y + height);
    this.fill();
  }

  disc(x: number, y: number, radiusPx: number): void {
    this.move(x, y);
    this.given[0] = radiusPx;
    this.roundRun();
    this.fill();
    this.path(0.6, true);
  }

  ring(x: number, y: number, radiusPx: number, widthPx: number): void {
    this.move(x, y);
    this.given[0] = radiusPx;
    this.roundRun();
    this.path(widthPx, true);
  }

  /** A circle of radius given[0] about the run's first point. */
  protected roundRun(): void {
    const { run } = this;
    const x = run[0]!;
    const y = run[1]!;
    const radius = this.given[0]!;
    const step = radius < 5 ? 2 : 1;
    let n = 0;
    for (let k = 0; k < ROUND_PARTS; k += step) {
      run[n] = x + radius * ROUND[2 * k]!;
      run[n + 1] = y + radius * ROUND[2 * k + 1]!;
      n += 2;
    }
    this.used = n;
  }

  /** Lays a rounded rectangle as the run. */
  roundedRun(x: number, y: number, width: number, height: number, radiusPx: number): void {
    const quarter = ROUND_PARTS / 4;
    this.used = 0;
    for (let corner = 0; corner < 4; corner += 1) {
      const cx = corner === 0 || corner === 3 ? x + width - radiusPx : x + radiusPx;
      const cy = corner < 2 ? y + height - radiusPx : y + radiusPx;
      for (let i = 0; i <= quarter; i += 1) {
        const k = (corner * quarter + i) % ROUND_PARTS;
        this.to(cx + radiusPx * ROUND[2 * k]!, cy + radiusPx * ROUND[2 * k + 1]!);
      }
    }
  }

  /** An arrow head with its tip at a point, pointing along a unit direction. */
  arrowHead(x: number, y: number, dirX: number, dirY: number, sizePx: number): void {
    const w = sizePx * 0.42;
    this.move(x, y);
    this.to(x - dirX * sizePx - dirY * w, y - dirY * sizePx + dirX * w);
    this.to(x - dirX * sizePx + dirY * w, y - dirY * sizePx - dirX * w);
    this.fill();
  }
}
