import { alongM } from '../../aerodrome/runway.ts';
import { degFromRad, ktFromMps, mFromFt, nmiFromM } from '../../units/conversions.ts';
import { fixed, thousandsTo } from '../../units/format.ts';
import type { Setting } from '../setting.ts';
import { GATES_FT, LONG_FINAL_M, STABILISED } from '../stabilised.ts';
import type { CircuitPlan } from '../types.ts';
import { namedAltitudeM } from './altitudes.ts';
import type { GateBrief } from './types.ts';

/** What each gate is for. */
const USES: Readonly<Record<(typeof GATES_FT)[number], string>> = {
  500: `the gate of a straight-in or a final longer than ${fixed(nmiFromM(LONG_FINAL_M), 1)} NM`,
  300: 'stabilised, or go around',
  200: 'last call: not stabilised, go around',
};

/** Whose each gate is (`../stabilised.ts`). */
export const GATES_SOURCE =
  '500 ft in visual conditions: Flight Safety Foundation, ALAR 7.1; 300 and 200 ft: practice';

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
  GATES_FT.map((heightFt) => {
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
      sentence: `${where}; ${USES[heightFt]}`,
    };
  });

/** What stabilised means, in a sentence (`src/circuit/stabilised.ts` has the sources). */
export const stabilisedWords = (plan: CircuitPlan): string => {
  const { slowerMps, fasterMps, bankRad } = STABILISED;
  const kt = ktFromMps(plan.approachIasMps);
  return `Stabilised: on the slope and the centreline, ${fixed(kt - ktFromMps(slowerMps))} to ${fixed(kt + ktFromMps(fasterMps))} kt, bank within ${fixed(degFromRad(bankRad))}°, flap and trim set, power on, sink as briefed.`;
};
