import type { Runway } from '../aerodrome/runway.ts';
import { lightLetters, newSeenLights, type SeenLights, seeLights } from '../aerodrome/slope-lights.ts';
import { mFromFt } from '../units/conversions.ts';
import { toEarth } from './frame.ts';
import type { Layout } from './layout-request.ts';

export interface LightsStretch {
  readonly letters: string;
  readonly fromHeightM: number;
  readonly toHeightM: number;
}

/** Below this the lights are no longer flown by. */
const DOWN_TO_M = mFromFt(20);
const STEP_M = 5;

/** A unit in transition counts as the colour it shows more of. */
const plainWord = (seen: SeenLights): string => {
  for (let i = 0; i < seen.units; i += 1)
    if (seen.letters[i] === 'P') seen.letters[i] = (seen.white[i] as number) >= 0.5 ? 'W' : 'R';
  return lightLetters(seen);
};

/**
 * What the planned final shows, far to near: heights are the wheels' above the threshold, the eye rides
 * `eyeHeightM` above them. Null where the runway has no lights.
 */
export function lightsOnFinal(
  runway: Runway,
  layout: Layout,
  eyeHeightM: number,
): readonly LightsStretch[] | null {
  if (runway.lights === null) return null;
  const { final } = layout;
  const levelM = final.changeAtM ?? 0;
  const seen = newSeenLights();
  const stretches: { letters: string; fromHeightM: number; toHeightM: number }[] = [];
  for (let distanceM = 0; distanceM <= final.lengthM; distanceM += STEP_M) {
    const heightM = final.from.heightM - Math.max(0, distanceM - levelM) * layout.approachTangent;
    if (heightM < DOWN_TO_M) break;
    const eye = toEarth(runway, runway.circuitSide, final.from.xM + distanceM, 0);
    const letters = plainWord(seeLights(runway, eye.eastM, eye.northM, heightM + eyeHeightM, seen));
    const last = stretches.at(-1);
    // Close in, the units leave the beam one by one: that is no picture to fly by.
    if (letters.includes('-') && last !== undefined && !last.letters.includes('-')) break;
    if (last?.letters === letters) last.toHeightM = heightM;
    else stretches.push({ letters, fromHeightM: heightM, toHeightM: heightM });
  }
  return stretches;
}

/** Half the units white, the white ones outside. */
export const onSlopeWord = (units: number): string => 'W'.repeat(units / 2) + 'R'.repeat(units / 2);
