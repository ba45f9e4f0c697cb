import { describe, expect, test } from 'vitest';
import { lettersInWords } from '../../../src/circuit/conflict.ts';
import { degFromRad, mFromNmi, radFromDeg } from '../../../src/units/conversions.ts';
import { plannedCircuit } from '../../support/circuits.ts';

const tight = { spacingM: mFromNmi(0.75), descentFrom: 'base-turn' } as const;

describe('the conflict', () => {
  test('says what will be seen, for how long, and at which angle', () => {
    const plan = plannedCircuit('curlew-sands', '22', {}, tight);
    expect(plan.conflict?.sentence).toBe(
      `You will see four whites all the way: this circuit comes down at ${degFromRad(plan.approachRad).toFixed(1)} degrees to 3-degree lights.`,
    );
    // The mean from the base turn at this spacing is 5.7; base at its steepest leaves less than that to final.
    expect(degFromRad(plan.approachRad)).toBeGreaterThan(4);
    expect(degFromRad(plan.approachRad)).toBeLessThan(5.7);
    expect(plan.lightsOnFinal?.[0]?.letters).toBe('WWWW');
  });

  test('offers the four ways out, each with its numbers', () => {
    const ways = plannedCircuit('curlew-sands', '22', {}, tight).conflict?.waysOut ?? [];
    expect(ways.map((way) => way.id)).toEqual(['wider', 'steeper', 'lower', 'longer']);
    const [wider, steeper, lower, longer] = ways.map((way) => way.sentence);
    expect(wider).toMatch(/^Wider: \d\.\d\d NM from the centreline brings it down on 3\.0 degrees/);
    expect(steeper).toMatch(
      /^Steeper: fly 4\.\d degrees from \d+ ft by the aim point, and leave the lights aside, \d+ ft\/min/,
    );
    expect(lower).toMatch(
      /^Lower: come down from abeam the threshold at \d+ ft\/min and complete the final turn at 290 ft/,
    );
    // 500 ft on 3 degrees is 1.57 NM; a light single glides 8 to 9.5 to 1 (common practice): 0.66 to 0.78 NM.
    expect(longer).toMatch(/500 ft, 1\.57 NM from the aim point.*reaches 0\.[78] of the 1\.57 NM/);
  });

  test('is gone once a way out is taken', () => {
    const wider = /Wider: (\d\.\d\d) NM/.exec(
      plannedCircuit('curlew-sands', '22', {}, tight).conflict?.waysOut[0]?.sentence ?? '',
    )?.[1];
    const taken = plannedCircuit('curlew-sands', '22', {}, { ...tight, spacingM: mFromNmi(Number(wider)) });
    expect(taken.conflict).toBeNull();
    const lower = plannedCircuit('curlew-sands', '22', {}, { ...tight, descentFrom: 'abeam' });
    expect(lower.lightsOnFinal?.map((stretch) => stretch.letters)).toEqual(['WWRR']);
    const longer = plannedCircuit('curlew-sands', '22', {}, { ...tight, finalFromAimM: mFromNmi(1.57) });
    expect(longer.lightsOnFinal?.map((stretch) => stretch.letters)).toEqual(['WWRR']);
  });

  test('where there are no lights speaks of the angle', () => {
    const plan = plannedCircuit('plover-meadow', '31', {}, { spacingM: mFromNmi(0.7) });
    expect(plan.conflict?.sentence).toMatch(
      /^This circuit comes down at \d\.\d degrees where 5\.0 were asked for, even with 650 ft\/min down before final\.$/,
    );
  });

  test('speaks of a final turn completed too low where a height is laid down', () => {
    const plan = plannedCircuit(
      'plover-meadow',
      '31',
      {},
      { approachRad: radFromDeg(4), descentFrom: 'abeam' },
    );
    expect(plan.conflict?.sentence).toMatch(
      /^The final turn is complete at \d+ ft, not at 500 ft: on 4\.0 degrees that height is 1\.18 NM from the aim point\.$/,
    );
  });

  test('puts letters into words', () => {
    expect(lettersInWords('WWWW')).toBe('four whites');
    expect(lettersInWords('WWWR')).toBe('three whites and one red');
    expect(lettersInWords('WRRR')).toBe('one white and three reds');
    expect(lettersInWords('RR')).toBe('two reds');
  });
});
