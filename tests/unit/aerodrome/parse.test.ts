import { describe, expect, test } from 'vitest';
import { parseAerodrome } from '../../../src/aerodrome/parse.ts';
import { aerodromeFiles, aerodromeJson, aerodromeNamed } from '../../support/aerodromes.ts';

/** The demo file with one place overwritten; `undefined` removes the key. */
const spoilt = (path: (string | number)[], value: unknown): unknown => {
  const json = aerodromeJson('curlew-sands');
  let here = json as Record<string | number, unknown>;
  for (const key of path.slice(0, -1)) here = here[key] as Record<string | number, unknown>;
  const last = path.at(-1) as string | number;
  if (value === undefined) delete here[last];
  else here[last] = value;
  return json;
};

const sentence = (path: (string | number)[], value: unknown): string => {
  try {
    parseAerodrome(spoilt(path, value), 'curlew.json');
  } catch (error) {
    return (error as Error).message;
  }
  return 'accepted';
};

describe('a file of an aerodrome', () => {
  test.each(aerodromeFiles())('%s is read, and its id is its name', (name) => {
    const id = name.replace('.json', '');
    expect(aerodromeNamed(id).id).toBe(id);
  });

  test.each([
    [['runway', 'widthM'], -14, 'curlew.json: runway.widthM must be above 0, was -14'],
    [['runway', 'widthM'], 'wide', 'curlew.json: runway.widthM must be a number, was "wide"'],
    [['runway', 'widthM'], undefined, 'curlew.json: runway.widthM is missing'],
    [['runway', 'colour'], 'grey', 'curlew.json: runway.colour is not a key that is known here'],
    [['runway', 'surface'], 'ice', 'curlew.json: runway.surface must be one of "tarmac", "grass", was "ice"'],
    [['title'], '', 'curlew.json: title must be text that is not empty, was ""'],
    [['runway', 'slopePercent'], 9, 'curlew.json: runway.slopePercent must be at most 5, was 9'],
    [
      ['runway', 'ends', 1, 'headingDegM'],
      215,
      'curlew.json: runway.ends[1].headingDegM must be the reciprocal of 40, was 215',
    ],
    [
      ['runway', 'ends', 0, 'designator'],
      '06',
      'curlew.json: runway.ends[0].designator must be its heading 40 to the nearest ten, was "06"',
    ],
    [
      ['runway', 'lengthM'],
      400,
      'curlew.json: runway.ends[0].aimPastThresholdM must leave the touchdown point on the 400 m that can be landed on, was 300',
    ],
  ])('with %j set to %j is refused in one sentence', (path, value, expected) => {
    expect(sentence(path as (string | number)[], value)).toBe(expected);
  });

  test('that is no object at all is refused with its name', () => {
    expect(() => parseAerodrome(null, 'curlew.json')).toThrow(
      'curlew.json: the whole must be an object, was null',
    );
    expect(() => parseAerodrome([], 'curlew.json')).toThrow(/^curlew\.json: .* (is missing|must be)/);
  });
});
