/**
 * How strong turbulence is by height, in the wind that blows. Two kinds add up in variance, as in Panofsky et al.
 * 1977 (Boundary-Layer Met. 11, 355) and AERMOD (EPA-454/R-03-004, section 4.1.5):
 *
 * Mechanical, made by the wind over the ground: MIL-F-8785C with the mean wind that blows at 20 ft, sigma_w =
 * 0.1 W20 at every height, sigma_u = sigma_v = sigma_w / k^0.4. (The source's own profile with its z0 of 0.15 ft
 * makes that 1.22 u*, short grass 1.33; measured over land 1.25 to 1.3 u*. Over rough ground, which the source does
 * not mean, it is too little: 0.8 u* over z0 0.25 m.) Never more than the level has.
 * Convective, what the level has beyond that: all three alike through the mixed layer, but the surface blocks the
 * vertical motion, and its variance falls to nothing at the ground as z^(2/3) in the lowest tenth of the mixed
 * layer: free convection by measurement (Kaimal et al. 1976, J. Atmos. Sci. 33, 2152; Lenschow et al. 1980, 37,
 * 1313), and by theory what a plane wall does to turbulence (Hunt & Graham 1978, J. Fluid Mech. 84, 209).
 *
 * So in the wind that belongs to the level all is as in MIL-F-8785C; in any wind the vertical gust is from 300 ft
 * up, and all three from 1,000 ft. In dead calm no vertical gust reaches the ground.
 */
import { pow } from '../maths/functions.ts';
import { mFromFt } from '../units/conversions.ts';
import { levelSigmaMps } from './dryden.ts';
import { logLawFactor } from './profile.ts';
import type { Wind } from './wind.ts';

/** A tenth of a mixed layer of 3,000 ft, a fair day's (estimate). */
const BLOCKED_BELOW_FT = 300;
const W20_HEIGHT_M = mFromFt(20); // MIL-F-8785C

/** Share of the variance of vertical convective gusts that the ground leaves at a held height. */
export const unblockedShare = (heightFt: number): number =>
  heightFt < BLOCKED_BELOW_FT ? pow(heightFt / BLOCKED_BELOW_FT, 2 / 3) : 1;

/** Last roughness asked for, and its wind at 20 ft over the wind at 10 m. */
const last = { roughnessM: Number.NaN, factor: 0 };

/** Standard deviation of the vertical gusts that the wind makes by itself. */
const mechanicalSigmaMps = (wind: Wind): number => {
  if (last.roughnessM !== wind.roughnessM) {
    last.roughnessM = wind.roughnessM;
    last.factor = logLawFactor(wind.roughnessM, W20_HEIGHT_M);
  }
  return 0.1 * wind.speedMps * last.factor;
};

/** Places of what `layStrength` lays, m/s: standard deviations along and across, and up. */
export const HORIZONTAL = 0; // definition: a place
export const VERTICAL = 1; // definition: a place

/** Strengths at a point; `root` is `bracketRoot` and `unblocked` is `unblockedShare` at its height. */
export function layStrength(wind: Wind, root: number, unblocked: number, out: Float64Array): void {
  const level = levelSigmaMps(wind.turbulence);
  const ofWind = mechanicalSigmaMps(wind);
  const mechanical = ofWind < level ? ofWind * ofWind : level * level;
  const convective = level * level - mechanical;
  out[HORIZONTAL] = Math.sqrt(mechanical / (root * root) + convective);
  out[VERTICAL] = Math.sqrt(mechanical + convective * unblocked);
}
