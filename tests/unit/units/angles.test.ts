import { describe, expect, it } from 'vitest';
import {
  headingDeg,
  magneticFromTrue,
  trueFromMagnetic,
  wrapPi,
  wrapTwoPi,
} from '../../../src/units/angles.ts';
import { radFromDeg } from '../../../src/units/conversions.ts';

describe('angles', () => {
  it('wrap to the short way round, pi itself included and -pi not', () => {
    expect(wrapPi(Math.PI)).toBe(Math.PI);
    expect(wrapPi(-Math.PI)).toBe(Math.PI);
    expect(wrapPi(radFromDeg(350))).toBeCloseTo(radFromDeg(-10), 12);
    expect(wrapPi(radFromDeg(-350))).toBeCloseTo(radFromDeg(10), 12);
    for (let deg = -3000; deg <= 3000; deg += 7.3) {
      const rad = wrapPi(radFromDeg(deg));
      expect(rad > -Math.PI && rad <= Math.PI).toBe(true);
      expect(Math.cos(rad)).toBeCloseTo(Math.cos(radFromDeg(deg)), 9);
      expect(Math.sin(rad)).toBeCloseTo(Math.sin(radFromDeg(deg)), 9);
    }
  });

  it('wrap to a full circle from 0, never reaching two pi', () => {
    expect(wrapTwoPi(2 * Math.PI)).toBe(0);
    expect(wrapTwoPi(-1e-20)).toBe(0);
    for (let deg = -3000; deg <= 3000; deg += 7.3) {
      const rad = wrapTwoPi(radFromDeg(deg));
      expect(rad >= 0 && rad < 2 * Math.PI).toBe(true);
      expect(Math.cos(rad)).toBeCloseTo(Math.cos(radFromDeg(deg)), 9);
    }
  });

  it('speak north as 360', () => {
    expect(headingDeg(0)).toBe(360);
    expect(headingDeg(2 * Math.PI)).toBe(360);
    expect(headingDeg(Math.PI / 2)).toBeCloseTo(90, 12);
    expect(headingDeg(-Math.PI / 2)).toBeCloseTo(270, 12);
  });

  it('take easterly variation off true to give magnetic (variation east, magnetic least: common practice)', () => {
    const magnetic = magneticFromTrue(radFromDeg(2), radFromDeg(5));
    expect(headingDeg(magnetic)).toBeCloseTo(357, 9);
    expect(headingDeg(trueFromMagnetic(magnetic, radFromDeg(5)))).toBeCloseTo(2, 9);
  });
});
