import { mix } from '../maths/functions.ts';
import type { AirStart } from '../simulation/scenario.ts';
import { headingDeg, magneticFromTrue } from '../units/angles.ts';
import { fpmFromMps, ftFromM, ktFromMps } from '../units/conversions.ts';
import type { CircuitLeg, CircuitPlan, PathPoint } from './types.ts';

const rounded = (x: number, places: number): number => {
  const scale = [1, 10, 100, 1000][places] as number;
  return Math.round(x * scale) / scale + 0;
};

/** Where the planned climb passes a height, upwind. */
const climbedTo = (plan: CircuitPlan, heightM: number): Pick<PathPoint, 'eastM' | 'northM' | 'heightM'> => {
  const { from, to } = plan.legs.upwind;
  const t = Math.min(1, Math.max(0, (heightM - from.heightM) / (to.heightM - from.heightM)));
  return {
    eastM: mix(from.eastM, to.eastM, t),
    northM: mix(from.northM, to.northM, t),
    heightM: mix(from.heightM, to.heightM, t),
  };
};

/** The steady state of the plan at the start of a leg, as a start file says it. */
export function startOfLeg(plan: CircuitPlan, leg: CircuitLeg): AirStart {
  const { from, start, iasMps, flapDeg, gear, propeller } = plan.legs[leg];
  const at = leg === 'upwind' ? climbedTo(plan, start.heightM) : from;
  const magnetic = magneticFromTrue(start.headingRadT, plan.runway.variationRad);
  return {
    east_m: rounded(at.eastM, 1),
    north_m: rounded(at.northM, 1),
    height_ft: rounded(ftFromM(at.heightM), 1),
    heading_deg: rounded(headingDeg(magnetic), 2),
    ias_kt: rounded(ktFromMps(iasMps), 2),
    flap_deg: flapDeg,
    gear: gear === 1 ? 'down' : 'up',
    bank_deg: 0,
    ...(propeller < 1 && { propeller: Math.round(propeller * 10000) / 10000 }),
    // Towards level, so that a climb at full power and a descent at idle stay possible once rounded.
    vertical_speed_fpm: Math.trunc(fpmFromMps(start.verticalSpeedMps)) + 0,
  };
}
