/** Fetched only where the browser has no WebGL. */
export { CanvasRenderer } from 'pixi.js';
