import { FLOATS_PER_VERTEX, VERTICES_PER_QUAD } from './layout.ts';
import { Run, SAME_PX2 } from './run.ts';

/** Joints longer than this many half widths are cut short. */
const LONGEST_MITRE = 2.5;
const FLOATS_PER_QUAD = FLOATS_PER_VERTEX * VERTICES_PER_QUAD;

/** Lines: every stroke is a quad, softened at its edges by the shader. */
export class Strokes extends Run {
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
  protected stroke(): void {
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

  protected taperedStroke(): void {
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
}
