import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crosswindMps, headwindMps } from '../../../src/wind/components.ts';
import { holdTrack } from '../../../src/wind/triangle.ts';

const angle = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });

describe('wind triangle', () => {
  it('adds up: air velocity and wind are the ground velocity along the track, and nothing is left across', () => {
    fc.assert(
      fc.property(
        angle,
        angle,
        fc.double({ min: 20, max: 80, noNaN: true }),
        fc.double({ min: 0.5, max: 19, noNaN: true }),
        (track, from, tas, wind) => {
          const hold = holdTrack(tas, -headwindMps(from, wind, track), -crosswindMps(from, wind, track))!;
          const heading = track + hold.correctionRad;
          const east = tas * Math.sin(heading) - wind * Math.sin(from);
          const north = tas * Math.cos(heading) - wind * Math.cos(from);
          expect(east).toBeCloseTo(hold.groundspeedMps * Math.sin(track), 7);
          expect(north).toBeCloseTo(hold.groundspeedMps * Math.cos(track), 7);
        },
      ),
    );
  });

  it('has no answer when the wind across is stronger than the aeroplane', () => {
    expect(holdTrack(20, 0, 25)).toBeUndefined();
    expect(holdTrack(20, 0, -25)).toBeUndefined();
  });

  it('counts a wind from the right as positive across, one from ahead as positive along', () => {
    expect(crosswindMps(Math.PI / 2, 10, 0)).toBeCloseTo(10, 12);
    expect(headwindMps(Math.PI, 10, 0)).toBeCloseTo(-10, 12);
    expect(holdTrack(40, 0, -10)!.correctionRad).toBeGreaterThan(0);
  });
});
