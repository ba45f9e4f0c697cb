import { describe, expect, it } from 'vitest';
import {
  airColumn,
  columnIndicatedAltitudeM,
  columnPressurePa,
  densityKgpm3,
  temperatureK,
} from '../../../src/atmosphere/air.ts';
import { isaDensityKgpm3, isaPressurePa, pressureAltitudeFromPa } from '../../../src/atmosphere/isa.ts';
import { kelvinFromDegC, mFromFt, paFromHpa } from '../../../src/units/conversions.ts';
import { standardAir } from '../../support/airborne.ts';

const high = { elevationM: mFromFt(4600), temperatureK: kelvinFromDegC(24), qnhPa: paFromHpa(1019) };

describe('the air of a day', () => {
  it('is the standard atmosphere on a standard day, wherever the aerodrome lies', () => {
    for (const elevationM of [0, 600, 1400]) {
      const air = standardAir(elevationM);
      for (const altitudeM of [0, 300, 1500, 3000]) {
        expect(columnPressurePa(airColumn(air), altitudeM) / isaPressurePa(altitudeM)).toBeCloseTo(1, 12);
        expect(densityKgpm3(air, altitudeM) / isaDensityKgpm3(altitudeM)).toBeCloseTo(1, 12);
        expect(columnIndicatedAltitudeM(airColumn(air), altitudeM)).toBeCloseTo(altitudeM, 9);
      }
    }
  });

  it('lets the altimeter on QNH read the elevation at the aerodrome, warm or cold, high or low pressure', () => {
    for (const temperature of [-20, 15, 35]) {
      for (const qnhHpa of [975, 1013.25, 1040]) {
        const air = { elevationM: 420, temperatureK: kelvinFromDegC(temperature), qnhPa: paFromHpa(qnhHpa) };
        expect(columnIndicatedAltitudeM(airColumn(air), 420)).toBeCloseTo(420, 9);
        expect(temperatureK(air, 420)).toBeCloseTo(kelvinFromDegC(temperature), 12);
      }
    }
  });

  it('gives the altimeter the reading that its own pressure would give', () => {
    const column = airColumn(high);
    for (const altitudeM of [1000, 1402, 1700, 2500]) {
      const byPressure = pressureAltitudeFromPa(columnPressurePa(column, altitudeM)) - column.qnhAltitudeM;
      expect(columnIndicatedAltitudeM(column, altitudeM)).toBeCloseTo(byPressure, 7);
    }
  });

  // Hydrostatic equation dp/dh = -density g0, checked by central difference.
  it('carries its own weight', () => {
    for (const altitudeM of [100, 1402, 3000]) {
      const slope =
        (columnPressurePa(airColumn(high), altitudeM + 1) -
          columnPressurePa(airColumn(high), altitudeM - 1)) /
        2;
      expect(slope / (-densityKgpm3(high, altitudeM) * 9.80665)).toBeCloseTo(1, 6);
    }
  });

  // ICAO Doc 8168 rule of thumb, from memory: altimeter error 4 % of height for 10 degrees off standard.
  it('makes the altimeter read low in warm air, about 4 % of height for 10 degrees', () => {
    const warm = { ...standardAir(0), temperatureK: kelvinFromDegC(25) };
    const lowBy = 1 - columnIndicatedAltitudeM(airColumn(warm), 1000) / 1000;
    expect(lowBy).toBeGreaterThan(0.03);
    expect(lowBy).toBeLessThan(0.045);
  });

  it('stays finite at absurd altitudes', () => {
    for (const altitudeM of [-1e6, 1e6]) {
      expect(densityKgpm3(high, altitudeM)).toBeGreaterThan(0);
      expect(Number.isFinite(columnPressurePa(airColumn(high), altitudeM))).toBe(true);
    }
  });
});
