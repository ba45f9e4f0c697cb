import { describe, expect, test } from 'vitest';
import { parseAeroplane } from '../../../src/aeroplane/parse.ts';
import { aeroplaneJson } from '../../support/aeroplanes.ts';

type Path = (string | number)[];

/** The demo file with one place overwritten; `undefined` removes the key. */
const spoilt = (path: Path, value: unknown, id = 'sandpiper'): unknown => {
  const json = aeroplaneJson(id);
  let here = json as Record<string | number, unknown>;
  for (const key of path.slice(0, -1)) here = here[key] as Record<string | number, unknown>;
  const last = path.at(-1) as string | number;
  if (value === undefined) delete here[last];
  else here[last] = value;
  return json;
};

const sentence = (path: Path, value: unknown, id = 'sandpiper', file = 'two-seat.json'): string => {
  try {
    parseAeroplane(spoilt(path, value, id), file);
  } catch (error) {
    return (error as Error).message;
  }
  return 'accepted';
};

describe('a file of an aeroplane', () => {
  test.each<[Path, unknown, string]>([
    [['wing', 'areaM2'], -14, 'two-seat.json: wing.areaM2 must be above 0, was -14'],
    [['wing', 'areaM2'], '16', 'two-seat.json: wing.areaM2 must be a number, was "16"'],
    [['wing', 'areaM2'], undefined, 'two-seat.json: wing.areaM2 is missing'],
    [['wing', 'sweepDeg'], 3, 'two-seat.json: wing.sweepDeg is not a key that is known here'],
    [
      ['wing', 'position'],
      'middle',
      'two-seat.json: wing.position must be one of "high", "low", was "middle"',
    ],
    [['pitch', 'cmAlpha'], 0.4, 'two-seat.json: pitch.cmAlpha must be below 0, was 0.4'],
    [
      ['massKg', 'flown'],
      1100,
      'two-seat.json: massKg.flown must be from 680 (empty) to 1050 (maximum), was 1100',
    ],
    [['massKg', 'maximum'], 600, 'two-seat.json: massKg.maximum must be above the empty mass 680, was 600'],
    [['flap', 'stages', 0, 'deg'], 5, 'two-seat.json: flap.stages[0].deg must be 0 (flap up), was 5'],
    [
      ['flap', 'stages', 2, 'deg'],
      10,
      'two-seat.json: flap.stages[2].deg must be above the stage before it (10), was 10',
    ],
    [
      ['flap', 'stages', 3, 'maximumLiftCoefficient'],
      1.9,
      'two-seat.json: flap.stages[3].maximumLiftCoefficient must be at least the stage before it (1.92), was 1.9',
    ],
    [
      ['flap', 'stages', 2, 'limitKt'],
      120,
      'two-seat.json: flap.stages[2].limitKt must be at most the stage before it (100), was 120',
    ],
    [['plan', 'baseStage'], 4, 'two-seat.json: plan.baseStage must be one of the flap stages 0 to 3, was 4'],
    [
      ['speeds', 'baseKt'],
      90,
      'two-seat.json: speeds.baseKt must be at most 85, the limit of flap 20 planned there, was 90',
    ],
    [['limits', 'vnoKt'], 150, 'two-seat.json: limits.vnoKt must be below limits.vneKt 140, was 150'],
    [
      ['claims', 'stallCleanKt', 'low'],
      51,
      'two-seat.json: claims.stallCleanKt.low must be at most its value 50.6, was 51',
    ],
    [
      ['claims', 'stallCleanKt', 'high'],
      50,
      'two-seat.json: claims.stallCleanKt.high must be at least its value 50.6, was 50',
    ],
  ])('with %j set to %j is refused in one sentence', (path, value, expected) => {
    expect(sentence(path, value)).toBe(expected);
  });

  test.each<[Path, unknown, string]>([
    [
      ['limits', 'gearOperatingKt'],
      undefined,
      'limits must have gearOperatingKt and gearExtendedKt when the gear is retractable',
    ],
    [
      ['limits', 'gearOperatingKt'],
      140,
      'limits.gearOperatingKt must be at most limits.gearExtendedKt 135, was 140',
    ],
    [['limits', 'gearExtendedKt'], 180, 'limits.gearExtendedKt must be at most limits.vneKt 175, was 180'],
    [
      ['speeds', 'downwindKt'],
      118,
      'speeds.downwindKt must be at most 115, where the gear is lowered, was 118',
    ],
    [['drag', 'gear'], 0, 'drag.gear must be above 0 when the gear is retractable, was 0'],
    [
      ['equipment', 'propellerLever'],
      false,
      'equipment.propellerLever must be true with a constant-speed propeller, was false',
    ],
    [
      ['propeller', 'coarsePitchDeg'],
      12,
      'propeller.coarsePitchDeg must be above propeller.finePitchDeg 15, was 12',
    ],
    [['propeller', 'lowestRpm'], 2700, 'propeller.lowestRpm must be below engine.ratedRpm 2700, was 2700'],
    [
      ['plan', 'circuitRpm'],
      undefined,
      'plan must have circuitRpm and baseManifoldInHg with a constant-speed propeller',
    ],
    [['plan', 'circuitRpm'], 2800, 'plan.circuitRpm must be from 1500 to 2700, was 2800'],
    [
      ['propeller', 'kind'],
      'ducted',
      'propeller.kind must be one of "fixed-pitch", "constant-speed", was "ducted"',
    ],
  ])('of the four-seater with %j set to %j is refused', (path, value, expected) => {
    expect(sentence(path, value, 'whimbrel', 'four-seat.json')).toBe(`four-seat.json: ${expected}`);
  });

  test('that is no object at all is refused with its name', () => {
    expect(() => parseAeroplane(null, 'two-seat.json')).toThrow(
      'two-seat.json: the whole must be an object, was null',
    );
  });
});
