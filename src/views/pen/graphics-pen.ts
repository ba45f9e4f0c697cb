import type { Graphics } from 'pixi.js';
import { blended } from './colours.ts';
import { Pen, type Texts } from './pen.ts';

/** A fade is made of so many strips of one colour each. */
const FADE_STRIPS = 16;

/**
 * Draws with pixi's own graphics: what stands still, and everything where the browser has no WebGL. Shapes of one
 * colour that follow one another become one instruction.
 */
export class GraphicsPen extends Pen {
  /** What has been laid in the path and is not filled or stroked yet. */
  private readonly laid = {
    kind: 'nothing' as 'nothing' | 'fills' | 'strokes',
    widthPx: 0,
    color: 0,
    alpha: 1,
  };

  constructor(
    texts: Texts,
    private readonly graphics: Graphics,
  ) {
    super(texts);
  }

  override begin(): void {
    super.begin();
    this.laid.kind = 'nothing';
    this.graphics.clear();
  }

  override end(): void {
    this.finish();
    super.end();
  }

  private finish(): void {
    const { laid, graphics } = this;
    const { kind, color, alpha, widthPx: width } = laid;
    if (kind === 'fills') graphics.fill({ color, alpha });
    if (kind === 'strokes') graphics.stroke({ color, alpha, width, join: 'miter', miterLimit: 2.5 });
    laid.kind = 'nothing';
  }

  /** Goes on with the instruction in hand if it is of the same kind and colour, otherwise begins another. */
  private lay(kind: 'fills' | 'strokes', widthPx: number): void {
    const { laid, rgb } = this;
    const alpha = this.alpha[0]!;
    const same = laid.kind === kind && laid.color === rgb && laid.alpha === alpha && laid.widthPx === widthPx;
    if (same) return;
    this.finish();
    laid.kind = kind;
    laid.widthPx = widthPx;
    laid.color = rgb;
    laid.alpha = alpha;
  }

  fill(): void {
    if (this.used < 6) return;
    this.lay('fills', 0);
    this.graphics.poly(Array.from(this.points.subarray(0, this.used)));
  }

  fade(rgb: number): void {
    const p = Array.from(this.points.subarray(0, 8)) as [
      ...[number, number, number, number],
      ...[number, number, number, number],
    ];
    const from = this.rgb;
    const between = (a: number, b: number, share: number) => a + (b - a) * share;
    for (let k = 0; k < FADE_STRIPS; k += 1) {
      const low = k / FADE_STRIPS;
      const high = (k + 1) / FADE_STRIPS;
      this.use(blended(from, rgb, k / (FADE_STRIPS - 1)));
      this.move(between(p[0], p[6], low), between(p[1], p[7], low));
      this.to(between(p[2], p[4], low), between(p[3], p[5], low));
      this.to(between(p[2], p[4], high), between(p[3], p[5], high));
      this.to(between(p[0], p[6], high), between(p[1], p[7], high));
      this.fill();
    }
  }

  path(widthPx: number, closed = false): void {
    const n = this.tidy(closed);
    if (n < 2) return;
    this.lay('strokes', widthPx);
    this.graphics.poly(Array.from(this.points.subarray(0, 2 * n)), closed);
  }

  protected stroke(): void {
    const { given, graphics } = this;
    this.lay('strokes', given[4]!);
    graphics.moveTo(given[0]!, given[1]!).lineTo(given[2]!, given[3]!);
  }

  protected taperedStroke(): void {
    const { given } = this;
    const [ax, ay, bx, by, from, to] = given as unknown as [number, number, number, number, number, number];
    const length = Math.hypot(bx - ax, by - ay);
    if (!(length > 1e-6)) return;
    const nx = (ay - by) / length / 2;
    const ny = (bx - ax) / length / 2;
    this.move(ax + nx * from, ay + ny * from);
    this.to(bx + nx * to, by + ny * to);
    this.to(bx - nx * to, by - ny * to);
    this.to(ax - nx * from, ay - ny * from);
    this.fill();
  }
}
