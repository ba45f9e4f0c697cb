import type { Pen } from '../pen/pen.ts';

/**
 * Seen from the right, nose to the right; ahead and up from the main wheels, lengths of the aeroplane.
 * Our own drawing of no particular aeroplane.
 */
const BODY = [
  0.4, 0.16, 0.38, 0.24, 0.24, 0.3, 0.1, 0.38, -0.1, 0.38, -0.26, 0.3, -0.6, 0.26, -0.6, 0.21, -0.2, 0.12,
  0.2, 0.1, 0.36, 0.11,
];
const FIN = [-0.46, 0.26, -0.57, 0.44, -0.66, 0.44, -0.62, 0.24];
const WHEEL_RADIUS = 0.045;
/** Leading edge, trailing edge of the fixed part, and the flap's length. */
const WING = { high: { up: 0.4, from: 0.17, to: -0.06 }, low: { up: 0.14, from: 0.15, to: -0.08 } } as const;
const FLAP = 0.12;
const NOSE_WHEEL_AHEAD = 0.28;
const LEGS = [0.02, 0.14, 0, 0.05, NOSE_WHEEL_AHEAD, 0.12, NOSE_WHEEL_AHEAD, 0.05] as const;
const wingLine = new Float64Array(4);
const flapLine = new Float64Array(4);

/** About the place of the wheels in map[2] and map[5]; the map is turned by the pitch. */
export function drawSideSilhouette(
  pen: Pen,
  wing: 'high' | 'low',
  pitchRad: number,
  flapRad: number,
  gear: number,
  lengthPx: number,
  fill: number,
  line: number,
  halo: number,
): void {
  const { map } = pen;
  const cos = Math.cos(pitchRad) * lengthPx;
  const sin = Math.sin(pitchRad) * lengthPx;
  map[0] = cos;
  map[1] = -sin;
  map[3] = -sin;
  map[4] = -cos;
  pen.use(halo);
  pen.trace(BODY);
  pen.path(3, true);
  pen.use(fill);
  pen.trace(BODY);
  pen.fill();
  pen.trace(FIN);
  pen.fill();
  if (gear > 0.5) {
    pen.segments(LEGS, 1.4);
    const radius = WHEEL_RADIUS * lengthPx;
    pen.disc(map[2]! + map[1]! * WHEEL_RADIUS, map[5]! + map[4]! * WHEEL_RADIUS, radius);
    const ahead = NOSE_WHEEL_AHEAD;
    pen.disc(
      map[2]! + map[0]! * ahead + map[1]! * WHEEL_RADIUS,
      map[5]! + map[3]! * ahead + map[4]! * WHEEL_RADIUS,
      radius * 0.9,
    );
  }
  const { up, from, to } = WING[wing];
  wingLine[0] = from;
  wingLine[1] = up;
  wingLine[2] = to;
  wingLine[3] = up - 0.005;
  flapLine[0] = to;
  flapLine[1] = up - 0.005;
  flapLine[2] = to - FLAP * Math.cos(flapRad);
  flapLine[3] = up - 0.005 - FLAP * Math.sin(flapRad);
  pen.use(line);
  pen.segments(wingLine, Math.max(2, 0.05 * lengthPx));
  pen.segments(flapLine, Math.max(1.6, 0.035 * lengthPx));
}
