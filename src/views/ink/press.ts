import {
  Buffer,
  BufferUsage,
  Geometry,
  GlProgram,
  Shader,
  State,
  UniformGroup,
  type WebGLRenderer,
} from 'pixi.js';
import type { Glyphs } from './glyphs.ts';
import { BYTES_PER_VERTEX, FLOATS_PER_VERTEX, INDICES_PER_QUAD, VERTICES_PER_QUAD } from './layout.ts';
import { FRAGMENT, MOST_SHEETS, VERTEX } from './shader.ts';
import type { Sheet } from './sheet.ts';

const FIRST_VERTICES = 32768;
/** Where in a vertex the number of its sheet stands. */
const SHEET_AT = FLOATS_PER_VERTEX - 1;

const quadIndices = (vertices: number): Uint32Array => {
  const quads = Math.floor(vertices / VERTICES_PER_QUAD);
  const indices = new Uint32Array(quads * INDICES_PER_QUAD);
  for (let q = 0; q < quads; q += 1) {
    const v = q * VERTICES_PER_QUAD;
    const at = q * INDICES_PER_QUAD;
    indices[at] = v;
    indices[at + 1] = v + 1;
    indices[at + 2] = v + 2;
    indices[at + 3] = v;
    indices[at + 4] = v + 2;
    indices[at + 5] = v + 3;
  }
  return indices;
};

/**
 * Prints all sheets in one draw call: their vertices one after the other in one buffer that is kept, each marked
 * with the number of its sheet. It works on the renderer's own systems (target, shader, encoder) rather than on a
 * tree of containers: that tree costs one to two kilobytes of garbage a frame, this nothing.
 */
export class Press {
  private words = new Uint32Array(0);
  private vertices: Buffer | null = null;
  private geometry: Geometry | null = null;
  private readonly shader: Shader;
  private readonly canvas = new Float32Array(2);
  private readonly places = new Float32Array(4 * MOST_SHEETS);
  private readonly group = new UniformGroup({
    uCanvas: { value: this.canvas, type: 'vec2<f32>' },
    uSheets: { value: this.places, type: 'vec4<f32>', size: MOST_SHEETS },
  });
  private readonly target = { target: undefined as never, clear: true, clearColor: [0, 0, 0, 0] as never };
  private readonly order: { geometry: Geometry; shader: Shader; state: State; skipSync: boolean };

  constructor(
    private readonly renderer: WebGLRenderer<HTMLCanvasElement>,
    private readonly sheets: readonly Sheet[],
    private glyphs: Glyphs,
  ) {
    this.shader = new Shader({
      glProgram: GlProgram.from({ vertex: VERTEX, fragment: FRAGMENT, name: 'ink' }),
      // The letters are bound by hand, to the first unit, where samplers look on their own.
      resources: { place: this.group },
    });
    this.grow(FIRST_VERTICES);
    this.order = {
      geometry: this.geometry as unknown as Geometry,
      shader: this.shader,
      state: State.for2d(),
      skipSync: true,
    };
  }

  /** After a change of the canvas or of a sheet's place. */
  settle(widthPx: number, heightPx: number): void {
    this.canvas[0] = widthPx;
    this.canvas[1] = heightPx;
    this.sheets.forEach((sheet, i) => {
      this.places.set([sheet.x, sheet.y, sheet.width, sheet.height], 4 * i);
    });
  }

  /** New letters after a change of pixel ratio or typeface. */
  takeGlyphs(glyphs: Glyphs): void {
    this.glyphs = glyphs;
    for (const sheet of this.sheets) sheet.ink.glyphs = glyphs;
  }

  print(): void {
    const { sheets } = this;
    let count = 0;
    for (let i = 0; i < sheets.length; i += 1) count += (sheets[i] as Sheet).ink.count;
    this.grow(count);
    const { words, renderer } = this;
    let at = 0;
    for (let i = 0; i < sheets.length; i += 1) {
      const { ink } = sheets[i] as Sheet;
      const from = ink.words;
      const end = ink.count * FLOATS_PER_VERTEX;
      const number = SHEET_NUMBERS[i] as number;
      for (let k = 0; k < end; k += 1) words[at + k] = from[k]!;
      for (let k = SHEET_AT; k < end; k += FLOATS_PER_VERTEX) words[at + k] = number;
      at += end;
    }
    this.glyphs.refresh();
    this.target.target = renderer.view.renderTarget as never;
    renderer.renderTarget.bind(this.target);
    if (count === 0) return;
    (this.vertices as Buffer).update(count * BYTES_PER_VERTEX);
    (this.geometry as Geometry).indexCount = (count / VERTICES_PER_QUAD) * INDICES_PER_QUAD;
    renderer.shader.bind(this.shader, true);
    renderer.shader.updateUniformGroup(this.group);
    renderer.texture.bind(this.glyphs.source, 0);
    renderer.encoder.draw(this.order);
  }

  destroy(): void {
    this.geometry?.destroy(true);
    this.shader.destroy();
  }

  private grow(vertices: number): void {
    let room = this.words.length / FLOATS_PER_VERTEX;
    if (vertices <= room) return;
    room = Math.max(room, FIRST_VERTICES);
    while (room < vertices) room *= 2;
    this.words = new Uint32Array(room * FLOATS_PER_VERTEX);
    this.geometry?.destroy(true);
    this.vertices = new Buffer({
      data: new Float32Array(this.words.buffer),
      usage: BufferUsage.VERTEX | BufferUsage.COPY_DST,
      label: 'ink',
    });
    const buffer = this.vertices;
    const attribute = (format: 'float32' | 'float32x2' | 'unorm8x4', offset: number) => ({
      buffer,
      format,
      stride: BYTES_PER_VERTEX,
      offset: 4 * offset,
    });
    this.geometry = new Geometry({
      attributes: {
        aPosition: attribute('float32x2', 0),
        aUV: attribute('float32x2', 2),
        aEdge: attribute('float32x2', 4),
        aColour: attribute('unorm8x4', 6),
        aSheet: attribute('float32', SHEET_AT),
      },
      indexBuffer: new Buffer({
        data: quadIndices(room),
        usage: BufferUsage.INDEX | BufferUsage.COPY_DST | BufferUsage.STATIC,
        label: 'ink quads',
      }),
    });
    if (this.order !== undefined) this.order.geometry = this.geometry;
  }
}

/** The numbers of the sheets as the bits of a float. */
const SHEET_NUMBERS = new Uint32Array(Float32Array.from({ length: MOST_SHEETS }, (_, i) => i).buffer);
