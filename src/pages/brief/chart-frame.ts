import { acrossM, alongM, type Runway } from '../../aerodrome/runway.ts';
import type { CircuitPlan } from '../../circuit/types.ts';
import { degFromRad } from '../../units/conversions.ts';

/** How the chart lies: the landing direction runs to the right, its right-hand side is down. */
export interface ChartFrame {
  readonly width: number;
  readonly height: number;
  readonly unitsPerM: number;
  readonly at: (eastM: number, northM: number) => readonly [number, number];
  /** Along and across the runway, metres. */
  readonly on: (along: number, across: number) => readonly [number, number];
  /** Turn of something drawn nose up so that it points along a true bearing. */
  readonly turnDeg: (bearingRadT: number) => number;
  /** Down the page for something outside the circuit, away from the runway: -1 up, +1 down. */
  readonly outside: 1 | -1;
}

const WIDTH = 1200;
/** Beside the circuit, and beyond its two long sides. */
const MARGIN = { side: 196, downwind: 92, runway: 118 };

export const chartFrame = (plan: CircuitPlan): ChartFrame => {
  const runway: Runway = plan.runway;
  let west = 0;
  let east = runway.surfaceEndM;
  let farthest = 0;
  for (const point of plan.path) {
    const along = alongM(runway, point.eastM, point.northM);
    west = Math.min(west, along);
    east = Math.max(east, along);
    farthest = Math.max(farthest, Math.abs(acrossM(runway, point.eastM, point.northM)));
  }
  const unitsPerM = (WIDTH - 2 * MARGIN.side) / (east - west);
  const depth = farthest * unitsPerM;
  const up = plan.side === -1;
  const runwayY = up ? MARGIN.downwind + depth : MARGIN.runway;
  const on = (along: number, across: number): readonly [number, number] => [
    MARGIN.side + (along - west) * unitsPerM,
    runwayY + across * unitsPerM,
  ];
  return {
    width: WIDTH,
    height: Math.round(MARGIN.downwind + depth + MARGIN.runway),
    unitsPerM,
    at: (eastM, northM) => on(alongM(runway, eastM, northM), acrossM(runway, eastM, northM)),
    on,
    turnDeg: (bearingRadT) => degFromRad(bearingRadT - runway.headingRadT) + 90,
    outside: up ? -1 : 1,
  };
};

export const pointsText = (points: readonly (readonly [number, number])[]): string =>
  points.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ');
