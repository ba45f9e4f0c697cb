import { acrossM as acrossOf, alongM as alongOf, earthOf } from '../../aerodrome/runway.ts';
import type { Aeroplane } from '../../aeroplane/schema.ts';
import { startOfLeg } from '../../circuit/start-of-leg.ts';
import type { CircuitLeg, CircuitPlan } from '../../circuit/types.ts';
import { stallIasMps } from '../../simulation/performance/stall-speed.ts';
import type { AirStart, Start } from '../../simulation/scenario.ts';
import { shapeOf } from '../../simulation/shape.ts';
import { headingDeg } from '../../units/angles.ts';
import { ftFromM, ktFromMps, mFromFt } from '../../units/conversions.ts';
import { rounded } from '../rounded.ts';
import type { Draw } from './draw.ts';
import type { Exercise } from './exercise.ts';

type InTheAir = Exclude<Exercise['start'], { at: 'line-up' }>;

/** Where an exercise in the air begins: on a leg of the plan, moved as it says, or at the top of a balloon. */
export const exerciseStart = (start: InTheAir, plan: CircuitPlan, aeroplane: Aeroplane, draw: Draw): Start =>
  start.at === 'balloon'
    ? { at: balloonStart(start, plan, aeroplane, draw), trimmed: true, leg: null }
    : { at: shiftedStart(start, plan, aeroplane, draw), trimmed: true, leg: start.at };

type LegStart = Extract<Exercise['start'], { at: CircuitLeg }>;
type BalloonStart = Extract<Exercise['start'], { at: 'balloon' }>;

/** The plan's start of a leg, moved along it, out from the runway, up and to another speed. */
const shiftedStart = (start: LegStart, plan: CircuitPlan, aeroplane: Aeroplane, draw: Draw): AirStart => {
  const { runway } = plan;
  const leg = plan.legs[start.at];
  const planned = startOfLeg(plan, start.at);
  const alongM =
    start.beyondM === undefined
      ? draw.of('along', start.alongM ?? 0)
      : leg.lengthM + draw.of('beyond', start.beyondM);
  const outM = draw.of('out', start.outM ?? 0);
  const aboveFt = draw.of('above', start.aboveFt ?? 0);
  const share = Math.min(1, Math.max(0, alongM / Math.max(1, leg.lengthM)));
  const moved = alongM / Math.max(1, leg.lengthM);
  const eastM = planned.east_m + moved * (leg.to.eastM - leg.from.eastM);
  const northM = planned.north_m + moved * (leg.to.northM - leg.from.northM);
  // On the planned heights of the leg, where it holds one and then descends
  const heightM =
    start.level === true ? plan.heightM : pathHeightM(plan, start.at, share, mFromFt(planned.height_ft));
  const place = earthOf(
    runway,
    alongOf(runway, eastM, northM),
    acrossOf(runway, eastM, northM) + plan.side * outM,
  );
  const stages = aeroplane.flap.stages;
  const asked = { up: 0, landing: aeroplane.plan.landingStage, 'as-planned': leg.flapStage };
  const flapDeg = stages[asked[start.flap ?? 'as-planned']]?.deg ?? planned.flap_deg;
  return {
    ...planned,
    east_m: rounded(place.eastM, 1),
    north_m: rounded(place.northM, 1),
    height_ft: rounded(ftFromM(heightM) + aboveFt, 1),
    ias_kt: rounded(planned.ias_kt + draw.of('faster', start.fasterKt ?? 0), 2),
    flap_deg: flapDeg,
    ...(start.flap === 'up' && { vertical_speed_fpm: Math.max(-350, planned.vertical_speed_fpm ?? 0) }),
  };
};

/** Height of the wheels that the plan has at a share of a leg. */
const pathHeightM = (plan: CircuitPlan, leg: CircuitLeg, share: number, startM: number): number => {
  if (share === 0) return startM;
  const { from, to } = plan.legs[leg];
  const atM = from.distanceM + share * (to.distanceM - from.distanceM);
  let before = from;
  for (const point of plan.path) {
    if (point.distanceM >= atM) {
      const run = point.distanceM - before.distanceM;
      const part = run > 0 ? (atM - before.distanceM) / run : 1;
      return before.heightM + part * (point.heightM - before.heightM);
    }
    if (point.distanceM >= from.distanceM) before = point;
  }
  return to.heightM;
};

/** Level, slow and nose up over the runway: what is left when the round-out went up instead of down. */
const balloonStart = (
  start: BalloonStart,
  { runway }: CircuitPlan,
  aeroplane: Aeroplane,
  draw: Draw,
): AirStart => {
  const { landingStage } = aeroplane.plan;
  const stallMps = stallIasMps(shapeOf(aeroplane), landingStage);
  const along = runway.aimM + draw.of('past-aim', start.pastAimM);
  const place = earthOf(runway, along, 0);
  return {
    east_m: rounded(place.eastM, 1),
    north_m: rounded(place.northM, 1),
    height_ft: rounded(draw.of('height', start.heightFt), 1),
    heading_deg: rounded(headingDeg(runway.headingRadM), 2),
    ias_kt: rounded(ktFromMps(stallMps) * draw.of('over-stall', start.overStall), 1),
    flap_deg: aeroplane.flap.stages[landingStage]?.deg ?? 0,
    gear: 'down',
    bank_deg: 0,
    vertical_speed_fpm: 0,
  };
};
