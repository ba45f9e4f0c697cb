import { Buffer, BufferUsage, Container, Geometry, GlProgram, Mesh, Shader, UniformGroup } from 'pixi.js';
import type { Rect } from '../frame.ts';
import type { Glyphs } from './glyphs.ts';
import { Ink } from './ink.ts';
import { BYTES_PER_VERTEX, FLOATS_PER_VERTEX, INDICES_PER_QUAD, VERTICES_PER_QUAD } from './layout.ts';

const VERTEX = `
in vec2 aPosition;
in vec2 aUV;
in vec2 aEdge;
in vec4 aColour;
out vec2 vUV;
out vec2 vEdge;
out vec2 vPlace;
out vec4 vColour;
uniform mat3 uProjectionMatrix;
uniform mat3 uWorldTransformMatrix;
uniform mat3 uTransformMatrix;
void main(void) {
  vUV = aUV;
  vEdge = aEdge;
  vPlace = aPosition;
  vColour = aColour;
  vec3 place = uProjectionMatrix * uWorldTransformMatrix * uTransformMatrix * vec3(aPosition, 1.0);
  gl_Position = vec4(place.xy, 0.0, 1.0);
}`;

const FRAGMENT = `
in vec2 vUV;
in vec2 vEdge;
in vec2 vPlace;
in vec4 vColour;
out vec4 finalColor;
uniform sampler2D uTexture;
uniform vec2 uSize;
void main(void) {
  if (vPlace.x < 0.0 || vPlace.y < 0.0 || vPlace.x > uSize.x || vPlace.y > uSize.y) discard;
  float cover = clamp(vEdge.y + 0.5 - abs(vEdge.x), 0.0, 1.0);
  finalColor = vColour * (cover * texture(uTexture, vUV).a);
}`;

let program: GlProgram | undefined;

const quadIndices = (vertices: number): Uint32Array => {
  const quads = Math.floor(vertices / VERTICES_PER_QUAD);
  const indices = new Uint32Array(quads * INDICES_PER_QUAD);
  for (let q = 0; q < quads; q += 1) {
    const v = q * VERTICES_PER_QUAD;
    indices.set([v, v + 1, v + 2, v, v + 2, v + 3], q * INDICES_PER_QUAD);
  }
  return indices;
};

/**
 * One view's sheet: an ink and the mesh that shows it, cut off at the edges of its panel by the shader (a mask
 * without a stencil). The index buffer never changes; only the vertices in use go to the card.
 */
export class Sheet {
  readonly container = new Container();
  readonly ink: Ink;
  width = 0;
  height = 0;
  private readonly size = new Float32Array(2);
  private readonly place = new UniformGroup({ uSize: { value: this.size, type: 'vec2<f32>' } });
  private readonly shader: Shader;
  private geometry: Geometry | null = null;
  private vertices: Buffer | null = null;
  private mesh: Mesh<Geometry, Shader> | null = null;

  constructor(glyphs: Glyphs) {
    this.ink = new Ink(glyphs);
    program ??= GlProgram.from({ vertex: VERTEX, fragment: FRAGMENT, name: 'ink' });
    this.shader = new Shader({
      glProgram: program,
      resources: { uTexture: glyphs.source, uSampler: glyphs.source.style, place: this.place },
    });
    this.container.visible = false;
  }

  /** Undefined: the view is not shown. */
  settle(rect: Rect | undefined): void {
    this.container.visible = rect !== undefined && rect.width > 0 && rect.height > 0;
    if (rect === undefined) return;
    this.container.position.set(rect.x, rect.y);
    this.width = rect.width;
    this.height = rect.height;
    this.size[0] = rect.width;
    this.size[1] = rect.height;
    this.place.update();
  }

  get shown(): boolean {
    return this.container.visible;
  }

  /** New letters after a change of pixel ratio or typeface. */
  takeGlyphs(glyphs: Glyphs): void {
    this.ink.glyphs = glyphs;
    this.shader.resources.uTexture = glyphs.source;
    this.shader.resources.uSampler = glyphs.source.style;
  }

  /** Hands the vertices in use to the card. */
  print(): void {
    const { ink } = this;
    if (this.vertices?.data !== ink.floats) this.rebuild();
    if (this.geometry === null || this.vertices === null || this.mesh === null) return;
    const quads = ink.count / VERTICES_PER_QUAD;
    this.mesh.visible = quads > 0;
    if (quads === 0) return;
    this.vertices.update(ink.count * BYTES_PER_VERTEX);
    this.geometry.indexCount = quads * INDICES_PER_QUAD;
  }

  destroy(): void {
    this.mesh?.destroy();
    this.geometry?.destroy(true);
    this.shader.destroy();
    this.container.destroy();
  }

  /** For the first frame, and when the ink has grown. */
  private rebuild(): void {
    const { floats } = this.ink;
    this.mesh?.destroy();
    this.geometry?.destroy(true);
    this.vertices = new Buffer({
      data: floats,
      usage: BufferUsage.VERTEX | BufferUsage.COPY_DST,
      shrinkToFit: false,
      label: 'ink',
    });
    const attribute = (format: 'float32x2' | 'unorm8x4', offset: number) => ({
      buffer: this.vertices as Buffer,
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
      },
      indexBuffer: new Buffer({
        data: quadIndices(floats.length / FLOATS_PER_VERTEX),
        usage: BufferUsage.INDEX | BufferUsage.COPY_DST | BufferUsage.STATIC,
        label: 'ink quads',
      }),
    });
    this.mesh = new Mesh({ geometry: this.geometry, shader: this.shader as never }) as unknown as Mesh<
      Geometry,
      Shader
    >;
    this.container.addChild(this.mesh as never);
  }
}
