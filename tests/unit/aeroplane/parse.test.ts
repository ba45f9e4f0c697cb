import { describe, expect, test } from 'vitest';
import { parseAeroplane } from '../../../src/aeroplane/parse.ts';
import { aeroplaneJson } from '../../support/aeroplanes.ts';

type Path = (string | number)[];

/** The demo file with one place overwritten; `undefined` removes the key. */
const spoilt = (path: Path, value: unknown): unknown => {
  const json = aeroplaneJson('sandpiper');
  let here = json as Record<string | number, unknown>;
  for (const key of path.slice(0, -1)) here = here[key] as Record<string | number, unknown>;
  const last = path.at(-1) as string | number;
  if (value === undefined) delete here[last];
  else here[last] = value;
  return json;
};

const sentence = (path: Path, value: unknown): string => {
  try {
    parseAeroplane(spoilt(path, value), 'two-seat.json');
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

  test('that is no object at all is refused with its name', () => {
    expect(() => parseAeroplane(null, 'two-seat.json')).toThrow(
      'two-seat.json: the whole must be an object, was null',
    );
  });
});
