/**
 * Lengths and strengths of turbulence after Dryden, low-altitude form of MIL-F-8785C, in the wind at 20 ft that
 * belongs to each level (light 15 kt, moderate 30 kt). What another wind makes of the strengths: `strength.ts`.
 *
 *   Lw = h, Lu = Lv = h / k^1.2, sigma_w = 0.1 W20, sigma_u = sigma_v = sigma_w / k^0.4,
 *   k = 0.177 + 0.000823 h, h in feet, 10 to 1,000 ft. From 1,000 to 2,000 ft the lengths go straight to
 *   1,750 ft, where they stay; the sigmas stay as at 1,000 ft.
 *
 * Below 10 ft the source says nothing. Lu and the ratio of the sigmas stay; Lw goes on with the height, as the
 * vertical eddies of the surface layer do, whose spectra at all heights are one over n z / U (Kaimal et al. 1972,
 * Quart. J. R. Met. Soc. 98, 563): a surface leaves no room for eddies larger than the distance to it.
 */
import { pow } from '../maths/functions.ts';
import { ftFromM, mpsFromKt } from '../units/conversions.ts';
import type { TurbulenceLevel } from './wind.ts';

/** Wind at 20 ft that belongs to each level (MIL-F-8785C). */
const W20_MPS: Readonly<Record<TurbulenceLevel, number>> = {
  none: 0,
  light: mpsFromKt(15),
  moderate: mpsFromKt(30),
};
/** Below this the source says nothing. */
const SOURCE_LOWEST_FT = 10; // MIL-F-8785C
/** No wing that flies is lower. */
const LOWEST_FT = 1; // our choice: a bound on the sums
const LOW_TOP_FT = 1000; // MIL-F-8785C
export const HIGH_FT = 2000; // MIL-F-8785C
const HIGH_LENGTH_FT = 1750; // MIL-F-8785C

/** A height above the ground held to where the lengths change with it. */
export const heldFt = (heightM: number): number => {
  const ft = ftFromM(heightM);
  return ft > HIGH_FT ? HIGH_FT : ft > LOWEST_FT ? ft : LOWEST_FT;
};

const sourceFt = (heightFt: number): number => (heightFt > SOURCE_LOWEST_FT ? heightFt : SOURCE_LOWEST_FT);

/** k^0.4, the one power all the formulae share; 1 from 1,000 ft up. */
export const bracketRoot = (heightFt: number): number =>
  heightFt >= LOW_TOP_FT ? 1 : pow(0.177 + 0.000823 * sourceFt(heightFt), 0.4);

/** Length above 1,000 ft, where all three are one. */
const highLengthFt = (heightFt: number): number =>
  LOW_TOP_FT + ((HIGH_LENGTH_FT - LOW_TOP_FT) * (heightFt - LOW_TOP_FT)) / (HIGH_FT - LOW_TOP_FT);

/** Length of the gusts along and across at a held height, Lu = Lv; `root` is `bracketRoot` there. */
export const horizontalLengthFt = (heightFt: number, root: number): number =>
  heightFt > LOW_TOP_FT ? highLengthFt(heightFt) : sourceFt(heightFt) / (root * root * root);

/** Length of the vertical gusts at a held height, Lw. */
export const verticalLengthFt = (heightFt: number): number =>
  heightFt > LOW_TOP_FT ? highLengthFt(heightFt) : heightFt;

/** Standard deviation of the vertical gust in the wind that belongs to the level. */
export const levelSigmaMps = (level: TurbulenceLevel): number => 0.1 * W20_MPS[level];
