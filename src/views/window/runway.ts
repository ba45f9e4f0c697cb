import { eastOf, groundHeightM, northOf, type Runway } from '../../aerodrome/runway.ts';
import type { Colours } from '../ink/colours.ts';
import type { Brush } from './brush.ts';

/**
 * Paint on the runway after ICAO Annex 14 vol. I 5.2 (figures from memory): centreline stripes 30 m with gaps of
 * 20 m; threshold stripes 30 m long beginning 6 m in, their number by the runway's width; a designator 9 m tall;
 * aiming point marking by landing distance. For looks only: nothing is computed from it.
 */
const STRIPE_M = 30;
const STRIPE_GAP_M = 20;
const STRIPE_WIDTH_M = 0.5;
const EDGE_WIDTH_M = 0.9;
const KEYS_FROM_M = 6;
const KEYS_LENGTH_M = 30;
const DESIGNATOR_FROM_M = 48;
const DESIGNATOR_TALL_M = 9;
const DESIGNATOR_WIDE_M = 3;

const keysEitherSide = (widthM: number): number => {
  if (widthM >= 60) return 8;
  if (widthM >= 45) return 6;
  if (widthM >= 30) return 4;
  return widthM >= 23 ? 3 : 2;
};

const aimMarking = (landingLengthM: number): { lengthM: number; widthM: number; insideM: number } => {
  if (landingLengthM < 800) return { lengthM: 30, widthM: 4, insideM: 3 };
  if (landingLengthM < 1200) return { lengthM: 30, widthM: 5, insideM: 4.5 };
  return { lengthM: 45, widthM: 6, insideM: 9 };
};

/** Strokes of the figures on a grid 2 wide and 4 tall: x, y by twos from lower left. */
const FIGURES: Readonly<Record<string, readonly (readonly number[])[]>> = {
  '0': [[0, 0, 2, 0, 2, 4, 0, 4, 0, 0]],
  '1': [[1, 0, 1, 4, 0.4, 3.2]],
  '2': [[0, 4, 2, 4, 2, 2, 0, 2, 0, 0, 2, 0]],
  '3': [
    [0, 4, 2, 4, 2, 0, 0, 0],
    [0.6, 2, 2, 2],
  ],
  '4': [
    [0, 4, 0, 1.6, 2, 1.6],
    [1.6, 4, 1.6, 0],
  ],
  '5': [[2, 4, 0, 4, 0, 2, 2, 2, 2, 0, 0, 0]],
  '6': [[2, 4, 0, 4, 0, 0, 2, 0, 2, 2, 0, 2]],
  '7': [[0, 4, 2, 4, 0.8, 0]],
  '8': [
    [0, 0, 2, 0, 2, 4, 0, 4, 0, 0],
    [0, 2, 2, 2],
  ],
  '9': [[2, 2, 0, 2, 0, 4, 2, 4, 2, 0, 0, 0]],
};

/** Draws on one strip from one end's axes; `flip` draws the far end's paint, seen from here upside down. */
class Paint {
  brush!: Brush;
  runway!: Runway;
  /** Along of the end being painted and its direction. */
  originM = 0;
  direction: 1 | -1 = 1;

  private along(m: number): number {
    return this.originM + this.direction * m;
  }

  slab(fromM: number, toM: number, leftM: number, rightM: number, edgePx = 0): void {
    const { brush } = this;
    brush.begin();
    this.corner(fromM, leftM);
    this.corner(toM, leftM);
    this.corner(toM, rightM);
    this.corner(fromM, rightM);
    brush.fill(brush.eye.groundPlanes, edgePx);
  }

  private corner(m: number, acrossM: number): void {
    const along = this.along(m);
    const across = acrossM * this.direction;
    this.brush.add(
      eastOf(this.runway, along, across),
      northOf(this.runway, along, across),
      groundHeightM(this.runway, along),
    );
  }

  line(
    fromM: number,
    fromAcross: number,
    toM: number,
    toAcross: number,
    widthM: number,
    leastPx: number,
  ): void {
    const { runway } = this;
    const a = this.along(fromM);
    const b = this.along(toM);
    const fa = fromAcross * this.direction;
    const ta = toAcross * this.direction;
    this.brush.line(
      eastOf(runway, a, fa),
      northOf(runway, a, fa),
      groundHeightM(runway, a),
      eastOf(runway, b, ta),
      northOf(runway, b, ta),
      groundHeightM(runway, b),
      widthM,
      leastPx,
    );
  }

  /** A stripe at its true size when near, a thin line when far. */
  stripe(fromM: number, toM: number, acrossM: number, widthM: number, leastPx: number): void {
    const z = this.depthM((fromM + toM) / 2, acrossM);
    const near = this.depthM(fromM, acrossM);
    const far = this.depthM(toM, acrossM);
    if (Math.max(near, far, z) < 1) return;
    const px = (this.brush.eye.focalPx * widthM) / Math.max(1, Math.min(near, far, z));
    if (px > 2) this.slab(fromM, toM, acrossM - widthM / 2, acrossM + widthM / 2, 0.6);
    else this.line(fromM, acrossM, toM, acrossM, widthM, leastPx);
  }

  depthM(m: number, acrossM: number): number {
    const along = this.along(m);
    const across = acrossM * this.direction;
    const { runway } = this;
    return this.brush.eye.zOf(
      eastOf(runway, along, across),
      northOf(runway, along, across),
      groundHeightM(runway, along),
    );
  }

  keys(halfM: number): void {
    const n = keysEitherSide(this.runway.widthM);
    const pitch = (halfM - 1) / (n + 0.25);
    const depth = Math.abs(this.depthM(KEYS_FROM_M + KEYS_LENGTH_M / 2, 0));
    const pitchPx = (this.brush.eye.focalPx * pitch) / Math.max(1, depth);
    if (pitchPx < 1.6) {
      this.slab(KEYS_FROM_M, KEYS_FROM_M + KEYS_LENGTH_M, -halfM + 1, halfM - 1);
      return;
    }
    for (let k = 0; k < n; k += 1)
      for (let side = -1; side <= 1; side += 2) {
        const middle = side * (0.75 * pitch + k * pitch);
        this.slab(KEYS_FROM_M, KEYS_FROM_M + KEYS_LENGTH_M, middle - pitch * 0.3, middle + pitch * 0.3, 0.5);
      }
  }

  designator(text: string): void {
    const depth = this.depthM(DESIGNATOR_FROM_M, 0);
    if (depth < 4 || (this.brush.eye.focalPx * DESIGNATOR_WIDE_M) / depth < 2.5) return;
    const gap = 2.2;
    const figures = text.length;
    const wide = figures * DESIGNATOR_WIDE_M + (figures - 1) * gap;
    for (let f = 0; f < figures; f += 1) {
      const left = -wide / 2 + f * (DESIGNATOR_WIDE_M + gap);
      for (const stroke of FIGURES[text[f] as string] ?? [])
        for (let k = 0; k + 3 < stroke.length; k += 2)
          this.line(
            DESIGNATOR_FROM_M + ((stroke[k + 1] as number) * DESIGNATOR_TALL_M) / 4,
            left + ((stroke[k] as number) * DESIGNATOR_WIDE_M) / 2,
            DESIGNATOR_FROM_M + ((stroke[k + 3] as number) * DESIGNATOR_TALL_M) / 4,
            left + ((stroke[k + 2] as number) * DESIGNATOR_WIDE_M) / 2,
            0.8,
            0.9,
          );
    }
  }

  aim(aimM: number): void {
    const { lengthM, widthM, insideM } = aimMarking(this.runway.landingLengthM);
    for (let side = -1; side <= 1; side += 2) {
      const a = side * insideM;
      const b = side * (insideM + widthM);
      this.slab(aimM, aimM + lengthM, Math.min(a, b), Math.max(a, b), 0.6);
    }
  }

  displacedArrows(displacedM: number): void {
    for (let m = -14; m - 24 > -displacedM; m -= 45) {
      this.line(m - 24, 0, m, 0, 0.8, 0.8);
      this.line(m - 7, -2.4, m, 0, 0.8, 0.8);
      this.line(m - 7, 2.4, m, 0, 0.8, 0.8);
    }
  }
}

const paint = new Paint();

/** The strip in true perspective with its paint, both ends. */
export function drawRunwayAhead(brush: Brush, colours: Colours, runway: Runway): void {
  const halfM = runway.widthM / 2;
  const { ink } = brush;
  paint.brush = brush;
  paint.runway = runway;
  paint.originM = 0;
  paint.direction = 1;
  ink.use(colours[runway.surface]);
  paint.slab(runway.surfaceStartM, runway.surfaceEndM, -halfM, halfM, 0.8);

  if (runway.surface === 'grass') {
    // No paint on grass: mown edges, and white markers along them.
    ink.use(colours.ink, 0.4);
    paint.line(runway.surfaceStartM, -halfM, runway.surfaceEndM, -halfM, 0.4, 1);
    paint.line(runway.surfaceStartM, halfM, runway.surfaceEndM, halfM, 0.4, 1);
    ink.use(colours.lightWhite);
    for (let m = runway.surfaceStartM; m <= runway.surfaceEndM; m += 60) {
      paint.stripe(m, Math.min(m + 4, runway.surfaceEndM), -halfM, 1, 1);
      paint.stripe(m, Math.min(m + 4, runway.surfaceEndM), halfM, 1, 1);
    }
    paint.stripe(0, 3, 0, runway.widthM, 1.2);
    return;
  }

  ink.use(colours.marking);
  const pieces = 12;
  const step = (runway.surfaceEndM - runway.surfaceStartM) / pieces;
  for (let k = 0; k < pieces; k += 1) {
    const m = runway.surfaceStartM + k * step;
    paint.stripe(m, m + step, -halfM + EDGE_WIDTH_M, EDGE_WIDTH_M, 0.9);
    paint.stripe(m, m + step, halfM - EDGE_WIDTH_M, EDGE_WIDTH_M, 0.9);
  }
  for (let m = 72; m + STRIPE_M < runway.surfaceEndM - 72; m += STRIPE_M + STRIPE_GAP_M)
    paint.stripe(m, m + STRIPE_M, 0, STRIPE_WIDTH_M, 0.8);
  paint.slab(0, 1.8, -halfM, halfM, 0.5);
  paint.keys(halfM);
  paint.designator(runway.designator);
  paint.aim(runway.aimM);
  if (runway.surfaceStartM < -20) paint.displacedArrows(-runway.surfaceStartM);

  paint.originM = runway.surfaceEndM;
  paint.direction = -1;
  paint.keys(halfM);
  paint.designator(runway.otherDesignator);
}
