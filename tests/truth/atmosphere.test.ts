// The standard atmosphere, pressure altitude and density altitude against the standard and the pilot's handbook.
import { describe, expect, it } from 'vitest';
import { airColumn, densityAltitudeM } from '../../src/atmosphere/air.ts';
import {
  densityAltitudeFromKgpm3,
  gasDensityKgpm3,
  isaDensityKgpm3,
  isaPressurePa,
  isaTemperatureK,
  pressureAltitudeFromPa,
} from '../../src/atmosphere/isa.ts';
import { ftFromM, mFromFt, paFromHpa } from '../../src/units/conversions.ts';
import {
  ALTIMETER_SETTINGS,
  CHART_DENSITY_ALTITUDE,
  CHART_DENSITY_ALTITUDE_EXACT,
  DENSITY_ALTITUDE,
  HANDBOOK_DENSITY_ALTITUDE,
  HANDBOOK_DENSITY_ALTITUDE_EXACT,
  HANDBOOK_SETTING,
  ISA_BY_HEIGHT,
  ISA_TROPOPAUSE,
  PRESSURE_ALTITUDE,
} from '../reference/atmosphere.ts';
import { trust } from '../support/trust-table.ts';

const PA_PER_INHG = 3386.389;
const kelvinFromFahrenheit = (f: number): number => ((f - 32) * 5) / 9 + 273.15;

const relative = (found: number, expected: number): number => Math.abs(found / expected - 1);

describe('standard atmosphere against ICAO Doc 7488', () => {
  // 1e-5 relative, or half the last printed digit where that is wider
  it.each(ISA_BY_HEIGHT.rows)('at %d ft', (ft, kelvin, hpa, inHg, density, sigma) => {
    const altitudeM = mFromFt(ft);
    const pressurePa = isaPressurePa(altitudeM);
    trust('Standard pressure', ISA_BY_HEIGHT, pressurePa, paFromHpa(hpa), '%');
    trust('Standard density', ISA_BY_HEIGHT, isaDensityKgpm3(altitudeM), density, '%');
    expect(relative(isaTemperatureK(altitudeM), kelvin)).toBeLessThan(1e-6);
    expect(relative(pressurePa, paFromHpa(hpa))).toBeLessThan(1e-5);
    expect(relative(pressurePa / PA_PER_INHG, inHg)).toBeLessThan(1e-5);
    expect(relative(isaDensityKgpm3(altitudeM), density)).toBeLessThan(1e-5);
    expect(relative(isaDensityKgpm3(altitudeM) / isaDensityKgpm3(0), sigma)).toBeLessThan(1e-5);
  });

  it('meets the 11 km row of the standard', () => {
    const [[heightM, kelvin, pa]] = ISA_TROPOPAUSE.rows;
    trust('Standard pressure at 11 km', ISA_TROPOPAUSE, isaPressurePa(heightM), pa, '%');
    expect(isaTemperatureK(heightM)).toBeCloseTo(kelvin, 10);
    expect(relative(isaPressurePa(heightM), pa)).toBeLessThan(1e-5);
  });
});

describe('pressure altitude and density altitude', () => {
  it.each(PRESSURE_ALTITUDE.rows)('%d hPa lies at %d ft', (hpa, ft) => {
    const found = ftFromM(pressureAltitudeFromPa(paFromHpa(hpa)));
    trust('Pressure altitude', PRESSURE_ALTITUDE, found, ft, 'ft');
    expect(Math.abs(found - ft)).toBeLessThan(0.6);
  });

  it.each(ALTIMETER_SETTINGS.rows)('an altimeter setting of %d inHg adds %d ft', (inHg, ft) => {
    for (const elevationFt of [0, 2000, 5883]) {
      const elevationM = mFromFt(elevationFt);
      const air = { elevationM, temperatureK: isaTemperatureK(elevationM), qnhPa: inHg * PA_PER_INHG };
      expect(
        Math.abs(ftFromM(pressureAltitudeFromPa(airColumn(air).elevationPressurePa)) - elevationFt - ft),
      ).toBeLessThan(0.7);
      expect(Math.abs(ftFromM(airColumn(air).qnhAltitudeM) - ft)).toBeLessThan(0.7);
    }
  });

  it("adds what the handbook's table of settings adds", () => {
    const [[inHg, ft]] = HANDBOOK_SETTING.rows;
    const elevationM = mFromFt(HANDBOOK_DENSITY_ALTITUDE.rows[0][0]);
    const air = { elevationM, temperatureK: isaTemperatureK(elevationM), qnhPa: inHg * PA_PER_INHG };
    const found = ftFromM(pressureAltitudeFromPa(airColumn(air).elevationPressurePa) - elevationM);
    trust('Altimeter setting to pressure altitude', HANDBOOK_SETTING, found, ft, 'ft');
    expect(Math.abs(found - ft)).toBeLessThan(0.7);
  });

  it("works the handbook's first density-altitude sample", () => {
    const [[elevationFt, degF, inHg, pressureFt, chartFt]] = HANDBOOK_DENSITY_ALTITUDE.rows;
    const [[exactPressureFt, exactDensityFt]] = HANDBOOK_DENSITY_ALTITUDE_EXACT.rows;
    const elevationM = mFromFt(elevationFt);
    const air = { elevationM, temperatureK: kelvinFromFahrenheit(degF), qnhPa: inHg * PA_PER_INHG };
    const foundPressureFt = ftFromM(pressureAltitudeFromPa(airColumn(air).elevationPressurePa));
    const foundDensityFt = ftFromM(densityAltitudeM(air, elevationM));
    trust('Pressure altitude of a sample', HANDBOOK_DENSITY_ALTITUDE, foundPressureFt, pressureFt, 'ft');
    trust('Density altitude of a sample', HANDBOOK_DENSITY_ALTITUDE, foundDensityFt, chartFt, 'ft');
    expect(Math.abs(foundPressureFt - exactPressureFt)).toBeLessThan(0.2);
    expect(Math.abs(foundDensityFt - exactDensityFt)).toBeLessThan(1);
  });

  it('works the chart example', () => {
    const [[pressureFt, degF, chartFt]] = CHART_DENSITY_ALTITUDE.rows;
    const density = gasDensityKgpm3(isaPressurePa(mFromFt(pressureFt)), kelvinFromFahrenheit(degF));
    const ft = ftFromM(densityAltitudeFromKgpm3(density));
    trust('Density altitude read off a chart', CHART_DENSITY_ALTITUDE, ft, chartFt, 'ft');
    expect(Math.abs(ft - CHART_DENSITY_ALTITUDE_EXACT.rows[0][0])).toBeLessThan(1);
    // As well as the chart can be read
    expect(Math.abs(ft - chartFt)).toBeLessThan(200);
  });

  it.each(DENSITY_ALTITUDE.rows)(
    'pressure altitude %d ft at %d degrees has density altitude %d ft',
    (paFt, degC, daFt) => {
      const density = gasDensityKgpm3(isaPressurePa(mFromFt(paFt)), degC + 273.15);
      const found = ftFromM(densityAltitudeFromKgpm3(density));
      trust('Density altitude', DENSITY_ALTITUDE, found, daFt, 'ft');
      expect(Math.abs(found - daFt)).toBeLessThan(1);
    },
  );
});
