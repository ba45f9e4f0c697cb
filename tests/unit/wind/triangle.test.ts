import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wrapPi } from '../../../src/units/angles.ts';
import { crosswindMps, headwindMps } from '../../../src/wind/components.ts';
import { driftRad, headingForTrack, trackForHeading, windFromDrift } from '../../../src/wind/triangle.ts';

const angle = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });

describe('wind triangle', () => {
  it('solved one way and back gives the track and the wind again', () => {
    fc.assert(
      fc.property(
        angle,
        angle,
        fc.double({ min: 20, max: 80, noNaN: true }),
        fc.double({ min: 0.5, max: 19, noNaN: true }),
        (track, from, tas, wind) => {
          const there = headingForTrack(track, tas, from, wind)!;
          const back = trackForHeading(there.headingRad, tas, from, wind);
          expect(Math.abs(wrapPi(back.trackRad - track))).toBeLessThan(1e-9);
          expect(back.groundspeedMps).toBeCloseTo(there.groundspeedMps, 8);
          expect(driftRad(there.headingRad, back.trackRad)).toBeCloseTo(-there.correctionRad, 8);
          const found = windFromDrift(there.headingRad, tas, track, there.groundspeedMps);
          expect(found.windMps).toBeCloseTo(wind, 8);
          expect(Math.abs(wrapPi(found.fromRad - from))).toBeLessThan(1e-7);
        },
      ),
    );
  });

  it('has no answer when the wind is stronger than the aeroplane', () => {
    expect(headingForTrack(0, 20, Math.PI / 2, 25)).toBeUndefined();
    expect(headingForTrack(0, 20, 0, 25)).toBeUndefined();
    expect(headingForTrack(0, 0, 0, 5)).toBeUndefined();
  });

  it('counts a wind from the right as positive across, one from ahead as positive along', () => {
    expect(crosswindMps(Math.PI / 2, 10, 0)).toBeCloseTo(10, 12);
    expect(headwindMps(Math.PI, 10, 0)).toBeCloseTo(-10, 12);
    expect(headingForTrack(0, 40, Math.PI / 2, 10)!.correctionRad).toBeGreaterThan(0);
  });
});
