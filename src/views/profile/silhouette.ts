import type { Ink } from '../ink/ink.ts';

/**
 * Seen from the right, nose to the right; ahead and up from the main wheels, lengths of the aeroplane.
 * Our own drawing of no particular aeroplane.
 */
const BODY = [
  0.4, 0.16, 0.38, 0.24, 0.24, 0.3, 0.1, 0.38, -0.1, 0.38, -0.26, 0.3, -0.6, 0.26, -0.6, 0.21, -0.2, 0.12,
  0.2, 0.1, 0.36, 0.11,
];
const FIN = [-0.46, 0.26, -0.57, 0.44, -0.66, 0.44, -0.62, 0.24];
const WHEEL_RADIUS = 0.05;
/** Leading edge, trailing edge of the fixed part, and the flap's length. */
const WING = { high: { up: 0.4, from: 0.17, to: -0.06 }, low: { up: 0.14, from: 0.15, to: -0.08 } } as const;
const FLAP = 0.1;

/** The aeroplane from the side at its true pitch, wheels at a place, with its flap as far out as it is. */
export function drawSideSilhouette(
  ink: Ink,
  wing: 'high' | 'low',
  x: number,
  y: number,
  pitchRad: number,
  flapRad: number,
  gear: number,
  lengthPx: number,
  fill: number,
  line: number,
  halo: number,
): void {
  const cos = Math.cos(pitchRad) * lengthPx;
  const sin = Math.sin(pitchRad) * lengthPx;
  const px = (ahead: number, up: number) => x + ahead * cos - up * sin;
  const py = (ahead: number, up: number) => y - ahead * sin - up * cos;
  const run = (points: readonly number[]): void => {
    ink.move(px(points[0] as number, points[1] as number), py(points[0] as number, points[1] as number));
    for (let k = 2; k + 1 < points.length; k += 2)
      ink.to(
        px(points[k] as number, points[k + 1] as number),
        py(points[k] as number, points[k + 1] as number),
      );
  };
  ink.use(halo);
  run(BODY);
  ink.path(3, true);
  ink.use(fill);
  run(BODY);
  ink.fill();
  run(FIN);
  ink.fill();
  if (gear > 0.5) {
    ink.line(px(0.02, 0.14), py(0.02, 0.14), px(0, WHEEL_RADIUS), py(0, WHEEL_RADIUS), 1.4);
    ink.line(px(0.28, 0.12), py(0.28, 0.12), px(0.28, WHEEL_RADIUS), py(0.28, WHEEL_RADIUS), 1.2);
    ink.disc(px(0, WHEEL_RADIUS), py(0, WHEEL_RADIUS), WHEEL_RADIUS * lengthPx);
    ink.disc(px(0.28, WHEEL_RADIUS), py(0.28, WHEEL_RADIUS), WHEEL_RADIUS * 0.85 * lengthPx);
  }
  const { up, from, to } = WING[wing];
  ink.use(line);
  ink.line(px(from, up), py(from, up), px(to, up - 0.005), py(to, up - 0.005), Math.max(2, 0.055 * lengthPx));
  const endAhead = to - FLAP * Math.cos(flapRad);
  const endUp = up - 0.005 - FLAP * Math.sin(flapRad);
  ink.line(
    px(to, up - 0.005),
    py(to, up - 0.005),
    px(endAhead, endUp),
    py(endAhead, endUp),
    Math.max(1.6, 0.04 * lengthPx),
  );
}
