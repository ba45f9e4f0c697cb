import {
  type CanvasSource,
  type Geometry,
  GlBufferSystem,
  GlContextSystem,
  GlGeometrySystem,
  type GlProgram,
  GlShaderSystem,
  GlTextureSystem,
  type WebGLRenderer,
} from 'pixi.js';

/** Sets the uniforms of the program in use. */
export type SendUniforms = (
  gl: WebGL2RenderingContext,
  at: (name: string) => WebGLUniformLocation | null,
) => void;

/** Draws indexed triangles from one buffer with one program and one texture. */
export interface InkRenderer {
  /** In CSS pixels; `ratio` device pixels to each. */
  resize(widthPx: number, heightPx: number, ratio: number): void;
  /** The whole canvas becomes transparent. */
  clear(): void;
  draw(
    geometry: Geometry,
    indices: number,
    program: GlProgram,
    texture: CanvasSource,
    send: SendUniforms,
  ): void;
  destroy(): void;
}

/** Pixi's parts reach each other through their renderer; these are the ones that are used. */
type Parts = Pick<WebGLRenderer, 'context' | 'buffer' | 'texture' | 'geometry' | 'shader'>;

/** What the parts ask of others, which are left out here. */
const absentees = (canvas: HTMLCanvasElement) => ({
  uid: 1,
  view: { canvas },
  // A canvas that the page shines through, drawn on directly.
  background: { alpha: 0 },
  backBuffer: { useBackBuffer: false },
  // Nothing is thrown away for not having been used; no uniform stands in a buffer.
  gc: { now: 0, addResourceHash: () => undefined },
  limits: { maxUniformBindings: 0 },
});

/**
 * The canvas drawn on by those parts of pixi that one draw call needs: context (lost and restored), buffers,
 * textures, geometry, programs. Its whole renderer, with containers, batches, masks, filters and colours, weighs
 * three times as much, and writes functions as text, which the page's policy forbids.
 * Throws where the browser has no WebGL 2.
 */
export const createInkRenderer = (canvas: HTMLCanvasElement): InkRenderer => {
  const found = new Map<string, WebGLUniformLocation | null>();
  let program: WebGLProgram | null = null;
  const host = {
    ...absentees(canvas),
    gl: null as unknown as WebGL2RenderingContext,
    runners: { contextChange: { emit: (gl: WebGL2RenderingContext) => begin(gl) } },
  } as Record<string, unknown> & { gl: WebGL2RenderingContext };
  const as = host as never;
  const parts: Parts = {
    context: new GlContextSystem(as),
    buffer: new GlBufferSystem(as),
    texture: new GlTextureSystem(as),
    geometry: new GlGeometrySystem(as),
    shader: new GlShaderSystem(as),
  };
  Object.assign(host, parts);
  const inOrder = Object.values(parts) as unknown as { contextChange(gl: WebGL2RenderingContext): void }[];

  /** At first, and after a lost context has come back: nothing of the old one holds. */
  const begin = (gl: WebGL2RenderingContext): void => {
    program = null;
    for (const part of inOrder) part.contextChange(gl);
    gl.enable(gl.BLEND);
    // Colours come multiplied by their alpha.
    gl.blendFunc(gl.ONE, gl.ONE_MINUS_SRC_ALPHA);
    gl.clearColor(0, 0, 0, 0);
    gl.viewport(0, 0, canvas.width, canvas.height);
  };
  const at = (name: string): WebGLUniformLocation | null => {
    let place = found.get(name);
    if (place === undefined) {
      place = host.gl.getUniformLocation(program as WebGLProgram, name);
      found.set(name, place);
    }
    return place;
  };

  parts.context.init({
    antialias: true,
    premultipliedAlpha: true,
    preserveDrawingBuffer: false,
    powerPreference: 'low-power',
    preferWebGLVersion: 2,
    multiView: false,
    context: null,
  });
  if (parts.context.webGLVersion !== 2) throw new Error('no WebGL 2');

  return {
    resize(widthPx, heightPx, ratio) {
      const width = Math.round(widthPx * ratio);
      const height = Math.round(heightPx * ratio);
      if (width === canvas.width && height === canvas.height) return;
      canvas.width = width;
      canvas.height = height;
      host.gl.viewport(0, 0, width, height);
    },
    clear() {
      host.gl.clear(host.gl.COLOR_BUFFER_BIT);
    },
    draw(geometry, indices, glProgram, texture, send) {
      parts.shader.bind({ glProgram } as never, true);
      parts.geometry.bind(geometry, glProgram);
      parts.texture.bind(texture as never, 0);
      if (program === null) {
        program = host.gl.getParameter(host.gl.CURRENT_PROGRAM);
        found.clear();
      }
      send(host.gl, at);
      parts.geometry.draw('triangle-list', indices, 0, 1);
    },
    destroy() {
      for (const part of [parts.shader, parts.geometry, parts.texture, parts.buffer]) part.destroy();
      parts.context.destroy();
    },
  };
};
