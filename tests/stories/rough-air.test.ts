// Turbulence after MIL-F-8785C, light and moderate, several seeds.
import { describe, expect, it } from 'vitest';
import { flyDay } from '../support/circuit-flight.ts';

describe.each([1, 2, 3, 4, 5, 6])('light turbulence, seed %d', (seed) => {
  const flown = flyDay({ runway: '22', turbulence: 'light', windDeg: 30, windKt: 8, seed });
  const touch = flown.touchdowns[0]!;

  it('lands and stops on the runway', () => {
    expect(flown.ended).toBeNull();
    expect(flown.stopped).toBe(true);
    expect(flown.stop.remainingM).toBeGreaterThan(20);
  });

  // FAA-S-ACS-6 III.B: altitude ±100 ft, airspeed ±10 kt, turbulence allowed for
  it('holds downwind within the licence test', () => {
    expect(flown.downwind.lowFt).toBeGreaterThan(900);
    expect(flown.downwind.highFt).toBeLessThan(1100);
    expect(flown.downwind.slowKt).toBeGreaterThan(70);
    expect(flown.downwind.fastKt).toBeLessThan(90);
  });

  // Common practice: a firm arrival, not a hard one; on the middle third of the runway
  it('touches no harder than firmly, near the centreline', () => {
    expect(touch.sinkFpm).toBeLessThan(300);
    expect(Math.abs(touch.centrelineM)).toBeLessThan(4);
    expect(Math.abs(touch.crabDeg)).toBeLessThan(6);
  });

  // FAA-S-ACS-6 IV.B: at or within 400 ft beyond the point; the same before it as in rough air (common practice)
  it('touches within 400 ft of the specified point', () => {
    expect(Math.abs(touch.pastSpecifiedFt)).toBeLessThan(500);
  });
});

describe.each([1, 2, 3, 4, 5, 6])('moderate turbulence, seed %d', (seed) => {
  const flown = flyDay({ runway: '22', turbulence: 'moderate', seed });

  it('lands in one piece and stops on the runway', () => {
    expect(flown.ended).toBeNull();
    expect(flown.stopped).toBe(true);
    expect(flown.stop.remainingM).toBeGreaterThan(0);
    expect(Math.abs(flown.stop.centrelineM)).toBeLessThan(8);
  });

  // Below what the undercarriage bears; two go-arounds are enough to find a lull (common practice)
  it('neither breaks it nor tries for ever', () => {
    const { collapseSinkFpm } = flown.scenario.aeroplane.undercarriage;
    for (const touch of flown.touchdowns) expect(touch.sinkFpm).toBeLessThan(collapseSinkFpm);
    expect(flown.goArounds).toBeLessThanOrEqual(2);
  });
});

// Light turbulence makes a landing livelier, not hard (common practice: 100 ft/min is gentle, 300 firm).
it('light turbulence leaves half of the touches below 150 ft/min, nineteen of twenty below 250', () => {
  const sinksFpm: number[] = [];
  for (const aeroplane of ['sandpiper', 'dotterel', 'whimbrel']) {
    for (const windKt of [0, 8]) {
      for (let seed = 1; seed <= 12; seed++) {
        const day = { aeroplane, turbulence: 'light', windDeg: 30, windKt, seed, leg: 'final' } as const;
        const { ended, touchdowns } = flyDay(day);
        expect(ended, `${aeroplane}, ${windKt} kt, seed ${seed}`).toBeNull();
        sinksFpm.push(touchdowns[0]!.sinkFpm);
      }
    }
  }
  sinksFpm.sort((a, b) => a - b);
  expect(sinksFpm[Math.floor(0.5 * sinksFpm.length)]).toBeLessThan(150);
  expect(sinksFpm[Math.floor(0.95 * sinksFpm.length)]).toBeLessThan(250);
});
