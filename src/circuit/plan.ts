import type { Runway } from '../aerodrome/runway.ts';
import type { Aerodrome } from '../aerodrome/schema.ts';
import type { Aeroplane } from '../aeroplane/schema.ts';
import { atan2 } from '../maths/functions.ts';
import type { Steady } from '../simulation/performance/steady.ts';
import type { Weather } from '../simulation/scenario.ts';
import type { Shape } from '../simulation/shape.ts';
import { wrapPi } from '../units/angles.ts';
import { type Chosen, chooseCircuit } from './choose.ts';
import { conflictOf } from './conflict.ts';
import { runsBrief } from './distances/with-margins.ts';
import { bearingRadT, crabOnTrack } from './frame.ts';
import type { LaidLeg } from './laid-leg.ts';
import { lightsOnFinal } from './lights-on-final.ts';
import { type Path, pathOf } from './path.ts';
import { type Setting, settle, UPWIND_START_M } from './setting.ts';
import type { FlownTurn } from './turn.ts';
import {
  CIRCUIT_LEGS,
  type CircuitLeg,
  type CircuitPlan,
  type LegPlan,
  type PlanOptions,
  type TurnPlan,
} from './types.ts';

/**
 * The whole circuit for this aeroplane, runway and day: legs, wind-blown turns, heights, powers, the conflict.
 * Straight legs are flown in the wind at their mean height, turns in the wind at each height.
 * Throws an Error sentence when the aeroplane cannot climb, or the wind is faster than it flies.
 */
export function planCircuit(
  shape: Shape,
  aeroplane: Aeroplane,
  aerodrome: Aerodrome,
  runway: Runway,
  weather: Weather,
  options: PlanOptions = {},
): CircuitPlan {
  const setting = settle(shape, aeroplane, aerodrome, runway, weather);
  const chosen = chooseCircuit(setting, options);
  const path = pathOf(setting, chosen);
  const { layout } = chosen;
  const legs = Object.fromEntries(
    CIRCUIT_LEGS.map((leg) => [leg, legPlan(setting, layout[leg], leg, path)]),
  ) as Record<CircuitLeg, LegPlan>;
  const turn = (onto: keyof CircuitPlan['turns'], flown: FlownTurn): TurnPlan => {
    const points = path.turns[onto];
    return {
      onto,
      bankRad: flown.bankRad,
      direction: runway.circuitSide,
      from: points[0]!,
      to: points.at(-1)!,
      seconds: flown.seconds,
      points,
    };
  };
  return {
    runway,
    side: runway.circuitSide,
    spacingM: layout.spacingM,
    heightM: chosen.heightM,
    approachRad: chosen.approachRad,
    askedApproachRad: chosen.askedApproachRad,
    descentFrom: chosen.descentFrom,
    legs,
    turns: {
      crosswind: turn('crosswind', layout.crosswindTurn),
      downwind: turn('downwind', layout.downwindTurn),
      base: turn('base', layout.baseTurn),
      final: turn('final', layout.finalTurn),
    },
    path: path.points,
    baseTurnAngleRad: baseTurnAngleRad(chosen),
    rollOutOnFinalHeightM: layout.final.from.heightM,
    approachIasMps: setting.iasMps.final,
    gustAdditionMps: setting.gustAdditionMps,
    lightsOnFinal: lightsOnFinal(runway, layout, setting.eyeHeightM),
    conflict: conflictOf(setting, chosen, options),
    notes: [...chosen.notes, ...tooSteep(setting, chosen)],
    rotateIasMps: setting.rotateIasMps,
    takeOffRunM: setting.takeOffRunM,
    landingRunM: setting.landingRunM,
    runs: runsBrief(setting),
  };
}

/** Between the wing line (square to the runway) and the line to the threshold. */
const baseTurnAngleRad = ({ layout }: Chosen): number =>
  atan2(-layout.baseTurn.points[0]!.xM, layout.spacingM);

function legPlan(setting: Setting, laid: LaidLeg, leg: CircuitLeg, path: Path): LegPlan {
  const { runway, flapStage, iasMps, aeroplane } = setting;
  const side = runway.circuitSide;
  const trackRadT = bearingRadT(runway, side, laid.trackRad);
  const headingRadT = bearingRadT(runway, side, laid.crab.headingRad);
  const middleM = (laid.from.heightM + laid.to.heightM) / 2;
  const climbs = laid.to.heightM > laid.from.heightM + 1;
  const fly = (verticalSpeedMps: number, heightM = middleM, gear = setting.gear[leg]): Steady =>
    steadyOn(setting, leg, { iasMps: iasMps[leg], gear, verticalSpeedMps }, heightM, flapStage[leg]);
  const places = path.legs[leg];
  // Before and after the change: a descent begins level, a climb ends level.
  const before = places.change !== null && !climbs ? 0 : laid.verticalSpeedMps;
  const after = climbs ? 0 : laid.verticalSpeedMps;
  // At its start a leg may lie in another wind than at its mean height.
  const startM = leg === 'upwind' ? Math.max(UPWIND_START_M, laid.from.heightM) : laid.from.heightM;
  const crab = crabOnTrack(laid.trackRad, laid.tasMps, setting.windAt(startM));
  const onSlope = leg === 'final' && places.change === null;
  const startMps = onSlope ? (before * crab.groundspeedMps) / laid.crab.groundspeedMps : before;
  return {
    leg,
    trackRadT,
    headingRadT,
    driftRad: wrapPi(trackRadT - headingRadT),
    iasMps: iasMps[leg],
    tasMps: laid.tasMps,
    groundspeedMps: laid.crab.groundspeedMps,
    tailwindMps: laid.crab.tailwindMps,
    crosswindMps: side * laid.crab.sidewaysMps,
    from: places.from,
    to: places.to,
    lengthM: laid.lengthM,
    seconds: laid.seconds,
    verticalSpeedMps: before,
    flapStage: flapStage[leg],
    flapDeg: aeroplane.flap.stages[flapStage[leg]]!.deg,
    gear: setting.gear[leg],
    propeller: setting.propeller[leg],
    steady: fly(before),
    start: {
      heightM: startM,
      headingRadT: bearingRadT(runway, side, crab.headingRad),
      verticalSpeedMps: fly(startMps, startM).verticalSpeedMps,
    },
    change:
      places.change === null
        ? null
        : {
            at: places.change,
            verticalSpeedMps: after,
            steady: fly(after, middleM, climbs ? setting.gear[leg] : 1),
          },
  };
}

/** The nearest steady state: at full power where less climb comes out, at idle where less sink does. */
function steadyOn(
  setting: Setting,
  leg: CircuitLeg,
  asked: { readonly iasMps: number; readonly gear: 0 | 1; readonly verticalSpeedMps: number },
  heightM: number,
  stage: number,
): Steady {
  const { verticalSpeedMps, ...how } = asked;
  const flown = { ...how, propeller: setting.propeller[leg] };
  const climbing = leg === 'upwind' || (leg === 'crosswind' && verticalSpeedMps > 0);
  if (climbing) return setting.steadyAt({ ...flown, throttle: 1 }, heightM, stage);
  const idle = setting.steadyAt({ ...flown, throttle: 0 }, heightM, stage);
  if (idle.verticalSpeedMps >= verticalSpeedMps) return idle;
  return setting.steadyAt({ ...flown, verticalSpeedMps }, heightM, stage);
}

/** A sentence where the planned final is steeper than the aeroplane glides with the throttle closed. */
function tooSteep(setting: Setting, { layout }: Chosen): readonly string[] {
  const { plan } = setting.aeroplane;
  const idle = setting.steadyAt({ iasMps: setting.iasMps.final, throttle: 0 }, 60, plan.landingStage);
  return layout.final.verticalSpeedMps >= idle.verticalSpeedMps
    ? []
    : ['The planned final is steeper than the aeroplane glides with the throttle closed and landing flap.'];
}
