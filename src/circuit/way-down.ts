import { type Crab, crabOnTrack, type Place, type WindAt } from './frame.ts';
import { type LaidLeg, laidLeg } from './laid-leg.ts';
import type { Layout, LayoutRequest } from './layout-request.ts';
import { flyTurn } from './turn.ts';

const QUARTER = Math.PI / 2;
const ROUNDS = 12;

const STILL: WindAt = () => ({ xMps: 0, yMps: 0 });

export type WayDown = Pick<
  Layout,
  'baseTurn' | 'base' | 'finalTurn' | 'final' | 'descentMps' | 'approachTangent'
>;

/**
 * Base turn, base, final turn and final. In still air the base turn begins when the threshold lies 45 degrees
 * behind the wing (FAA-H-8083-3C p. 8-3, AIM fig. 4-3-2), and that fixes the point where the final turn is complete. In
 * a wind the student is to see the same final from the same point: so that point stays, and the base turn is
 * moved upwind by what the wind, at the height of each turn, carries the aeroplane in the two turns. On the
 * straight base leg the heading takes care of the wind. Throws `TooTight` when they do not fit at this spacing.
 */
export function layOutWayDown(request: LayoutRequest, spacingM: number): WayDown {
  const { circuitHeightM, windAt, tas, bank, rollRateRadps, steepestDescentMps } = request;
  const turn = (
    from: Place,
    onto: number,
    tasMps: number,
    nextTasMps: number,
    bankRad: number,
    sink: number,
    w: WindAt,
  ) => {
    const before = crabOnTrack(onto - QUARTER, tasMps, w(from.heightM));
    const after = crabOnTrack(onto, nextTasMps, w(from.heightM));
    return flyTurn({
      from,
      fromHeadingRad: before.headingRad,
      toHeadingRad: after.headingRad,
      tasMps,
      bankRad,
      rollRateRadps,
      verticalSpeedMps: -sink,
      highestM: circuitHeightM,
      windAt: w,
    });
  };
  const start: Place = { xM: 0, yM: 0, heightM: circuitHeightM };
  const baseTurnFrom = (place: Place, sink: number, w: WindAt) =>
    turn(place, 3 * QUARTER, tas.downwindMps, tas.baseMps, bank.levelRad, sink, w);
  const finalTurnFrom = (place: Place, sink: number, w: WindAt) =>
    turn(place, 4 * QUARTER, tas.baseMps, tas.baseMps, bank.finalRad, sink, w);

  const rollOutX =
    request.rollOutX ??
    -spacingM * request.nilWindBaseTurnTangent +
      baseTurnFrom(start, 0, STILL).to.xM +
      finalTurnFrom(start, 0, STILL).to.xM;
  const wantedM = Math.min(Math.max(0, slopeHeightM(request, rollOutX)), circuitHeightM);

  let sink = 0;
  let baseTurnX = rollOutX;
  let baseTurn = baseTurnFrom(start, 0, windAt);
  let finalTurn = finalTurnFrom({ ...start, heightM: wantedM }, 0, windAt);
  let baseCrab = crabOnTrack(3 * QUARTER, tas.baseMps, windAt(wantedM));
  let baseLengthM = 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    const descending = request.descentFrom === 'abeam' ? Math.max(0, -baseTurnX) : 0;
    const downwindCrab = crabOnTrack(2 * QUARTER, tas.downwindMps, windAt(circuitHeightM));
    const downwindS = descending / downwindCrab.groundspeedMps;
    const heightM = circuitHeightM - sink * downwindS;
    baseTurn = baseTurnFrom({ xM: baseTurnX, yM: spacingM, heightM }, sink, windAt);
    const baseM = baseTurn.to;
    baseCrab = crabOnTrack(
      3 * QUARTER,
      tas.baseMps,
      windAt((baseM.heightM + finalTurn.points[0]!.heightM) / 2),
    );
    const turnTakesM = finalTurn.points[0]!.yM - finalTurn.to.yM;
    baseLengthM = baseM.yM - turnTakesM;
    const baseS = baseLengthM / baseCrab.groundspeedMps;
    finalTurn = finalTurnFrom(
      { xM: baseM.xM, yM: baseM.yM - baseLengthM, heightM: baseM.heightM - sink * baseS },
      sink,
      windAt,
    );
    baseTurnX += rollOutX - finalTurn.to.xM;
    const total = downwindS + baseTurn.seconds + Math.max(0, baseS) + finalTurn.seconds;
    sink = Math.min(steepestDescentMps, (circuitHeightM - wantedM) / total);
  }
  if (baseLengthM < 0) throw new TooTight(-baseLengthM);
  const base = laidLeg({
    from: baseTurn.to,
    to: finalTurn.points[0]!,
    trackRad: 3 * QUARTER,
    tasMps: tas.baseMps,
    crab: baseCrab,
    verticalSpeedMps: -sink,
  });
  const rolledOut = finalTurn.to;
  const finalCrab = crabOnTrack(4 * QUARTER, tas.finalMps, windAt(rolledOut.heightM / 2));
  return { baseTurn, base, finalTurn, ...finalLeg(request, rolledOut, finalCrab), descentMps: sink };
}

/** Height of the wheels on the slope asked for. */
const slopeHeightM = (request: LayoutRequest, xM: number): number =>
  request.aim.heightM + (request.aim.xM - xM) * request.approachTangent;

/**
 * From the completed turn straight for the aim point, to where the wheels are level with the threshold: as steep
 * as it must be, and level first where the turn ends below the slope.
 */
function finalLeg(
  request: LayoutRequest,
  from: Place,
  crab: Crab,
): { final: LaidLeg; approachTangent: number } {
  const { aim, approachTangent: asked } = request;
  const levelM = Math.max(0, (slopeHeightM(request, from.xM) - from.heightM) / asked);
  const steeper = (from.heightM - aim.heightM) / (aim.xM - from.xM);
  const approachTangent = levelM > 1 ? asked : steeper;
  const to: Place = { xM: aim.xM + aim.heightM / approachTangent, yM: 0, heightM: 0 };
  const start: Place = { xM: from.xM, yM: 0, heightM: from.heightM };
  const sinkMps = approachTangent * crab.groundspeedMps;
  const levels = levelM > 1;
  const final = laidLeg({
    from: start,
    to,
    trackRad: 0,
    tasMps: request.tas.finalMps,
    crab,
    verticalSpeedMps: -sinkMps,
    changeAtM: levels ? levelM : null,
    between: levels ? [{ atM: levelM, heightM: from.heightM }] : [],
  });
  return { final, approachTangent };
}

/** The banks cannot make a circuit this tight in this wind; `byM` is what is missing. */
export class TooTight extends Error {
  readonly byM: number;
  constructor(byM: number) {
    super(`the circuit must be at least ${byM.toFixed(0)} m wider for its turns to fit in this wind`);
    this.byM = byM;
  }
}
