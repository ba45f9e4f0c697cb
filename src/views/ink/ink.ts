import type { Glyphs, TypeStyle } from './glyphs.ts';
import { TYPE } from './glyphs.ts';
import { FLOATS_PER_VERTEX, VERTICES_PER_QUAD } from './layout.ts';

/** Half width given to fills, so that the shader never thins them. */
const SOLID = 1e4;
/** Joints sharper than this many half widths are cut short. */
const LONGEST_MITRE = 2.5;
/** Height of a capital letter as a share of the type size; common practice for sans-serif faces. */
const CAPITALS = 0.7;

export type Align = 'left' | 'middle' | 'right';
const SHIFT: Readonly<Record<Align, number>> = { left: 0, middle: -0.5, right: -1 };

/** Colour of one stroke or fill as the card takes it: bytes r, g, b, a, multiplied by alpha. */
export const packed = (rgb: number, alpha: number): number => {
  const a = Math.max(0, Math.min(1, alpha));
  const r = Math.round(((rgb >> 16) & 255) * a);
  const g = Math.round(((rgb >> 8) & 255) * a);
  const b = Math.round((rgb & 255) * a);
  return ((Math.round(a * 255) << 24) | (b << 16) | (g << 8) | r) >>> 0;
};

/**
 * A pen on one sheet, redrawn from nothing every frame into a buffer that is kept: everything is a quad of four
 * vertices, lines are softened at their edges by the shader, letters are quads out of one texture. Drawing
 * allocates nothing. Pixels are CSS pixels from the sheet's upper left corner, y down.
 */
export class Ink {
  floats: Float32Array;
  private words: Uint32Array;
  /** Vertices in use. */
  count = 0;
  private colour = 0xffffffff;
  private points = new Float64Array(4096);
  private pointCount = 0;

  constructor(
    public glyphs: Glyphs,
    capacity = 8192,
  ) {
    this.floats = new Float32Array(capacity * FLOATS_PER_VERTEX);
    this.words = new Uint32Array(this.floats.buffer);
  }

  begin(): void {
    this.count = 0;
    this.pointCount = 0;
  }

  /** Sets the colour of what follows. */
  use(rgb: number, alpha = 1): this {
    this.colour = packed(rgb, alpha);
    return this;
  }

  private vertex(
    x: number,
    y: number,
    u: number,
    v: number,
    edge: number,
    half: number,
    colour: number,
  ): void {
    const at = this.count * FLOATS_PER_VERTEX;
    const { floats } = this;
    floats[at] = x;
    floats[at + 1] = y;
    floats[at + 2] = u;
    floats[at + 3] = v;
    floats[at + 4] = edge;
    floats[at + 5] = half;
    this.words[at + 6] = colour;
    this.count += 1;
  }

  private reserve(): void {
    if ((this.count + VERTICES_PER_QUAD) * FLOATS_PER_VERTEX <= this.floats.length) return;
    const floats = new Float32Array(this.floats.length * 2);
    floats.set(this.floats);
    this.floats = floats;
    this.words = new Uint32Array(floats.buffer);
  }

  /** Four corners in order round the shape, each with its own colour. */
  private shaded(
    ax: number,
    ay: number,
    bx: number,
    by: number,
    cx: number,
    cy: number,
    dx: number,
    dy: number,
    ca: number,
    cb: number,
    cc: number,
    cd: number,
  ): void {
    this.reserve();
    const u = this.glyphs.whiteU;
    const v = this.glyphs.whiteV;
    this.vertex(ax, ay, u, v, 0, SOLID, ca);
    this.vertex(bx, by, u, v, 0, SOLID, cb);
    this.vertex(cx, cy, u, v, 0, SOLID, cc);
    this.vertex(dx, dy, u, v, 0, SOLID, cd);
  }

  quad(ax: number, ay: number, bx: number, by: number, cx: number, cy: number, dx: number, dy: number): void {
    const c = this.colour;
    this.shaded(ax, ay, bx, by, cx, cy, dx, dy, c, c, c, c);
  }

  triangle(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): void {
    this.quad(ax, ay, bx, by, cx, cy, cx, cy);
  }

  rect(x: number, y: number, width: number, height: number): void {
    this.quad(x, y, x + width, y, x + width, y + height, x, y + height);
  }

  /** Strip from the edge a-b to the edge d-c, from one colour to another. */
  fade(
    ax: number,
    ay: number,
    bx: number,
    by: number,
    cx: number,
    cy: number,
    dx: number,
    dy: number,
    from: number,
    to: number,
  ): void {
    this.shaded(ax, ay, bx, by, cx, cy, dx, dy, from, from, to, to);
  }

  line(ax: number, ay: number, bx: number, by: number, widthPx: number): void {
    const dx = bx - ax;
    const dy = by - ay;
    const length = Math.sqrt(dx * dx + dy * dy);
    if (!(length > 1e-6)) return;
    this.stroke(ax, ay, bx, by, -dy / length, dx / length, -dy / length, dx / length, widthPx);
  }

  /** A stroke whose ends are cut along the given normals, which may be longer than one (mitres). */
  private stroke(
    ax: number,
    ay: number,
    bx: number,
    by: number,
    anx: number,
    any: number,
    bnx: number,
    bny: number,
    widthPx: number,
  ): void {
    this.reserve();
    const ratio = this.glyphs.pixelRatio;
    const half = widthPx / 2;
    const reach = half + 1 / ratio;
    const u = this.glyphs.whiteU;
    const v = this.glyphs.whiteV;
    const edge = reach * ratio;
    const halfDevice = half * ratio;
    const c = this.colour;
    this.vertex(ax + anx * reach, ay + any * reach, u, v, edge, halfDevice, c);
    this.vertex(bx + bnx * reach, by + bny * reach, u, v, edge, halfDevice, c);
    this.vertex(bx - bnx * reach, by - bny * reach, u, v, -edge, halfDevice, c);
    this.vertex(ax - anx * reach, ay - any * reach, u, v, -edge, halfDevice, c);
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
    const dx = bx - ax;
    const dy = by - ay;
    const length = Math.sqrt(dx * dx + dy * dy);
    if (!(length > 1e-6)) return;
    const ex = dx / length;
    const ey = dy / length;
    const pitch = dashPx + gapPx;
    const last = Math.min(length, 4000 * pitch);
    for (let s = 0; s < last; s += pitch) {
      const end = Math.min(s + dashPx, length);
      this.stroke(ax + ex * s, ay + ey * s, ax + ex * end, ay + ey * end, -ey, ex, -ey, ex, widthPx);
    }
  }

  /** Starts a run of points for `path` and `dashedPath`. */
  move(x: number, y: number): void {
    this.pointCount = 0;
    this.to(x, y);
  }

  /** Adds a point; one closer than a fifth of a pixel to the last is left out. */
  to(x: number, y: number): void {
    const at = this.pointCount * 2;
    if (at > 0) {
      const dx = x - (this.points[at - 2] as number);
      const dy = y - (this.points[at - 1] as number);
      if (dx * dx + dy * dy < 0.04) return;
    }
    if (at + 2 > this.points.length) {
      const points = new Float64Array(this.points.length * 2);
      points.set(this.points);
      this.points = points;
    }
    this.points[at] = x;
    this.points[at + 1] = y;
    this.pointCount += 1;
  }

  /** Strokes the run with mitred joints: a translucent line stays even along its bends. */
  path(widthPx: number, closed = false): void {
    const n = this.pointCount;
    const p = this.points;
    if (n < 2) return;
    const strokes = closed ? n : n - 1;
    let anx = 0;
    let any = 0;
    for (let i = 0; i < strokes; i += 1) {
      const j = (i + 1) % n;
      const ax = p[2 * i] as number;
      const ay = p[2 * i + 1] as number;
      const bx = p[2 * j] as number;
      const by = p[2 * j + 1] as number;
      if (i === 0) {
        this.mitre(closed ? n - 1 : -1, 0, 1);
        anx = this.mitreX;
        any = this.mitreY;
      }
      this.mitre(i, j, closed || j + 1 < n ? (j + 1) % n : -1);
      this.stroke(ax, ay, bx, by, anx, any, this.mitreX, this.mitreY, widthPx);
      anx = this.mitreX;
      any = this.mitreY;
    }
  }

  private mitreX = 0;
  private mitreY = 0;

  /** The normal at point b between points a and c (-1: none), lengthened so that the stroke keeps its width. */
  private mitre(a: number, b: number, c: number): void {
    const p = this.points;
    const bx = p[2 * b] as number;
    const by = p[2 * b + 1] as number;
    let inX = 0;
    let inY = 0;
    let outX = 0;
    let outY = 0;
    if (a >= 0) {
      inX = bx - (p[2 * a] as number);
      inY = by - (p[2 * a + 1] as number);
      const length = Math.sqrt(inX * inX + inY * inY) || 1;
      inX /= length;
      inY /= length;
    }
    if (c >= 0) {
      outX = (p[2 * c] as number) - bx;
      outY = (p[2 * c + 1] as number) - by;
      const length = Math.sqrt(outX * outX + outY * outY) || 1;
      outX /= length;
      outY /= length;
    }
    if (a < 0) {
      inX = outX;
      inY = outY;
    }
    if (c < 0) {
      outX = inX;
      outY = inY;
    }
    let nx = -(inY + outY);
    let ny = inX + outX;
    const length = Math.sqrt(nx * nx + ny * ny);
    if (length < 1e-3) {
      this.mitreX = -inY;
      this.mitreY = inX;
      return;
    }
    nx /= length;
    ny /= length;
    const cosine = nx * -inY + ny * inX;
    const stretch = Math.min(LONGEST_MITRE, 1 / Math.max(0.1, cosine));
    this.mitreX = nx * stretch;
    this.mitreY = ny * stretch;
  }

  /** Strokes the run in dashes that go on round its bends. */
  dashedPath(widthPx: number, dashPx: number, gapPx: number): void {
    const p = this.points;
    let phase = 0;
    const pitch = dashPx + gapPx;
    for (let i = 0; i + 1 < this.pointCount; i += 1) {
      const ax = p[2 * i] as number;
      const ay = p[2 * i + 1] as number;
      const dx = (p[2 * i + 2] as number) - ax;
      const dy = (p[2 * i + 3] as number) - ay;
      const length = Math.sqrt(dx * dx + dy * dy);
      if (length < 1e-6) continue;
      const ex = dx / length;
      const ey = dy / length;
      for (let s = -phase; s < length; s += pitch) {
        const from = Math.max(0, s);
        const end = Math.min(s + dashPx, length);
        if (end > from)
          this.stroke(
            ax + ex * from,
            ay + ey * from,
            ax + ex * end,
            ay + ey * end,
            -ey,
            ex,
            -ey,
            ex,
            widthPx,
          );
      }
      phase = (phase + length) % pitch;
    }
  }

  /** Fills the run as a convex shape. */
  fill(): void {
    const p = this.points;
    const n = this.pointCount;
    for (let i = 1; i + 1 < n; i += 2) {
      const j = Math.min(i + 2, n - 1);
      this.quad(
        p[0] as number,
        p[1] as number,
        p[2 * i] as number,
        p[2 * i + 1] as number,
        p[2 * i + 2] as number,
        p[2 * i + 3] as number,
        p[2 * j] as number,
        p[2 * j + 1] as number,
      );
    }
  }

  disc(x: number, y: number, radiusPx: number): void {
    this.roundRun(x, y, radiusPx);
    this.fill();
    this.path(0.6, true);
  }

  ring(x: number, y: number, radiusPx: number, widthPx: number): void {
    this.roundRun(x, y, radiusPx);
    this.path(widthPx, true);
  }

  private roundRun(x: number, y: number, radiusPx: number): void {
    const parts = Math.max(12, Math.min(64, Math.round(radiusPx * 3)));
    this.pointCount = 0;
    for (let i = 0; i < parts; i += 1) {
      const angle = (2 * Math.PI * i) / parts;
      this.to(x + radiusPx * Math.cos(angle), y + radiusPx * Math.sin(angle));
    }
  }

  /** Lays a rounded rectangle as the run. */
  roundedRun(x: number, y: number, width: number, height: number, radiusPx: number): void {
    this.pointCount = 0;
    const parts = 6;
    for (let corner = 0; corner < 4; corner += 1) {
      const right = corner === 0 || corner === 3;
      const lower = corner < 2;
      const cx = right ? x + width - radiusPx : x + radiusPx;
      const cy = lower ? y + height - radiusPx : y + radiusPx;
      for (let i = 0; i <= parts; i += 1) {
        const angle = (Math.PI / 2) * (corner + i / parts);
        this.to(cx + radiusPx * Math.cos(angle), cy + radiusPx * Math.sin(angle));
      }
    }
  }

  /** An arrow head with its tip at a point, pointing along a unit direction. */
  arrowHead(x: number, y: number, dirX: number, dirY: number, sizePx: number): void {
    const bx = x - dirX * sizePx;
    const by = y - dirY * sizePx;
    const w = sizePx * 0.42;
    this.triangle(x, y, bx - dirY * w, by + dirX * w, bx + dirY * w, by - dirX * w);
  }

  widthPx(style: TypeStyle, text: string): number {
    return this.glyphs.widthPx(style, text);
  }

  /** A line of type, its capitals centred on y. */
  text(style: TypeStyle, text: string, x: number, y: number, align: Align = 'left', scale = 1): void {
    const { glyphs } = this;
    const ratio = glyphs.pixelRatio;
    const shift = SHIFT[align] === 0 ? 0 : SHIFT[align] * glyphs.widthPx(style, text) * scale;
    let pen = Math.round((x + shift) * ratio) / ratio;
    const base = Math.round((y + TYPE[style].sizePx * scale * CAPITALS * 0.5) * ratio) / ratio;
    const c = this.colour;
    for (let i = 0; i < text.length; i += 1) {
      const g = glyphs.glyph(style, text.charCodeAt(i));
      const left = pen + g.leftPx * scale;
      const top = base + g.topPx * scale;
      const right = left + g.widthPx * scale;
      const bottom = top + g.heightPx * scale;
      this.reserve();
      this.vertex(left, top, g.u0, g.v0, 0, SOLID, c);
      this.vertex(right, top, g.u1, g.v0, 0, SOLID, c);
      this.vertex(right, bottom, g.u1, g.v1, 0, SOLID, c);
      this.vertex(left, bottom, g.u0, g.v1, 0, SOLID, c);
      pen += g.advancePx * scale;
    }
  }

  /** A line of type along a direction, clockwise on the screen, centred on its middle. */
  turnedText(style: TypeStyle, text: string, x: number, y: number, angleRad: number, scale = 1): void {
    const { glyphs } = this;
    const cos = Math.cos(angleRad) * scale;
    const sin = Math.sin(angleRad) * scale;
    let pen = -glyphs.widthPx(style, text) / 2;
    const base = TYPE[style].sizePx * CAPITALS * 0.5;
    const c = this.colour;
    for (let i = 0; i < text.length; i += 1) {
      const g = glyphs.glyph(style, text.charCodeAt(i));
      const left = pen + g.leftPx;
      const top = base + g.topPx;
      const right = left + g.widthPx;
      const bottom = top + g.heightPx;
      this.reserve();
      this.vertex(x + left * cos - top * sin, y + left * sin + top * cos, g.u0, g.v0, 0, SOLID, c);
      this.vertex(x + right * cos - top * sin, y + right * sin + top * cos, g.u1, g.v0, 0, SOLID, c);
      this.vertex(x + right * cos - bottom * sin, y + right * sin + bottom * cos, g.u1, g.v1, 0, SOLID, c);
      this.vertex(x + left * cos - bottom * sin, y + left * sin + bottom * cos, g.u0, g.v1, 0, SOLID, c);
      pen += g.advancePx;
    }
  }
}
