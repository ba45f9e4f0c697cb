import { describe, expect, it } from 'vitest';
import { alongM, eastOf, northOf, runwayInUse } from '../../../src/aerodrome/runway.ts';
import { newSnapshot } from '../../../src/simulation/snapshot.ts';
import { mFromFt, mFromNmi, radFromDeg } from '../../../src/units/conversions.ts';
import { FlownDistances } from '../../../src/views/profile/flown.ts';
import { distanceAlong, plannedHeightM, trackOf } from '../../../src/views/profile/track.ts';
import { createTrail, extendTrail, rewindTrail } from '../../../src/views/trail.ts';
import { aerodromeNamed } from '../../support/aerodromes.ts';
import { plannedCircuit } from '../../support/circuits.ts';

const runway = runwayInUse(aerodromeNamed('curlew-sands'), '22');
const plan = plannedCircuit('curlew-sands', '22', { windFromDegM: 250, windKt: 11 });
const track = trackOf(plan, runway);

/** Where along and right of the landing direction, and how high: geometry done by hand. */
const at = (along: number, across: number, heightM: number, beforeM: number): number =>
  distanceAlong(track, eastOf(runway, along, across), northOf(runway, along, across), heightM, beforeM);

describe('the circuit unrolled', () => {
  it('gives every point of the planned path its own distance, flown from beginning to end', () => {
    let before = Number.NaN;
    for (const point of plan.path) {
      const found = distanceAlong(track, point.eastM, point.northM, point.heightM, before);
      expect(Math.abs(found - point.distanceM)).toBeLessThan(60);
      before = found;
    }
  });

  it('puts the threshold where the path crosses it', () => {
    const last = plan.path.at(-1)!;
    expect(last.distanceM - track.thresholdM).toBeCloseTo(alongM(runway, last.eastM, last.northM), 3);
  });

  it('is plain distance to the threshold on the final, also on one longer than planned', () => {
    const before = track.thresholdM - mFromNmi(0.5);
    expect(track.thresholdM - at(-mFromNmi(0.5), 20, mFromFt(160), before)).toBeCloseTo(mFromNmi(0.5), 6);
    const long = at(-mFromNmi(3.1), 0, mFromFt(950), track.baseTurnM + 300);
    expect(track.thresholdM - at(-mFromNmi(3), 0, mFromFt(900), long)).toBeCloseTo(mFromNmi(3), 6);
  });

  it('goes on along the runway after the threshold', () => {
    expect(at(400, 0, 0, track.thresholdM + 380) - track.thresholdM).toBeCloseTo(400, 6);
  });

  it('begins anew when the aeroplane flies again after a go-around', () => {
    const again = at(700, 0, mFromFt(150), track.thresholdM + 680);
    expect(again).toBeCloseTo(700 - track.startAlongM, 6);
  });

  it('does not take a normal crossing of the threshold at 50 ft for a go-around', () => {
    const crossing = at(20, 0, mFromFt(50), track.thresholdM - 5);
    expect(crossing).toBeCloseTo(track.thresholdM + 20, 6);
  });

  it('tells the upwind leg from the final by height and by what came before', () => {
    const upwind = at(runway.surfaceEndM + 100, 0, mFromFt(250), 500);
    expect(upwind).toBeLessThan(track.baseTurnM / 2);
  });

  it('knows the planned height at a distance: circuit height in the middle of downwind', () => {
    const { from, to } = plan.legs.downwind;
    const middle = from.distanceM + 0.2 * (to.distanceM - from.distanceM);
    expect(plannedHeightM(track, middle)).toBeCloseTo(mFromFt(1000), 0);
  });
});

describe('the distances of a trail', () => {
  const fly = (seconds: number) => {
    const trail = createTrail(1, 10);
    for (let t = 0; t <= seconds; t += 1) {
      const along = -5000 + 33 * t;
      extendTrail(trail, {
        ...newSnapshot(),
        timeS: t,
        eastM: eastOf(runway, along, 0),
        northM: northOf(runway, along, 0),
        heightM: Math.max(0, (300 - along) * Math.tan(radFromDeg(3))),
      });
    }
    return trail;
  };

  it('rise with the flight, over several pieces', () => {
    const trail = fly(140);
    const flown = new FlownDistances();
    const all = trail.pieces.flatMap((piece, p) => [...flown.of(track, trail, p).slice(0, piece.count)]);
    for (let i = 1; i < all.length; i += 1) expect(all[i]!).toBeGreaterThanOrEqual(all[i - 1]! - 1e-3);
  });

  it('are worked out again after a step back', () => {
    const trail = fly(80);
    const flown = new FlownDistances();
    flown.lastOf(track, trail, 0);
    rewindTrail(trail, 40);
    const along = -5000 + 33 * 40;
    expect(flown.lastOf(track, trail, 0)).toBeCloseTo(track.thresholdM + along, 1);
  });
});
