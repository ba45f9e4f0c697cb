import type { LegName } from '../lesson/names.ts';
import type { LegMemory } from '../lesson/watch/legs.ts';
import { clamp } from '../maths/functions.ts';
import type { Briefing } from '../pilot/briefing/briefing.ts';
import { throttleFor } from '../pilot/briefing/habits.ts';
import { leftToGoM, plannedSink } from '../pilot/descent.ts';
import { regimeIn } from '../pilot/joining.ts';
import type { PhaseName } from '../pilot/phase-name.ts';
import { newPilotView, type PilotView, pilotView } from '../pilot/view.ts';
import type { Snapshot } from '../simulation/snapshot.ts';
import { mpsFromFpm } from '../units/conversions.ts';

/**
 * One look at a flight: what was flown, and beside it what the model pilot would have asked for in the very same
 * place. What differs between the two is the pilot's own doing; what both do is an answer to where the
 * aeroplane is.
 */
export interface Look {
  readonly timeS: number;
  readonly leg: LegName;
  readonly xM: number;
  readonly yM: number;
  readonly heightM: number;
  readonly iasMps: number;
  readonly groundspeedMps: number;
  readonly trackRad: number;
  readonly bankRad: number;
  readonly verticalSpeedMps: number;
  readonly throttle: number;
  readonly revps: number;
  readonly flapStage: number;
  readonly heldDegKpa: number;
  /** On final: what is not stabilised, in the lesson's words. */
  readonly faults: readonly string[];
  /** Where the planned descent is here, and the power that would join it. */
  readonly plannedHeightM: number;
  /** Left to fly to the ground along the plan. */
  readonly toGoM: number;
  readonly askedThrottle: number;
}

/** Which part of the model pilot's flight a leg is; null where the study has nothing to compare. */
export const PHASE_OF: Partial<Record<LegName, PhaseName>> = {
  upwind: 'upwind',
  'turn-to-crosswind': 'crosswind',
  crosswind: 'crosswind',
  'turn-to-downwind': 'downwind',
  downwind: 'downwind',
  'turn-to-base': 'base',
  base: 'base',
  'turn-to-final': 'final',
  final: 'final',
};

const scratch = newPilotView();

export const lookAt = (
  b: Briefing,
  legs: LegMemory,
  s: Readonly<Snapshot>,
  faults: readonly string[],
): Look => {
  const v = pilotView(s, b.runway, b.side, scratch);
  return {
    timeS: s.timeS,
    leg: legs.leg,
    xM: v.xM,
    yM: v.yM,
    heightM: v.heightM,
    iasMps: s.iasMps,
    groundspeedMps: v.groundspeedMps,
    trackRad: v.trackRad,
    bankRad: v.bankRad,
    verticalSpeedMps: v.verticalSpeedMps,
    throttle: s.throttle,
    revps: s.engineRevps,
    flapStage: s.flapStage,
    heldDegKpa: s.heldPressureDegKpa,
    faults,
    ...askedOf(b, legs.leg, v, s.flapStage),
  };
};

const askedOf = (
  b: Briefing,
  leg: LegName,
  v: PilotView,
  stage: number,
): Pick<Look, 'plannedHeightM' | 'toGoM' | 'askedThrottle'> => {
  const phase = PHASE_OF[leg];
  if (phase !== 'downwind' && phase !== 'base' && phase !== 'final')
    return { plannedHeightM: b.plan.heightM, toGoM: Number.POSITIVE_INFINITY, askedThrottle: 1 };
  const where = { phase, turning: leg.startsWith('turn') };
  const planned = plannedSink(b, where, v);
  const heightM = leg === 'final' ? slopeHeightM(b, v.xM) : planned.heightM;
  const sink = leg === 'final' ? slopeSinkMps(b, v, heightM) : planned.verticalSpeedMps;
  const habit = b.habits[regimeIn(b, phase, stage)];
  return { plannedHeightM: heightM, toGoM: leftToGoM(b, where, v), askedThrottle: throttleFor(habit, sink) };
};

/** Height of the wheels with the eye on the planned slope to the aim point. */
const slopeHeightM = (b: Briefing, xM: number): number =>
  b.aimGroundM + b.approachTangent * (b.runway.aimM - xM) - b.eyeHeightM;

const CORRECTING_PER_S = 0.12;
const STEEPEST_MPS = mpsFromFpm(750);

/** Sink that joins the slope and stays on it. */
const slopeSinkMps = (b: Briefing, v: PilotView, onSlopeM: number): number =>
  clamp(-b.approachTangent * v.groundspeedMps + CORRECTING_PER_S * (onSlopeM - v.heightM), -STEEPEST_MPS, 0);
