/**
 * The only place where the size of a unit is written down.
 * Source: International System of Units brochure, 9th edition (BIPM 2019) and its table of accepted
 * non-SI units; the foot is the international foot of 1959, the nautical mile that of 1929.
 */

/** Standard acceleration of free fall, m/s2 (exact, 3rd CGPM 1901). */
export const G0_MPS2 = 9.80665;

/** Metres in an international foot (exact). */
export const M_PER_FT = 0.3048;

/** Metres in an international nautical mile (exact). */
export const M_PER_NMI = 1852;

/** Seconds in a minute and in an hour. */
export const S_PER_MIN = 60;
const S_PER_H = 3600;

/** Metres a second in a knot: one nautical mile an hour. */
export const MPS_PER_KT = M_PER_NMI / S_PER_H;

/** Metres a second in a foot a minute. */
export const MPS_PER_FPM = M_PER_FT / S_PER_MIN;

/** Radians in a degree. */
export const RAD_PER_DEG = Math.PI / 180;

/** Pascals in a hectopascal. */
export const PA_PER_HPA = 100;

/** Pascals in an inch of mercury at 0 degrees Celsius (ICAO Annex 5). */
export const PA_PER_INHG = 3386.389;

/** Kelvin at 0 degrees Celsius (exact). */
export const KELVIN_AT_0_DEGC = 273.15;
