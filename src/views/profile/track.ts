import { acrossM, alongM, type Runway } from '../../aerodrome/runway.ts';
import type { CircuitPlan, PathPoint } from '../../circuit/types.ts';
import { mFromFt } from '../../units/conversions.ts';

/** A planned circuit unrolled: its path with the distances that matter. */
export interface Track {
  readonly path: readonly PathPoint[];
  /** Distance at which the path comes over the landing threshold. */
  readonly thresholdM: number;
  readonly baseTurnM: number;
  readonly endM: number;
  /** Of the path's beginning along the runway. */
  readonly startAlongM: number;
  readonly runway: Runway;
  /** Distance and height by turns, for the pen. */
  readonly line: Float64Array;
  /** The corridor as quads of the same, by eights. */
  readonly corridor: Float64Array;
}

/** How far back and ahead along the path a moving aeroplane is looked for. */
const BACK_M = 200;
const AHEAD_M = 700;
/** Off the path by more than this it is looked for everywhere. */
const ASTRAY_M = 1200;
/** Nearer to the centreline than the first, distance is plain distance to the threshold; a blend up to the second. */
const ON_CENTRELINE_M = 60;
const OFF_CENTRELINE_M = 260;
/** Higher than this beyond the aim point the landing is over: the next circuit has begun. */
const FLYING_AGAIN_M = 25;

/** Of the circuit: 100 ft either side (FAA ACS, traffic patterns), narrowing towards the ground. */
const CORRIDOR_M = mFromFt(100);
const corridorHalfM = (heightM: number): number => Math.min(CORRIDOR_M, 2 + 0.22 * Math.max(0, heightM));

const corridorOf = (path: readonly PathPoint[]): Float64Array =>
  Float64Array.from(
    path.slice(1).flatMap((b, i) => {
      const a = path[i] as PathPoint;
      const ha = corridorHalfM(a.heightM);
      const hb = corridorHalfM(b.heightM);
      return [
        a.distanceM,
        a.heightM + ha,
        b.distanceM,
        b.heightM + hb,
        b.distanceM,
        b.heightM - hb,
        a.distanceM,
        a.heightM - ha,
      ];
    }),
  );

export function trackOf(plan: CircuitPlan, runway: Runway): Track {
  const { path } = plan;
  const last = path[path.length - 1] as PathPoint;
  let thresholdM = last.distanceM;
  for (let i = path.length - 1; i > 0; i -= 1) {
    const b = path[i] as PathPoint;
    const a = path[i - 1] as PathPoint;
    const alongA = alongM(runway, a.eastM, a.northM);
    const alongB = alongM(runway, b.eastM, b.northM);
    if (alongA > 0) continue;
    thresholdM = a.distanceM + ((b.distanceM - a.distanceM) * -alongA) / Math.max(1e-6, alongB - alongA);
    break;
  }
  const first = path[0] as PathPoint;
  return {
    path,
    thresholdM,
    baseTurnM: plan.turns.base.from.distanceM,
    endM: last.distanceM,
    startAlongM: alongM(runway, first.eastM, first.northM),
    runway,
    line: Float64Array.from(path.flatMap((point) => [point.distanceM, point.heightM])),
    corridor: corridorOf(path),
  };
}

/** What the search found: the distance along the path and how far off it the place lies. */
const found = { distanceM: 0, offM: 0 };

function searchPath(
  path: readonly PathPoint[],
  eastM: number,
  northM: number,
  heightM: number,
  fromM: number,
  toM: number,
): void {
  found.offM = Infinity;
  for (let i = 0; i + 1 < path.length; i += 1) {
    const a = path[i] as PathPoint;
    const b = path[i + 1] as PathPoint;
    if (b.distanceM < fromM || a.distanceM > toM) continue;
    const dx = b.eastM - a.eastM;
    const dy = b.northM - a.northM;
    const square = dx * dx + dy * dy;
    if (square < 1e-9) continue;
    const share = Math.max(0, Math.min(1, ((eastM - a.eastM) * dx + (northM - a.northM) * dy) / square));
    const px = eastM - a.eastM - share * dx;
    const py = northM - a.northM - share * dy;
    // Height tells the upwind leg from the final above the same ground.
    const pz = heightM - a.heightM - share * (b.heightM - a.heightM);
    const off = Math.sqrt(px * px + py * py + pz * pz);
    if (off >= found.offM) continue;
    found.offM = off;
    found.distanceM = a.distanceM + share * (b.distanceM - a.distanceM);
  }
}

/**
 * How far along the circuit an aeroplane is, from its place and where it was before (NaN: unknown). On the
 * centreline of the final and on the runway this is exactly its distance to the threshold, also beyond where the
 * plan turns final. When it flies again after a landing or a go-around, the distance starts anew.
 */
export function distanceAlong(
  track: Track,
  eastM: number,
  northM: number,
  heightM: number,
  beforeM: number,
): number {
  const { runway, thresholdM, baseTurnM } = track;
  const along = alongM(runway, eastM, northM);
  const across = acrossM(runway, eastM, northM);
  const known = Number.isFinite(beforeM);
  if (known && beforeM > thresholdM && along > runway.aimM && heightM > FLYING_AGAIN_M)
    return along - track.startAlongM;

  searchPath(
    track.path,
    eastM,
    northM,
    heightM,
    known ? beforeM - BACK_M : -Infinity,
    known ? beforeM + AHEAD_M : Infinity,
  );
  if (known && found.offM > ASTRAY_M && beforeM < baseTurnM) {
    const near = found.offM;
    const kept = found.distanceM;
    searchPath(track.path, eastM, northM, heightM, -Infinity, Infinity);
    if (found.offM > near * 0.5) {
      found.offM = near;
      found.distanceM = kept;
    }
  }
  const onPathM = found.distanceM;
  // On a final longer than planned the distance lies before the planned base turn: it must then follow on.
  const followsOn = known && (beforeM >= baseTurnM || Math.abs(beforeM - thresholdM - along) < AHEAD_M);
  if (onPathM < baseTurnM && !followsOn) return onPathM;
  const t = (OFF_CENTRELINE_M - Math.abs(across)) / (OFF_CENTRELINE_M - ON_CENTRELINE_M);
  const share = Math.max(0, Math.min(1, t));
  const weight = share * share * (3 - 2 * share);
  return (thresholdM + along) * weight + onPathM * (1 - weight);
}

/** Planned height at a distance along the path. */
export function plannedHeightM(track: Track, distanceM: number): number {
  const { path } = track;
  let low = 0;
  let high = path.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((path[middle] as PathPoint).distanceM <= distanceM) low = middle;
    else high = middle;
  }
  const a = path[low] as PathPoint;
  const b = path[high] as PathPoint;
  const span = b.distanceM - a.distanceM;
  const share = span > 0 ? Math.max(0, Math.min(1, (distanceM - a.distanceM) / span)) : 0;
  return a.heightM + share * (b.heightM - a.heightM);
}
