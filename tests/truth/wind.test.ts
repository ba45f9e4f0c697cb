// Wind components, triangle and profile; flight-figures 3a, 3b, 3c, 3.14.
import { describe, expect, it } from 'vitest';
import { degFromRad, mFromFt, radFromDeg } from '../../src/units/conversions.ts';
import { crosswindMps, headwindMps } from '../../src/wind/components.ts';
import { logLawFactor, meanWindFactor, powerLawFactor } from '../../src/wind/profile.ts';
import { headingForTrack, trackForHeading, windFromDrift } from '../../src/wind/triangle.ts';
import { CALM } from '../../src/wind/wind.ts';
import { trust } from '../support/trust-table.ts';

const angleApart = (a: number, b: number): number => Math.abs(((((a - b) % 360) + 540) % 360) - 180);

describe('headwind and crosswind', () => {
  // 3.1 FAA-H-8083-25 sample 10, 3.2 FAA test question, 3.3: published VERIFIED, exact RECOMPUTED.
  // Runway, from, kt, headwind, crosswind from the right.
  it.each([
    [170, 140, 25, 21.65, -12.5, 22, 13],
    [180, 220, 30, 22.98, 19.28, 23, 19],
    [250, 210, 25, 19.15, -16.07, 19, 16],
  ])('runway %d with %d/%d', (runway, from, kt, headwind, crosswind, headwindRead, crosswindRead) => {
    const along = headwindMps(radFromDeg(from), kt, radFromDeg(runway));
    const across = crosswindMps(radFromDeg(from), kt, radFromDeg(runway));
    trust('headwind and crosswind', 'FAA-H-8083-25 and test questions, exact sums', along, headwind, 'kt');
    trust('headwind and crosswind', 'FAA-H-8083-25 and test questions, exact sums', across, crosswind, 'kt');
    expect(Math.abs(along - headwind)).toBeLessThan(0.006);
    expect(Math.abs(across - crosswind)).toBeLessThan(0.006);
    expect(Math.round(along)).toBe(headwindRead);
    // The published 13 is 12.50 read off a chart: within one.
    expect(Math.abs(Math.abs(across) - crosswindRead)).toBeLessThanOrEqual(0.51);
  });

  // Sines and cosines of the table in 3a, RECOMPUTED, four places.
  it.each([
    [15, 0.2588, 0.9659],
    [30, 0.5, 0.866],
    [45, Math.SQRT1_2, Math.SQRT1_2],
    [60, 0.866, 0.5],
    [75, 0.9659, 0.2588],
  ])('a wind %d degrees off has its share across and along', (deg, across, along) => {
    expect(Math.abs(crosswindMps(radFromDeg(deg), 1, 0) - across)).toBeLessThan(0.00006);
    expect(Math.abs(headwindMps(radFromDeg(deg), 1, 0) - along)).toBeLessThan(0.00006);
  });
});

describe('wind triangle', () => {
  // 3.6 to 3.9: published groundspeeds VERIFIED, exact RECOMPUTED. Track, from, wind, TAS, WCA, heading, GS.
  it.each([
    [90, 45, 40, 120, -13.63, 76.37, 88.34],
    [270, 180, 30, 120, -14.48, 255.52, 116.19],
    [45, 90, 25, 110, 9.25, 54.25, 90.89],
    [360, 180, 15, 80, 0, 360, 95],
  ])('track %d, wind %d/%d, airspeed %d', (track, from, windKt, tasKt, wca, heading, groundspeed) => {
    const found = headingForTrack(radFromDeg(track), tasKt, radFromDeg(from), windKt)!;
    expect(Math.abs(degFromRad(found.correctionRad) - wca)).toBeLessThan(0.006);
    expect(angleApart(degFromRad(found.headingRad), heading)).toBeLessThan(0.006);
    trust(
      'groundspeed by wind triangle',
      'FAA-H-8083-25 ch. 16 and others, exact sums',
      found.groundspeedMps,
      groundspeed,
      'kt',
    );
    expect(Math.abs(found.groundspeedMps - groundspeed)).toBeLessThan(0.006);
  });

  // 3.11 inverse: the slide rule's answer 34 from 154 VERIFIED, exact 33.06 from 154.07 RECOMPUTED.
  it('finds the wind from track 094, heading 104, airspeed 165, groundspeed 146', () => {
    const found = windFromDrift(radFromDeg(104), 165, radFromDeg(94), 146);
    expect(Math.abs(found.windMps - 33.06)).toBeLessThan(0.006);
    expect(Math.abs(degFromRad(found.fromRad) - 154.07)).toBeLessThan(0.006);
    expect(Math.abs(found.windMps - 34)).toBeLessThan(1);
  });

  // 3.12, 3.13 forward: published VERIFIED (015/117, 304/153), exact RECOMPUTED.
  it.each([
    [20, 120, 90, 10, 15.39, 116.96, 15, 117],
    [315, 150, 45, 30, 303.69, 152.97, 304, 153],
  ])('heading %d, airspeed %d, wind %d/%d', (heading, tas, from, wind, track, gs, trackRead, gsRead) => {
    const found = trackForHeading(radFromDeg(heading), tas, radFromDeg(from), wind);
    expect(Math.abs(degFromRad(found.trackRad) - track)).toBeLessThan(0.006);
    expect(Math.abs(found.groundspeedMps - gs)).toBeLessThan(0.006);
    expect(Math.round(degFromRad(found.trackRad))).toBe(trackRead);
    expect(Math.round(found.groundspeedMps)).toBe(gsRead);
  });
});

describe('wind near the ground', () => {
  // 3c RECOMPUTED from the log law with Davenport/WMO roughness (VERIFIED), and from the power law; four
  // places. Heights 2, 3, 5, 20, 50, 100, 150, 300 m.
  const heightsM = [2, 3, 5, 20, 50, 100, 150, 300];
  const logRows: readonly [number, readonly (number | null)[]][] = [
    [0.03, [0.7229, 0.7927, 0.8807, 1.1193, 1.2771, 1.3964, 1.4662, 1.5855]],
    [0.1, [0.6505, null, 0.8495, 1.1505, 1.3495, 1.5, 1.588, 1.7386]],
    [0.25, [0.5637, null, 0.8121, 1.1879, 1.4363, 1.6242, 1.7341, 1.922]],
  ];
  it.each(logRows)('by the log law over roughness %d m', (roughnessM, row) => {
    const wind = { ...CALM, roughnessM, gradientHeightM: 600 };
    row.forEach((factor, i) => {
      if (factor === null) return;
      expect(Math.abs(logLawFactor(roughnessM, heightsM[i]!) - factor)).toBeLessThan(0.00006);
      trust(
        'mean wind by height, of wind at 10 m',
        'log law, WMO roughness (flight-figures 3c)',
        meanWindFactor(wind, heightsM[i]!),
        factor,
        '%',
      );
      expect(Math.abs(meanWindFactor(wind, heightsM[i]!) - factor)).toBeLessThan(0.00006);
    });
  });

  const powerRows: readonly [number, readonly number[]][] = [
    [1 / 7, [0.7946, 0.842, 0.9057, 1.1041, 1.2585, 1.3895, 1.4724, 1.6256]],
    [0.2, [0.7248, 0.786, 0.8706, 1.1487, 1.3797, 1.5849, 1.7188, 1.9744]],
  ];
  it.each(powerRows)('by the power law with exponent %d', (exponent, row) => {
    row.forEach((factor, i) => {
      expect(Math.abs(powerLawFactor(exponent, heightsM[i]!) - factor)).toBeLessThan(0.00006);
    });
  });

  // VERIFIED worked example: 10 m/s at 10 m over z0 .03 is 13.58 m/s at 80 m.
  it('is 13.58 m/s at 80 m for 10 m/s at 10 m over open ground', () => {
    expect(Math.abs(10 * logLawFactor(0.03, 80) - 13.58)).toBeLessThan(0.006);
  });

  // 3.14 MIL-F-8785C wind shear: u(h)/W20 = ln(h/z0)/ln(20/z0), feet; form and z0 VERIFIED, numbers RECOMPUTED.
  it.each([
    [
      0.15,
      [3, 5, 10, 20, 50, 100, 200, 500, 1000],
      [0.6123, 0.7167, 0.8583, 1, 1.1873, 1.3289, 1.4706, 1.6579, 1.7995],
    ],
    [2, [3, 10, 20, 50, 100, 200, 1000], [0.1761, 0.699, 1, 1.3979, 1.699, 2, 2.699]],
  ])('has the shear of MIL-F-8785C over roughness %d ft', (roughnessFt, heightsFt, factors) => {
    const wind = { ...CALM, roughnessM: mFromFt(roughnessFt), gradientHeightM: mFromFt(1000) };
    const at20Ft = meanWindFactor(wind, mFromFt(20));
    heightsFt.forEach((ft, i) => {
      expect(Math.abs(meanWindFactor(wind, mFromFt(ft)) / at20Ft - factors[i]!)).toBeLessThan(0.00006);
    });
  });

  // 3.14: ten-metre wind over W20 is 1.101; 15 kt at 20 ft is 17.81 kt at 50 ft and 12.88 kt at 10 ft.
  it('loses 4.9 kt of headwind in the last 40 ft when 15 kt blow at 20 ft', () => {
    const roughnessM = mFromFt(0.15);
    const at20Ft = logLawFactor(roughnessM, mFromFt(20));
    expect(Math.abs(1 / at20Ft - 1.101)).toBeLessThan(0.0006);
    const wind = (ft: number): number => (15 * logLawFactor(roughnessM, mFromFt(ft))) / at20Ft;
    expect(Math.abs(wind(50) - 17.81)).toBeLessThan(0.006);
    expect(Math.abs(wind(10) - 12.88)).toBeLessThan(0.006);
  });
});
