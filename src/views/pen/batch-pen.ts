import { packedColour } from './colours.ts';
import { Pen, type Texts } from './pen.ts';

/** A vertex of a batch: x, y; distance from the stroke's middle and its half width, device pixels; colour bytes. */
export const WORDS_PER_VERTEX = 5;
export const EDGE_AT = 2;
export const COLOUR_AT = 4;
/** Every shape is quads; a triangle repeats its last corner. */
export const VERTICES_PER_QUAD = 4;
const WORDS_PER_QUAD = VERTICES_PER_QUAD * WORDS_PER_VERTEX;

/** Half width given to fills, so that the shader never thins them. */
const SOLID = 1e4;
/** Joints longer than this many half widths are cut short. */
const LONGEST_MITRE = 2.5;

/**
 * Writes shapes as quads into one array that is kept: what moves is drawn anew every frame without making an
 * object.
 */
export class BatchPen extends Pen {
  floats: Float32Array;
  /** The same memory, for colours. */
  words: Uint32Array;
  /** Quads in use. */
  count = 0;
  /** The colour in use, packed. */
  private readonly tint = new Uint32Array(1);

  constructor(
    texts: Texts,
    /** Device pixels to a pixel. */
    public pixelRatio: number,
    capacity = 2048,
  ) {
    super(texts);
    this.floats = new Float32Array(capacity * WORDS_PER_QUAD);
    this.words = new Uint32Array(this.floats.buffer);
  }

  override begin(): void {
    super.begin();
    this.count = 0;
  }

  override use(rgb: number, alpha = 1): this {
    super.use(rgb, alpha);
    this.tint[0] = packedColour(rgb, this.alpha[0]!);
    return this;
  }

  /** Makes room for so many more quads. */
  private grow(quads: number): void {
    const needed = (this.count + quads) * WORDS_PER_QUAD;
    if (needed <= this.floats.length) return;
    let { length } = this.floats;
    while (length < needed) length *= 2;
    const floats = new Float32Array(length);
    floats.set(this.floats);
    this.floats = floats;
    this.words = new Uint32Array(floats.buffer);
  }

  fill(): void {
    const n = this.used >> 1;
    this.grow(n >> 1);
    const { floats, words, points } = this;
    const colour = this.tint[0]!;
    let at = this.count * WORDS_PER_QUAD;
    for (let i = 1; i + 1 < n; i += 2) {
      const last = i + 2 < n ? i + 2 : n - 1;
      floats[at] = points[0]!;
      floats[at + 1] = points[1]!;
      floats[at + 5] = points[2 * i]!;
      floats[at + 6] = points[2 * i + 1]!;
      floats[at + 10] = points[2 * i + 2]!;
      floats[at + 11] = points[2 * i + 3]!;
      floats[at + 15] = points[2 * last]!;
      floats[at + 16] = points[2 * last + 1]!;
      for (let m = at; m < at + WORDS_PER_QUAD; m += WORDS_PER_VERTEX) {
        floats[m + 2] = 0;
        floats[m + 3] = SOLID;
        words[m + 4] = colour;
      }
      at += WORDS_PER_QUAD;
      this.count += 1;
    }
  }

  fade(rgb: number): void {
    const before = this.count;
    this.fill();
    if (this.count === before) return;
    const other = packedColour(rgb, 1);
    const at = before * WORDS_PER_QUAD + COLOUR_AT;
    this.words[at + 2 * WORDS_PER_VERTEX] = other;
    this.words[at + 3 * WORDS_PER_VERTEX] = other;
  }

  /** A translucent line stays even along its bends: neighbours share the mitre. */
  path(widthPx: number, closed = false): void {
    const n = this.tidy(closed);
    const p = this.points;
    if (n < 2) return;
    const strokes = closed ? n : n - 1;
    this.grow(strokes);
    const { floats, words, pixelRatio } = this;
    const half = widthPx / 2;
    const reach = half + 1 / pixelRatio;
    const edge = reach * pixelRatio;
    const halfDevice = half * pixelRatio;
    const colour = this.tint[0]!;
    // Directions of the stroke before the first point, then of each stroke in turn.
    let beforeX = 0;
    let beforeY = 0;
    if (closed) {
      beforeX = p[0]! - p[2 * n - 2]!;
      beforeY = p[1]! - p[2 * n - 1]!;
      const length = Math.sqrt(beforeX * beforeX + beforeY * beforeY) || 1;
      beforeX /= length;
      beforeY /= length;
    }
    let fromX = 0;
    let fromY = 0;
    let at = this.count * WORDS_PER_QUAD;
    for (let i = 0; i < strokes; i += 1) {
      const j = i + 1 < n ? i + 1 : 0;
      const ax = p[2 * i]!;
      const ay = p[2 * i + 1]!;
      const bx = p[2 * j]!;
      const by = p[2 * j + 1]!;
      let dx = bx - ax;
      let dy = by - ay;
      let length = Math.sqrt(dx * dx + dy * dy) || 1;
      dx /= length;
      dy /= length;
      // The joint at a: between the stroke before and this one.
      if (i === 0) {
        let sx = -(beforeY + dy);
        let sy = beforeX + dx;
        if (!closed) {
          sx = -dy;
          sy = dx;
        }
        length = Math.sqrt(sx * sx + sy * sy);
        if (length < 1e-3) {
          fromX = -dy;
          fromY = dx;
        } else {
          sx /= length;
          sy /= length;
          const stretch = Math.min(LONGEST_MITRE, 1 / Math.max(0.1, sx * -dy + sy * dx));
          fromX = sx * stretch;
          fromY = sy * stretch;
        }
      }
      // The joint at b: between this stroke and the next.
      let nextX = dx;
      let nextY = dy;
      if (closed || j + 1 < n) {
        const k = j + 1 < n ? j + 1 : 0;
        nextX = p[2 * k]! - bx;
        nextY = p[2 * k + 1]! - by;
        length = Math.sqrt(nextX * nextX + nextY * nextY) || 1;
        nextX /= length;
        nextY /= length;
      }
      let toX = -(dy + nextY);
      let toY = dx + nextX;
      length = Math.sqrt(toX * toX + toY * toY);
      if (length < 1e-3) {
        toX = -dy;
        toY = dx;
      } else {
        toX /= length;
        toY /= length;
        const stretch = Math.min(LONGEST_MITRE, 1 / Math.max(0.1, toX * -dy + toY * dx));
        toX *= stretch;
        toY *= stretch;
      }
      floats[at] = ax + fromX * reach;
      floats[at + 1] = ay + fromY * reach;
      floats[at + 2] = edge;
      floats[at + 3] = halfDevice;
      words[at + 4] = colour;
      floats[at + 5] = bx + toX * reach;
      floats[at + 6] = by + toY * reach;
      floats[at + 7] = edge;
      floats[at + 8] = halfDevice;
      words[at + 9] = colour;
      floats[at + 10] = bx - toX * reach;
      floats[at + 11] = by - toY * reach;
      floats[at + 12] = -edge;
      floats[at + 13] = halfDevice;
      words[at + 14] = colour;
      floats[at + 15] = ax - fromX * reach;
      floats[at + 16] = ay - fromY * reach;
      floats[at + 17] = -edge;
      floats[at + 18] = halfDevice;
      words[at + 19] = colour;
      at += WORDS_PER_QUAD;
      fromX = toX;
      fromY = toY;
    }
    this.count += strokes;
  }

  protected stroke(): void {
    this.given[5] = this.given[4]!;
    this.taperedStroke();
  }

  protected taperedStroke(): void {
    this.grow(1);
    const { given, floats, words, pixelRatio } = this;
    const ax = given[0]!;
    const ay = given[1]!;
    const bx = given[2]!;
    const by = given[3]!;
    const dx = bx - ax;
    const dy = by - ay;
    const length = Math.sqrt(dx * dx + dy * dy);
    if (!(length > 1e-6)) return;
    const halfA = given[4]! / 2;
    const halfB = given[5]! / 2;
    // One device pixel farther on both sides, for the soft edge.
    const reachA = halfA + 1 / pixelRatio;
    const reachB = halfB + 1 / pixelRatio;
    const nx = -dy / length;
    const ny = dx / length;
    const at = this.count * WORDS_PER_QUAD;
    const colour = this.tint[0]!;
    floats[at] = ax + nx * reachA;
    floats[at + 1] = ay + ny * reachA;
    floats[at + 2] = reachA * pixelRatio;
    floats[at + 3] = halfA * pixelRatio;
    words[at + 4] = colour;
    floats[at + 5] = bx + nx * reachB;
    floats[at + 6] = by + ny * reachB;
    floats[at + 7] = reachB * pixelRatio;
    floats[at + 8] = halfB * pixelRatio;
    words[at + 9] = colour;
    floats[at + 10] = bx - nx * reachB;
    floats[at + 11] = by - ny * reachB;
    floats[at + 12] = -reachB * pixelRatio;
    floats[at + 13] = halfB * pixelRatio;
    words[at + 14] = colour;
    floats[at + 15] = ax - nx * reachA;
    floats[at + 16] = ay - ny * reachA;
    floats[at + 17] = -reachA * pixelRatio;
    floats[at + 18] = halfA * pixelRatio;
    words[at + 19] = colour;
    this.count += 1;
  }
}
