import { Points } from './points.ts';
import type { TypeStyle } from './type.ts';

/** A circle by 32 points, x and y by turns. */
const ROUND_PARTS = 32;
const ROUND = Float64Array.from({ length: 2 * ROUND_PARTS }, (_, i) =>
  i % 2 === 0 ? Math.cos((Math.PI * i) / ROUND_PARTS) : Math.sin((Math.PI * (i - 1)) / ROUND_PARTS),
);
/** Dashes are not laid farther than this: beyond every screen. */
const LONGEST_DASHED_PX = 40_000;

export type Align = 'left' | 'middle' | 'right';
/** Half widths of the text that lie left of its place. */
const HALVES: Readonly<Record<Align, number>> = { left: 0, middle: 1, right: 2 };

/** Sets the type that a pen writes. */
export interface Texts {
  /** x, y, angle, scale and alpha of the text that is put next. */
  readonly place: Float64Array;
  begin(): void;
  /** Capitals centred on the place; `halves` of the text's half widths lie left of it. */
  put(style: TypeStyle, text: string, rgb: number, halves: number): void;
  end(): void;
  widthPx(style: TypeStyle, text: string): number;
}

/**
 * What the views draw with. Pixels are CSS pixels from the panel's upper left corner, y down. A shape is a row of
 * points (`move`, `to`, `trace`) and then `path`, `dashedPath` or `fill`; type stands above the shapes of its
 * layer. How shapes reach the screen is left open: in a batch (batch-pen.ts) or as pixi's graphics (graphics-pen.ts).
 */
export abstract class Pen extends Points {
  constructor(protected readonly texts: Texts) {
    super();
  }

  /** Everything drawn before is forgotten. */
  begin(): void {
    this.used = 0;
    this.texts.begin();
  }

  /** The drawing is complete. */
  end(): void {
    this.texts.end();
  }

  /** Fills the points as a convex shape. */
  abstract fill(): void;
  /** Fills four points as a strip that fades from the colour in use, at its first side, to another. */
  abstract fade(rgb: number): void;
  /** Strokes the points with mitred joints. */
  abstract path(widthPx: number, closed?: boolean): void;
  /** One stroke from given[0, 1] to given[2, 3], given[4] wide. */
  protected abstract stroke(): void;
  /** The same, tapering to a width of given[5]. */
  protected abstract taperedStroke(): void;

  line(ax: number, ay: number, bx: number, by: number, widthPx: number): void {
    const { given } = this;
    given[0] = ax;
    given[1] = ay;
    given[2] = bx;
    given[3] = by;
    given[4] = widthPx;
    this.stroke();
  }

  /** For lines that lead away from the eye. */
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

  /** Strokes the points in dashes that go on round the bends. */
  dashedPath(widthPx: number, dashPx: number, gapPx: number): void {
    const { points, given } = this;
    const pitch = dashPx + gapPx;
    let phase = 0;
    given[4] = widthPx;
    for (let i = 0; i + 3 < this.used; i += 2) {
      const ax = points[i]!;
      const ay = points[i + 1]!;
      const dx = points[i + 2]! - ax;
      const dy = points[i + 3]! - ay;
      const length = Math.sqrt(dx * dx + dy * dy);
      if (length < 1e-6) continue;
      const ex = dx / length;
      const ey = dy / length;
      const last = Math.min(length, LONGEST_DASHED_PX);
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

  /** Mapped triangles: corner numbers by threes into points u, v. */
  triangles(from: ArrayLike<number>, corners: ArrayLike<number>): void {
    const { points, map } = this;
    const a = map[0]!;
    const b = map[1]!;
    const c = map[2]!;
    const d = map[3]!;
    const e = map[4]!;
    const f = map[5]!;
    for (let k = 0; k + 2 < corners.length; k += 3) {
      for (let m = 0; m < 3; m += 1) {
        const at = 2 * (corners[k + m] as number);
        const u = from[at] as number;
        const v = from[at + 1] as number;
        points[2 * m] = a * u + b * v + c;
        points[2 * m + 1] = d * u + e * v + f;
      }
      this.used = 6;
      this.fill();
    }
    this.used = 0;
  }

  /** Mapped quads: u, v of four corners by eights. */
  quads(from: ArrayLike<number>): void {
    const { points, map } = this;
    const a = map[0]!;
    const b = map[1]!;
    const c = map[2]!;
    const d = map[3]!;
    const e = map[4]!;
    const f = map[5]!;
    for (let k = 0; k + 7 < from.length; k += 8) {
      for (let m = 0; m < 4; m += 1) {
        const u = from[k + 2 * m] as number;
        const v = from[k + 2 * m + 1] as number;
        points[2 * m] = a * u + b * v + c;
        points[2 * m + 1] = d * u + e * v + f;
      }
      this.used = 8;
      this.fill();
    }
    this.used = 0;
  }

  /** A sign of given form (x, y by turns, a convex outline of pixels) at each mapped point. */
  signs(at: ArrayLike<number>, form: readonly number[], scale: number): void {
    const { points, map } = this;
    const a = map[0]!;
    const b = map[1]!;
    const c = map[2]!;
    const d = map[3]!;
    const e = map[4]!;
    const f = map[5]!;
    for (let k = 0; k + 1 < at.length; k += 2) {
      const u = at[k] as number;
      const v = at[k + 1] as number;
      const x = a * u + b * v + c;
      const y = d * u + e * v + f;
      for (let m = 0; m + 1 < form.length; m += 2) {
        points[m] = x + scale * (form[m] as number);
        points[m + 1] = y + scale * (form[m + 1] as number);
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
    this.round();
    this.fill();
    this.path(0.6, true);
  }

  ring(x: number, y: number, radiusPx: number, widthPx: number): void {
    this.move(x, y);
    this.given[0] = radiusPx;
    this.round();
    this.path(widthPx, true);
  }

  /** A circle of radius given[0] about the first point. */
  protected round(): void {
    const { points } = this;
    const x = points[0]!;
    const y = points[1]!;
    const radius = this.given[0]!;
    const step = radius < 5 ? 2 : 1;
    let n = 0;
    for (let k = 0; k < ROUND_PARTS; k += step) {
      points[n] = x + radius * ROUND[2 * k]!;
      points[n + 1] = y + radius * ROUND[2 * k + 1]!;
      n += 2;
    }
    this.used = n;
  }

  /** Makes a rounded rectangle the points. */
  rounded(x: number, y: number, width: number, height: number, radiusPx: number): void {
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

  widthPx(style: TypeStyle, text: string): number {
    return this.texts.widthPx(style, text);
  }

  /** A line of type, its capitals centred on y. */
  text(style: TypeStyle, text: string, x: number, y: number, align: Align = 'left', scale = 1): void {
    const { place } = this.texts;
    place[0] = x;
    place[1] = y;
    place[2] = 0;
    place[3] = scale;
    place[4] = this.alpha[0]!;
    this.texts.put(style, text, this.rgb, HALVES[align]);
  }

  /** The same centred on a mapped point: u, v at `at` of `from`, moved down by whole pixels. */
  textOn(style: TypeStyle, text: string, from: Float64Array, at: number, downPx = 0): void {
    const { map } = this;
    const u = from[at]!;
    const v = from[at + 1]!;
    const x = map[0]! * u + map[1]! * v + map[2]!;
    this.text(style, text, x, map[3]! * u + map[4]! * v + map[5]! + downPx, 'middle');
  }

  /** A line of type along a direction, clockwise on the screen, centred on its middle. */
  turnedText(style: TypeStyle, text: string, x: number, y: number, angleRad: number): void {
    const { place } = this.texts;
    place[0] = x;
    place[1] = y;
    place[2] = angleRad;
    place[3] = 1;
    place[4] = this.alpha[0]!;
    this.texts.put(style, text, this.rgb, HALVES.middle);
  }
}
