import { describe, expect, test } from 'vitest';
import {
  acrossM,
  alongM,
  earthOf,
  endNames,
  fromFile,
  groundHeightM,
  onSurface,
  runwayInUse,
} from '../../../src/aerodrome/runway.ts';
import { headingDeg, wrapPi } from '../../../src/units/angles.ts';
import { aerodromeFiles, aerodromeNamed } from '../../support/aerodromes.ts';

const everyRunway = aerodromeFiles().flatMap((name) => {
  const aerodrome = aerodromeNamed(name.replace('.json', ''));
  return endNames(aerodrome).map((designator) => runwayInUse(aerodrome, designator));
});

describe('the runway in use', () => {
  test('that does not exist is refused with both ends named', () => {
    expect(() => runwayInUse(aerodromeNamed('curlew-sands'), '09')).toThrow(
      'curlew-sands: runway must be 04 or 22, was 09',
    );
  });

  test('knows the name of the opposite direction', () => {
    expect(runwayInUse(aerodromeNamed('curlew-sands'), '04').otherDesignator).toBe('22');
    expect(runwayInUse(aerodromeNamed('dunlin-ridge'), '09').otherDesignator).toBe('27');
  });

  test('turns magnetic into true with variation east added (variation east, magnetic least: common practice)', () => {
    const runway = runwayInUse(aerodromeNamed('ptarmigan-flat'), '16');
    expect(headingDeg(runway.headingRadT)).toBeCloseTo(170, 9);
    expect(headingDeg(runway.headingRadM)).toBeCloseTo(162, 9);
  });

  test.each(everyRunway.map((runway) => [runway.designator, runway] as const))(
    '%s: along and across turn back into east and north; across is + to the right',
    (_, runway) => {
      const place = earthOf(runway, 700, -300);
      expect(alongM(runway, place.eastM, place.northM)).toBeCloseTo(700, 9);
      expect(acrossM(runway, place.eastM, place.northM)).toBeCloseTo(-300, 9);
      // A quarter turn to the right of the heading is the across axis.
      const right = earthOf(runway, 0, 1);
      expect(Math.atan2(right.eastM, right.northM)).toBeCloseTo(wrapPi(runway.headingRadT + Math.PI / 2), 9);
    },
  );

  test('rises along the landing direction of the first end and falls along the second', () => {
    const aerodrome = aerodromeNamed('plover-meadow');
    const up = runwayInUse(aerodrome, '31');
    const down = runwayInUse(aerodrome, '13');
    expect(up.slope).toBeCloseTo(0.02, 12);
    expect(down.slope).toBeCloseTo(-0.02, 12);
    // 640 m at 2 percent is 12.8 m.
    expect(down.thresholdElevationM - up.thresholdElevationM).toBeCloseTo(12.8, 9);
    expect(groundHeightM(up, 320)).toBeCloseTo(6.4, 9);
    expect(groundHeightM(up, 5000)).toBeCloseTo(12.8, 9);
    expect(groundHeightM(up, -5000)).toBeCloseTo(0, 9);
  });

  test('describes one and the same ground from both ends', () => {
    for (const id of ['plover-meadow', 'dunlin-ridge', 'ptarmigan-flat']) {
      const aerodrome = aerodromeNamed(id);
      const [first, second] = endNames(aerodrome).map((name) => runwayInUse(aerodrome, name));
      for (const along of [-400, 0, 200, 700]) {
        const seenFromSecond = second!.originAlongM - along;
        expect(first!.thresholdElevationM + groundHeightM(first!, along)).toBeCloseTo(
          second!.thresholdElevationM + groundHeightM(second!, seenFromSecond),
          9,
        );
      }
      // The file's origin, seen from the second end, lies at the first end's threshold.
      const origin = fromFile(second!, [0, 0]);
      expect(alongM(second!, origin.eastM, origin.northM)).toBeCloseTo(second!.originAlongM, 9);
    }
  });

  test('keeps a displaced threshold out of the landing length and in the take-off length', () => {
    const runway = runwayInUse(aerodromeNamed('dunlin-ridge'), '27');
    expect(runway.surfaceStartM).toBe(-150);
    expect(runway.landingLengthM).toBe(930);
    expect(runway.takeOffLengthM).toBe(1080);
    expect(onSurface(runway, -100, 0)).toBe(true);
    expect(onSurface(runway, -151, 0)).toBe(false);
    expect(onSurface(runway, 100, 9.1)).toBe(false);
    expect(runway.circuitSide).toBe(1);
  });

  test('sites the units 15 m from the edge and 9 m apart, on the side they are installed (UFC 3-535-01)', () => {
    const left = runwayInUse(aerodromeNamed('curlew-sands'), '22').lights;
    expect(left?.unitsAcrossM).toEqual([-53.5, -44.5, -35.5, -26.5]);
    const right = runwayInUse(aerodromeNamed('ptarmigan-flat'), '34').lights;
    expect(right?.unitsAcrossM).toEqual([57, 48, 39, 30]);
    // APAPI: 10 m and 6 m, from memory.
    expect(runwayInUse(aerodromeNamed('dunlin-ridge'), '09').lights?.unitsAcrossM).toEqual([25, 19]);
  });
});
