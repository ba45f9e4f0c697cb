import { describe, expect, it } from 'vitest';
import { alignByLeg, timeInSecond } from '../../../src/study/compare.ts';
import { seeAgain } from '../../../src/study/flown.ts';
import { baseTurned, flyFault, noFault } from '../../support/faults.ts';

const day = { leg: 'downwind' } as const;
const planned = flyFault(day, noFault);
const early = flyFault(day, baseTurned(-15));
const alignment = alignByLeg(planned.memory, early.memory);

describe('two flights side by side', () => {
  it('come out the same when they are the same', () => {
    const same = alignByLeg(planned.memory, seeAgain(planned.flight).memory);
    for (const leg of same.legs) {
      expect(leg.secondsLonger).toBe(0);
      expect(leg.higherAtEndM).toBe(0);
    }
    expect(timeInSecond(same, 77.7)).toBeCloseTo(77.7, 9);
  });

  // The fault is known by construction: base 15 s early, so downwind is 15 s shorter (1 s for its detection)
  it('say by how much a leg was shorter', () => {
    const downwind = alignment.legs.find(({ leg }) => leg === 'downwind')!;
    expect(downwind.secondsLonger).toBeGreaterThan(-16);
    expect(downwind.secondsLonger).toBeLessThan(-14);
  });

  it('stand at the beginning of the same leg at the same place of the cursor', () => {
    for (const { first, second } of alignment.legs)
      expect(timeInSecond(alignment, first.fromS)).toBeCloseTo(second.fromS, 6);
  });

  it('have clocks that never run backwards', () => {
    let last = Number.NEGATIVE_INFINITY;
    for (let s = -10; s < 300; s += 1) {
      const now = timeInSecond(alignment, s);
      expect(now).toBeGreaterThan(last);
      last = now;
    }
  });
});
