import { Fills, SOLID } from './fills.ts';
import { FLOATS_PER_VERTEX, VERTICES_PER_QUAD } from './layout.ts';
import { TYPE, type TypeStyle } from './type.ts';

/** Height of a capital letter as a share of the type size; common practice for sans-serif faces. */
const CAPITALS = 0.7;
const FLOATS_PER_QUAD = FLOATS_PER_VERTEX * VERTICES_PER_QUAD;

export type Align = 'left' | 'middle' | 'right';
/** Half widths of the text that lie left of its place. */
const HALVES: Readonly<Record<Align, number>> = { left: 0, middle: 1, right: 2 };

/**
 * A pen on one sheet, redrawn from nothing every frame into a buffer that is kept: lines, fills, and letters as
 * quads out of one texture. Pixels are CSS pixels from the sheet's upper left corner, y down. A shape is a *run*
 * of points (`move`, `to`, `trace`) and then `path`, `dashedPath` or `fill`.
 */
export class Ink extends Fills {
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
  protected set(style: TypeStyle, text: string, halves: number, sharp: boolean): void {
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
