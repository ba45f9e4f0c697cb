import type { Ink } from '../ink/ink.ts';
import { Clipper, type Plane, SegmentClipper } from './clip.ts';
import type { Eye } from './eye.ts';

/**
 * Draws shapes given in the eye's axes: cut to the view, brought into perspective, filled or stroked. One outline
 * at a time: `begin`, `add` its corners, `fill` or `outline`.
 */
export class Brush {
  private readonly clipper = new Clipper();
  private readonly segment = new SegmentClipper();

  constructor(
    readonly ink: Ink,
    readonly eye: Eye,
  ) {}

  begin(): void {
    this.clipper.begin();
  }

  /** A corner in earth axes. */
  add(eastM: number, northM: number, heightM: number): void {
    const { eye } = this;
    this.clipper.add(
      eye.xOf(eastM, northM, heightM),
      eye.yOf(eastM, northM, heightM),
      eye.zOf(eastM, northM, heightM),
    );
  }

  /** A corner on the machine, seen from the eye: ahead, right, up. */
  addMachine(ahead: number, right: number, up: number): void {
    this.clipper.add(this.eye.machineX(ahead, right), up, this.eye.machineZ(ahead, right));
  }

  /** Fills the outline, which must be convex; its soft edge is `edgePx` wide. */
  fill(planes: readonly Plane[], edgePx = 0): boolean {
    if (!this.run(planes)) return false;
    this.ink.fill();
    if (edgePx > 0) this.ink.path(edgePx, true);
    return true;
  }

  /** Strokes the outline. */
  outline(planes: readonly Plane[], widthPx: number): void {
    if (this.run(planes)) this.ink.path(widthPx, true);
  }

  private run(planes: readonly Plane[]): boolean {
    const { clipper, eye, ink } = this;
    const n = clipper.cut(planes);
    if (n < 3) return false;
    const p = clipper.corners;
    for (let i = 0; i < n; i += 1) {
      const z = p[3 * i + 2] as number;
      const x = eye.screenX(p[3 * i] as number, z);
      const y = eye.screenY(p[3 * i + 1] as number, z);
      if (i === 0) ink.move(x, y);
      else ink.to(x, y);
    }
    return true;
  }

  /**
   * A line between two places in earth axes. `widthM` is its true width; it never gets thinner than `leastPx`,
   * and fades instead, down to `leastAlpha` of the colour's own alpha.
   */
  line(
    aEastM: number,
    aNorthM: number,
    aHeightM: number,
    bEastM: number,
    bNorthM: number,
    bHeightM: number,
    widthM: number,
    leastPx: number,
  ): void {
    const { eye, ink, segment } = this;
    segment.set(
      eye.xOf(aEastM, aNorthM, aHeightM),
      eye.yOf(aEastM, aNorthM, aHeightM),
      eye.zOf(aEastM, aNorthM, aHeightM),
      eye.xOf(bEastM, bNorthM, bHeightM),
      eye.yOf(bEastM, bNorthM, bHeightM),
      eye.zOf(bEastM, bNorthM, bHeightM),
    );
    if (!segment.cut(eye.groundPlanes)) return;
    const middleZ = (segment.az + segment.bz) / 2;
    ink.line(
      eye.screenX(segment.ax, segment.az),
      eye.screenY(segment.ay, segment.az),
      eye.screenX(segment.bx, segment.bz),
      eye.screenY(segment.by, segment.bz),
      Math.max(leastPx, (eye.focalPx * widthM) / middleZ),
    );
  }
}
