import { Container, Graphics } from 'pixi.js';
import { Batch, type PanelSize } from './batch.ts';
import { BatchPen } from './batch-pen.ts';
import { GraphicsPen } from './graphics-pen.ts';
import type { Letters } from './letters.ts';
import type { Pen } from './pen.ts';
import { TextPool } from './text-pool.ts';

/** Shapes and, above them, their texts: kept until they are drawn anew. */
export interface Layer {
  readonly container: Container;
  readonly pen: Pen;
  /** After a change of pixel ratio or typeface; must be drawn anew. */
  takeLetters(letters: Letters): void;
  destroy(): void;
}

class SendingPen extends BatchPen {
  readonly batch: Batch;

  constructor(texts: TextPool, pixelRatio: number, panelSize: PanelSize) {
    super(texts, pixelRatio);
    this.batch = new Batch(this, panelSize);
  }

  override end(): void {
    super.end();
    this.batch.send();
  }
}

/** One mesh a layer: with WebGL. */
export const batchLayer = (letters: Letters, panelSize: PanelSize): Layer => {
  const container = new Container();
  const texts = new TextPool(container, letters, panelSize.uniforms.uPanelSize);
  const pen = new SendingPen(texts, letters.pixelRatio, panelSize);
  container.addChild(pen.batch.mesh);
  return {
    container,
    pen,
    takeLetters: (next) => {
      texts.takeLetters(next);
      pen.pixelRatio = next.pixelRatio;
    },
    destroy: () => {
      pen.batch.destroy();
      container.destroy({ children: true });
    },
  };
};

/** Pixi's graphics: without WebGL, where there are no meshes. */
export const graphicsLayer = (letters: Letters, panelSize: PanelSize): Layer => {
  const container = new Container();
  const graphics = new Graphics();
  const texts = new TextPool(container, letters, panelSize.uniforms.uPanelSize);
  container.addChild(graphics);
  return {
    container,
    pen: new GraphicsPen(texts, graphics),
    takeLetters: (next) => texts.takeLetters(next),
    destroy: () => container.destroy({ children: true, context: true }),
  };
};
