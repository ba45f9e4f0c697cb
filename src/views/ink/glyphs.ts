import { CanvasSource } from 'pixi.js';
import { TYPE, type TypeStyle } from './type.ts';

/** One letter in the atlas: texture coordinates, box around the pen position, and how far the pen moves on. */
export interface Glyph {
  readonly u0: number;
  readonly v0: number;
  readonly u1: number;
  readonly v1: number;
  readonly leftPx: number;
  readonly topPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly advancePx: number;
}

const WARMED = ' 0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ.,:;°·×/+-()';
const GAP = 2;

/**
 * Letters drawn once by the browser into one texture and then set as quads, so that changing text costs
 * neither a texture nor an object. A letter not seen before is added when it is first asked for.
 */
export class Glyphs {
  readonly source: CanvasSource;
  /** Middle of the white corner: what lines and fills sample. */
  readonly whiteU: number;
  readonly whiteV: number;
  private readonly context: CanvasRenderingContext2D;
  private readonly known = new Map<TypeStyle, (Glyph | undefined)[]>();
  private readonly rare = new Map<string, Glyph>();
  private x = GAP;
  private y = GAP;
  private row = 0;
  private dirty = true;

  constructor(
    readonly pixelRatio: number,
    private readonly fontFamily: string,
  ) {
    const canvas = document.createElement('canvas');
    canvas.width = pixelRatio > 1.5 ? 2048 : 1024;
    canvas.height = 1024;
    const context = canvas.getContext('2d');
    if (context === null) throw new Error('This browser gives no 2D canvas to set type with.');
    this.context = context;
    context.fillStyle = '#fff';
    context.textBaseline = 'alphabetic';
    context.fillRect(0, 0, 8, 8);
    this.whiteU = 4 / canvas.width;
    this.whiteV = 4 / canvas.height;
    this.x = 8 + GAP;
    this.row = 8 + GAP;
    this.source = new CanvasSource({
      resource: canvas,
      scaleMode: 'linear',
      alphaMode: 'premultiplied-alpha',
    });
    for (const style of Object.keys(TYPE) as TypeStyle[]) {
      this.known.set(style, []);
      for (const letter of WARMED) this.glyph(style, letter.charCodeAt(0));
    }
  }

  glyph(style: TypeStyle, code: number): Glyph {
    const common = this.known.get(style) as (Glyph | undefined)[];
    if (code < 256) {
      const found = common[code];
      if (found !== undefined) return found;
      const added = this.add(style, code);
      common[code] = added;
      return added;
    }
    const key = style + String.fromCharCode(code);
    const found = this.rare.get(key);
    if (found !== undefined) return found;
    const added = this.add(style, code);
    this.rare.set(key, added);
    return added;
  }

  widthPx(style: TypeStyle, text: string): number {
    let width = 0;
    for (let i = 0; i < text.length; i += 1) width += this.glyph(style, text.charCodeAt(i)).advancePx;
    return width;
  }

  /** Sends new letters to the graphics card; true when there were some. */
  refresh(): boolean {
    if (!this.dirty) return false;
    this.dirty = false;
    this.source.update();
    return true;
  }

  destroy(): void {
    this.source.destroy();
  }

  private add(style: TypeStyle, code: number): Glyph {
    const { context, pixelRatio } = this;
    const { canvas } = context;
    const { sizePx, weight } = TYPE[style];
    const letter = String.fromCharCode(code);
    context.font = `${weight} ${sizePx * pixelRatio}px ${this.fontFamily}`;
    const metrics = context.measureText(letter);
    const left = Math.ceil(metrics.actualBoundingBoxLeft) + 1;
    const ascent = Math.ceil(metrics.actualBoundingBoxAscent) + 1;
    const width = left + Math.ceil(metrics.actualBoundingBoxRight) + 1;
    const height = ascent + Math.ceil(metrics.actualBoundingBoxDescent) + 1;
    if (this.x + width + GAP > canvas.width) {
      this.x = GAP;
      this.y += this.row + GAP;
      this.row = 0;
    }
    const full = this.y + height + GAP > canvas.height;
    const { x, y } = this;
    if (!full) {
      context.fillText(letter, x + left, y + ascent);
      this.x += width + GAP;
      this.row = Math.max(this.row, height);
      this.dirty = true;
    }
    return {
      u0: full ? 0 : x / canvas.width,
      v0: full ? 0 : y / canvas.height,
      u1: full ? 0 : (x + width) / canvas.width,
      v1: full ? 0 : (y + height) / canvas.height,
      leftPx: -left / pixelRatio,
      topPx: -ascent / pixelRatio,
      widthPx: width / pixelRatio,
      heightPx: height / pixelRatio,
      advancePx: metrics.width / pixelRatio,
    };
  }
}
