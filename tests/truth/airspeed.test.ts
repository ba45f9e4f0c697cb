// Calibrated to true airspeed against full compressible sums. The model leaves compressibility out; what that may cost
// stands in the reference beside them.
import { describe, expect, it } from 'vitest';
import { iasFromTas, tasFromIas } from '../../src/atmosphere/airspeed.ts';
import { gasDensityKgpm3, isaDensityKgpm3, isaPressurePa } from '../../src/atmosphere/isa.ts';
import { dynamicPressurePa } from '../../src/pilot/holds/attitude.ts';
import { ktFromMps, mFromFt, mpsFromKt } from '../../src/units/conversions.ts';
import {
  COMPRESSIBILITY,
  DYNAMIC_PRESSURE,
  TRUE_AIRSPEED,
  TRUE_AIRSPEED_ALTITUDES_FT,
  TRUE_AIRSPEED_OFF_STANDARD,
} from '../reference/atmosphere.ts';
import { trust } from '../support/trust-table.ts';

const [[FASTEST_KT, HIGHEST_FT, COST_KT]] = COMPRESSIBILITY.rows;
const [[AT_KT, PRESSES_PA]] = DYNAMIC_PRESSURE.rows;

describe('true airspeed', () => {
  it.each(TRUE_AIRSPEED.rows)('of %d kt indicated agrees with the full sum', (iasKt, ...row) => {
    row.forEach((tasKt, i) => {
      const altitudeFt = TRUE_AIRSPEED_ALTITUDES_FT[i]!;
      const found = ktFromMps(tasFromIas(mpsFromKt(iasKt), isaDensityKgpm3(mFromFt(altitudeFt))));
      trust('True airspeed, 60 to 120 kt to 10,000 ft', TRUE_AIRSPEED, found, tasKt, 'kt');
      // Compressibility grows with speed cubed and nearly with altitude (.22 kt at 120 kt, 10,000 ft, times 1.164
      // as true airspeed), plus half a printed digit.
      const left = COST_KT * 1.164 * (iasKt / FASTEST_KT) ** 3 * (altitudeFt / HIGHEST_FT) * 1.15 + 0.006;
      expect(found - tasKt).toBeGreaterThan(-0.006);
      expect(found - tasKt).toBeLessThan(left);
    });
  });

  it.each(TRUE_AIRSPEED_OFF_STANDARD.rows)(
    'of %d kt at %d ft and %d degrees is %d kt',
    (casKt, paFt, degC, tasKt) => {
      const density = gasDensityKgpm3(isaPressurePa(mFromFt(paFt)), degC + 273.15);
      const found = ktFromMps(tasFromIas(mpsFromKt(casKt), density));
      trust('True airspeed off the standard day', TRUE_AIRSPEED_OFF_STANDARD, found, tasKt, 'kt');
      expect(Math.abs(found - tasKt)).toBeLessThan(0.1);
      expect(ktFromMps(iasFromTas(mpsFromKt(found), density))).toBeCloseTo(casKt, 9);
    },
  );

  it('of 65 kt at sea level presses with 684.9 Pa', () => {
    expect(Math.abs(dynamicPressurePa(mpsFromKt(AT_KT)) - PRESSES_PA)).toBeLessThan(0.06);
  });
});
