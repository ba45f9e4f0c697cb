import 'pixi.js/unsafe-eval';
import 'pixi.js/graphics';
import 'pixi.js/mesh';
import 'pixi.js/text-bitmap';
import { type Renderer, Ticker, WebGLRenderer } from 'pixi.js';

// Pixi's ticker is not our clock: the page says when to draw.
Ticker.system.autoStart = false;
Ticker.system.stop();

/** How shapes are drawn: with WebGL in batches, without it as pixi's graphics, which a plain canvas can draw too. */
export type Kind = 'batches' | 'graphics';

/**
 * Pixi's renderer on a canvas that the page shines through; its canvas renderer where the browser has no WebGL.
 * Rejects where there is neither.
 */
export const createRenderer = async (
  canvas: HTMLCanvasElement,
): Promise<{ readonly renderer: Renderer; readonly kind: Kind }> => {
  const options = {
    canvas,
    antialias: true,
    backgroundAlpha: 0,
    powerPreference: 'low-power',
    // Only what is imported above: no events, no accessibility, no loaders.
    skipExtensionImports: true,
    // What has not been seen for a minute stays: a panel may come back at any time.
    gcActive: false,
  } as const;
  const renderer = new WebGLRenderer();
  try {
    await renderer.init(options);
    return { renderer, kind: 'batches' };
  } catch {
    const { CanvasRenderer } = await import('./plain.ts');
    const plain = new CanvasRenderer();
    await plain.init(options);
    return { renderer: plain, kind: 'graphics' };
  }
};
