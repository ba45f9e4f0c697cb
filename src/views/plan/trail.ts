import type { Snapshot } from '../../simulation/snapshot.ts';
import type { PaletteColour } from '../palette.ts';
import type { Colours } from '../pen/colours.ts';
import type { Pen } from '../pen/pen.ts';
import { PIECE_POINTS, type Trail, type TrailPiece } from '../trail.ts';
import type { PlanCamera } from './camera.ts';

/** By TRAIL_BANDS. */
const BAND_COLOURS: readonly PaletteColour[] = ['aeroplane', 'corridor', 'caution', 'danger'];
/** A point may lie this far off the line between its neighbours before it is kept in a finished piece. */
const THIN_M = 1.5;

const thinned = new WeakMap<TrailPiece, readonly number[]>();

/**
 * Which points of a finished piece are worth drawing: splitting at the farthest point until all lie within
 * THIN_M (D. H. Douglas and T. K. Peucker, 1973), and wherever the colour changes. A straight leg keeps two.
 */
export function worthDrawing(piece: TrailPiece): number[] {
  const { eastM, northM, band, count } = piece;
  const keep = new Set<number>([0, Math.max(0, count - 1)]);
  for (let i = 1; i < count; i += 1) if (band[i] !== band[i - 1]) keep.add(i);
  const corners = [...keep].sort((a, b) => a - b);
  const split = (from: number, to: number): void => {
    const ax = eastM[from] as number;
    const ay = northM[from] as number;
    const dx = (eastM[to] as number) - ax;
    const dy = (northM[to] as number) - ay;
    const length = Math.sqrt(dx * dx + dy * dy);
    let farthest = -1;
    let most = THIN_M;
    for (let i = from + 1; i < to; i += 1) {
      const px = (eastM[i] as number) - ax;
      const py = (northM[i] as number) - ay;
      const off = length < 1 ? Math.sqrt(px * px + py * py) : Math.abs(px * dy - py * dx) / length;
      if (off > most) {
        most = off;
        farthest = i;
      }
    }
    if (farthest < 0) return;
    keep.add(farthest);
    split(from, farthest);
    split(farthest, to);
  };
  for (let k = 0; k + 1 < corners.length; k += 1) split(corners[k] as number, corners[k + 1] as number);
  return [...keep].sort((a, b) => a - b);
}

const finished = (piece: TrailPiece): readonly number[] => {
  let kept = thinned.get(piece);
  if (kept === undefined) {
    kept = worthDrawing(piece);
    thinned.set(piece, kept);
  }
  return kept;
};

/** Where the colour changes: from point to point of a piece, colours by TRAIL_BANDS. */
function drawPiece(pen: Pen, colours: Colours, piece: TrailPiece, kept: readonly number[] | null): void {
  const { eastM, northM, band } = piece;
  const n = kept === null ? piece.count : kept.length;
  let from = 0;
  for (let k = 1; k < n; k += 1) {
    const here = kept === null ? k : (kept[k] as number);
    const first = kept === null ? from : (kept[from] as number);
    if (band[here] === band[first]) continue;
    pen.lift();
    pen.tracePairs(eastM, northM, k + 1, kept, from);
    pen.use(colours[BAND_COLOURS[band[first] as number] ?? 'aeroplane'], 0.9);
    pen.path(2);
    from = k;
  }
  pen.lift();
  pen.tracePairs(eastM, northM, n, kept, from);
  const first = kept === null ? from : (kept[from] as number);
  pen.use(colours[BAND_COLOURS[band[first] as number] ?? 'aeroplane'], 0.9);
}

/** The path flown, up to the aeroplane; finished pieces are thinned once and kept. */
export function drawTrail(
  pen: Pen,
  colours: Colours,
  camera: PlanCamera,
  trail: Trail,
  tip: Readonly<Snapshot>,
): void {
  const last = trail.pieces.length - 1;
  for (let p = 0; p <= last; p += 1) {
    const piece = trail.pieces[p] as TrailPiece;
    if (piece.count === 0) continue;
    drawPiece(pen, colours, piece, p < last && piece.count === PIECE_POINTS ? finished(piece) : null);
    if (p === last) {
      camera.place(tip);
      pen.to(camera.px[0]!, camera.px[1]!);
    }
    pen.path(2);
  }
}
