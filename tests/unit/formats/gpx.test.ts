// GPX 1.1 schema (topografix.com/GPX/1/1): version, creator, trk/trkseg/trkpt with lat, lon, ele, time (UTC).
// Metres in a degree at the equator: 110,574 m of latitude, 111,319 m of longitude (WGS 84, textbook table).
import { expect, it } from 'vitest';
import { gpxText } from '../../../src/formats/track/gpx.ts';

const text = gpxText('A & B <x>', [
  { timeS: 0, eastM: 0, northM: 0, altitudeM: 6.1 },
  { timeS: 3661.5, eastM: 111319.49, northM: -110574.28, altitudeM: 300 },
]);

it('writes a GPX 1.1 track around 0 N 0 E', () => {
  expect(text).toContain('<gpx version="1.1"');
  expect(text).toContain('xmlns="http://www.topografix.com/GPX/1/1"');
  const points = [...text.matchAll(/lat="(\S+)" lon="(\S+)"><ele>(\S+)<\/ele><time>(\S+)<\/time>/g)];
  expect(points).toHaveLength(2);
  expect(points[0]?.slice(1)).toEqual(['0.00000000', '0.00000000', '6.10', '2000-01-01T00:00:00.000Z']);
  expect(Number(points[1]?.[1])).toBeCloseTo(-1, 5);
  expect(Number(points[1]?.[2])).toBeCloseTo(1, 5);
  expect(points[1]?.[4]).toBe('2000-01-01T01:01:01.500Z');
  expect(new Date(points[1]?.[4] ?? '').toISOString()).toBe(points[1]?.[4]);
});

it('keeps names as text, never as markup', () => {
  expect(text).toContain('<name>A &amp; B &lt;x&gt;</name>');
});
