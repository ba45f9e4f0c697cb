// Wind components, triangle and profile against printed examples and the laws of the boundary layer.
import { describe, expect, it } from 'vitest';
import { degFromRad, mFromFt, radFromDeg } from '../../src/units/conversions.ts';
import { crosswindMps, headwindMps } from '../../src/wind/components.ts';
import { logLawFactor, meanWindFactor } from '../../src/wind/profile.ts';
import { type Hold, holdTrack } from '../../src/wind/triangle.ts';
import { CALM } from '../../src/wind/wind.ts';
import {
  LOG_LAW,
  PROFILE_HEIGHTS_M,
  RUNWAY_WINDS,
  RUNWAY_WINDS_EXACT,
  SHEAR_BY_HEIGHT,
  SHEAR_ON_FINAL,
  WIND_BY_HEIGHT_EXAMPLE,
  WIND_SHARES,
  WIND_TRIANGLES,
  WIND_TRIANGLES_EXACT,
} from '../reference/wind.ts';
import { trust } from '../support/trust-table.ts';

const angleApart = (a: number, b: number): number => Math.abs(((((a - b) % 360) + 540) % 360) - 180);

describe('headwind and crosswind', () => {
  it.each(RUNWAY_WINDS_EXACT.rows)('runway %d with %d/%d', (runway, from, kt, headwind, crosswind) => {
    const along = headwindMps(radFromDeg(from), kt, radFromDeg(runway));
    const across = crosswindMps(radFromDeg(from), kt, radFromDeg(runway));
    expect(Math.abs(along - headwind)).toBeLessThan(0.006);
    expect(Math.abs(across - crosswind)).toBeLessThan(0.006);
  });

  it.each(RUNWAY_WINDS.rows)('runway %d with %d/%d, as printed', (runway, from, kt, headwind, crosswind) => {
    const along = headwindMps(radFromDeg(from), kt, radFromDeg(runway));
    const across = crosswindMps(radFromDeg(from), kt, radFromDeg(runway));
    // One of them prints no headwind
    if (headwind !== null) {
      trust('Headwind and crosswind', RUNWAY_WINDS, along, headwind, 'kt');
      expect(Math.round(along)).toBe(headwind);
    }
    trust('Headwind and crosswind', RUNWAY_WINDS, across, crosswind, 'kt');
    // The printed 13 is 12.50 read off a chart: within one
    expect(Math.abs(across - crosswind)).toBeLessThanOrEqual(0.51);
  });

  it.each(WIND_SHARES.rows)('a wind %d degrees off has its share across and along', (deg, across, along) => {
    expect(Math.abs(crosswindMps(radFromDeg(deg), 1, 0) - across)).toBeLessThan(0.00006);
    expect(Math.abs(headwindMps(radFromDeg(deg), 1, 0) - along)).toBeLessThan(0.00006);
  });
});

/** As the circuit's plan does it: the parts of the wind, then the triangle. */
const held = (trackDeg: number, tas: number, fromDeg: number, wind: number): Hold => {
  const [track, from] = [radFromDeg(trackDeg), radFromDeg(fromDeg)];
  return holdTrack(tas, -headwindMps(from, wind, track), -crosswindMps(from, wind, track))!;
};

describe('wind triangle', () => {
  it.each(WIND_TRIANGLES.rows)(
    'track %d, wind %d/%d, airspeed %d has the groundspeed printed',
    (track, from, windKt, tasKt, groundspeed) => {
      const found = held(track, tasKt, from, windKt);
      trust('Groundspeed by wind triangle', WIND_TRIANGLES, found.groundspeedMps, groundspeed, 'kt');
      expect(Math.round(found.groundspeedMps)).toBe(groundspeed);
    },
  );

  it.each(WIND_TRIANGLES_EXACT.rows)(
    'track %d, wind %d/%d, airspeed %d',
    (track, from, windKt, tasKt, wca, heading, groundspeed) => {
      const found = held(track, tasKt, from, windKt);
      expect(Math.abs(degFromRad(found.correctionRad) - wca)).toBeLessThan(0.006);
      expect(angleApart(track + degFromRad(found.correctionRad), heading)).toBeLessThan(0.006);
      expect(Math.abs(found.groundspeedMps - groundspeed)).toBeLessThan(0.006);
    },
  );
});

describe('wind near the ground', () => {
  it.each(LOG_LAW.rows)('by the log law over roughness %d m', (roughnessM, ...row) => {
    const wind = { ...CALM, roughnessM, gradientHeightM: 600 };
    // The table leaves 3 m out over two of the roughnesses
    expect(row.filter((factor) => factor !== null).length).toBeGreaterThanOrEqual(7);
    row.forEach((factor, i) => {
      if (factor === null) return;
      const heightM = PROFILE_HEIGHTS_M[i]!;
      expect(Math.abs(logLawFactor(roughnessM, heightM) - factor)).toBeLessThan(0.00006);
      trust('Mean wind by height, of wind at 10 m', LOG_LAW, meanWindFactor(wind, heightM), factor, '%');
      expect(Math.abs(meanWindFactor(wind, heightM) - factor)).toBeLessThan(0.00006);
    });
  });

  it('is 13.58 m/s at 80 m for 10 m/s at 10 m over open ground', () => {
    const [[roughnessM, atTenMps, heightM, mps]] = WIND_BY_HEIGHT_EXAMPLE.rows;
    const found = atTenMps * logLawFactor(roughnessM, heightM);
    trust('Wind at 80 m', WIND_BY_HEIGHT_EXAMPLE, found, mps, '%');
    expect(Math.abs(found - mps)).toBeLessThan(0.006);
  });

  it.each(SHEAR_BY_HEIGHT.rows)(
    'over roughness %d ft at %d ft is %d times that at 20 ft',
    (roughnessFt, ft, factor) => {
      const wind = { ...CALM, roughnessM: mFromFt(roughnessFt), gradientHeightM: mFromFt(1000) };
      const found = meanWindFactor(wind, mFromFt(ft)) / meanWindFactor(wind, mFromFt(20));
      trust('Mean wind by height, of wind at 20 ft', SHEAR_BY_HEIGHT, found, factor, '%');
      expect(Math.abs(found - factor)).toBeLessThan(0.00006);
    },
  );

  it('loses 4.9 kt of headwind in the last 40 ft when 15 kt blow at 20 ft', () => {
    const [[atTenM, kt, atFiftyFt, atTenFt]] = SHEAR_ON_FINAL.rows;
    const roughnessM = mFromFt(0.15);
    const at20Ft = logLawFactor(roughnessM, mFromFt(20));
    expect(Math.abs(1 / at20Ft - atTenM)).toBeLessThan(0.0006);
    const wind = (ft: number): number => (kt * logLawFactor(roughnessM, mFromFt(ft))) / at20Ft;
    expect(Math.abs(wind(50) - atFiftyFt)).toBeLessThan(0.006);
    expect(Math.abs(wind(10) - atTenFt)).toBeLessThan(0.006);
  });
});
