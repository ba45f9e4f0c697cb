/**
 * The standard atmosphere, troposphere only. Source: ICAO Doc 7488 / US Standard Atmosphere 1976.
 * Altitudes are geopotential; the model takes its geometric heights for them (pressure is then 0.02 % off
 * at 10,000 ft). Held level outside -2,000 m to 11,000 m.
 */
import { pow } from '../maths/functions.ts';
import { G0_MPS2 } from '../units/conversions.ts';

const T0_K = 288.15;
const P0_PA = 101325;
/** Temperature lost a metre. */
export const LAPSE_KPM = 0.0065;
/** Specific gas constant of dry air. */
export const R_JPKGK = 287.05287;
/** Exponent of pressure in the temperature ratio, 5.25588. */
export const PRESSURE_EXPONENT = G0_MPS2 / (R_JPKGK * LAPSE_KPM);
export const RHO0_KGPM3 = P0_PA / (R_JPKGK * T0_K);

const LOWEST_M = -2000;
const HIGHEST_M = 11000;

/** An altitude held inside the range where the formulae hold. */
export const heldAltitudeM = (altitudeM: number): number =>
  Math.min(Math.max(altitudeM, LOWEST_M), HIGHEST_M);

/** Standard temperature at a pressure altitude. */
export const isaTemperatureK = (altitudeM: number): number => T0_K - LAPSE_KPM * heldAltitudeM(altitudeM);

/** Standard pressure at a pressure altitude. */
export const isaPressurePa = (altitudeM: number): number =>
  P0_PA * pow(isaTemperatureK(altitudeM) / T0_K, PRESSURE_EXPONENT);

/** Standard density at an altitude. */
export const isaDensityKgpm3 = (altitudeM: number): number =>
  RHO0_KGPM3 * pow(isaTemperatureK(altitudeM) / T0_K, PRESSURE_EXPONENT - 1);

/** The pressure altitude of a static pressure: what an altimeter set to 1,013.25 hPa shows. */
export const pressureAltitudeFromPa = (staticPa: number): number =>
  (T0_K / LAPSE_KPM) * (1 - pow(staticPa / P0_PA, 1 / PRESSURE_EXPONENT));

/** Density of dry air (ideal gas). */
export const gasDensityKgpm3 = (staticPa: number, temperatureK: number): number =>
  staticPa / (R_JPKGK * temperatureK);

/** The altitude at which standard air is as thin as this. */
export const densityAltitudeFromKgpm3 = (densityKgpm3: number): number =>
  (T0_K / LAPSE_KPM) * (1 - pow(densityKgpm3 / RHO0_KGPM3, 1 / (PRESSURE_EXPONENT - 1)));
