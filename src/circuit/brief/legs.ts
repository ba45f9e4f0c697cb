import { columnIndicatedAltitudeM } from '../../atmosphere/air.ts';
import type { Steady } from '../../simulation/steady.ts';
import { magneticFromTrue } from '../../units/angles.ts';
import { mpsFromFpm } from '../../units/conversions.ts';
import type { Setting } from '../setting.ts';
import { CIRCUIT_LEGS, type CircuitLeg, type CircuitPlan, type PathPoint } from '../types.ts';
import { wordsOf } from './checks-and-calls.ts';
import type { LegBrief, StretchBrief } from './types.ts';

const LEVEL_MPS = mpsFromFpm(20);
/** A stretch shorter than this is not told. */
const SHORTEST_S = 1;

/** What the altimeter, set to QNH, reads at a height above the landing threshold. */
export const altitudeAtM = (setting: Setting, heightM: number): number =>
  columnIndicatedAltitudeM(setting.air, setting.runway.thresholdElevationM + heightM);

function stretchBrief(
  setting: Setting,
  from: PathPoint,
  to: PathPoint,
  groundspeedMps: number,
  verticalSpeedMps: number,
  steady: Steady,
): StretchBrief {
  return {
    way: verticalSpeedMps > LEVEL_MPS ? 'climbing' : verticalSpeedMps < -LEVEL_MPS ? 'descending' : 'level',
    seconds: (to.distanceM - from.distanceM) / groundspeedMps,
    fromHeightM: from.heightM,
    toHeightM: to.heightM,
    toAltitudeM: altitudeAtM(setting, to.heightM),
    verticalSpeedMps,
    revps: steady.revps,
    fullPower: steady.throttle > 0.999,
  };
}

function legBrief(setting: Setting, plan: CircuitPlan, leg: CircuitLeg): LegBrief {
  const p = plan.legs[leg];
  const turn = leg === 'upwind' ? null : plan.turns[leg];
  const { variationRad } = plan.runway;
  const { change } = p;
  const before = stretchBrief(
    setting,
    p.from,
    change?.at ?? p.to,
    p.groundspeedMps,
    p.verticalSpeedMps,
    p.steady,
  );
  const after =
    change === null
      ? []
      : [stretchBrief(setting, change.at, p.to, p.groundspeedMps, change.verticalSpeedMps, change.steady)];
  const stretches = [before, ...after].filter((each) => each.seconds >= SHORTEST_S);
  return {
    leg,
    trackRadM: magneticFromTrue(p.trackRadT, variationRad),
    headingRadM: magneticFromTrue(p.headingRadT, variationRad),
    driftRad: p.driftRad,
    iasMps: p.iasMps,
    groundspeedMps: p.groundspeedMps,
    tailwindMps: p.tailwindMps,
    seconds: p.seconds,
    turnSeconds: turn?.seconds ?? 0,
    turnBankRad: turn?.bankRad ?? 0,
    flapDeg: p.flapDeg,
    stretches: stretches.length === 0 ? [before] : stretches,
    words: wordsOf(leg, setting),
  };
}

/** Every leg in the order it is flown: heading to hold, seconds, power, height. Directions magnetic. */
export const legBriefs = (setting: Setting, plan: CircuitPlan): readonly LegBrief[] =>
  CIRCUIT_LEGS.map((leg) => legBrief(setting, plan, leg));
