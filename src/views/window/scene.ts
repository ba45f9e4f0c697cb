import type { PaletteColour } from '../palette.ts';

/** Shown only while the place it stands at is so far from the eye. */
interface Ranged {
  readonly place: Float64Array;
  readonly fromM: number;
  readonly toM: number;
}

interface Layer {
  readonly colour: PaletteColour;
  readonly alpha: number;
  readonly within: Ranged | null;
}

/** Flat shapes: places east, north, height by threes; corner numbers by threes or fours, each shape convex. */
export interface Areas extends Layer {
  readonly kind: 'areas';
  readonly places: Float64Array;
  readonly corners: Uint16Array;
  readonly per: 3 | 4;
  /** A soft rim, pixels; 0 for none. */
  readonly rimPx: number;
}

/** Lines: two places by sixes, `widthM` wide but never thinner than `leastPx`. */
export interface Lines extends Layer {
  readonly kind: 'lines';
  readonly ends: Float64Array;
  readonly widthM: number;
  readonly leastPx: number;
}

/** Things that stand upright on the ground: foot places by threes. */
export interface Uprights extends Layer {
  readonly kind: 'uprights';
  readonly feet: Float64Array;
  readonly upM: number;
  readonly form: 'tree' | 'house';
}

/** What stands still in the world, laid out once; the window draws layer by layer from the back. */
export type SceneLayer = Areas | Lines | Uprights;
