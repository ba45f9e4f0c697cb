import { describe, expect, it } from 'vitest';
import {
  clockText,
  fixed,
  headingDigits,
  signed,
  thousands,
  thousandsTo,
} from '../../../src/units/format.ts';

describe('formats', () => {
  it('never write minus nought', () => {
    expect(fixed(-0.04, 1)).toBe('0.0');
    expect(fixed(-0)).toBe('0');
    expect(fixed(-0.06, 1)).toBe('-0.1');
    expect(signed(-0.2)).toBe('0');
  });

  it('show the sign when asked', () => {
    expect(signed(3.4)).toBe('+3');
    expect(signed(-12)).toBe('-12');
  });

  it('say when there is no number', () => {
    expect(fixed(Number.NaN, 2)).toBe('--');
    expect(headingDigits(Number.NaN)).toBe('---');
    expect(clockText(Number.POSITIVE_INFINITY)).toBe('--:--');
  });

  it('put a comma between thousands', () => {
    expect(thousands(2300)).toBe('2,300');
    expect(thousands(-1234567)).toBe('-1,234,567');
    expect(thousands(999)).toBe('999');
    expect(thousandsTo(2347, 10)).toBe('2,350');
  });

  it('write headings as three digits, north as 360 (common practice)', () => {
    expect(headingDigits(5)).toBe('005');
    expect(headingDigits(0.4)).toBe('360');
    expect(headingDigits(359.6)).toBe('360');
    expect(headingDigits(-90)).toBe('270');
  });

  it('write elapsed time as minutes and seconds', () => {
    expect(clockText(0)).toBe('00:00');
    expect(clockText(425.9)).toBe('07:05');
    expect(clockText(3600)).toBe('60:00');
    expect(clockText(-3)).toBe('00:00');
  });
});
