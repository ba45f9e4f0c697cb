import type { Colours } from '../pen/colours.ts';
import type { Pen } from '../pen/pen.ts';
import { Clipper, cutSegment, type Planes } from './clip.ts';
import type { Eye } from './eye.ts';
import type { Areas, Lines, SceneLayer, Uprights } from './scene.ts';

/** Uprights smaller than this are left to the tint below them; nearer than this they would fill the view. */
const LEAST_UPRIGHT_PX = 0.8;
const NEAREST_UPRIGHT_M = 12;
const HALF_WIDTHS = { tree: 0.36, house: 0.6 } as const;

/**
 * Draws scene layers and parts of the machine through an eye: brought into its axes, cut to the view, put in
 * perspective. Everything moves through typed arrays, so that a frame makes no garbage.
 */
export class Perspective {
  private readonly clipper = new Clipper();
  private readonly ends = new Float64Array(6);
  /** The place located last: x, y, z in the eye's axes, then pixels. */
  readonly located = new Float64Array(5);

  constructor(
    readonly pen: Pen,
    readonly eye: Eye,
  ) {}

  layer(layer: SceneLayer, colours: Colours): void {
    const { within } = layer;
    if (within !== null) {
      this.eye.bring(within.place, 0, this.located, 0);
      const { located } = this;
      const square = located[0]! * located[0]! + located[1]! * located[1]! + located[2]! * located[2]!;
      if (square < within.fromM * within.fromM || square >= within.toM * within.toM) return;
    }
    this.pen.use(colours[layer.colour], layer.alpha);
    if (layer.kind === 'areas') this.areas(layer);
    else if (layer.kind === 'lines') this.lines(layer);
    else this.uprights(layer);
  }

  private areas(layer: Areas): void {
    const { clipper, eye, pen } = this;
    const { places, corners, per, rimPx } = layer;
    for (let k = 0; k + per <= corners.length; k += per) {
      for (let m = 0; m < per; m += 1)
        eye.bring(places, 3 * (corners[k + m] as number), clipper.corners, 3 * m);
      clipper.count = per;
      if (!this.outline(eye.groundPlanes)) continue;
      pen.fill();
      if (rimPx > 0) pen.path(rimPx, true);
    }
  }

  private lines(layer: Lines): void {
    const { ends, eye, pen } = this;
    const { widthM, leastPx } = layer;
    for (let k = 0; k + 5 < layer.ends.length; k += 6) {
      eye.bring(layer.ends, k, ends, 0);
      eye.bring(layer.ends, k + 3, ends, 3);
      if (!cutSegment(ends, eye.groundPlanes)) continue;
      const scaleA = eye.focalPx / ends[2]!;
      const scaleB = eye.focalPx / ends[5]!;
      pen.taper(
        eye.middleX + ends[0]! * scaleA,
        eye.middleY - ends[1]! * scaleA,
        eye.middleX + ends[3]! * scaleB,
        eye.middleY - ends[4]! * scaleB,
        Math.max(leastPx, widthM * scaleA),
        Math.max(leastPx, widthM * scaleB),
      );
    }
  }

  private uprights(layer: Uprights): void {
    const { ends, eye, pen } = this;
    const { feet, upM, form } = layer;
    const half = HALF_WIDTHS[form];
    const { axes } = eye;
    for (let k = 0; k + 2 < feet.length; k += 3) {
      eye.bring(feet, k, ends, 0);
      const z = ends[2]!;
      if (z < NEAREST_UPRIGHT_M || (eye.focalPx * upM) / z < LEAST_UPRIGHT_PX) continue;
      const topZ = z + upM * axes[11]!;
      if (topZ < 1) continue;
      const x = eye.middleX + (eye.focalPx * ends[0]!) / z;
      const y = eye.middleY - (eye.focalPx * ends[1]!) / z;
      // Up in the world, at this place on the screen.
      const ux = eye.middleX + (eye.focalPx * (ends[0]! + upM * axes[5]!)) / topZ - x;
      const uy = eye.middleY - (eye.focalPx * (ends[1]! + upM * axes[8]!)) / topZ - y;
      const sx = -uy * half;
      const sy = ux * half;
      pen.move(x + sx, y + sy);
      pen.to(x - sx, y - sy);
      if (form === 'tree') pen.to(x + ux, y + uy);
      else {
        pen.to(x - sx + ux * 0.75, y - sy + uy * 0.75);
        pen.to(x + sx + ux * 0.75, y + sy + uy * 0.75);
      }
      pen.fill();
    }
  }

  /** A convex part of the machine (ahead, right, up by threes): filled, then its edge. */
  part(points: Float64Array, fill: number, edge: number): void {
    const { clipper, eye, pen } = this;
    const n = points.length / 3;
    for (let m = 0; m < n; m += 1) eye.bringMachine(points, 3 * m, clipper.corners, 3 * m);
    clipper.count = n;
    if (!this.outline(eye.machinePlanes)) return;
    pen.use(fill);
    pen.fill();
    pen.use(edge, 0.72);
    pen.path(1.4, true);
  }

  /** Cuts the corners that stand in the clipper and makes them the pen's run; false when none are seen. */
  private outline(planes: Planes): boolean {
    const { clipper, eye, pen } = this;
    const n = clipper.cut(planes);
    if (n < 3) return false;
    const p = clipper.corners;
    const { focalPx, middleX, middleY } = eye;
    pen.lift();
    for (let i = 0; i < n; i += 1) {
      const scale = focalPx / p[3 * i + 2]!;
      pen.to(middleX + p[3 * i]! * scale, middleY - p[3 * i + 1]! * scale);
    }
    return true;
  }

  /** Brings one place to the screen (`located`); false when it is nearer than `nearM` ahead or behind. */
  locate(places: ArrayLike<number>, at: number, nearM: number): boolean {
    const { eye, located } = this;
    eye.bring(places, at, located, 0);
    const z = located[2]!;
    if (z < nearM) return false;
    located[3] = eye.middleX + (eye.focalPx * located[0]!) / z;
    located[4] = eye.middleY - (eye.focalPx * located[1]!) / z;
    return true;
  }
}
