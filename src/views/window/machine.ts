import type { Aeroplane } from '../../aeroplane/schema.ts';
import type { Colours } from '../ink/colours.ts';
import type { Brush } from './brush.ts';

/**
 * What of the aeroplane stands in the view, metres from the eye: ahead, right, up. The pilot sits on the left.
 * Plain shapes of an invented aeroplane; the strut and the wing are the ruler for circuit spacing.
 */
const SEAT_LEFT_M = 0.27;
const CABIN_HALF_M = 0.56;
const COWL_AHEAD_M = 1.55;
const COWL_DROP_M = 0.25;
const COWL_HALF_M = 0.52;
const COWL_POINTS = 14;
const STRUT_HALF_M = 0.045;

function drawCowling(brush: Brush, colours: Colours): void {
  const { eye, ink } = brush;
  const shape = (): void => {
    brush.begin();
    for (let i = 0; i <= COWL_POINTS; i += 1) {
      const share = (2 * i) / COWL_POINTS - 1;
      const drop = COWL_DROP_M + 0.2 * share * share * share * share + 0.05 * share * share;
      brush.addMachine(COWL_AHEAD_M, SEAT_LEFT_M + share * COWL_HALF_M, -drop);
    }
    brush.addMachine(0.75, SEAT_LEFT_M + COWL_HALF_M + 0.06, -0.9);
    brush.addMachine(0.75, SEAT_LEFT_M - COWL_HALF_M - 0.06, -0.9);
  };
  ink.use(colours.machine);
  shape();
  brush.fill(eye.machinePlanes);
  ink.use(colours.ink, 0.7);
  shape();
  brush.outline(eye.machinePlanes, 1.4);
}

/** One wing: `side` -1 left, +1 right; `up` at root and tip. */
function drawWing(
  brush: Brush,
  colours: Colours,
  side: 1 | -1,
  halfSpanM: number,
  leadingM: number,
  trailingM: number,
  rootUpM: number,
  tipUpM: number,
): void {
  const { eye, ink } = brush;
  const at = (ahead: number, outM: number, up: number) =>
    brush.addMachine(ahead, SEAT_LEFT_M + side * outM, up);
  const shape = (): void => {
    brush.begin();
    at(leadingM, CABIN_HALF_M, rootUpM);
    at(leadingM - 0.03, halfSpanM, tipUpM);
    at(trailingM + 0.05, halfSpanM, tipUpM);
    at(trailingM, CABIN_HALF_M, rootUpM);
  };
  ink.use(colours.machine, 0.94);
  shape();
  brush.fill(eye.machinePlanes);
  ink.use(colours.ink, 0.7);
  shape();
  brush.outline(eye.machinePlanes, 1.4);
}

function drawStrut(brush: Brush, colours: Colours, side: 1 | -1, halfSpanM: number, wingUpM: number): void {
  const { eye, ink } = brush;
  const outM = halfSpanM * 0.5;
  const at = (ahead: number, outAt: number, up: number) =>
    brush.addMachine(ahead, SEAT_LEFT_M + side * outAt, up);
  const shape = (): void => {
    brush.begin();
    at(0.42 + STRUT_HALF_M, CABIN_HALF_M, -1.05);
    at(0.05 + STRUT_HALF_M, outM, wingUpM);
    at(0.05 - STRUT_HALF_M, outM, wingUpM);
    at(0.42 - STRUT_HALF_M, CABIN_HALF_M, -1.05);
  };
  ink.use(colours.machine);
  shape();
  brush.fill(eye.machinePlanes);
  ink.use(colours.ink, 0.75);
  shape();
  brush.outline(eye.machinePlanes, 1.3);
}

/** Cowling, and by the wing's position wing and strut. */
export function drawMachine(brush: Brush, colours: Colours, aeroplane: Aeroplane): void {
  const { wing, undercarriage } = aeroplane;
  const half = wing.spanM / 2;
  if (wing.position === 'high') {
    const up = Math.max(0.16, wing.heightM - undercarriage.eyeHeightM);
    for (const side of SIDES) {
      drawWing(brush, colours, side, half, 0.18, 0.18 - wing.chordM, up, up + half * 0.02);
      drawStrut(brush, colours, side, half, up + 0.02);
    }
  } else {
    const up = Math.min(-0.45, wing.heightM - undercarriage.eyeHeightM);
    for (const side of SIDES)
      drawWing(brush, colours, side, half, 0.55, 0.55 - wing.chordM, up, up + half * 0.087);
  }
  drawCowling(brush, colours);
}

const SIDES = [-1, 1] as const;
