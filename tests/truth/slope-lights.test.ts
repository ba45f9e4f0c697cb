import { describe, expect, test } from 'vitest';
import { earthOf, type Runway, runwayInUse } from '../../src/aerodrome/runway.ts';
import { lightLetters, newSeenLights, seeLights, whiteFraction } from '../../src/aerodrome/slope-lights.ts';
import { ftFromM, mFromFt, mFromNmi, radFromDeg } from '../../src/units/conversions.ts';
import { aerodromeNamed } from '../support/aerodromes.ts';

// Sources: ICAO Annex 14 vol. I 5.3.5, EASA CS-ADR-DSN.M.645 and Doc 9157 part 4 for settings and pictures;
// heights by range recomputed from them (tan of the angle, 1 NM = 1852 m) in the project's reference table.
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
  test.each([
    [minutes(3, 35), 'WWWW', 'too high'],
    [minutes(3, 20), 'WWWR', 'slightly high'],
    [3, 'WWRR', 'on slope'],
    [minutes(2, 40), 'WRRR', 'slightly low'],
    [minutes(2, 25), 'RRRR', 'too low'],
  ])('seen at %d degrees show %s, which is %s (CS-ADR-DSN.M.645)', (elevationDeg, letters) => {
    expect(lettersAt(papiLeft, elevationDeg)).toBe(letters);
    // Counted from the outermost unit, an installation on the right gives the same word.
    expect(lettersAt(papiRight, elevationDeg)).toBe(letters);
  });

  test.each([
    [2, 30, 0],
    [2, 50, 1],
    [3, 10, 2],
    [3, 30, 3],
  ])(
    'change colour at %d degrees %d minutes, unit %d from the outside, and nowhere else',
    (deg, min, unit) => {
      const at = (arcMinutes: number) => lettersAt(papiLeft, minutes(deg, min + arcMinutes)).charAt(unit);
      expect(at(-1.6)).toBe('R');
      expect(at(0)).toBe('P');
      expect(at(1.6)).toBe('W');
    },
  );

  test('take 3 minutes of arc from red to white, half way at the set angle (Doc 9157 part 4)', () => {
    const set = radFromDeg(3);
    expect(whiteFraction(set, set)).toBe(0.5);
    expect(whiteFraction(set + radFromDeg(1.5 / 60), set)).toBeCloseTo(1, 12);
    expect(whiteFraction(set - radFromDeg(1.5 / 60), set)).toBeCloseTo(0, 12);
    expect(whiteFraction(set + radFromDeg(0.75 / 60), set)).toBeCloseTo(0.75, 12);
  });

  // Heights above the light plane in feet: range NM, then 2°30', 2°50', 3°10', 3°30'.
  test.each([
    [0.25, 66, 75, 84, 93],
    [0.5, 133, 150, 168, 186],
    [1, 265, 301, 336, 372],
    [1.5, 398, 451, 504, 557],
    [2, 531, 601, 672, 743],
    [3, 796, 902, 1008, 1115],
  ])('at %d NM change colour at the tabled heights, to the foot', (rangeNmi, ...tabledFt) => {
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
    foundFt.forEach((ft, unit) => {
      expect(Math.abs(ft - (tabledFt[unit] as number))).toBeLessThanOrEqual(0.51);
    });
  });

  test('hold 318 ft a nautical mile on the slope', () => {
    const seen = newSeenLights();
    const lights = papiLeft.lights!;
    const eye = earthOf(papiLeft, lights.alongM - mFromNmi(1), lights.middleAcrossM);
    seeLights(papiLeft, eye.eastM, eye.northM, mFromFt(318.4), seen);
    expect((seen.slopeAngleRad * 180) / Math.PI).toBeCloseTo(3, 3);
  });
});

describe('slope lights with two units', () => {
  // CS-ADR-DSN.M.645: on slope inner red, outer white; offsets of 15 minutes from the L-880/L-881 manual.
  test.each([
    [minutes(4, 20), 'WW'],
    [4, 'WR'],
    [minutes(3, 40), 'RR'],
  ])('set to 4 degrees and seen at %d show %s', (elevationDeg, letters) => {
    expect(lettersAt(apapi, elevationDeg)).toBe(letters);
  });

  test.each([
    [3, 45, 0],
    [4, 15, 1],
  ])(
    'change colour at %d degrees %d minutes, unit %d from the outside, and nowhere else',
    (deg, min, unit) => {
      const at = (arcMinutes: number) => lettersAt(apapi, minutes(deg, min + arcMinutes)).charAt(unit);
      // Seen from abreast the middle, a mile out: the unit's own elevation differs by less than 0.1 minute
      expect(at(-1.6)).toBe('R');
      expect(at(0)).toBe('P');
      expect(at(1.6)).toBe('W');
      const other = lettersAt(apapi, minutes(deg, min)).charAt(1 - unit);
      expect(other).toBe(unit === 0 ? 'R' : 'W');
    },
  );

  test('stand 10 and 16 metres from the edge of the runway (10 m verified in circuit-training 5, spacing of 6 m from memory)', () => {
    const { unitsAcrossM, unitsAngleRad, side } = apapi.lights!;
    const fromEdgeM = unitsAcrossM.map((across) => side * across - apapi.widthM / 2);
    expect(fromEdgeM).toHaveLength(2);
    expect(fromEdgeM[0]).toBeCloseTo(16, 9);
    expect(fromEdgeM[1]).toBeCloseTo(10, 9);
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
