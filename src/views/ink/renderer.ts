import {
  AbstractRenderer,
  GCSystem,
  GlBufferSystem,
  GlContextSystem,
  GlEncoderSystem,
  GlGeometrySystem,
  GlLimitsSystem,
  GlRenderTargetSystem,
  GlShaderSystem,
  GlStateSystem,
  GlTextureSystem,
  GlUniformGroupSystem,
  RendererType,
  ViewSystem,
  type WebGLRenderer,
} from 'pixi.js';

/**
 * What one draw call from one buffer needs of pixi, each part after those it builds on. The rest of its WebGL
 * renderer (trees of containers, batches, masks, filters, extraction) weighs more than twice this and is left out.
 */
const PARTS = {
  gc: GCSystem,
  view: ViewSystem,
  context: GlContextSystem,
  limits: GlLimitsSystem,
  buffer: GlBufferSystem,
  texture: GlTextureSystem,
  renderTarget: GlRenderTargetSystem,
  geometry: GlGeometrySystem,
  uniformGroup: GlUniformGroupSystem,
  shader: GlShaderSystem,
  encoder: GlEncoderSystem,
  state: GlStateSystem,
};

interface Place {
  readonly location: WebGLUniformLocation;
}

/** Sends the two uniforms of the ink. */
const sendUniforms = (
  at: Readonly<Record<'uCanvas' | 'uSheets', Place>>,
  values: { readonly uCanvas: Float32Array; readonly uSheets: Float32Array },
  { gl }: { readonly gl: WebGL2RenderingContext },
): void => {
  gl.uniform2fv(at.uCanvas.location, values.uCanvas);
  gl.uniform4fv(at.uSheets.location, values.uSheets);
};

/**
 * Pixi's renderer with the parts that the press uses, not yet begun. Where pixi would write functions as text and
 * run them, which the page's policy forbids, ours stand.
 */
export const newInkRenderer = (): WebGLRenderer<HTMLCanvasElement> => {
  Object.assign(AbstractRenderer.prototype, { _unsafeEvalCheck: () => undefined });
  Object.assign(GlUniformGroupSystem.prototype, { _generateUniformsSync: () => sendUniforms });
  const renderer = new AbstractRenderer({
    name: 'ink',
    type: RendererType.WEBGL,
    systems: Object.entries(PARTS).map(([name, value]) => ({ name, value: value as never })),
    renderPipes: [],
    renderPipeAdaptors: [],
  });
  // What the context asks of the parts that are left out: a canvas one can see through, drawn on directly.
  Object.assign(renderer, { background: { alpha: 0 }, backBuffer: { useBackBuffer: false } });
  return renderer as unknown as WebGLRenderer<HTMLCanvasElement>;
};
