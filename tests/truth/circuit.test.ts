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
import { BASE_TURN_ANGLE, DISTANCE_ON_SLOPE, FINAL_BEGINS } from '../reference/circuit.ts';
import { SLOPE_FT_PER_NMI } from '../reference/slope-lights.ts';
import { RUNWAY_WINDS_EXACT, WIND_TRIANGLES_EXACT } from '../reference/wind.ts';
import { aerodromeNamed } from '../support/aerodromes.ts';
import { plannedCircuit, standardWeather } from '../support/circuits.ts';

describe('the conflict that whiteboards hide', () => {
  test('500 ft on 3 degrees is 1.57 NM from the aim point', () => {
    const [[ft, deg, nmi]] = DISTANCE_ON_SLOPE.rows;
    expect(nmiFromM(distanceOnSlopeM(mFromFt(ft), radFromDeg(deg)))).toBeCloseTo(nmi, 2);
  });

  test('3 degrees fall 318.4 ft in a nautical mile, whatever the speed', () => {
    const [[deg, ft]] = SLOPE_FT_PER_NMI.rows;
    expect(ft / nmiFromM(distanceOnSlopeM(mFromFt(ft), radFromDeg(deg)))).toBeCloseTo(ft, 1);
  });

  // The plan rolls out of real turns, so the point may lie a wing's width nearer or further: 15 ft
  test.each(FINAL_BEGINS.rows)('at %d NM a final on 3 degrees starts at %d ft', (spacingNmi, ft) => {
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
  // Published for still air: about 45 degrees. With 10, 15, 20 kt on final at 0.75 NM the design has 39, 36 and 32
  // degrees (estimate); its wind is the surface wind, so the turns are flown in more (log profile, open ground).
  test.each([
    [0, BASE_TURN_ANGLE.rows[0][0]],
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

  test.each(WIND_TRIANGLES_EXACT.rows)(
    'track %d, wind %d/%d, TAS %d: correction %d, heading %d, groundspeed %d',
    (track, from, kt, tasKt, _correction, heading, gsKt) => {
      const crab = crabOnTrack(radFromDeg(track), mpsFromKt(tasKt), wind(from, kt));
      expect(degFromRad(crab.headingRad)).toBeCloseTo(heading, 2);
      // The reference rounds 88.3348 up: one unit of its last place.
      expect(Math.abs(ktFromMps(crab.groundspeedMps) - gsKt)).toBeLessThan(0.01);
    },
  );

  test('a wind faster than the aeroplane is refused in a sentence', () => {
    expect(() => crabOnTrack(0, 30, { xMps: 0, yMps: 31 })).toThrow(/wind must be slower/);
  });
});

describe('the wind on a runway', () => {
  // The first and second of them turned onto runway 04 and 22, and a wind straight from behind
  const [sample, question] = RUNWAY_WINDS_EXACT.rows;
  const [left, right] = [sample, question].map(([runway, from]) => from - runway) as [number, number];
  test.each([
    ['04', 40 + right, question[2], question[3], question[4]],
    ['04', 40 + left, sample[2], sample[3], sample[4]],
    ['22', 220 + right, question[2], question[3], question[4]],
    ['22', 40, 12, -12, 0],
  ])('%s with %d/%d is %d kt ahead and %d kt from the right', (designator, from, kt, aheadKt, rightKt) => {
    const aerodrome = aerodromeNamed('curlew-sands');
    const weather = standardWeather(aerodrome, { windFromDegM: from, windKt: kt });
    const found = windOnRunway(runwayInUse(aerodrome, designator), weather);
    expect(ktFromMps(found.headwindMps)).toBeCloseTo(aheadKt, 2);
    expect(ktFromMps(found.crosswindMps)).toBeCloseTo(rightKt, 2);
  });
});
