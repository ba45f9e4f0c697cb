import { describe, expect, test } from 'vitest';
import { runwayInUse } from '../../src/aerodrome/runway.ts';
import { distanceOnSlopeM } from '../../src/circuit/descent-angle.ts';
import { crabOnTrack } from '../../src/circuit/frame.ts';
import { windOnRunway } from '../../src/circuit/runway-choice.ts';
import {
  degFromRad,
  ftFromM,
  ktFromMps,
  mFromFt,
  mFromNmi,
  mpsFromKt,
  nmiFromM,
  radFromDeg,
} from '../../src/units/conversions.ts';
import { aerodromeNamed } from '../support/aerodromes.ts';
import { plannedCircuit, standardWeather } from '../support/circuits.ts';

describe('the conflict that whiteboards hide', () => {
  test('500 ft on 3 degrees is 1.57 NM from the aim point', () => {
    expect(nmiFromM(distanceOnSlopeM(mFromFt(500), radFromDeg(3)))).toBeCloseTo(1.57, 2);
  });

  test('3 degrees fall 318.4 ft in a nautical mile, whatever the speed', () => {
    expect(318.4 / nmiFromM(distanceOnSlopeM(mFromFt(318.4), radFromDeg(3)))).toBeCloseTo(318.4, 1);
  });

  // Height on a 3-degree slope where the final starts, one spacing from the threshold and 300 m more to the aim
  // point. The plan rolls out of real turns, so the point may lie a wing's width nearer or further: 15 ft.
  test.each([
    [0.75, 290],
    [1.0, 369],
  ])('at %d NM a final on 3 degrees starts at %d ft', (spacingNmi, ft) => {
    const plan = plannedCircuit(
      'curlew-sands',
      '22',
      {},
      { spacingM: mFromNmi(spacingNmi), descentFrom: 'abeam' },
    );
    expect(Math.abs(ftFromM(plan.rollOutOnFinalHeightM) - ft)).toBeLessThan(15);
    expect(degFromRad(plan.approachRad)).toBeCloseTo(3, 6);
  });
});

describe('the base turn', () => {
  // AFH-3C ch. 8: about 45 degrees in still air. With 10, 15, 20 kt on final at 0.75 NM the design sheet has 39,
  // 36 and 32 degrees; its wind is the surface wind, so the turns are flown in more (log profile, open ground).
  test.each([
    [0, 45],
    [10, 39],
    [15, 36],
    [20, 32],
  ])('with %d kt on final begins %d degrees behind the wing, within 2', (windKt, deg) => {
    const plan = plannedCircuit(
      'curlew-sands',
      '22',
      { windFromDegM: 220, windKt },
      { spacingM: mFromNmi(0.75), descentFrom: 'base-turn' },
    );
    expect(Math.abs(degFromRad(plan.baseTurnAngleRad) - deg)).toBeLessThan(2);
  });
});

describe('the wind triangle of a leg', () => {
  /** A wind from `fromDeg` in the axes of the circuit, track angles counted the same way round as a compass. */
  const wind = (fromDeg: number, kt: number) => ({
    xMps: -mpsFromKt(kt) * Math.cos(radFromDeg(fromDeg)),
    yMps: -mpsFromKt(kt) * Math.sin(radFromDeg(fromDeg)),
  });

  // PHAK chapter 16 example (GS 88) and three more published cases; exact values recomputed.
  test.each([
    [90, 45, 40, 120, 76.37, 88.34],
    [270, 180, 30, 120, 255.52, 116.19],
    [45, 90, 25, 110, 54.25, 90.89],
    [0, 180, 15, 80, 0, 95],
  ])('track %d, wind %d/%d, TAS %d: heading %d, groundspeed %d', (track, from, kt, tasKt, heading, gsKt) => {
    const crab = crabOnTrack(radFromDeg(track), mpsFromKt(tasKt), wind(from, kt));
    expect(degFromRad(crab.headingRad)).toBeCloseTo(heading, 2);
    // The reference rounds 88.3348 up: one unit of its last place.
    expect(Math.abs(ktFromMps(crab.groundspeedMps) - gsKt)).toBeLessThan(0.01);
  });

  test('a wind faster than the aeroplane is refused in a sentence', () => {
    expect(() => crabOnTrack(0, 30, { xMps: 0, yMps: 31 })).toThrow(/wind must be slower/);
  });
});

describe('the wind on a runway', () => {
  // FAA test question: runway 18, 220/30 gives 23 kt ahead and 19 kt from the right (exact 22.98, 19.28); PHAK
  // sample 10: runway 17, 140/25 gives 22 and 13 from the left (21.65, 12.50). Turned onto runway 04 and 22.
  test.each([
    ['04', 80, 30, 22.98, 19.28],
    ['04', 10, 25, 21.65, -12.5],
    ['22', 260, 30, 22.98, 19.28],
    ['22', 40, 12, -12, 0],
  ])('%s with %d/%d is %d kt ahead and %d kt from the right', (designator, from, kt, aheadKt, rightKt) => {
    const aerodrome = aerodromeNamed('curlew-sands');
    const weather = standardWeather(aerodrome, { windFromDegM: from, windKt: kt });
    const found = windOnRunway(runwayInUse(aerodrome, designator), weather);
    expect(ktFromMps(found.headwindMps)).toBeCloseTo(aheadKt, 2);
    expect(ktFromMps(found.crosswindMps)).toBeCloseTo(rightKt, 2);
  });
});
