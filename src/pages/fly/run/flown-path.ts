import { acrossM, alongM, type Runway } from '../../../aerodrome/runway.ts';
import type { CircuitPlan } from '../../../circuit/types.ts';
import type { Trail } from '../../../views/trail.ts';

/** Planned and flown path for the two small drawings of the result card, in metres, runway up. */
export interface FlownPath {
  /** Across (right) and along of each point. */
  readonly planned: readonly (readonly [number, number])[];
  readonly flown: readonly (readonly [number, number])[];
  /** Distance along the planned path and height. */
  readonly plannedHeight: readonly (readonly [number, number])[];
  readonly flownHeight: readonly (readonly [number, number])[];
  readonly runway: readonly [number, number];
}

/** How far along the plan a point may jump from the last one: the search never skips a leg. */
const AHEAD_POINTS = 60;
const BEHIND_POINTS = 6;

/** Index of the plan's point nearest to a place, searched near the last one found. */
const nearest = (plan: CircuitPlan, eastM: number, northM: number, from: number): number => {
  let best = from;
  let least = Number.POSITIVE_INFINITY;
  const low = Math.max(0, from - BEHIND_POINTS);
  const high = Math.min(plan.path.length - 1, from + AHEAD_POINTS);
  for (let i = low; i <= high; i += 1) {
    const point = plan.path[i];
    if (!point) continue;
    const east = point.eastM - eastM;
    const north = point.northM - northM;
    const distance = east * east + north * north;
    if (distance < least) {
      least = distance;
      best = i;
    }
  }
  return best;
};

const firstIndex = (plan: CircuitPlan, eastM: number, northM: number, heightM: number): number => {
  if (heightM < 2) return 0;
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  plan.path.forEach((point, i) => {
    const distance =
      (point.eastM - eastM) ** 2 + (point.northM - northM) ** 2 + 9 * (point.heightM - heightM) ** 2;
    if (distance < least) {
      least = distance;
      best = i;
    }
  });
  return best;
};

export const flownPath = (plan: CircuitPlan, runway: Runway, trail: Trail): FlownPath => {
  const flown: [number, number][] = [];
  const flownHeight: [number, number][] = [];
  let at = -1;
  for (const piece of trail.pieces) {
    for (let i = 0; i < piece.count; i += 1) {
      const east = piece.eastM[i] as number;
      const north = piece.northM[i] as number;
      const height = piece.heightM[i] as number;
      flown.push([acrossM(runway, east, north), alongM(runway, east, north)]);
      at = at < 0 ? firstIndex(plan, east, north, height) : nearest(plan, east, north, at);
      flownHeight.push([plan.path[at]?.distanceM ?? 0, height]);
    }
  }
  return {
    planned: plan.path.map((p) => [acrossM(runway, p.eastM, p.northM), alongM(runway, p.eastM, p.northM)]),
    flown,
    plannedHeight: plan.path.map((p) => [p.distanceM, p.heightM]),
    flownHeight,
    runway: [runway.surfaceStartM, runway.surfaceEndM],
  };
};
