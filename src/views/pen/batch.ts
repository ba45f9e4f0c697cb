import { Buffer, BufferUsage, Geometry, Mesh, Shader, UniformGroup } from 'pixi.js';
import { type BatchPen, COLOUR_AT, EDGE_AT, VERTICES_PER_QUAD, WORDS_PER_VERTEX } from './batch-pen.ts';

/** The three matrices are pixi's own: panel to canvas, layer to panel. */
const VERTEX = `
in vec2 aPosition;
in vec2 aEdge;
in vec4 aColour;
out vec2 vEdge;
out vec2 vPlace;
out vec4 vColour;
uniform mat3 uProjectionMatrix;
uniform mat3 uWorldTransformMatrix;
uniform mat3 uTransformMatrix;
void main(void) {
  vec3 inPanel = uTransformMatrix * vec3(aPosition, 1.0);
  vEdge = aEdge;
  vPlace = inPanel.xy;
  vColour = aColour;
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

const BYTES_PER_VERTEX = 4 * WORDS_PER_VERTEX;
const INDICES_PER_QUAD = 6;

const quadIndices = (quads: number): Uint32Array => {
  const indices = new Uint32Array(quads * INDICES_PER_QUAD);
  for (let q = 0; q < quads; q += 1)
    indices.set(
      [0, 1, 2, 0, 2, 3].map((corner) => q * VERTICES_PER_QUAD + corner),
      q * INDICES_PER_QUAD,
    );
  return indices;
};

const geometryOf = (vertices: Buffer): Geometry => {
  const attribute = (format: 'float32x2' | 'unorm8x4', word: number) => ({
    buffer: vertices,
    format,
    stride: BYTES_PER_VERTEX,
    offset: 4 * word,
  });
  const quads = vertices.data.byteLength / BYTES_PER_VERTEX / VERTICES_PER_QUAD;
  return new Geometry({
    attributes: {
      aPosition: attribute('float32x2', 0),
      aEdge: attribute('float32x2', EDGE_AT),
      aColour: attribute('unorm8x4', COLOUR_AT),
    },
    indexBuffer: new Buffer({
      data: quadIndices(quads),
      usage: BufferUsage.INDEX | BufferUsage.COPY_DST | BufferUsage.STATIC,
      label: 'quads',
    }),
  });
};

/** Width and height of a panel as its batches take it. */
export type PanelSize = UniformGroup<{ uPanelSize: { value: Float32Array; type: 'vec2<f32>' } }>;

export const newPanelSize = (): PanelSize =>
  new UniformGroup({ uPanelSize: { value: new Float32Array(2), type: 'vec2<f32>' } });

/** What a batch pen wrote, as one mesh that draws the quads in use. */
export class Batch {
  readonly mesh: Mesh<Geometry, Shader>;

  constructor(
    private readonly pen: BatchPen,
    panelSize: PanelSize,
  ) {
    const shader = Shader.from({
      gl: { vertex: VERTEX, fragment: FRAGMENT, name: 'batch' },
      resources: { panelSize },
    });
    this.mesh = new Mesh({ geometry: this.newGeometry(), shader });
  }

  /** Sends what the pen has written to the graphics card. */
  send(): void {
    const { pen, mesh } = this;
    const { count } = pen;
    if (this.vertices.data.buffer !== pen.floats.buffer) {
      const old = mesh.geometry;
      mesh.geometry = this.newGeometry();
      old.destroy(true);
    }
    // An index count of 0 means all there are.
    mesh.visible = count > 0;
    mesh.geometry.indexCount = count * INDICES_PER_QUAD;
    if (count > 0) this.vertices.update(count * VERTICES_PER_QUAD * BYTES_PER_VERTEX);
  }

  destroy(): void {
    this.mesh.geometry.destroy(true);
    this.mesh.shader?.destroy();
    this.mesh.destroy();
  }

  private get vertices(): Buffer {
    return this.mesh.geometry.getBuffer('aPosition');
  }

  private newGeometry(): Geometry {
    const data = this.pen.floats as Float32Array<ArrayBuffer>;
    return geometryOf(new Buffer({ data, usage: BufferUsage.VERTEX | BufferUsage.COPY_DST, label: 'batch' }));
  }
}
