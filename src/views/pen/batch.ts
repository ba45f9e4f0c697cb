import { Buffer, BufferUsage, Geometry, Mesh, Shader, UniformGroup } from 'pixi.js';
import { type BatchPen, COLOUR_AT, EDGE_AT, WORDS_PER_QUAD } from './batch-pen.ts';

/** The three matrices are pixi's own: panel to canvas, layer to panel. */
const VERTEX = `
in float aCorner;
in vec4 aFirst;
in vec4 aSecond;
in vec4 aEdge;
in vec4 aColourAB;
in vec4 aColourCD;
out vec2 vEdge;
out vec2 vPlace;
out vec4 vColour;
uniform mat3 uProjectionMatrix;
uniform mat3 uWorldTransformMatrix;
uniform mat3 uTransformMatrix;
void main(void) {
  bool atEnd = aCorner > 0.5 && aCorner < 2.5;
  bool opposite = aCorner > 1.5;
  vec2 place = opposite ? (atEnd ? aSecond.xy : aSecond.zw) : (atEnd ? aFirst.zw : aFirst.xy);
  float off = atEnd ? aEdge.y : aEdge.x;
  vEdge = vec2(opposite ? -off : off, atEnd ? aEdge.w : aEdge.z);
  vColour = opposite ? aColourCD : aColourAB;
  vec3 inPanel = uTransformMatrix * vec3(place, 1.0);
  vPlace = inPanel.xy;
  gl_Position = vec4((uProjectionMatrix * uWorldTransformMatrix * inPanel).xy, 0.0, 1.0);
}`;

/**
 * Cuts the view off at its panel's edges, without a mask, and softens the sides of a stroke over one device pixel;
 * a stroke thinner than a pixel gets fainter instead.
 */
const FRAGMENT = `
in vec2 vEdge;
in vec2 vPlace;
in vec4 vColour;
out vec4 finalColor;
uniform vec2 uPanelSize;
void main(void) {
  if (vPlace.x < 0.0 || vPlace.y < 0.0 || vPlace.x > uPanelSize.x || vPlace.y > uPanelSize.y) discard;
  finalColor = vColour * clamp(vEdge.y + 0.5 - abs(vEdge.x), 0.0, 1.0);
}`;

const BYTES_PER_QUAD = 4 * WORDS_PER_QUAD;
const CORNERS = new Buffer({
  data: new Float32Array([0, 1, 2, 3]),
  usage: BufferUsage.VERTEX,
  label: 'corners',
});
const QUAD = new Buffer({
  data: new Uint16Array([0, 1, 2, 0, 2, 3]),
  usage: BufferUsage.INDEX,
  label: 'quad',
});

const geometryOf = (quads: Buffer): Geometry => {
  const perQuad = (format: 'float32x4' | 'unorm8x4', word: number) => ({
    buffer: quads,
    format,
    stride: BYTES_PER_QUAD,
    offset: 4 * word,
    instance: true,
  });
  return new Geometry({
    attributes: {
      aCorner: { buffer: CORNERS, format: 'float32', stride: 4, offset: 0 },
      aFirst: perQuad('float32x4', 0),
      aSecond: perQuad('float32x4', 4),
      aEdge: perQuad('float32x4', EDGE_AT),
      aColourAB: perQuad('unorm8x4', COLOUR_AT),
      aColourCD: perQuad('unorm8x4', COLOUR_AT + 1),
    },
    indexBuffer: QUAD,
    instanceCount: 0,
  });
};

/** Width and height of a panel as its batches take it. */
export type PanelSize = UniformGroup<{ uPanelSize: { value: Float32Array; type: 'vec2<f32>' } }>;

export const newPanelSize = (): PanelSize =>
  new UniformGroup({ uPanelSize: { value: new Float32Array(2), type: 'vec2<f32>' } });

/** What a batch pen wrote as one mesh: every quad is an instance of the same two triangles. */
export class Batch {
  readonly mesh: Mesh<Geometry, Shader>;
  private quads: Buffer;

  constructor(
    private readonly pen: BatchPen,
    panelSize: PanelSize,
  ) {
    this.quads = this.newBuffer();
    const shader = Shader.from({
      gl: { vertex: VERTEX, fragment: FRAGMENT, name: 'batch' },
      resources: { panelSize },
    });
    this.mesh = new Mesh({ geometry: geometryOf(this.quads), shader });
  }

  /** Sends what the pen has written to the graphics card. */
  send(): void {
    const { pen } = this;
    if (this.quads.data.buffer !== pen.floats.buffer) {
      const { geometry } = this.mesh;
      this.quads.destroy();
      this.quads = this.newBuffer();
      this.mesh.geometry = geometryOf(this.quads);
      geometry.destroy();
    }
    this.mesh.geometry.instanceCount = pen.count;
    if (pen.count > 0) this.quads.update(pen.count * BYTES_PER_QUAD);
  }

  destroy(): void {
    this.quads.destroy();
    this.mesh.geometry.destroy();
    this.mesh.shader?.destroy();
    this.mesh.destroy();
  }

  private newBuffer(): Buffer {
    return new Buffer({
      data: this.pen.floats as Float32Array<ArrayBuffer>,
      usage: BufferUsage.VERTEX | BufferUsage.COPY_DST,
      label: 'batch',
    });
  }
}
