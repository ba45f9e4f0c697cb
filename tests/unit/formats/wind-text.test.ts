// The notation is the command line's contract (design/headless.md): DDD/SS or DDD/SSgGG, degrees magnetic, knots.
import { describe, expect, it } from 'vitest';
import { parseWind, windText } from '../../../src/formats/wind-text.ts';

describe('the wind as text', () => {
  it.each([
    ['000/00', { windFromDegM: 0, windKt: 0, gustKt: null }],
    ['360/05', { windFromDegM: 360, windKt: 5, gustKt: null }],
    ['220/20g30', { windFromDegM: 220, windKt: 20, gustKt: 30 }],
    ['220/20G30', { windFromDegM: 220, windKt: 20, gustKt: 30 }],
  ])('reads %s', (text, wind) => {
    expect(parseWind(text)).toEqual(wind);
  });

  it.each([
    ['370/10', /direction must be 000 to 360, was 370/],
    ['abc', /must be like 220\/08 .* was "abc"/],
    ['22/10', /must be like/],
    ['220/10g', /must be like/],
    ['220/20g15', /gust must be above the mean wind of 20 kt, was 15/],
    ['220/20g20', /gust must be above/],
    ['220/120', /at most 99 kt/],
    ['', /was ""/],
  ])('refuses %s with a sentence', (text, sentence) => {
    expect(() => parseWind(text)).toThrow(sentence);
  });

  it('is written as it was read', () => {
    for (const text of ['000/00', '005/07', '220/20g30']) expect(windText(parseWind(text))).toBe(text);
  });
});
