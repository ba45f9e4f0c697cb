import { Buffer, BufferUsage, Geometry, GlProgram } from 'pixi.js';
import type { Glyphs } from './glyphs.ts';
import { BYTES_PER_VERTEX, FLOATS_PER_VERTEX, INDICES_PER_QUAD, VERTICES_PER_QUAD } from './layout.ts';
import type { InkRenderer, SendUniforms } from './renderer.ts';
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
 * with the number of its sheet. No tree of containers: that would cost one to two kilobytes of garbage a frame, this nothing.
 */
export class Press {
  private words = new Uint32Array(0);
  private vertices: Buffer | null = null;
  private geometry: Geometry | null = null;
  private readonly program = GlProgram.from({ vertex: VERTEX, fragment: FRAGMENT, name: 'ink' });
  private readonly canvas = new Float32Array(2);
  private readonly places = new Float32Array(4 * MOST_SHEETS);
  private readonly send: SendUniforms = (gl, at) => {
    gl.uniform2fv(at('uCanvas'), this.canvas);
    gl.uniform4fv(at('uSheets'), this.places);
  };

  constructor(
    private readonly renderer: InkRenderer,
    private readonly sheets: readonly Sheet[],
    private glyphs: Glyphs,
  ) {
    this.grow(FIRST_VERTICES);
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
    renderer.clear();
    if (count === 0) return;
    (this.vertices as Buffer).update(count * BYTES_PER_VERTEX);
    const indices = (count / VERTICES_PER_QUAD) * INDICES_PER_QUAD;
    renderer.draw(this.geometry as Geometry, indices, this.program, this.glyphs.source, this.send);
  }

  destroy(): void {
    this.geometry?.destroy(true);
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
  }
}

/** The numbers of the sheets as the bits of a float. */
const SHEET_NUMBERS = new Uint32Array(Float32Array.from({ length: MOST_SHEETS }, (_, i) => i).buffer);
