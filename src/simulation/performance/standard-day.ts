import { isaTemperatureK } from '../../atmosphere/isa.ts';
import { degCFromKelvin, mFromFt } from '../../units/conversions.ts';
import type { Weather } from '../scenario.ts';

/** A calm, dry day of the standard atmosphere at an elevation (ICAO Doc 7488), to two decimals. */
export const standardDay = (elevationFt: number): Weather => ({
  windFromDegM: 0,
  windKt: 0,
  gustKt: null,
  turbulence: 'none',
  temperatureC: Math.round(100 * degCFromKelvin(isaTemperatureK(mFromFt(elevationFt)))) / 100 + 0,
  dewPointC: null,
  qnhHpa: 1013.25,
});
