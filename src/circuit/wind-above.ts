import type { Runway } from '../aerodrome/runway.ts';
import type { Aerodrome } from '../aerodrome/schema.ts';
import { atan2 } from '../maths/functions.ts';
import { windOf } from '../simulation/model.ts';
import type { Weather } from '../simulation/scenario.ts';
import { headingDeg, magneticFromTrue } from '../units/angles.ts';
import { ftFromM, ktFromMps } from '../units/conversions.ts';
import { fixed, headingDigits, thousandsTo } from '../units/format.ts';
import { meanWind } from '../wind/profile.ts';
import { WIND, WIND_LENGTH } from '../wind/velocity.ts';

/** The mean wind at circuit height, from which every drift above the ground comes, and how it is known. */
export interface WindAboveBrief {
  readonly fromRadM: number;
  readonly speedMps: number;
  readonly heightM: number;
  readonly typed: boolean;
  /** "1,000 ft up: 250° 14 kt". */
  readonly words: string;
  /** The same with how it was made. */
  readonly sentence: string;
}

const CALM_MPS = 0.25; // our choice: less is not said

const GROUND = {
  open: 'over open ground',
  'roughly-open': 'over ground with hedges and scattered trees',
  rough: 'over rough ground',
} as const;

/** Wind at circuit height of a day: as typed, or by the logarithmic law from the surface wind (WMO-No. 8). */
export function windAbove(weather: Weather, runway: Runway, { terrain }: Aerodrome): WindAboveBrief {
  const velocity = new Float64Array(WIND_LENGTH);
  meanWind(windOf(weather, runway, terrain), runway.circuitHeightM, velocity);
  const east = velocity[WIND.east] as number;
  const north = velocity[WIND.north] as number;
  const speedMps = Math.sqrt(east * east + north * north);
  const fromRadM = magneticFromTrue(atan2(-east, -north), runway.variationRad);
  const typed = weather.above !== undefined;
  const feet = thousandsTo(ftFromM(runway.circuitHeightM), 10);
  const said =
    speedMps < CALM_MPS ? 'calm' : `${headingDigits(headingDeg(fromRadM))}° ${fixed(ktFromMps(speedMps))} kt`;
  const made = typed ? 'as you gave it' : `worked out from the surface wind ${GROUND[terrain]}`;
  return {
    fromRadM,
    speedMps,
    heightM: runway.circuitHeightM,
    typed,
    words: `${feet} ft up: ${said}`,
    sentence: `Drift is from the wind at circuit height: ${said}, ${made}.`,
  };
}

/** One in sixty for the head: "60 × 9 ÷ 84 ≈ 6°"; null where there is nothing to allow for. */
export const oneInSixty = (acrossMps: number, tasMps: number): string | null => {
  const acrossKt = Math.round(Math.abs(ktFromMps(acrossMps)));
  const tasKt = Math.round(ktFromMps(tasMps));
  if (acrossKt === 0) return null;
  return `60 × ${acrossKt} ÷ ${tasKt} ≈ ${fixed((60 * acrossKt) / tasKt)}°`;
};
