import { alongM } from '../../aerodrome/runway.ts';
import { ktFromMps, mFromFt, nmiFromM } from '../../units/conversions.ts';
import { fixed, thousandsTo } from '../../units/format.ts';
import type { Setting } from '../setting.ts';
import type { CircuitPlan } from '../types.ts';
import { namedAltitudeM } from './altitudes.ts';
import type { GateBrief } from './types.ts';

/** Heights at which the approach is looked at, and what each is for (lesson's gates; 300 ft common practice). */
const GATES = [
  { heightFt: 500, use: 'the gate of a straight-in or a final longer than 1.5 NM' },
  { heightFt: 300, use: 'stabilised, or go around' },
  { heightFt: 200, use: 'last call: not stabilised, go around' },
] as const;

/** Where the planned final passes a height; null when it begins lower. */
function beforeThresholdM(plan: CircuitPlan, heightM: number): number | null {
  const { from, to, change } = plan.legs.final;
  if (from.heightM < heightM) return null;
  const top = change?.at ?? from;
  const share = (top.heightM - heightM) / (top.heightM - to.heightM);
  const x = (p: { eastM: number; northM: number }): number => alongM(plan.runway, p.eastM, p.northM);
  return -(x(top) + (x(to) - x(top)) * share);
}

/** The gates on the planned final. */
export const gateBriefs = (setting: Setting, plan: CircuitPlan): readonly GateBrief[] =>
  GATES.map(({ heightFt, use }) => {
    const heightM = mFromFt(heightFt);
    const beforeM = beforeThresholdM(plan, heightM);
    const rollOut = thousandsTo(plan.rollOutOnFinalHeightM / mFromFt(1), 10);
    const where =
      beforeM === null
        ? rollOut === fixed(heightFt)
          ? 'where this final begins'
          : `above this final, which begins at ${rollOut} ft`
        : `${fixed(nmiFromM(beforeM), 2)} NM before the threshold`;
    return {
      heightM,
      altitudeM: namedAltitudeM(setting, heightM),
      beforeThresholdM: beforeM,
      sentence: `${where}; ${use}`,
    };
  });

/**
 * What stabilised means (lesson.md): speed after FAA-S-ACS-6 IV.B, bank and slope after Flight Safety Foundation
 * ALAR briefing note 7.1 and common practice.
 */
export const stabilisedWords = (plan: CircuitPlan): string => {
  const kt = ktFromMps(plan.approachIasMps);
  return `Stabilised: on the slope and the centreline, ${fixed(kt - 5)} to ${fixed(kt + 10)} kt, bank within 10°, flap and trim set, power on, sink as briefed.`;
};
