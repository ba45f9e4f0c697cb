import { BitmapText, type Container } from 'pixi.js';
import type { Letters } from './letters.ts';
import type { Texts } from './pen.ts';
import type { TypeStyle } from './type.ts';

interface Entry {
  readonly shown: BitmapText;
  style: TypeStyle;
  text: string;
  widthPx: number;
  rgb: number;
}

/** Half a line, for what crosses an edge. */
const HALF_LINE_PX = 7;

/**
 * The texts of one layer: the first text that is put takes the first bitmap text, and so on, so that from frame to
 * frame most find what they show already there.
 */
export class TextPool implements Texts {
  readonly place = new Float64Array(5);
  private entries: Entry[] = [];
  private used = 0;

  constructor(
    private readonly container: Container,
    private letters: Letters,
    /** Width and height. */
    private readonly panel: Float32Array,
  ) {}

  /** After a change of pixel ratio or typeface; must be drawn anew. */
  takeLetters(letters: Letters): void {
    this.letters = letters;
    for (const { shown } of this.entries) shown.destroy();
    this.entries = [];
    this.used = 0;
  }

  begin(): void {
    this.used = 0;
  }

  put(style: TypeStyle, text: string, rgb: number, halves: number): void {
    const { place, letters } = this;
    const entry = this.entryFor(style, text);
    const { shown } = entry;
    const ratio = letters.pixelRatio;
    const scale = place[3]!;
    const width = entry.widthPx * scale;
    const left = -0.5 * halves * width;
    const up = -letters.middlePx(style) * scale;
    const angle = place[2]!;
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    // The ends of the line through the middle of its capitals.
    const ax = place[0]! + left * cos;
    const ay = place[1]! + left * sin;
    shown.visible = this.holds(ax, ay) && this.holds(ax + width * cos, ay + width * sin);
    if (!shown.visible) return;
    let x = ax - up * sin;
    let y = ay + up * cos;
    if (angle === 0) {
      // On whole device pixels, so that it is sharp.
      x = Math.round(x * ratio) / ratio;
      y = Math.round(y * ratio) / ratio;
    }
    shown.position.set(x, y);
    shown.rotation = angle;
    shown.scale.set(scale);
    // Pixi takes a colour apart again whenever it is set.
    if (entry.rgb !== rgb) {
      entry.rgb = rgb;
      shown.tint = rgb;
    }
    shown.alpha = place[4]!;
  }

  private holds(x: number, y: number): boolean {
    return x >= 0 && x <= this.panel[0]! && y >= HALF_LINE_PX && y <= this.panel[1]! - HALF_LINE_PX;
  }

  end(): void {
    for (let i = this.used; i < this.entries.length; i += 1) (this.entries[i] as Entry).shown.visible = false;
  }

  widthPx(style: TypeStyle, text: string): number {
    return this.letters.widthPx(style, text);
  }

  private entryFor(style: TypeStyle, text: string): Entry {
    const { letters } = this;
    let entry = this.entries[this.used];
    this.used += 1;
    if (entry === undefined) {
      const shown = new BitmapText({ text, style: letters.styleOf(style) });
      entry = { shown, style, text, widthPx: letters.widthPx(style, text), rgb: 0xffffff };
      this.entries.push(entry);
      this.container.addChild(shown);
      return entry;
    }
    if (entry.style === style && entry.text === text) return entry;
    if (entry.style !== style) entry.shown.style = letters.styleOf(style);
    entry.shown.text = text;
    entry.style = style;
    entry.text = text;
    entry.widthPx = letters.widthPx(style, text);
    return entry;
  }
}
