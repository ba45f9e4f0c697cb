import { describe, expect, it } from 'vitest';
import { wrapTwoPi } from '../../../src/units/angles.ts';
import { mpsFromKt, radFromDeg } from '../../../src/units/conversions.ts';
import { meanWind, meanWindFactor, windWithGust } from '../../../src/wind/profile.ts';
import { TERRAIN } from '../../../src/wind/terrain.ts';
import { CALM, type Wind } from '../../../src/wind/wind.ts';

const west: Wind = { ...CALM, fromRadT: radFromDeg(270), speedMps: mpsFromKt(15), veerRad: radFromDeg(25) };
const out = new Float64Array(3);

describe('mean wind', () => {
  it('blows to where it does not come from', () => {
    meanWind(west, 10, out);
    expect(out[0]).toBeCloseTo(mpsFromKt(15), 9);
    expect(out[1]).toBeCloseTo(0, 9);
  });

  it('is the reported wind at 10 m over every ground', () => {
    for (const terrain of Object.values(TERRAIN)) {
      expect(meanWindFactor({ ...west, ...terrain }, 10)).toBeCloseTo(1, 12);
    }
  });

  it('never falls with height, is level at the ends, and never turns against itself near the ground', () => {
    for (const terrain of Object.values(TERRAIN)) {
      const wind = { ...west, ...terrain };
      let before = 0;
      for (let heightM = -10; heightM < 1000; heightM += 0.5) {
        const factor = meanWindFactor(wind, heightM);
        expect(factor).toBeGreaterThan(0);
        expect(factor).toBeGreaterThanOrEqual(before);
        before = factor;
      }
      expect(meanWindFactor(wind, 5000)).toBe(meanWindFactor(wind, wind.gradientHeightM));
      expect(meanWindFactor(wind, -3)).toBe(meanWindFactor(wind, 0));
    }
  });

  it('veers clockwise with height, all of it by gradient height', () => {
    const fromRad = (heightM: number): number => {
      meanWind(west, heightM, out);
      return wrapTwoPi(Math.atan2(-out[0]!, -out[1]!));
    };
    expect(fromRad(5)).toBeCloseTo(west.fromRadT, 12);
    expect(fromRad(300)).toBeCloseTo(radFromDeg(295), 12);
    expect(fromRad(900)).toBeCloseTo(radFromDeg(295), 12);
    expect(fromRad(100)).toBeGreaterThan(west.fromRadT + 0.01);
  });

  it('carries a gust on the same profile', () => {
    windWithGust(west, 100, 2, out);
    const withGust = Math.sqrt(out[0]! * out[0]! + out[1]! * out[1]!);
    expect(withGust).toBeCloseTo((west.speedMps + 2) * meanWindFactor(west, 100), 10);
  });

  it('gives the same whichever ground was asked for before', () => {
    const rough = { ...west, ...TERRAIN.rough };
    const alone = meanWindFactor(rough, 50);
    meanWindFactor(west, 50);
    expect(meanWindFactor(rough, 50)).toBe(alone);
  });
});
