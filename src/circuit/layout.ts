import { type Crab, crabOnTrack, type Place } from './frame.ts';
import { laidLeg } from './laid-leg.ts';
import type { Layout, LayoutRequest } from './layout-request.ts';
import { type FlownTurn, flyTurn } from './turn.ts';
import { layOutWayDown } from './way-down.ts';

const QUARTER = Math.PI / 2;

/** Lays out the whole circuit: the climb forwards, the way down backwards from the completed final turn. */
export function layOutCircuit(request: LayoutRequest): Layout {
  const { spacingM, circuitHeightM, windAt, tas, bank, rollRateRadps } = request;

  const crabAt = (trackRad: number, tasMps: number, heightM: number): Crab =>
    crabOnTrack(trackRad, tasMps, windAt(heightM));

  // --- climb: upwind, turn onto crosswind ---
  const lift: Place = { xM: request.liftOffM, yM: 0, heightM: request.groundAtLiftOffM };
  const upwindHeightM = Math.min(request.crosswindTurnM, circuitHeightM);
  const upwindCrab = crabAt(0, tas.climbMps, (lift.heightM + upwindHeightM) / 2);
  const climbPerM = request.climb.upwindMps / upwindCrab.groundspeedMps;
  const byHeightM = request.liftOffM + (upwindHeightM - lift.heightM) / climbPerM;
  const turnX = Math.max(byHeightM, request.departureEndM);
  const reachedM = Math.min(circuitHeightM, lift.heightM + (turnX - lift.xM) * climbPerM);
  const upwind = laidLeg({
    from: lift,
    to: { xM: turnX, yM: 0, heightM: reachedM },
    trackRad: 0,
    tasMps: tas.climbMps,
    crab: upwindCrab,
    verticalSpeedMps: request.climb.upwindMps,
  });

  const outbound = (fromPlace: Place, onto: number, climbing: boolean, tasMps: number): FlownTurn => {
    const from = crabAt(onto - QUARTER, tasMps, fromPlace.heightM);
    const to = crabAt(onto, tasMps, fromPlace.heightM);
    return flyTurn({
      from: fromPlace,
      fromHeadingRad: from.headingRad,
      toHeadingRad: to.headingRad,
      tasMps,
      bankRad: climbing ? bank.climbingRad : bank.levelRad,
      rollRateRadps,
      verticalSpeedMps: climbing ? request.climb.turnMps : 0,
      highestM: circuitHeightM,
      windAt,
    });
  };
  const climbs = (heightM: number): boolean => heightM < circuitHeightM - 1;
  const crosswindTurn = outbound(upwind.to, QUARTER, climbs(reachedM), tas.climbMps);

  // --- crosswind leg and the turn onto downwind, rolled out at the spacing ---
  const crosswindFrom = crosswindTurn.to;
  const crosswindCrab = crabAt(QUARTER, tas.climbMps, (crosswindFrom.heightM + circuitHeightM) / 2);
  const crosswindClimbPerM = request.climb.crosswindMps / crosswindCrab.groundspeedMps;
  const crosswindTo = (turnTakesM: number): Place => {
    const lengthM = Math.max(0, spacingM - turnTakesM - crosswindFrom.yM);
    return {
      xM: crosswindFrom.xM,
      yM: crosswindFrom.yM + lengthM,
      heightM: Math.min(circuitHeightM, crosswindFrom.heightM + lengthM * crosswindClimbPerM),
    };
  };
  const downwindTurnFrom = (climbing: boolean): { from: Place; turn: FlownTurn } => {
    const tasMps = climbing ? tas.climbMps : tas.downwindMps;
    let from = crosswindTo(0);
    let turn = outbound({ ...from, xM: 0, yM: 0 }, 2 * QUARTER, climbing, tasMps);
    for (let i = 0; i < 4; i += 1) {
      from = crosswindTo(turn.to.yM - (i === 0 ? 0 : from.yM));
      turn = outbound(from, 2 * QUARTER, climbing, tasMps);
    }
    return { from, turn };
  };
  let ontoDownwind = downwindTurnFrom(false);
  const downwindTurnClimbs = climbs(ontoDownwind.from.heightM);
  if (downwindTurnClimbs) ontoDownwind = downwindTurnFrom(true);
  const downwindTurn = ontoDownwind.turn;
  const reachedSpacingM = Math.max(spacingM, downwindTurn.to.yM);
  const levelOffM = circuitHeightM - crosswindFrom.heightM;
  const levelsOff = climbs(crosswindFrom.heightM) && !downwindTurnClimbs;
  const levelOffAtM = levelsOff ? levelOffM / crosswindClimbPerM : null;
  const crosswind = laidLeg({
    from: crosswindFrom,
    to: ontoDownwind.from,
    trackRad: QUARTER,
    tasMps: tas.climbMps,
    crab: crosswindCrab,
    verticalSpeedMps: climbs(crosswindFrom.heightM) ? request.climb.crosswindMps : 0,
    changeAtM: levelOffAtM,
    between: levelOffAtM === null ? [] : [{ atM: levelOffAtM, heightM: circuitHeightM }],
  });

  // --- the far side: solved backwards from the completed final turn ---
  const far = layOutWayDown(request, reachedSpacingM);
  const downwindFrom = downwindTurn.to;
  const downwindCrab = crabAt(2 * QUARTER, tas.downwindMps, circuitHeightM);
  const descends = request.descentFrom === 'abeam' && far.descentMps > 0;
  // What is left of the climb, level flight, and the descent from abeam the threshold.
  const abeamM = Math.max(0, downwindFrom.xM);
  const climbLeftM = Math.max(0, circuitHeightM - downwindFrom.heightM);
  const climbedAtM = Math.min(
    abeamM,
    (climbLeftM / request.climb.crosswindMps) * downwindCrab.groundspeedMps,
  );
  const between = [
    ...(climbLeftM > 0 ? [{ atM: climbedAtM, heightM: circuitHeightM }] : []),
    ...(descends ? [{ atM: abeamM, heightM: circuitHeightM }] : []),
  ];
  const baseTurnFrom = far.baseTurn.points[0] as Place;
  const downwind = laidLeg({
    from: downwindFrom,
    to: {
      xM: Math.min(baseTurnFrom.xM, downwindFrom.xM),
      yM: reachedSpacingM,
      heightM: baseTurnFrom.heightM,
    },
    trackRad: 2 * QUARTER,
    tasMps: tas.downwindMps,
    crab: downwindCrab,
    verticalSpeedMps: descends ? -far.descentMps : 0,
    changeAtM: descends ? abeamM : null,
    between,
  });
  return {
    spacingM: reachedSpacingM,
    upwind,
    crosswindTurn,
    crosswind,
    downwindTurn,
    downwindTurnClimbs,
    downwind,
    ...far,
  };
}
