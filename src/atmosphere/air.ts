/**
 * The air of a day: standard lapse rate from the temperature actually found at the aerodrome, and pressure
 * built from it hydrostatically, so that *at the aerodrome elevation an altimeter set to QNH reads the
 * elevation*. Above and below, the altimeter errs as it does in the trade: in air warmer than standard the
 * aeroplane is higher than it reads (about 4 % of height for 10 degrees).
 *
 * With one lapse rate everywhere the sums are closed:
 *   T = Ta - L (h - elevation),  p = pa (T / Ta)^n,  density = rhoa (T / Ta)^(n-1)
 * and the altimeter is exactly linear: indicated - elevation = (h - elevation) Tisa(PAa) / Ta.
 */
import { exp, log } from '../maths/functions.ts';
import {
  densityAltitudeFromKgpm3,
  gasDensityKgpm3,
  heldAltitudeM,
  isaPressurePa,
  isaTemperatureK,
  LAPSE_KPM,
  PRESSURE_EXPONENT,
  pressureAltitudeFromPa,
} from './isa.ts';

/** Elevation of the aerodrome, temperature there, and QNH. */
export interface Air {
  readonly elevationM: number;
  readonly temperatureK: number;
  readonly qnhPa: number;
}

/** The same with what does not change during a flight worked out once: for the inner loop. */
export interface AirColumn extends Air {
  /** Pressure altitude of QNH: 0 on a standard day, below 0 in high pressure. */
  readonly qnhAltitudeM: number;
  /** At the aerodrome elevation. */
  readonly elevationPressurePa: number;
  readonly elevationDensityKgpm3: number;
  /** Feet the altimeter shows for each foot really climbed. */
  readonly altimeterRatio: number;
}

/** Works out what is constant in a day's air. */
export function airColumn(air: Air): AirColumn {
  const qnhAltitudeM = pressureAltitudeFromPa(air.qnhPa);
  const elevationPressurePa = isaPressurePa(air.elevationM + qnhAltitudeM);
  return {
    elevationM: air.elevationM,
    temperatureK: air.temperatureK,
    qnhPa: air.qnhPa,
    qnhAltitudeM,
    elevationPressurePa,
    elevationDensityKgpm3: gasDensityKgpm3(elevationPressurePa, air.temperatureK),
    altimeterRatio: isaTemperatureK(air.elevationM + qnhAltitudeM) / air.temperatureK,
  };
}

/** Actual temperature at an altitude above sea level. */
export function temperatureK(air: Air, altitudeAmslM: number): number {
  return air.temperatureK - LAPSE_KPM * (heldAltitudeM(altitudeAmslM) - air.elevationM);
}

/** Static pressure at an altitude, from a column. */
export function columnPressurePa(column: AirColumn, altitudeAmslM: number): number {
  return (
    column.elevationPressurePa *
    exp(PRESSURE_EXPONENT * log(temperatureK(column, altitudeAmslM) / column.temperatureK))
  );
}

const DENSITY_EXPONENT = PRESSURE_EXPONENT - 1;
/** Binomial series of (1 + x)^n - 1 over x, and where it is as good as exact (its next term below 1e-14). */
const SERIES = binomialSeries(DENSITY_EXPONENT, 8);
const SERIES_HOLDS_TO = 0.06;

/** n, n (n-1) / 2, n (n-1) (n-2) / 6 and so on. */
function binomialSeries(n: number, terms: number): Float64Array {
  const series = new Float64Array(terms);
  let term = 1;
  for (let k = 0; k < terms; k++) {
    term *= (n - k) / (k + 1);
    series[k] = term;
  }
  return series;
}

/** Density at an altitude, from a column. In the circuit T / Ta is near 1, and a short series spares the powers. */
export function columnDensityKgpm3(column: AirColumn, altitudeAmslM: number): number {
  const x = temperatureK(column, altitudeAmslM) / column.temperatureK - 1;
  if (Math.abs(x) > SERIES_HOLDS_TO) return column.elevationDensityKgpm3 * exp(DENSITY_EXPONENT * log(1 + x));
  let sum = 0;
  for (let k = SERIES.length - 1; k >= 0; k--) sum = (sum + SERIES[k]!) * x;
  return column.elevationDensityKgpm3 * (1 + sum);
}

/** What an altimeter set to QNH reads at an altitude, from a column. */
export function columnIndicatedAltitudeM(column: AirColumn, altitudeAmslM: number): number {
  return column.elevationM + (altitudeAmslM - column.elevationM) * column.altimeterRatio;
}

/** Density at an altitude above sea level. */
export const densityKgpm3 = (air: Air, altitudeAmslM: number): number =>
  columnDensityKgpm3(airColumn(air), altitudeAmslM);

/** The standard altitude of the same density. */
export const densityAltitudeM = (air: Air, altitudeAmslM: number): number =>
  densityAltitudeFromKgpm3(densityKgpm3(air, altitudeAmslM));
