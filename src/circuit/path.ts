import { groundHeightM, type Runway } from '../aerodrome/runway.ts';
import { hypot } from '../maths/functions.ts';
import { mFromFt } from '../units/conversions.ts';
import type { Chosen } from './choose.ts';
import { type Place, toEarth } from './frame.ts';
import { heightOn, type LaidLeg } from './laid-leg.ts';
import { LINE_UP_M, type Setting } from './setting.ts';
import type { FlownTurn } from './turn.ts';
import type { CircuitLeg, PathPoint } from './types.ts';

/** Round-out begins at 10 to 20 ft (FAA-H-8083-3C p. 9-8). */
const ROUND_OUT_M = mFromFt(15);
const POINT_EVERY_M = 40;
const FLARE_POINTS = 8;

/** The circuit as one line of points with rising distance, and the points where its parts meet. */
export interface Path {
  readonly points: readonly PathPoint[];
  readonly legs: Readonly<Record<CircuitLeg, { from: PathPoint; to: PathPoint; change: PathPoint | null }>>;
  readonly turns: Readonly<Record<'crosswind' | 'downwind' | 'base' | 'final', readonly PathPoint[]>>;
}

export function pathOf(setting: Setting, chosen: Chosen): Path {
  const { runway } = setting;
  const { layout } = chosen;
  const points: PathPoint[] = [];

  const add = (place: Place, leg: PathPoint['leg'], turning: boolean): PathPoint => {
    const earth = toEarth(runway, runway.circuitSide, place.xM, place.yM);
    const last = points.at(-1);
    const stepM = last === undefined ? 0 : hypot(earth.eastM - last.eastM, earth.northM - last.northM);
    const point = {
      ...earth,
      heightM: place.heightM,
      distanceM: (last?.distanceM ?? 0) + stepM,
      leg,
      turning,
    };
    // Where two parts meet there is one point, and it belongs to the later part.
    if (last !== undefined && stepM < 1e-6) points.pop();
    points.push(point);
    return point;
  };

  const addLeg = (leg: LaidLeg, name: CircuitLeg, untilM = leg.lengthM) => {
    const { from, to, lengthM, changeAtM } = leg;
    const pieces = Math.max(1, Math.ceil(untilM / POINT_EVERY_M));
    const stops = Array.from({ length: pieces + 1 }, (_, i) => (untilM * i) / pieces);
    if (changeAtM !== null && changeAtM < untilM) stops.push(changeAtM);
    stops.sort((a, b) => a - b);
    let change: PathPoint | null = null;
    const added = stops.map((distanceM) => {
      const t = lengthM > 0 ? distanceM / lengthM : 0;
      const place = {
        xM: from.xM + (to.xM - from.xM) * t,
        yM: from.yM + (to.yM - from.yM) * t,
        heightM: heightOn(leg, distanceM),
      };
      const point = add(place, name, false);
      if (distanceM === changeAtM) change = point;
      return point;
    });
    return { from: added[0]!, to: added.at(-1)!, change: change as PathPoint | null };
  };
  const addTurn = (turn: FlownTurn, onto: CircuitLeg) => turn.points.map((place) => add(place, onto, true));

  addRoll(runway, runway.surfaceStartM + LINE_UP_M, layout.upwind.from.xM, 'take-off-roll', add);
  const upwind = addLeg(layout.upwind, 'upwind');
  const crosswindTurn = addTurn(layout.crosswindTurn, 'crosswind');
  const crosswind = addLeg(layout.crosswind, 'crosswind');
  const downwindTurn = addTurn(layout.downwindTurn, 'downwind');
  const downwind = addLeg(layout.downwind, 'downwind');
  const baseTurn = addTurn(layout.baseTurn, 'base');
  const base = addLeg(layout.base, 'base');
  const finalTurn = addTurn(layout.finalTurn, 'final');
  const roundOutX = roundOutFrom(runway, layout.final, layout.approachTangent);
  const final = addLeg(layout.final, 'final', roundOutX - layout.final.from.xM);
  const touchX = Math.max(runway.specifiedM, roundOutX + 60);
  addFlare(runway, roundOutX, final.to.heightM, touchX, add);
  addRoll(runway, touchX, Math.min(touchX + setting.landingRunM, runway.surfaceEndM), 'landing-roll', add);
  return {
    points,
    legs: { upwind, crosswind, downwind, base, final },
    turns: { crosswind: crosswindTurn, downwind: downwindTurn, base: baseTurn, final: finalTurn },
  };
}

type Add = (place: Place, leg: PathPoint['leg'], turning: boolean) => PathPoint;

/** Where the wheels are at round-out height above the ground below them. */
const roundOutFrom = (runway: Runway, final: LaidLeg, tangent: number): number => {
  let xM = final.to.xM;
  for (let i = 0; i < 20; i += 1) xM = final.to.xM - (groundHeightM(runway, xM) + ROUND_OUT_M) / tangent;
  return Math.max(xM, final.from.xM + 1);
};

function addRoll(
  runway: Runway,
  fromX: number,
  toX: number,
  leg: 'take-off-roll' | 'landing-roll',
  add: Add,
): void {
  const pieces = Math.max(1, Math.ceil((toX - fromX) / POINT_EVERY_M));
  for (let i = 0; i <= pieces; i += 1) {
    const xM = fromX + ((toX - fromX) * i) / pieces;
    add({ xM, yM: 0, heightM: groundHeightM(runway, xM) }, leg, false);
  }
}

/** Round-out and hold-off: the height above the ground runs out as a parabola that ends level. */
function addFlare(runway: Runway, fromX: number, fromHeightM: number, toX: number, add: Add): void {
  const above = fromHeightM - groundHeightM(runway, fromX);
  for (let i = 1; i < FLARE_POINTS; i += 1) {
    const u = i / FLARE_POINTS;
    const xM = fromX + (toX - fromX) * u;
    add({ xM, yM: 0, heightM: groundHeightM(runway, xM) + above * (1 - u) * (1 - u) }, 'final', false);
  }
}
