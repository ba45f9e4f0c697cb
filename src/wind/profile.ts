/**
 * Mean wind by height. Neutral log law u(z) / u10 = ln(z / z0) / ln(10 / z0), as in WMO-No. 8 and
 * MIL-F-8785C (which has it from 3 ft to 1,000 ft); level above gradient height and below 3 ft.
 */

import { log, logInPlace, sinCosInPlace } from '../maths/functions.ts';
import { WIND } from './velocity.ts';
import type { Wind } from './wind.ts';

/** Height at which the surface wind is measured and reported (WMO-No. 8). */
export const REFERENCE_HEIGHT_M = 10;
/** The law is held at this height, or at 1.5 roughness lengths where that is higher. */
const LOWEST_HEIGHT_M = 0.9; // our choice: the law says nothing among the grass; a wheel-high aeroplane stays above
const LOWEST_ROUGHNESSES = 1.5; // our choice: where the law still gives some wind

/** Last roughness asked for, its logarithm and 1 / ln(10 / z0): a day has one, and a logarithm is dear. */
const SCALE = { roughness: 0, logarithm: 1, perLog: 2 } as const; // definition: places
const lastScale = new Float64Array([Number.NaN, 0, 0]);

function layScale(roughnessM: number): void {
  if (lastScale[SCALE.roughness] === roughnessM) return;
  lastScale[SCALE.roughness] = roughnessM;
  lastScale[SCALE.logarithm] = log(roughnessM);
  lastScale[SCALE.perLog] = 1 / (log(REFERENCE_HEIGHT_M) - lastScale[SCALE.logarithm]!);
}

/** Of an array of one. */
const ONLY = 0; // definition: a place
const height = new Float64Array(1);

/** Wind at a height over wind at 10 m by the log law. */
export function logLawFactor(roughnessM: number, heightM: number): number {
  layScale(roughnessM);
  height[ONLY] = heightM;
  logInPlace(height, ONLY);
  return (height[ONLY]! - lastScale[SCALE.logarithm]!) * lastScale[SCALE.perLog]!;
}

/** Height above the ground held between the ends of the profile. */
function heldHeightM(wind: Wind, heightM: number): number {
  if (heightM >= wind.gradientHeightM) return wind.gradientHeightM;
  const rough = LOWEST_ROUGHNESSES * wind.roughnessM;
  const lowest = rough > LOWEST_HEIGHT_M ? rough : LOWEST_HEIGHT_M;
  return heightM > lowest ? heightM : lowest;
}

/** Mean wind at a height above the ground over mean wind at 10 m. */
export const meanWindFactor = (wind: Wind, heightM: number): number =>
  logLawFactor(wind.roughnessM, heldHeightM(wind, heightM));

/**
 * Direction where the wind has this factor of its 10 m speed: the veer grows with the logarithm of height, as the
 * speed does, from nothing at 10 m to the whole at gradient height (common practice).
 */
function fromRadAtFactor(wind: Wind, factor: number): number {
  if (wind.veerRad === 0 || factor <= 1) return wind.fromRadT;
  return (
    wind.fromRadT + (wind.veerRad * (factor - 1)) / (logLawFactor(wind.roughnessM, wind.gradientHeightM) - 1)
  );
}

/** Sine and cosine of the last direction asked for, and that direction: without veer a day has one. */
const DIRECTION = { sine: 0, cosine: 1, from: 2 } as const; // definition: places
const direction = new Float64Array([0, 1, 0]);

function layDirection(fromRad: number): void {
  if (direction[DIRECTION.from] === fromRad) return;
  direction[DIRECTION.sine] = fromRad;
  sinCosInPlace(direction, DIRECTION.sine);
  direction[DIRECTION.from] = fromRad;
}

/**
 * How much of what is known above holds at a height: nothing up to 10 m, all from its height up, between by the
 * logarithm of height, as the wind itself grows.
 */
function shareOfAbove(heightM: number, knownAtM: number): number {
  if (heightM <= REFERENCE_HEIGHT_M) return 0;
  if (heightM >= knownAtM) return 1;
  return log(heightM / REFERENCE_HEIGHT_M) / log(knownAtM / REFERENCE_HEIGHT_M);
}

/**
 * Velocity of the air at a height above the ground, into `out[WIND.east]` and `out[WIND.north]`: where it blows
 * TO. `gustMps` is what a gust adds at 10 m at this instant; it follows the same profile.
 */
export function windWithGust(wind: Wind, heightM: number, gustMps: number, out: Float64Array): void {
  const factor = meanWindFactor(wind, heightM);
  let speedMps = (wind.speedMps + gustMps) * factor;
  let fromRad = fromRadAtFactor(wind, factor);
  const { above } = wind;
  if (above !== null) {
    const share = shareOfAbove(heightM, above.heightM);
    speedMps += share * above.addMps;
    fromRad += share * above.turnRad;
  }
  layDirection(fromRad);
  out[WIND.east] = -speedMps * direction[DIRECTION.sine]!;
  out[WIND.north] = -speedMps * direction[DIRECTION.cosine]!;
}

/** Velocity of the air in the mean wind, into `out[WIND.east]` and `out[WIND.north]`: where it blows TO. */
export const meanWind = (wind: Wind, heightM: number, out: Float64Array): void =>
  windWithGust(wind, heightM, 0, out);
