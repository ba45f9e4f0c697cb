import { columnPressurePa } from '../../atmosphere/air.ts';
import { manifoldPa } from '../../simulation/engine/engine.ts';
import type { Steady } from '../../simulation/performance/steady.ts';
import type { CallWords } from '../../simulation/procedures.ts';
import { magneticFromTrue } from '../../units/angles.ts';
import { G0_MPS2, mFromFt, mpsFromFpm } from '../../units/conversions.ts';
import { holdTrack } from '../../wind/triangle.ts';
import { crosswindTurnM, type Setting } from '../setting.ts';
import { CIRCUIT_LEGS, type CircuitLeg, type CircuitPlan, type LegPlan, type PathPoint } from '../types.ts';
import { oneInSixty } from '../wind-above.ts';
import { altitudeAtM, namedAltitudeM } from './altitudes.ts';
import { landingStageToday } from './approach.ts';
import { wordsOf } from './checks-and-calls.ts';
import type { LegBrief, StretchBrief } from './types.ts';

const LEVEL_MPS = mpsFromFpm(20);
/** A stretch shorter than this is not told. */
const SHORTEST_S = 1;
/** A climb that ends within this of circuit height has ended. */
const REACHED_M = 1;
/** Below this the approach is over: the round-out pays. */
const GRADIENT_DOWN_TO_M = mFromFt(50);

/** How a stretch is flown. */
interface Flown {
  readonly steady: Steady;
  readonly verticalSpeedMps: number;
  readonly iasMps: number;
  readonly stage: number;
}

function stretchBrief(
  setting: Setting,
  from: PathPoint,
  to: PathPoint,
  groundspeedMps: number,
  flown: Flown,
): StretchBrief {
  const { verticalSpeedMps, steady } = flown;
  return {
    way: verticalSpeedMps > LEVEL_MPS ? 'climbing' : verticalSpeedMps < -LEVEL_MPS ? 'descending' : 'level',
    seconds: (to.distanceM - from.distanceM) / groundspeedMps,
    groundspeedMps,
    fromHeightM: from.heightM,
    toHeightM: to.heightM,
    fromAltitudeM: altitudeAtM(setting, from.heightM),
    toAltitudeM:
      Math.abs(to.heightM - crosswindTurnM(setting.aerodrome)) < REACHED_M
        ? namedAltitudeM(setting, to.heightM)
        : altitudeAtM(setting, to.heightM),
    verticalSpeedMps,
    iasMps: flown.iasMps,
    flapDeg: setting.aeroplane.flap.stages[flown.stage]?.deg ?? 0,
    ...powerOf(setting, steady, to.heightM),
    fullPower: steady.throttle > 0.999,
  };
}

/** Rpm, and the manifold pressure that tells the power where the propeller governs the rpm. */
function powerOf(
  setting: Setting,
  steady: Steady,
  heightM: number,
): Pick<StretchBrief, 'revps' | 'manifoldPa'> {
  const { revps, throttle } = steady;
  if (setting.aeroplane.propeller.kind !== 'constant-speed') return { revps, manifoldPa: null };
  const staticPa = columnPressurePa(setting.air, setting.runway.thresholdElevationM + heightM);
  return { revps, manifoldPa: manifoldPa(staticPa, throttle, revps) };
}

/**
 * Climb that power must pay for, beside the one over the ground, to keep the airspeed while the headwind dies
 * away on the way down: V dV/dt = g times a rate of climb.
 */
function gradientClimbMps(setting: Setting, plan: CircuitPlan): number {
  const { from, to, tasMps, seconds } = plan.legs.final;
  // Circuit axes: x along the landing direction, so that a headwind is below 0.
  const lostMps = setting.windAt(to.heightM + GRADIENT_DOWN_TO_M).xMps - setting.windAt(from.heightM).xMps;
  return seconds > SHORTEST_S ? (tasMps * lostMps) / (G0_MPS2 * seconds) : 0;
}

/** Levelled on crosswind, the speed builds for downwind with the flap still up. */
const levelled = (setting: Setting): Flown => ({
  steady: setting.steadyAt(
    {
      iasMps: setting.iasMps.downwind,
      verticalSpeedMps: 0,
      gear: setting.gear.downwind,
      propeller: setting.propeller.downwind,
    },
    setting.runway.circuitHeightM,
    0,
  ),
  verticalSpeedMps: 0,
  iasMps: setting.iasMps.downwind,
  stage: 0,
});

/** Where a climb that is not over on crosswind ends on downwind; null where it is. */
const climbEnd = (plan: CircuitPlan): PathPoint | null => {
  if (plan.legs.downwind.from.heightM > plan.heightM - REACHED_M) return null;
  const onLeg = (p: PathPoint): boolean => p.leg === 'downwind' && !p.turning;
  return plan.path.find((p) => onLeg(p) && p.heightM > plan.heightM - REACHED_M) ?? plan.legs.downwind.to;
};

/** Over the ground along a leg at another airspeed than the leg's own, in the same wind. */
const groundspeedAt = (
  { iasMps, tasMps, crosswindMps, tailwindMps }: LegPlan,
  otherIasMps: number,
): number => {
  const hold = holdTrack((tasMps * otherIasMps) / iasMps, tailwindMps, crosswindMps);
  return hold?.groundspeedMps ?? tailwindMps;
};

const climbOn = (setting: Setting, plan: CircuitPlan): Flown => ({
  steady: setting.steadyAt(
    { iasMps: setting.iasMps.crosswind, throttle: 1, gear: setting.gear.crosswind },
    plan.heightM,
    0,
  ),
  verticalSpeedMps: setting.climb.crosswindMps,
  iasMps: setting.iasMps.crosswind,
  stage: 0,
});

/** Final at a stage of flap, with the power that holds the airspeed through the wind gradient. */
function finalWith(setting: Setting, plan: CircuitPlan, stage: number, verticalSpeedMps: number): Flown {
  const { iasMps, from, to } = plan.legs.final;
  const heightM = (from.heightM + to.heightM) / 2;
  const wantedMps = verticalSpeedMps + gradientClimbMps(setting, plan);
  const idle = setting.steadyAt({ iasMps, throttle: 0 }, heightM, stage);
  const steady =
    idle.verticalSpeedMps >= wantedMps
      ? idle
      : setting.steadyAt({ iasMps, verticalSpeedMps: wantedMps }, heightM, stage);
  return { steady, verticalSpeedMps, iasMps, stage };
}

/** The same final with the flap to land with; nothing where that is the flap of the approach. */
function withLandingFlap(setting: Setting, plan: CircuitPlan, final: StretchBrief): readonly StretchBrief[] {
  const stage = landingStageToday(setting, plan);
  if (stage === plan.legs.final.flapStage) return [];
  const { steady } = finalWith(setting, plan, stage, final.verticalSpeedMps);
  const flapDeg = setting.aeroplane.flap.stages[stage]?.deg ?? 0;
  return [
    {
      ...final,
      way: 'landing flap',
      flapDeg,
      ...powerOf(setting, steady, final.toHeightM),
      fullPower: false,
    },
  ];
}

function stretchesOf(setting: Setting, plan: CircuitPlan, leg: CircuitLeg): readonly StretchBrief[] {
  const p: LegPlan = plan.legs[leg];
  const { change } = p;
  const base = { iasMps: p.iasMps, stage: p.flapStage };
  const flown = (verticalSpeedMps: number, steady: Steady): Flown =>
    leg === 'final'
      ? finalWith(setting, plan, p.flapStage, verticalSpeedMps)
      : { ...base, steady, verticalSpeedMps };
  const before = flown(p.verticalSpeedMps, p.steady);
  const stretch = (
    from: PathPoint,
    to: PathPoint,
    flown: Flown,
    groundspeedMps = p.groundspeedMps,
  ): StretchBrief => stretchBrief(setting, from, to, groundspeedMps, flown);
  const climbed = leg === 'downwind' ? climbEnd(plan) : null;
  const parts: StretchBrief[] = [];
  if (climbed !== null) {
    const climb = climbOn(setting, plan);
    parts.push(stretch(p.from, climbed, climb, groundspeedAt(p, climb.iasMps)));
  }
  const levels = leg === 'crosswind' && Math.abs(p.verticalSpeedMps) < LEVEL_MPS;
  parts.push(stretch(climbed ?? p.from, change?.at ?? p.to, levels ? levelled(setting) : before));
  if (change !== null) {
    const { steady, verticalSpeedMps } = change;
    parts.push(
      stretch(change.at, p.to, leg === 'crosswind' ? levelled(setting) : flown(verticalSpeedMps, steady)),
    );
  }
  const worth = parts.filter((each) => each.seconds >= SHORTEST_S);
  const told = worth.length === 0 ? parts.slice(0, 1) : worth;
  return leg === 'final' ? [...told, ...withLandingFlap(setting, plan, told.at(-1) as StretchBrief)] : told;
}

/** How much longer a stretch takes than at another groundspeed. */
const lateS = ({ seconds, groundspeedMps }: StretchBrief, otherMps: number): number =>
  seconds - (seconds * groundspeedMps) / otherMps;

function legBrief(setting: Setting, plan: CircuitPlan, leg: CircuitLeg, words: CallWords): LegBrief {
  const p = plan.legs[leg];
  const turn = leg === 'upwind' ? null : plan.turns[leg];
  const stretches = stretchesOf(setting, plan, leg);
  const { variationRad } = plan.runway;
  return {
    leg,
    trackRadM: magneticFromTrue(p.trackRadT, variationRad),
    headingRadM: magneticFromTrue(p.headingRadT, variationRad),
    driftRad: p.driftRad,
    iasMps: p.iasMps,
    groundspeedMps: p.groundspeedMps,
    tailwindMps: p.tailwindMps,
    oneInSixty: oneInSixty(p.crosswindMps, p.tasMps),
    // A climb that ends on downwind takes longer than the leg's own speed has it
    seconds: p.seconds + stretches.reduce((sum, each) => sum + lateS(each, p.groundspeedMps), 0),
    turnSeconds: turn?.seconds ?? 0,
    turnBankRad: turn?.bankRad ?? 0,
    stretches,
    words: wordsOf(leg, setting, words),
  };
}

/** Every leg in the order it is flown: heading to hold, seconds, power, height. Directions magnetic. */
export const legBriefs = (setting: Setting, plan: CircuitPlan, words: CallWords): readonly LegBrief[] =>
  CIRCUIT_LEGS.map((leg) => legBrief(setting, plan, leg, words));
