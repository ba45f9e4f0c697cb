import type { Rect } from '../frame.ts';
import type { Glyphs } from './glyphs.ts';
import { Ink } from './ink.ts';

/** One view's place under the page and the pen that draws on it. */
export class Sheet {
  readonly ink: Ink;
  x = 0;
  y = 0;
  width = 0;
  height = 0;

  constructor(glyphs: Glyphs) {
    this.ink = new Ink(glyphs);
  }

  /** Undefined: the view is not shown. */
  settle(rect: Rect | undefined): void {
    this.x = rect?.x ?? 0;
    this.y = rect?.y ?? 0;
    this.width = rect?.width ?? 0;
    this.height = rect?.height ?? 0;
    if (!this.shown) this.ink.begin();
  }

  get shown(): boolean {
    return this.width > 0 && this.height > 0;
  }
}
