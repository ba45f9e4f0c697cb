import { wrapPi, wrapTwoPi } from '../units/angles.ts';
import type { Wind } from './wind.ts';

/** Where a wind that changes during a flight gets to; evenly, direction the short way round, and then it stays. */
export interface WindDrift {
  readonly fromRadT: number;
  readonly speedMps: number;
  readonly overS: number;
}

/** A wind that is filled anew. */
export type ChangingWind = { -readonly [K in keyof Wind]: Wind[K] };

/** The wind at a time, into `into`. Gusts stay as far above the mean as they were. */
export const driftedWind = (wind: Wind, drift: WindDrift, timeS: number, into: ChangingWind): Wind => {
  const share = timeS >= drift.overS ? 1 : timeS / drift.overS;
  into.fromRadT = wrapTwoPi(wind.fromRadT + share * wrapPi(drift.fromRadT - wind.fromRadT));
  into.speedMps = wind.speedMps + share * (drift.speedMps - wind.speedMps);
  into.gustMps = wind.gustMps === null ? null : wind.gustMps + into.speedMps - wind.speedMps;
  into.roughnessM = wind.roughnessM;
  into.gradientHeightM = wind.gradientHeightM;
  into.veerRad = wind.veerRad;
  into.turbulence = wind.turbulence;
  into.above = wind.above;
  return into;
};
