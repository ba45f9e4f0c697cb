import type { Snapshot } from '../simulation/snapshot.ts';

/** Points in a piece; full pieces never change again, so that what was drawn of them can be kept. */
export const PIECE_POINTS = 100;

/** How the flight stood at a point, for colour. */
export const TRAIL_BANDS = ['plain', 'stabilised', 'recoverable', 'go-around'] as const;
export type TrailBand = (typeof TRAIL_BANDS)[number];

export interface TrailPiece {
  readonly timeS: Float32Array;
  readonly eastM: Float32Array;
  readonly northM: Float32Array;
  readonly heightM: Float32Array;
  /** Index into TRAIL_BANDS. */
  readonly band: Uint8Array;
  count: number;
  /** Rises with every change of what stands in it. */
  version: number;
}

/** The path flown, from the landing threshold, earth axes. A piece's last point is the next one's first. */
export interface Trail {
  readonly pieces: TrailPiece[];
  /** Closest spacing of points, along time and along the ground. */
  readonly spacingS: number;
  readonly spacingM: number;
}

export const createTrail = (spacingS = 1, spacingM = 12): Trail => ({ pieces: [], spacingS, spacingM });

const newPiece = (): TrailPiece => ({
  timeS: new Float32Array(PIECE_POINTS),
  eastM: new Float32Array(PIECE_POINTS),
  northM: new Float32Array(PIECE_POINTS),
  heightM: new Float32Array(PIECE_POINTS),
  band: new Uint8Array(PIECE_POINTS),
  count: 0,
  version: 0,
});

const append = (
  piece: TrailPiece,
  timeS: number,
  eastM: number,
  northM: number,
  heightM: number,
  band: number,
): void => {
  const at = piece.count;
  piece.timeS[at] = timeS;
  piece.eastM[at] = eastM;
  piece.northM[at] = northM;
  piece.heightM[at] = heightM;
  piece.band[at] = band;
  piece.count = at + 1;
  piece.version += 1;
};

/** Adds the place of a snapshot when it lies far enough from the last one; true when it did. */
export function extendTrail(trail: Trail, snapshot: Readonly<Snapshot>, band: TrailBand = 'plain'): boolean {
  const colour = TRAIL_BANDS.indexOf(band);
  let piece = trail.pieces.at(-1);
  if (piece === undefined) {
    piece = newPiece();
    trail.pieces.push(piece);
  } else {
    const last = piece.count - 1;
    const sinceS = snapshot.timeS - (piece.timeS[last] as number);
    const dEast = snapshot.eastM - (piece.eastM[last] as number);
    const dNorth = snapshot.northM - (piece.northM[last] as number);
    if (sinceS < trail.spacingS || dEast * dEast + dNorth * dNorth < trail.spacingM * trail.spacingM)
      return false;
    if (piece.count === PIECE_POINTS) {
      const next = newPiece();
      append(
        next,
        piece.timeS[last] as number,
        piece.eastM[last] as number,
        piece.northM[last] as number,
        piece.heightM[last] as number,
        piece.band[last] as number,
      );
      trail.pieces.push(next);
      piece = next;
    }
  }
  append(piece, snapshot.timeS, snapshot.eastM, snapshot.northM, snapshot.heightM, colour);
  return true;
}

/** Forgets what came after an instant: for stepping back. */
export function rewindTrail(trail: Trail, timeS: number): void {
  while (trail.pieces.length > 0) {
    const piece = trail.pieces.at(-1) as TrailPiece;
    if ((piece.timeS[0] as number) <= timeS) {
      let count = piece.count;
      while (count > 0 && (piece.timeS[count - 1] as number) > timeS) count -= 1;
      if (count !== piece.count) {
        piece.count = count;
        piece.version += 1;
      }
      return;
    }
    trail.pieces.pop();
  }
}

export const clearTrail = (trail: Trail): void => {
  trail.pieces.length = 0;
};
