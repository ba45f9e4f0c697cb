import { describe, expect, test } from 'vitest';
import { earthOf, type Runway, runwayInUse } from '../../src/aerodrome/runway.ts';
import { lightLetters, newSeenLights, seeLights, whiteFraction } from '../../src/aerodrome/slope-lights.ts';
import { ftFromM, mFromFt, mFromNmi, radFromDeg } from '../../src/units/conversions.ts';
import {
  HEIGHTS_OF_FOUR,
  LEAST_RANGE,
  OFFSETS_OF_TWO,
  PICTURES_OF_FOUR,
  PICTURES_OF_TWO,
  RANGE_BY_DAY,
  SETTINGS_OF_FOUR,
  SLOPE_FT_PER_NMI,
  SPACING_OF_TWO_FROM_MEMORY,
  TRANSITION,
  TWO_FROM_EDGE,
} from '../reference/slope-lights.ts';
import { aerodromeFiles, aerodromeNamed } from '../support/aerodromes.ts';
import { expectWithin } from '../support/expect-within.ts';
import { trust } from '../support/trust-table.ts';

const minutes = (degrees: number, arcMinutes: number) => degrees + arcMinutes / 60;

/** Letters at an elevation seen from the middle of the lights, one nautical mile out, abreast the middle. */
const lettersAt = (runway: Runway, elevationDeg: number, rangeM = mFromNmi(1), asideRad = 0): string => {
  const lights = runway.lights!;
  const eye = earthOf(
    runway,
    lights.alongM - rangeM * Math.cos(asideRad),
    lights.middleAcrossM + rangeM * Math.sin(asideRad),
  );
  const heightM = lights.heightM + rangeM * Math.tan(radFromDeg(elevationDeg));
  return lightLetters(seeLights(runway, eye.eastM, eye.northM, heightM, newSeenLights()));
};

const papiLeft = runwayInUse(aerodromeNamed('curlew-sands'), '22');
const papiRight = runwayInUse(aerodromeNamed('ptarmigan-flat'), '34');
const apapi = runwayInUse(aerodromeNamed('dunlin-ridge'), '09');

describe('slope lights of 3 degrees', () => {
  // From the unit furthest from the runway to the nearest: the reds are always on the runway side.
  test.each(PICTURES_OF_FOUR.rows)(
    'seen at %d degrees %d minutes show %s, which is %s',
    (deg, min, letters) => {
      const elevationDeg = minutes(deg, min);
      expect(lettersAt(papiLeft, elevationDeg)).toBe(letters);
      // Counted from the outermost unit, an installation on the right gives the same word.
      expect(lettersAt(papiRight, elevationDeg)).toBe(letters);
    },
  );

  test.each(SETTINGS_OF_FOUR.rows)(
    'unit %d from the outside changes colour at %d degrees %d minutes, and nowhere else',
    (unit, deg, min) => {
      const at = (arcMinutes: number) => lettersAt(papiLeft, minutes(deg, min + arcMinutes)).charAt(unit);
      expect(at(-1.6)).toBe('R');
      expect(at(0)).toBe('P');
      expect(at(1.6)).toBe('W');
    },
  );

  test('take 3 minutes of arc from red to white, half way at the set angle', () => {
    const set = radFromDeg(3);
    const halfDeg = TRANSITION.rows[0][0] / 2 / 60;
    expect(whiteFraction(set, set)).toBe(0.5);
    expect(whiteFraction(set + radFromDeg(halfDeg), set)).toBeCloseTo(1, 12);
    expect(whiteFraction(set - radFromDeg(halfDeg), set)).toBeCloseTo(0, 12);
    expect(whiteFraction(set + radFromDeg(halfDeg / 2), set)).toBeCloseTo(0.75, 12);
  });

  test.each(HEIGHTS_OF_FOUR.rows)(
    'at %d NM change colour at the tabled heights, to the foot',
    (rangeNmi, ...tabledFt) => {
      const rangeM = mFromNmi(rangeNmi);
      const lights = papiLeft.lights!;
      const foundFt = lights.unitsAcrossM.map((across, unit) => {
        // Climb abreast the unit until it is half white.
        let lowM = 0;
        let highM = mFromFt(2000);
        const seen = newSeenLights();
        for (let i = 0; i < 60; i += 1) {
          const heightM = (lowM + highM) / 2;
          const eye = earthOf(papiLeft, lights.alongM - rangeM, across);
          seeLights(papiLeft, eye.eastM, eye.northM, heightM, seen);
          if ((seen.white[unit] as number) < 0.5) lowM = heightM;
          else highM = heightM;
        }
        return ftFromM(lowM);
      });
      expect(foundFt).toHaveLength(4);
      foundFt.forEach((ft, unit) => {
        trust(
          'Slope lights, height of a change of colour',
          HEIGHTS_OF_FOUR,
          ft,
          tabledFt[unit] as number,
          'ft',
        );
        expect(Math.abs(ft - (tabledFt[unit] as number))).toBeLessThanOrEqual(0.51);
      });
    },
  );

  test('hold 318 ft a nautical mile on the slope', () => {
    const seen = newSeenLights();
    const lights = papiLeft.lights!;
    const eye = earthOf(papiLeft, lights.alongM - mFromNmi(1), lights.middleAcrossM);
    seeLights(papiLeft, eye.eastM, eye.northM, mFromFt(SLOPE_FT_PER_NMI.rows[0][1]), seen);
    expect((seen.slopeAngleRad * 180) / Math.PI).toBeCloseTo(3, 3);
  });
});

describe('slope lights with two units', () => {
  test.each(PICTURES_OF_TWO.rows)('set to 4 degrees and seen %d minutes off that show %s', (off, letters) => {
    expect(lettersAt(apapi, minutes(4, off))).toBe(letters);
  });

  test.each(OFFSETS_OF_TWO.rows)(
    'unit %d from the outside changes colour %d minutes off 4 degrees, and nowhere else',
    (unit, off) => {
      const at = (arcMinutes: number) => lettersAt(apapi, minutes(4, off + arcMinutes)).charAt(unit);
      // Seen from abreast the middle, a mile out: the unit's own elevation differs by less than 0.1 minute
      expect(at(-1.6)).toBe('R');
      expect(at(0)).toBe('P');
      expect(at(1.6)).toBe('W');
      const other = lettersAt(apapi, minutes(4, off)).charAt(1 - unit);
      expect(other).toBe(unit === 0 ? 'R' : 'W');
    },
  );

  test('stand 10 and 16 metres from the edge of the runway (the 6 m between them from memory)', () => {
    const { unitsAcrossM, unitsAngleRad, side } = apapi.lights!;
    const fromEdgeM = unitsAcrossM.map((across) => side * across - apapi.widthM / 2);
    expect(fromEdgeM).toHaveLength(2);
    const [[, low, high]] = SPACING_OF_TWO_FROM_MEMORY.rows;
    expectWithin(fromEdgeM[0]! - fromEdgeM[1]!, { low, high, source: 'from memory' });
    expect(fromEdgeM[1]).toBeCloseTo(TWO_FROM_EDGE.rows[0][0], 9);
    // As it is laid out, whether the memory is right or not
    expect(fromEdgeM[0]).toBeCloseTo(16, 9);
    expect(unitsAngleRad[0]! - unitsAngleRad[1]!).toBeCloseTo(-radFromDeg(0.5), 12);
  });

  test('are dark outside the sector and from behind, and say so with two letters', () => {
    expect(lettersAt(apapi, 4, mFromNmi(1), radFromDeg(9.5))).toBe('WR');
    expect(lettersAt(apapi, 4, mFromNmi(1), radFromDeg(11))).toBe('--');
    expect(lettersAt(apapi, 4, mFromNmi(1), Math.PI)).toBe('--');
    expect(lettersAt(apapi, 4, apapi.lights!.rangeM + 20)).toBe('--');
  });
});

describe('slope lights', () => {
  test('are dark outside the sector, beyond their range, from behind and from below', () => {
    const far = papiLeft.lights!.rangeM;
    expect(lettersAt(papiLeft, 3, mFromNmi(1), radFromDeg(9.5))).toBe('WWRR');
    expect(lettersAt(papiLeft, 3, mFromNmi(1), radFromDeg(11))).toBe('----');
    expect(lettersAt(papiLeft, 3, mFromNmi(1), radFromDeg(-11))).toBe('----');
    expect(lettersAt(papiLeft, 3, far + 20)).toBe('----');
    expect(lettersAt(papiLeft, 3, mFromNmi(1), Math.PI)).toBe('----');
    expect(lettersAt(papiLeft, -1)).toBe('----');
  });

  test('are seen by day from the least distance of their kind, and no further than anybody says', () => {
    const ends = aerodromeFiles().flatMap((file) => aerodromeNamed(file.replace('.json', '')).runway.ends);
    const lights = ends.flatMap(({ slopeLights }) => (slopeLights === null ? [] : [slopeLights]));
    expect(new Set(lights.map(({ kind }) => kind))).toEqual(new Set(LEAST_RANGE.rows.map(([kind]) => kind)));
    for (const { kind, rangeNmi } of lights) {
      const least = LEAST_RANGE.rows.find(([of]) => of === kind)?.[1] ?? Number.NaN;
      const about = RANGE_BY_DAY.rows.find(([of]) => of === kind)?.[1] ?? least;
      expect(rangeNmi).toBeGreaterThanOrEqual(least);
      expect(rangeNmi).toBeLessThanOrEqual(about);
    }
  });

  test('go dark unit by unit at the edge of the sector, the far side first', () => {
    const edge = lettersAt(papiLeft, 3, 400, radFromDeg(10));
    expect(edge).toBe('--RR');
  });

  test('are dark to an eye lined up on the runway, and red to one far too low on final (common practice)', () => {
    const lined = earthOf(papiLeft, 10, 0);
    const seen = seeLights(papiLeft, lined.eastM, lined.northM, 2, newSeenLights());
    expect(lightLetters(seen)).toBe('----');
    expect(seen.inBeam).toBe(false);
    expect(lettersAt(papiLeft, 0.5)).toBe('RRRR');
  });

  test('are no word where there are none', () => {
    const grass = runwayInUse(aerodromeNamed('plover-meadow'), '31');
    const seen = seeLights(grass, 0, -1000, 60, newSeenLights());
    expect(seen.units).toBe(0);
    expect(lightLetters(seen)).toBe('');
  });
});
