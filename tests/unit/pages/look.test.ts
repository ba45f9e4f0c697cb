import { describe, expect, it } from 'vitest';
import { lookForLeg, lookFurther, lookName } from '../../../src/pages/fly/drawing/look.ts';
import { radFromDeg } from '../../../src/units/conversions.ts';

describe('where the pilot looks (product.md: ahead, the runway side on downwind, over the shoulder near the base turn)', () => {
  it('looks ahead on final and at the runway on downwind, on the side of the circuit', () => {
    expect(Math.abs(lookForLeg('final', -1, 0))).toBe(0);
    expect(lookForLeg('downwind', -1, 0)).toBe(-90);
    expect(lookForLeg('downwind', 1, 0)).toBe(90);
  });

  it('looks over the shoulder when the threshold lies well behind the wing', () => {
    expect(lookForLeg('downwind', -1, radFromDeg(35))).toBe(-135);
  });

  it('goes round in steps of 45 degrees and stops at the shoulder', () => {
    expect(lookFurther(0, -1)).toBe(-45);
    expect(lookFurther(-90, -1)).toBe(-135);
    expect(lookFurther(-135, -1)).toBe(-135);
    expect(lookFurther(90, -1)).toBe(45);
  });

  it('is named in words', () => {
    expect([lookName(0), lookName(-135), lookName(45)]).toEqual(['ahead', '135° left', '45° right']);
  });
});
