import type { Aeroplane } from '../../aeroplane/schema.ts';
import type { Colours } from '../pen/colours.ts';
import type { Perspective } from './perspective.ts';

/**
 * What of the aeroplane stands in the view, metres from the eye: ahead, right, up. The pilot sits on the left.
 * Plain shapes of an invented aeroplane; the strut and the wing are the ruler for circuit spacing.
 */
const SEAT_LEFT_M = 0.27;
const CABIN_HALF_M = 0.56;
const COWL_AHEAD_M = 1.55;
const COWL_DROP_M = 0.25;
const COWL_HALF_M = 0.52;
const COWL_POINTS = 32;
const STRUT_HALF_M = 0.045;
const STRUT_SHARE = 0.5;
const SIDES = [-1, 1] as const;

const cowling = (): Float64Array => {
  const points = Array.from({ length: COWL_POINTS + 1 }, (_, i) => {
    // Closer together towards the sides, where the shape bends away.
    const share = -Math.cos((Math.PI * i) / COWL_POINTS);
    const square = share * share;
    return [
      COWL_AHEAD_M,
      SEAT_LEFT_M + share * COWL_HALF_M,
      -COWL_DROP_M - 0.05 * square - 0.16 * (1 - Math.sqrt(1 - 0.98 * square * square)),
    ];
  });
  return Float64Array.from([
    ...points.flat(),
    ...[1.15, SEAT_LEFT_M + COWL_HALF_M, -0.9],
    ...[1.15, SEAT_LEFT_M - COWL_HALF_M, -0.9],
  ]);
};

/** Root and tip, leading and trailing edge. */
const wingPart = (
  side: 1 | -1,
  halfSpanM: number,
  leadingM: number,
  chordM: number,
  rootUpM: number,
  tipUpM: number,
): Float64Array => {
  const root = SEAT_LEFT_M + side * CABIN_HALF_M;
  const tip = SEAT_LEFT_M + side * halfSpanM;
  const trailingM = leadingM - chordM;
  return Float64Array.from([
    ...[leadingM, root, rootUpM],
    ...[leadingM - 0.03, tip, tipUpM],
    ...[trailingM + 0.05, tip, tipUpM],
    ...[trailingM, root, rootUpM],
  ]);
};

const strutPart = (side: 1 | -1, halfSpanM: number, wingUpM: number): Float64Array => {
  const foot = SEAT_LEFT_M + side * CABIN_HALF_M;
  const top = SEAT_LEFT_M + side * halfSpanM * STRUT_SHARE;
  return Float64Array.from([
    ...[0.42 + STRUT_HALF_M, foot, -1.05],
    ...[0.05 + STRUT_HALF_M, top, wingUpM],
    ...[0.05 - STRUT_HALF_M, top, wingUpM],
    ...[0.42 - STRUT_HALF_M, foot, -1.05],
  ]);
};

/** The convex parts in the order they are drawn. */
export function machineParts(aeroplane: Aeroplane): readonly Float64Array[] {
  const { wing, undercarriage } = aeroplane;
  const half = wing.spanM / 2;
  if (wing.position === 'high') {
    const up = Math.max(0.16, wing.heightM - undercarriage.eyeHeightM);
    return [
      ...SIDES.flatMap((side) => [
        wingPart(side, half, 0.18, wing.chordM, up, up + half * 0.02),
        strutPart(side, half, up + 0.02),
      ]),
      cowling(),
    ];
  }
  const up = Math.min(-0.45, wing.heightM - undercarriage.eyeHeightM);
  return [...SIDES.map((side) => wingPart(side, half, 0.55, wing.chordM, up, up + half * 0.087)), cowling()];
}

const kept = new WeakMap<Aeroplane, readonly Float64Array[]>();

/** Cowling, and by the wing's position wing and strut. */
export function drawMachine(perspective: Perspective, colours: Colours, aeroplane: Aeroplane): void {
  let parts = kept.get(aeroplane);
  if (parts === undefined) {
    parts = machineParts(aeroplane);
    kept.set(aeroplane, parts);
  }
  for (let i = 0; i < parts.length; i += 1)
    perspective.part(parts[i] as Float64Array, colours.machine, colours.ink);
}
