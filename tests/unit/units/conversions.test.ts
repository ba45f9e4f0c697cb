import { describe, expect, it } from 'vitest';
import * as units from '../../../src/units/conversions.ts';

// Exact definitions: SI brochure (BIPM 2019); international foot 1959, nautical mile 1929.
const EXACT: readonly [string, (x: number) => number, number, number][] = [
  ['1,000 ft is 304.8 m', units.mFromFt, 1000, 304.8],
  ['1 NM is 1,852 m', units.mFromNmi, 1, 1852],
  ['1 kt is 0.514444 m/s', units.mpsFromKt, 1, 0.5144444444444445],
  ['500 ft/min is 2.54 m/s', units.mpsFromFpm, 500, 2.54],
  ['180 degrees is pi', units.radFromDeg, 180, Math.PI],
  ['15 degrees Celsius is 288.15 K', units.kelvinFromDegC, 15, 288.15],
  ['1,013.25 hPa is 101,325 Pa', units.paFromHpa, 1013.25, 101325],
  ['45 revolutions a second is 2,700 rpm', units.rpmFromRevps, 45, 2700],
];

const PAIRS: readonly [(x: number) => number, (x: number) => number][] = [
  [units.mFromFt, units.ftFromM],
  [units.mpsFromKt, units.ktFromMps],
  [units.mpsFromFpm, units.fpmFromMps],
  [units.radFromDeg, units.degFromRad],
  [units.mFromNmi, units.nmiFromM],
  [units.kelvinFromDegC, units.degCFromKelvin],
  [units.paFromHpa, units.hpaFromPa],
  [units.rpmFromRevps, units.revpsFromRpm],
];

describe('conversions', () => {
  it.each(EXACT)('%s', (_sentence, convert, given, expected) => {
    expect(Math.abs(convert(given) / expected - 1)).toBeLessThan(1e-15);
  });

  it('come back to where they started', () => {
    for (const [there, back] of PAIRS) {
      for (const x of [-40, 0, 0.5, 65, 2300]) expect(back(there(x))).toBeCloseTo(x, 10);
    }
  });

  it('have the standard acceleration of free fall', () => {
    expect(units.G0_MPS2).toBe(9.80665);
  });
});
