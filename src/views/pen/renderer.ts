import 'pixi.js/unsafe-eval';
import 'pixi.js/graphics';
import 'pixi.js/mesh';
import 'pixi.js/text-bitmap';
import { type Renderer, Ticker, WebGLRenderer } from 'pixi.js';

// Pixi's ticker is not our clock: the page says when to draw.
Ticker.system.autoStart = false;
Ticker.system.stop();

/** Pixi's renderer on a canvas that the page shines through. Rejects where the browser has no WebGL. */
export const createRenderer = async (canvas: HTMLCanvasElement): Promise<Renderer> => {
  const renderer = new WebGLRenderer();
  await renderer.init({
    canvas,
    antialias: true,
    backgroundAlpha: 0,
    powerPreference: 'low-power',
    // Only what is imported above: no events, no accessibility, no loaders.
    skipExtensionImports: true,
    // What has not been seen for a minute stays: a panel may come back at any time.
    gcActive: false,
  });
  return renderer;
};
