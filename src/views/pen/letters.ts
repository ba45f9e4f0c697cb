import { BitmapFontManager, TextStyle } from 'pixi.js';
import { TYPE, type TypeStyle } from './type.ts';

/** Drawn beforehand, so that a changing number finds its digits; other letters follow when they are first asked for. */
const WARMED = ' 0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ.,:;°·×/+-()';
/** Height of a capital letter as a share of the type size; common practice for sans-serif faces. */
const CAPITALS = 0.7;
/** Pixi's bitmap fonts measure at this size whatever they are drawn at. */
const MEASURED_AT_PX = 100;
const MOST_WIDTHS = 4000;

let installed = 0;

/** One style of type as pixi's bitmap font. */
interface Face {
  readonly name: string;
  readonly style: TextStyle;
  /** From the top of a line down to the middle of its capitals. */
  readonly middlePx: number;
  readonly widths: Map<string, number>;
}

/** The styles of type as bitmap fonts of one pixel ratio. */
export class Letters {
  private readonly faces: Readonly<Record<TypeStyle, Face>>;

  constructor(
    readonly pixelRatio: number,
    fontFamily: string,
  ) {
    installed += 1;
    const face = (style: TypeStyle): Face => {
      const { sizePx, weight } = TYPE[style];
      const name = `lapwing-${style}-${installed}`;
      const font = BitmapFontManager.install({
        name,
        style: { fontFamily, fontSize: sizePx, fontWeight: weight, fill: 0xffffff },
        chars: WARMED,
        resolution: pixelRatio,
        skipKerning: true,
      });
      const baselinePx = (font.fontMetrics.ascent * sizePx) / MEASURED_AT_PX;
      return {
        name,
        style: new TextStyle({ fontFamily: name, fontSize: sizePx, fill: 0xffffff }),
        middlePx: baselinePx - (CAPITALS / 2) * sizePx,
        widths: new Map(),
      };
    };
    this.faces = { small: face('small'), label: face('label'), strong: face('strong'), large: face('large') };
  }

  styleOf(style: TypeStyle): TextStyle {
    return this.faces[style].style;
  }

  middlePx(style: TypeStyle): number {
    return this.faces[style].middlePx;
  }

  widthPx(style: TypeStyle, text: string): number {
    const { widths, style: set } = this.faces[style];
    let width = widths.get(text);
    if (width === undefined) {
      const layout = BitmapFontManager.measureText(text, set);
      width = layout.width * layout.scale;
      if (widths.size >= MOST_WIDTHS) widths.clear();
      widths.set(text, width);
    }
    return width;
  }

  destroy(): void {
    for (const { name, style } of Object.values(this.faces)) {
      BitmapFontManager.uninstall(name);
      style.destroy();
    }
  }
}
