// A series comes back as it was, whatever it was: any whole numbers of 32 bits. What differs must be said.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seriesFromText, seriesText } from '../../../src/formats/series-text.ts';

describe('a series as text', () => {
  it('comes back as it was', () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(fc.integer(), fc.integer({ min: -300, max: 300 }))), (values) => {
        expect(seriesFromText(seriesText(values, values.length), 'x')).toEqual(values);
      }),
      { examples: [[[]], [[-2147483648, 2147483647, -2147483648]], [[0, 40, 0, -40, 39, 80]]] },
    );
  });

  it('stops at the count', () => {
    expect(seriesFromText(seriesText([5, 6, 7, 0, 0], 3), 'x')).toEqual([5, 6, 7]);
  });

  it('needs no escape inside JSON', () => {
    const text = seriesText(
      Array.from({ length: 4000 }, (_, i) => (i * i * 7919) % 100003),
      4000,
    );
    expect(JSON.stringify(text)).toBe(`"${text}"`);
  });

  it.each([
    ['a b', /x\[1\] must be one of the characters of a series, was " "/],
    ['\u00e9', /x\[0\] must be one of the characters/],
    ['~', /x must end with a whole number, was cut off/],
    ['~'.repeat(50), /x\[12\] must end its number/],
  ])('says what is wrong with %j', (text, sentence) => {
    expect(() => seriesFromText(text, 'x')).toThrow(sentence);
  });
});
