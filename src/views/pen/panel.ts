import { Container, Graphics } from 'pixi.js';
import type { Rect } from '../frame.ts';
import { newPanelSize } from './batch.ts';
import { batchLayer, graphicsLayer, type Layer } from './layer.ts';
import type { Letters } from './letters.ts';
import type { Pen } from './pen.ts';
import type { Kind } from './renderer.ts';

/** One view's place under the page: its layers from the back to the front, cut off at its edges. */
export class Panel {
  readonly container = new Container({ isRenderGroup: true });
  readonly layers: readonly Layer[];
  private readonly size = newPanelSize();
  /** A batch cuts itself off; graphics need a mask. */
  private readonly mask: Graphics | null;
  x = 0;
  y = 0;
  width = 0;
  height = 0;

  constructor(kind: Kind, letters: Letters, layers: number) {
    const newLayer = kind === 'batches' ? batchLayer : graphicsLayer;
    this.layers = Array.from({ length: layers }, () => newLayer(letters, this.size));
    this.container.visible = false;
    this.container.addChild(...this.layers.map((layer) => layer.container));
    this.mask = kind === 'batches' ? null : new Graphics();
    if (this.mask === null) return;
    this.container.addChild(this.mask);
    this.container.mask = this.mask;
  }

  /** Undefined: the view is not shown. */
  settle(rect: Rect | undefined): void {
    this.x = rect?.x ?? 0;
    this.y = rect?.y ?? 0;
    this.width = rect?.width ?? 0;
    this.height = rect?.height ?? 0;
    this.container.position.set(this.x, this.y);
    this.container.visible = this.shown;
    this.size.uniforms.uPanelSize.set([this.width, this.height]);
    this.size.update();
    this.mask?.clear().rect(0, 0, this.width, this.height).fill(0xffffff);
  }

  /** Of the layer at the back, for views that have one. */
  get pen(): Pen {
    return (this.layers[0] as Layer).pen;
  }

  get shown(): boolean {
    return this.width > 0 && this.height > 0;
  }

  destroy(): void {
    for (const layer of this.layers) layer.destroy();
    this.container.destroy({ children: true });
  }
}
