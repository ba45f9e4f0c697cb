// The wind at circuit height: worked out or typed, what the air does between, and that brief and flight have the same.
import { describe, expect, it } from 'vitest';
import { runwayInUse } from '../../../src/aerodrome/runway.ts';
import { briefOf } from '../../../src/circuit/brief/brief.ts';
import { oneInSixty, windAbove } from '../../../src/circuit/wind-above.ts';
import { parseWindAbove } from '../../../src/formats/wind-text.ts';
import { windOf } from '../../../src/simulation/model.ts';
import { headingDeg } from '../../../src/units/angles.ts';
import { degFromRad, ktFromMps, mpsFromKt } from '../../../src/units/conversions.ts';
import { logLawFactor, meanWind, windWithGust } from '../../../src/wind/profile.ts';
import { aeroplaneNamed } from '../../support/aeroplanes.ts';
import { northRunway, STILL } from '../../support/flight.ts';

const aerodrome = northRunway();
const runway = runwayInUse(aerodrome, '36');
const day = (windFromDegM: number, windKt: number, above?: [number, number]) => ({
  ...STILL,
  windFromDegM,
  windKt,
  ...(above !== undefined && { above: { windFromDegM: above[0], windKt: above[1] } }),
});
/** Knots and degrees it comes from. */
const at = (weather: ReturnType<typeof day>, heightM: number): [number, number] => {
  const out = new Float64Array(2);
  meanWind(windOf(weather, runway, aerodrome.terrain), heightM, out);
  const [east = 0, north = 0] = out;
  return [ktFromMps(Math.hypot(east, north)), (degFromRad(Math.atan2(-east, -north)) + 360) % 360];
};

describe('the wind at circuit height', () => {
  it('is worked out by the logarithmic law where nobody gives it, and says so', () => {
    const { speedMps, fromRadM, typed, sentence } = windAbove(day(60, 10), runway, aerodrome);
    // WMO-No. 8, open ground; level from gradient height up
    expect(ktFromMps(speedMps)).toBeCloseTo(10 * logLawFactor(0.03, 300), 6);
    expect(headingDeg(fromRadM)).toBeCloseTo(60, 6);
    expect(typed).toBe(false);
    expect(sentence).toMatch(
      /^Drift is from the wind at circuit height: 060° 16 kt, worked out from the surface wind over open ground\.$/,
    );
  });

  it('is what was typed, and the surface wind stays what was reported', () => {
    const weather = day(60, 10, [90, 25]);
    const above = windAbove(weather, runway, aerodrome);
    expect(ktFromMps(above.speedMps)).toBeCloseTo(25, 9);
    expect(headingDeg(above.fromRadM)).toBeCloseTo(90, 9);
    expect(above.sentence).toContain('090° 25 kt, as you gave it');
    expect(at(weather, 10)[0]).toBeCloseTo(10, 9);
    expect(at(weather, 10)[1]).toBeCloseTo(60, 9);
    for (const heightM of [1, 3, 9]) expect(at(weather, heightM)).toEqual(at(day(60, 10), heightM));
    expect(at(weather, 900)[0]).toBeCloseTo(25, 9);
  });

  it.each([
    ['stronger', [60, 10, [90, 25]]],
    ['weaker', [60, 20, [60, 2]]],
    ['backed through north', [10, 8, [350, 15]]],
    ['over a calm', [0, 0, [200, 18]]],
  ] as const)('changes evenly with the logarithm of height on the way up: %s', (_, [from, kt, above]) => {
    const weather = day(from, kt, [above[0], above[1]]);
    const heights = [10, 20, 40, 80, 160, 304.8];
    const speeds = heights.map((heightM) => at(weather, heightM)[0]);
    const rises = speeds.map((speed) => (above[1] - kt) * (speed - kt));
    for (let i = 1; i < rises.length; i += 1) expect(rises[i]).toBeGreaterThan(rises[i - 1] as number);
    for (const speed of speeds) expect(speed).toBeGreaterThanOrEqual(0);
    const half = Math.sqrt(10 * 304.8);
    // Within a tenth of a knot: gradient height, above which nothing grows, lies 5 m below circuit height
    expect(at(weather, half)[0]).toBeCloseTo((kt + above[1]) / 2, 1);
  });

  it('leaves gusts as they are', () => {
    const wind = windOf(day(360, 10, [360, 30]), runway, aerodrome.terrain);
    const out = new Float64Array(2);
    windWithGust(wind, 10, mpsFromKt(6), out);
    expect(ktFromMps(-(out[1] as number))).toBeCloseTo(16, 9);
  });

  it('makes the drift of the brief', () => {
    const brief = (weather: ReturnType<typeof day>) =>
      briefOf({ aeroplane: aeroplaneNamed('sandpiper'), aerodrome, weather, runway: '36' });
    const downwind = (weather: ReturnType<typeof day>) => brief(weather).legs[2]!;
    const typed = downwind(day(90, 5, [90, 20]));
    expect(Math.abs(degFromRad(typed.driftRad))).toBeGreaterThan(
      2 * Math.abs(degFromRad(downwind(day(90, 5)).driftRad)),
    );
    // 20 kt across at 82 kt true: the sum for the head, and asin(20 / 82) = 14.1 degrees
    expect(typed.oneInSixty).toMatch(/^60 × 20 ÷ 8[12] ≈ 15°$/);
    expect(Math.abs(degFromRad(typed.driftRad))).toBeCloseTo(14.1, 0);
  });
});

it('one in sixty: worked by hand, and nothing without drift', () => {
  expect(oneInSixty(mpsFromKt(10), mpsFromKt(80))).toBe('60 × 10 ÷ 80 ≈ 8°');
  expect(oneInSixty(mpsFromKt(-9), mpsFromKt(90))).toBe('60 × 9 ÷ 90 ≈ 6°');
  expect(oneInSixty(mpsFromKt(0.3), mpsFromKt(90))).toBeNull();
});

it('reads a typed wind, or says what it expected', () => {
  expect(parseWindAbove('250/18', 'wind at circuit height')).toEqual({ windFromDegM: 250, windKt: 18 });
  expect(parseWindAbove('  ', 'wind at circuit height')).toBeUndefined();
  expect(() => parseWindAbove('250/18g25', 'wind at circuit height')).toThrow(
    'wind at circuit height must be without gusts, like 240/18, was "250/18g25"',
  );
});
