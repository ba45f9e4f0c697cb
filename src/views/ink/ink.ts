import type { Glyphs } from './glyphs.ts';
import { FLOATS_PER_VERTEX, VERTICES_PER_QUAD } from './layout.ts';
import { TYPE, type TypeStyle } from './type.ts';

/** Half width given to fills, so that the shader never thins them. */
const SOLID = 1e4;
/** Joints longer than this many half widths are cut short. */
const LONGEST_MITRE = 2.5;
/** Points of a run closer together than this are one, square pixels. */
const SAME_PX2 = 0.04;
/** Height of a capital letter as a share of the type size; common practice for sans-serif faces. */
const CAPITALS = 0.7;
const RUN_POINTS = 8192;
const FLOATS_PER_QUAD = FLOATS_PER_VERTEX * VERTICES_PER_QUAD;

export type Align = 'left' | 'middle' | 'right';
/** Half widths of the text that lie left of its place. */
const HALVES: Readonly<Record<Align, number>> = { left: 0, middle: 1, right: 2 };

/** A circle by 32 points, x and y by turns. */
const ROUND_PARTS = 32;
const ROUND = Float64Array.from({ length: 2 * ROUND_PARTS }, (_, i) =>
  i % 2 === 0 ? Math.cos((Math.PI * i) / ROUND_PARTS) : Math.sin((Math.PI * (i - 1)) / ROUND_PARTS),
);

/** Writes a colour as the card takes it: bytes r, g, b, a, multiplied by alpha. */
export const pack = (rgb: number, alpha: number, into: Uint32Array, at: number): void => {
  const a = Math.max(0, Math.min(1, alpha));
  const r = Math.round(((rgb >> 16) & 255) * a);
  const g = Math.round(((rgb >> 8) & 255) * a);
  const b = Math.round((rgb & 255) * a);
  into[at] = (Math.round(a * 255) << 24) | (b << 16) | (g << 8) | r;
};

/**
 * A pen on one sheet, redrawn from nothing every frame into a buffer that is kept: everything is a quad of four
 * vertices, lines are softened at their edges by the shader, letters are quads out of one texture. Pixels are CSS
 * pixels from the sheet's upper left corner, y down.
 *
 * A shape is a *run* of points (`move`, `to`, `trace`) and then `path`, `dashedPath` or `fill`. The engine puts
 * every fraction that is handed to a function it does not inline into a box on the heap; so what takes numbers
 * here is tiny and only stores them in typed arrays, and what works takes none. A frame then makes no garbage.
 */
export class Ink {
  floats: Float32Array;
  /** The same memory, for colours. */
  words: Uint32Array;
  /** Vertices in use. */
  count = 0;
  /** x = map[0] u + map[1] v + map[2], y = map[3] u + map[4] v + map[5]: for `trace` and its like. */
  readonly map = new Float64Array([1, 0, 0, 0, 1, 0]);
  private readonly run = new Float64Array(2 * RUN_POINTS);
  /** Coordinates in use in the run. */
  private used = 0;
  private readonly tint = new Uint32Array(4);
  /** Numbers on their way from a tiny function to a working one. */
  private readonly given = new Float64Array(8);

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

  private grow(quads: number): void {
    const needed = (this.count + quads * VERTICES_PER_QUAD) * FLOATS_PER_VERTEX;
    if (needed <= this.floats.length) return;
    let { length } = this.floats;
    while (length < needed) length *= 2;
    const floats = new Float32Array(length);
    floats.set(this.floats);
    this.floats = floats;
    this.words = new Uint32Array(floats.buffer);
  }

  // ---- Runs of points

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
  private tidy(): number {
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

  /** Strokes the run with mitred joints: a translucent line stays even along its bends. */
  path(widthPx: number, closed = false): void {
    let n = this.tidy();
    const p = this.run;
    if (closed && n > 2) {
      const dx = p[0]! - p[2 * n - 2]!;
      const dy = p[1]! - p[2 * n - 1]!;
      if (dx * dx + dy * dy < SAME_PX2) n -= 1;
    }
    if (n < 2) return;
    const strokes = closed ? n : n - 1;
    this.grow(strokes);
    const { floats, words, glyphs } = this;
    const ratio = glyphs.pixelRatio;
    const half = widthPx / 2;
    const reach = half + 1 / ratio;
    const edge = reach * ratio;
    const halfDevice = half * ratio;
    const u = glyphs.whiteU;
    const v = glyphs.whiteV;
    const colour = this.tint[0]!;
    // Directions of the stroke before the first point, then of each stroke in turn.
    let beforeX = 0;
    let beforeY = 0;
    if (closed) {
      beforeX = p[0]! - p[2 * n - 2]!;
      beforeY = p[1]! - p[2 * n - 1]!;
      const length = Math.sqrt(beforeX * beforeX + beforeY * beforeY) || 1;
      beforeX /= length;
      beforeY /= length;
    }
    let fromX = 0;
    let fromY = 0;
    let at = this.count * FLOATS_PER_VERTEX;
    for (let i = 0; i < strokes; i += 1) {
      const j = i + 1 < n ? i + 1 : 0;
      const ax = p[2 * i]!;
      const ay = p[2 * i + 1]!;
      const bx = p[2 * j]!;
      const by = p[2 * j + 1]!;
      let dx = bx - ax;
      let dy = by - ay;
      let length = Math.sqrt(dx * dx + dy * dy) || 1;
      dx /= length;
      dy /= length;
      // The joint at a: between the stroke before and this one.
      if (i === 0) {
        let sx = -(beforeY + dy);
        let sy = beforeX + dx;
        if (!closed) {
          sx = -dy;
          sy = dx;
        }
        length = Math.sqrt(sx * sx + sy * sy);
        if (length < 1e-3) {
          fromX = -dy;
          fromY = dx;
        } else {
          sx /= length;
          sy /= length;
          const stretch = Math.min(LONGEST_MITRE, 1 / Math.max(0.1, sx * -dy + sy * dx));
          fromX = sx * stretch;
          fromY = sy * stretch;
        }
      }
      // The joint at b: between this stroke and the next.
      let nextX = dx;
      let nextY = dy;
      if (closed || j + 1 < n) {
        const k = j + 1 < n ? j + 1 : 0;
        nextX = p[2 * k]! - bx;
        nextY = p[2 * k + 1]! - by;
        length = Math.sqrt(nextX * nextX + nextY * nextY) || 1;
        nextX /= length;
        nextY /= length;
      }
      let toX = -(dy + nextY);
      let toY = dx + nextX;
      length = Math.sqrt(toX * toX + toY * toY);
      if (length < 1e-3) {
        toX = -dy;
        toY = dx;
      } else {
        toX /= length;
        toY /= length;
        const stretch = Math.min(LONGEST_MITRE, 1 / Math.max(0.1, toX * -dy + toY * dx));
        toX *= stretch;
        toY *= stretch;
      }
      floats[at] = ax + fromX * reach;
      floats[at + 1] = ay + fromY * reach;
      floats[at + 2] = u;
      floats[at + 3] = v;
      floats[at + 4] = edge;
      floats[at + 5] = halfDevice;
      words[at + 6] = colour;
      floats[at + 8] = bx + toX * reach;
      floats[at + 9] = by + toY * reach;
      floats[at + 10] = u;
      floats[at + 11] = v;
      floats[at + 12] = edge;
      floats[at + 13] = halfDevice;
      words[at + 14] = colour;
      floats[at + 16] = bx - toX * reach;
      floats[at + 17] = by - toY * reach;
      floats[at + 18] = u;
      floats[at + 19] = v;
      floats[at + 20] = -edge;
      floats[at + 21] = halfDevice;
      words[at + 22] = colour;
      floats[at + 24] = ax - fromX * reach;
      floats[at + 25] = ay - fromY * reach;
      floats[at + 26] = u;
      floats[at + 27] = v;
      floats[at + 28] = -edge;
      floats[at + 29] = halfDevice;
      words[at + 30] = colour;
      at += FLOATS_PER_QUAD;
      fromX = toX;
      fromY = toY;
    }
    this.count += strokes * VERTICES_PER_QUAD;
  }

  /** Strokes the run in dashes that go on round its bends. */
  dashedPath(widthPx: number, dashPx: number, gapPx: number): void {
    const p = this.run;
    const pitch = dashPx + gapPx;
    let longest = 0;
    for (let i = 0; i + 3 < this.used; i += 2)
      longest += Math.abs(p[i + 2]! - p[i]!) + Math.abs(p[i + 3]! - p[i + 1]!);
    this.grow(Math.ceil(Math.min(longest, 40000) / pitch) + this.used);
    let phase = 0;
    const { given } = this;
    given[4] = widthPx;
    for (let i = 0; i + 3 < this.used; i += 2) {
      const ax = p[i]!;
      const ay = p[i + 1]!;
      const dx = p[i + 2]! - ax;
      const dy = p[i + 3]! - ay;
      const length = Math.sqrt(dx * dx + dy * dy);
      if (length < 1e-6) continue;
      const ex = dx / length;
      const ey = dy / length;
      const last = Math.min(length, 40000);
      for (let s = -phase; s < last; s += pitch) {
        const from = Math.max(0, s);
        const end = Math.min(s + dashPx, last);
        if (end <= from) continue;
        given[0] = ax + ex * from;
        given[1] = ay + ey * from;
        given[2] = ax + ex * end;
        given[3] = ay + ey * end;
        this.stroke();
      }
      phase = (phase + length) % pitch;
    }
  }

  /** One stroke from given[0, 1] to given[2, 3], given[4] wide. */
  private stroke(): void {
    this.grow(1);
    const { given, floats, words, glyphs } = this;
    const ax = given[0]!;
    const ay = given[1]!;
    const bx = given[2]!;
    const by = given[3]!;
    const dx = bx - ax;
    const dy = by - ay;
    const length = Math.sqrt(dx * dx + dy * dy);
    if (!(length > 1e-6)) return;
    const ratio = glyphs.pixelRatio;
    const half = given[4]! / 2;
    const reach = half + 1 / ratio;
    const nx = (-dy / length) * reach;
    const ny = (dx / length) * reach;
    const edge = reach * ratio;
    const halfDevice = half * ratio;
    const u = glyphs.whiteU;
    const v = glyphs.whiteV;
    const colour = this.tint[0]!;
    const at = this.count * FLOATS_PER_VERTEX;
    floats[at] = ax + nx;
    floats[at + 1] = ay + ny;
    floats[at + 4] = edge;
    floats[at + 8] = bx + nx;
    floats[at + 9] = by + ny;
    floats[at + 12] = edge;
    floats[at + 16] = bx - nx;
    floats[at + 17] = by - ny;
    floats[at + 20] = -edge;
    floats[at + 24] = ax - nx;
    floats[at + 25] = ay - ny;
    floats[at + 28] = -edge;
    for (let k = 0; k < FLOATS_PER_QUAD; k += FLOATS_PER_VERTEX) {
      floats[at + k + 2] = u;
      floats[at + k + 3] = v;
      floats[at + k + 5] = halfDevice;
      words[at + k + 6] = colour;
    }
    this.count += VERTICES_PER_QUAD;
  }

  /** A stroke that tapers from given width to given width, for lines that lead away from the eye. */
  taper(ax: number, ay: number, bx: number, by: number, fromPx: number, toPx: number): void {
    const { given } = this;
    given[0] = ax;
    given[1] = ay;
    given[2] = bx;
    given[3] = by;
    given[4] = fromPx;
    given[5] = toPx;
    this.taperedStroke();
  }

  private taperedStroke(): void {
    const before = this.count;
    this.stroke();
    if (this.count === before) return;
    const { given, floats, glyphs } = this;
    const ratio = glyphs.pixelRatio;
    const half = given[5]! / 2;
    const reach = half + 1 / ratio;
    const grown = reach / (given[4]! / 2 + 1 / ratio);
    const at = before * FLOATS_PER_VERTEX;
    for (let k = FLOATS_PER_VERTEX; k <= 2 * FLOATS_PER_VERTEX; k += FLOATS_PER_VERTEX) {
      floats[at + k] = given[2]! + (floats[at + k]! - given[2]!) * grown;
      floats[at + k + 1] = given[3]! + (floats[at + k + 1]! - given[3]!) * grown;
      floats[at + k + 4] = floats[at + k + 4]! * grown;
      floats[at + k + 5] = half * ratio;
    }
  }

  line(ax: number, ay: number, bx: number, by: number, widthPx: number): void {
    const { given } = this;
    given[0] = ax;
    given[1] = ay;
    given[2] = bx;
    given[3] = by;
    given[4] = widthPx;
    this.stroke();
  }

  dashed(
    ax: number,
    ay: number,
    bx: number,
    by: number,
    widthPx: number,
    dashPx: number,
    gapPx: number,
  ): void {
    this.move(ax, ay);
    this.to(bx, by);
    this.dashedPath(widthPx, dashPx, gapPx);
  }

  /** Mapped single strokes: u1, v1, u2, v2 by fours. */
  segments(lines: ArrayLike<number>, widthPx: number): void {
    const { given, map } = this;
    const a = map[0]!;
    const b = map[1]!;
    const c = map[2]!;
    const d = map[3]!;
    const e = map[4]!;
    const f = map[5]!;
    given[4] = widthPx;
    for (let k = 0; k + 3 < lines.length; k += 4) {
      const u1 = lines[k] as number;
      const v1 = lines[k + 1] as number;
      const u2 = lines[k + 2] as number;
      const v2 = lines[k + 3] as number;
      given[0] = a * u1 + b * v1 + c;
      given[1] = d * u1 + e * v1 + f;
      given[2] = a * u2 + b * v2 + c;
      given[3] = d * u2 + e * v2 + f;
      this.stroke();
    }
  }

  // ---- Fills

  /** A quad of the run's points i, j, k, l in one colour. */
  private corners(i: number, j: number, k: number, l: number): void {
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
  private roundRun(): void {
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

  // ---- Type

  widthPx(style: TypeStyle, text: string): number {
    return this.glyphs.widthPx(style, text);
  }

  /** A line of type, its capitals centred on y. */
  text(style: TypeStyle, text: string, x: number, y: number, align: Align = 'left', scale = 1): void {
    const { given } = this;
    given[0] = x;
    given[1] = y;
    given[2] = 1;
    given[3] = 0;
    given[4] = scale;
    this.set(style, text, HALVES[align], true);
  }

  /** The same centred on a mapped point: u, v at `at` of `points`, moved down by whole pixels. */
  textOn(style: TypeStyle, text: string, points: Float64Array, at: number, downPx = 0): void {
    const { given, map } = this;
    const u = points[at]!;
    const v = points[at + 1]!;
    given[0] = map[0]! * u + map[1]! * v + map[2]!;
    given[1] = map[3]! * u + map[4]! * v + map[5]! + downPx;
    given[2] = 1;
    given[3] = 0;
    given[4] = 1;
    this.set(style, text, HALVES.middle, true);
  }

  /** A line of type along a direction, clockwise on the screen, centred on its middle. */
  turnedText(style: TypeStyle, text: string, x: number, y: number, angleRad: number): void {
    const { given } = this;
    given[0] = x;
    given[1] = y;
    given[2] = Math.cos(angleRad);
    given[3] = Math.sin(angleRad);
    given[4] = 1;
    this.set(style, text, HALVES.middle, false);
  }

  /** Type at given[0, 1], along given[2, 3], given[4] times its size; `sharp` puts it on whole pixels. */
  private set(style: TypeStyle, text: string, halves: number, sharp: boolean): void {
    this.grow(text.length);
    const { given, glyphs, floats, words } = this;
    const ratio = glyphs.pixelRatio;
    const scale = given[4]!;
    const cos = given[2]! * scale;
    const sin = given[3]! * scale;
    let x = given[0]!;
    let y = given[1]!;
    let base = TYPE[style].sizePx * CAPITALS * 0.5;
    let pen = halves === 0 ? 0 : -0.5 * halves * glyphs.widthPx(style, text);
    if (sharp) {
      x = Math.round((x + pen * scale) * ratio) / ratio;
      y = Math.round((y + base * scale) * ratio) / ratio;
      pen = 0;
      base = 0;
    }
    const colour = this.tint[0]!;
    let at = this.count * FLOATS_PER_VERTEX;
    for (let i = 0; i < text.length; i += 1) {
      const g = glyphs.glyph(style, text.charCodeAt(i));
      const left = pen + g.leftPx;
      const top = base + g.topPx;
      const right = left + g.widthPx;
      const bottom = top + g.heightPx;
      floats[at] = x + left * cos - top * sin;
      floats[at + 1] = y + left * sin + top * cos;
      floats[at + 2] = g.u0;
      floats[at + 3] = g.v0;
      floats[at + 8] = x + right * cos - top * sin;
      floats[at + 9] = y + right * sin + top * cos;
      floats[at + 10] = g.u1;
      floats[at + 11] = g.v0;
      floats[at + 16] = x + right * cos - bottom * sin;
      floats[at + 17] = y + right * sin + bottom * cos;
      floats[at + 18] = g.u1;
      floats[at + 19] = g.v1;
      floats[at + 24] = x + left * cos - bottom * sin;
      floats[at + 25] = y + left * sin + bottom * cos;
      floats[at + 26] = g.u0;
      floats[at + 27] = g.v1;
      for (let m = 0; m < FLOATS_PER_QUAD; m += FLOATS_PER_VERTEX) {
        floats[at + m + 4] = 0;
        floats[at + m + 5] = SOLID;
        words[at + m + 6] = colour;
      }
      at += FLOATS_PER_QUAD;
      pen += g.advancePx;
    }
    this.count += text.length * VERTICES_PER_QUAD;
  }
}
