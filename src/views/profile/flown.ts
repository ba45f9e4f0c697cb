import { PIECE_POINTS, type Trail, type TrailPiece } from '../trail.ts';
import { distanceAlong, type Track } from './track.ts';

interface Unrolled {
  readonly distanceM: Float32Array;
  count: number;
  version: number;
  /** Distance before its first point, and the track it was worked out for. */
  beforeM: number;
  track: Track;
}

/**
 * Distances along the circuit of every point of a trail, worked out once per point and kept with its piece;
 * a piece that was cut back is worked out again from its beginning.
 */
export class FlownDistances {
  private known = new WeakMap<TrailPiece, Unrolled>();

  of(track: Track, trail: Trail, at: number): Float32Array {
    const piece = trail.pieces[at] as TrailPiece;
    const before = at > 0 ? this.lastOf(track, trail, at - 1) : Number.NaN;
    let entry = this.known.get(piece);
    if (entry === undefined || entry.track !== track || !Object.is(entry.beforeM, before)) {
      entry = {
        distanceM: entry?.distanceM ?? new Float32Array(PIECE_POINTS),
        count: 0,
        version: -1,
        beforeM: before,
        track,
      };
      this.known.set(piece, entry);
    }
    if (entry.version === piece.version) return entry.distanceM;
    if (piece.version - entry.version !== piece.count - entry.count || piece.count < entry.count)
      entry.count = 0;
    for (let i = entry.count; i < piece.count; i += 1) {
      const previous = i > 0 ? (entry.distanceM[i - 1] as number) : before;
      entry.distanceM[i] = distanceAlong(
        track,
        piece.eastM[i] as number,
        piece.northM[i] as number,
        piece.heightM[i] as number,
        previous,
      );
    }
    entry.count = piece.count;
    entry.version = piece.version;
    return entry.distanceM;
  }

  /** Distance of the last point of a piece. */
  lastOf(track: Track, trail: Trail, at: number): number {
    const piece = trail.pieces[at];
    if (piece === undefined || piece.count === 0) return Number.NaN;
    const entry = this.known.get(piece);
    const done = entry !== undefined && entry.track === track && entry.version === piece.version;
    const distances = done ? entry.distanceM : this.of(track, trail, at);
    return distances[piece.count - 1] as number;
  }
}
