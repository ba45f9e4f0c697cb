import { eastOf, groundHeightM, northOf, type Runway } from '../../aerodrome/runway.ts';
import type { PaletteColour } from '../palette.ts';
import { strokesOf } from './figures.ts';
import type { SceneLayer } from './scene.ts';

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
const KEYS_TO_M = 36;
const DESIGNATOR_FROM_M = 48;
const DESIGNATOR_TALL_M = 9;
const DESIGNATOR_WIDE_M = 3;
const DESIGNATOR_GAP_M = 2.2;
/** Farther than this the threshold stripes run together, and the designator cannot be read. */
const KEYS_SEEN_M = 650;
const DESIGNATOR_SEEN_M = 420;
const PAINT_SEEN_M = 1400;

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

/** One end's own axes: along from its beginning, across to the right of its direction. */
interface End {
  readonly runway: Runway;
  readonly originM: number;
  readonly direction: 1 | -1;
}

const placeOf = ({ runway, originM, direction }: End, alongM: number, acrossM: number): number[] => {
  const along = originM + direction * alongM;
  const across = direction * acrossM;
  return [eastOf(runway, along, across), northOf(runway, along, across), groundHeightM(runway, along)];
};

/** Rectangles: from, to, left, right by fours. */
const slabs = (
  end: End,
  colour: PaletteColour,
  rectangles: readonly (readonly [number, number, number, number])[],
  rimPx: number,
  fromM = 0,
  toM = Infinity,
): SceneLayer => ({
  kind: 'areas',
  colour,
  alpha: 1,
  within: { place: Float64Array.from(placeOf(end, 0, 0)), fromM, toM },
  places: Float64Array.from(
    rectangles.flatMap(([from, to, left, right]) => [
      ...placeOf(end, from, left),
      ...placeOf(end, to, left),
      ...placeOf(end, to, right),
      ...placeOf(end, from, right),
    ]),
  ),
  corners: Uint16Array.from({ length: rectangles.length * 4 }, (_, i) => i),
  per: 4,
  rimPx,
});

/** Lines: from, across, to, across by fours. */
const lines = (
  end: End,
  colour: PaletteColour,
  alpha: number,
  ends: readonly (readonly [number, number, number, number])[],
  widthM: number,
  leastPx: number,
  fromM = 0,
  toM = Infinity,
): SceneLayer => ({
  kind: 'lines',
  colour,
  alpha,
  within: { place: Float64Array.from(placeOf(end, 0, 0)), fromM, toM },
  ends: Float64Array.from(
    ends.flatMap(([from, a, to, b]) => [...placeOf(end, from, a), ...placeOf(end, to, b)]),
  ),
  widthM,
  leastPx,
});

const every = (from: number, to: number, pitch: number): number[] =>
  Array.from({ length: Math.max(0, Math.ceil((to - from) / pitch)) }, (_, i) => from + i * pitch);

const keyLayers = (end: End, halfM: number): SceneLayer[] => {
  const n = keysEitherSide(end.runway.widthM);
  const pitch = (halfM - 1) / (n + 0.25);
  const stripes = every(0, n, 1).flatMap((k) =>
    [-1, 1].map((side): [number, number, number, number] => {
      const middle = side * (0.75 * pitch + k * pitch);
      return [KEYS_FROM_M, KEYS_TO_M, middle - pitch * 0.3, middle + pitch * 0.3];
    }),
  );
  return [
    slabs(end, 'marking', stripes, 0.4, 0, KEYS_SEEN_M),
    slabs(end, 'marking', [[KEYS_FROM_M, KEYS_TO_M, 2 - halfM, halfM - 2]], 0, KEYS_SEEN_M, Infinity),
  ];
};

const designatorLayer = (end: End, text: string): SceneLayer => {
  const wide = text.length * DESIGNATOR_WIDE_M + (text.length - 1) * DESIGNATOR_GAP_M;
  const strokes = [...text].flatMap((figure, f) => {
    const left = -wide / 2 + f * (DESIGNATOR_WIDE_M + DESIGNATOR_GAP_M);
    return strokesOf(figure).map(([x1, y1, x2, y2]): [number, number, number, number] => [
      DESIGNATOR_FROM_M + y1 * DESIGNATOR_TALL_M,
      left + x1 * DESIGNATOR_WIDE_M,
      DESIGNATOR_FROM_M + y2 * DESIGNATOR_TALL_M,
      left + x2 * DESIGNATOR_WIDE_M,
    ]);
  });
  return lines(end, 'marking', 0.95, strokes, 0.7, 0.9, 0, DESIGNATOR_SEEN_M);
};

/** A line along the strip as a rectangle of its true width. */
const widened =
  (widthM: number) =>
  ([from, across, to]: readonly [number, number, number, number]): [number, number, number, number] => [
    from,
    to,
    across - widthM / 2,
    across + widthM / 2,
  ];

const tarmacLayers = (end: End): SceneLayer[] => {
  const { runway } = end;
  const halfM = runway.widthM / 2;
  const { lengthM, widthM, insideM } = aimMarking(runway.landingLengthM);
  const { surfaceStartM, surfaceEndM, aimM } = runway;
  const edgePieces = every(surfaceStartM, surfaceEndM, 80).flatMap((m) =>
    [-1, 1].map((side): [number, number, number, number] => {
      const across = side * (halfM - EDGE_WIDTH_M);
      return [m, across, Math.min(m + 80, surfaceEndM), across];
    }),
  );
  const stripes = every(72, surfaceEndM - 72 - STRIPE_M, STRIPE_M + STRIPE_GAP_M).map(
    (m): [number, number, number, number] => [m, 0, m + STRIPE_M, 0],
  );
  const arrows = every(14, -surfaceStartM - 24, 45).flatMap((m): [number, number, number, number][] => [
    [-m - 24, 0, -m, 0],
    [-m - 7, -2.4, -m, 0],
    [-m - 7, 2.4, -m, 0],
  ]);
  const far: End = { runway, originM: surfaceEndM, direction: -1 };
  return [
    // Near, paint has its true shape; far, it is thin lines that get fainter instead of shouting.
    slabs(end, 'marking', edgePieces.map(widened(EDGE_WIDTH_M)), 0.5, 0, PAINT_SEEN_M),
    lines(end, 'marking', 0.5, edgePieces, EDGE_WIDTH_M, 0.7, PAINT_SEEN_M, Infinity),
    slabs(end, 'marking', stripes.map(widened(STRIPE_WIDTH_M)), 0.5, 0, PAINT_SEEN_M),
    lines(end, 'marking', 0.4, stripes, STRIPE_WIDTH_M, 0.7, PAINT_SEEN_M, Infinity),
    slabs(end, 'marking', [[0, 1.8, -halfM, halfM]], 0.4),
    ...keyLayers(end, halfM),
    designatorLayer(end, runway.designator),
    slabs(
      end,
      'marking',
      [
        [aimM, aimM + lengthM, -insideM - widthM, -insideM],
        [aimM, aimM + lengthM, insideM, insideM + widthM],
      ],
      0.5,
    ),
    lines(end, 'marking', 0.9, arrows, 0.8, 0.8),
    ...keyLayers(far, halfM),
    designatorLayer(far, runway.otherDesignator),
  ];
};

/** No paint on grass: mown edges, white markers along them and across the threshold. */
const grassLayers = (end: End): SceneLayer[] => {
  const { runway } = end;
  const halfM = runway.widthM / 2;
  const { surfaceStartM, surfaceEndM } = runway;
  const markers = every(surfaceStartM, surfaceEndM, 60).flatMap((m) =>
    [-halfM, halfM].map((across): [number, number, number, number] => [m, across, m + 4, across]),
  );
  const mown: [number, number, number, number][] = [-halfM, halfM].map((across) => [
    surfaceStartM,
    across,
    surfaceEndM,
    across,
  ]);
  return [
    lines(end, 'ink', 0.4, mown, 0.4, 1),
    lines(end, 'lightWhite', 1, markers, 1, 1.2),
    slabs(end, 'lightWhite', [[0, 2, -halfM, halfM]], 0.6),
  ];
};

/** The strip with its paint, both ends. */
export function runwayScene(runway: Runway): readonly SceneLayer[] {
  const end: End = { runway, originM: 0, direction: 1 };
  const halfM = runway.widthM / 2;
  const { surfaceStartM, surfaceEndM } = runway;
  return [
    slabs(end, runway.surface, [[surfaceStartM, surfaceEndM, -halfM, halfM]], 1.1),
    ...(runway.surface === 'grass' ? grassLayers(end) : tarmacLayers(end)),
  ];
}
