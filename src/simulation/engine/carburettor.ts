import { exp } from '../../maths/functions.ts';
import { lookup } from '../../maths/tables.ts';
import type { Weather } from '../scenario.ts';

/** Relative humidity from temperature and dew point (Magnus form, coefficients as in WMO-No. 8). */
export const relativeHumidity = (temperatureC: number, dewPointC: number): number => {
  const vapour = (t: number) => exp((17.62 * t) / (243.12 + t));
  return Math.min(1, vapour(dewPointC) / vapour(temperatureC));
};

/**
 * How readily ice forms in the carburettor, 0 none to 1 severe. Anchors (US DOI SA 11-01): severe from 50 to
 * 70 °F above 60 % humidity, possible to 100 °F, rare below 25 % humidity. Between them straight lines (estimate).
 */
export const icingSeverity = (weather: Weather): number => {
  if (weather.dewPointC === null) return 0;
  const warmth = lookup([-10, 10, 21, 38], [0, 1, 1, 0], weather.temperatureC);
  const damp = lookup([0.25, 0.6], [0, 1], relativeHumidity(weather.temperatureC, weather.dewPointC));
  return warmth * damp;
};

const FULL_ICE_S = 240; // severe air, throttle closed, no heat (estimate)
const MELT_S = 25; // heat on (estimate)
/** Power lost when the ice is full. */
export const FULL_ICE_LOSS = 0.55; // estimate

/** Ice after one step of `dtS`: grows faster with a closed throttle, melts under heat. */
export const iceAfter = (
  ice: number,
  severity: number,
  throttle: number,
  heat: number,
  dtS: number,
): number => {
  const rate = heat > 0 ? -1 / MELT_S : (severity * (1 - 0.7 * throttle)) / FULL_ICE_S;
  const next = ice + rate * dtS;
  return next < 0 ? 0 : next > 1 ? 1 : next;
};
