import { describe, expect, it } from 'vitest';
import { newSnapshot, type Snapshot } from '../../../src/simulation/snapshot.ts';
import { worthDrawing } from '../../../src/views/plan/trail.ts';
import {
  clearTrail,
  createTrail,
  extendTrail,
  PIECE_POINTS,
  rewindTrail,
  type Trail,
} from '../../../src/views/trail.ts';

const at = (timeS: number, eastM: number, northM = 0): Snapshot => ({
  ...newSnapshot(),
  timeS,
  eastM,
  northM,
});

const flown = (seconds: number): Trail => {
  const trail = createTrail(1, 10);
  for (let t = 0; t <= seconds; t += 0.25) extendTrail(trail, at(t, 40 * t));
  return trail;
};
const points = (trail: Trail): number => trail.pieces.reduce((sum, piece) => sum + piece.count, 0);

describe('the trail', () => {
  it('takes one point a second, not one a call', () => {
    expect(points(flown(30))).toBe(31);
  });

  it('takes none while the aeroplane stands still', () => {
    const trail = createTrail(1, 10);
    for (let t = 0; t < 60; t += 1) extendTrail(trail, at(t, 0));
    expect(points(trail)).toBe(1);
  });

  it('begins a new piece with the last point of the full one, so that no gap is drawn', () => {
    const trail = flown(150);
    expect(trail.pieces).toHaveLength(2);
    expect(trail.pieces[0]!.count).toBe(PIECE_POINTS);
    expect(trail.pieces[1]!.timeS[0]).toBe(trail.pieces[0]!.timeS[PIECE_POINTS - 1]);
  });

  it('never touches a full piece again', () => {
    const trail = flown(120);
    const full = trail.pieces[0]!;
    const version = full.version;
    for (let t = 121; t < 200; t += 1) extendTrail(trail, at(t, 40 * t));
    expect(full.version).toBe(version);
  });

  it('forgets what came after an instant when stepped back, over several pieces', () => {
    const trail = flown(300);
    rewindTrail(trail, 90);
    expect(trail.pieces).toHaveLength(1);
    expect(trail.pieces[0]!.timeS[trail.pieces[0]!.count - 1]).toBeLessThanOrEqual(90);
    extendTrail(trail, at(91.5, 40 * 91.5));
    expect(points(trail)).toBe(92);
  });

  it('is empty when cleared', () => {
    const trail = flown(10);
    clearTrail(trail);
    expect(trail.pieces).toHaveLength(0);
  });
});

describe('what is worth drawing of a finished piece', () => {
  it('keeps the two ends of a straight leg', () => {
    const trail = flown(100);
    expect(worthDrawing(trail.pieces[0]!)).toEqual([0, PIECE_POINTS - 1]);
  });

  it('keeps a right-angled corner', () => {
    const trail = createTrail(1, 10);
    for (let t = 0; t < 100; t += 1)
      extendTrail(trail, t < 50 ? at(t, 40 * t) : at(t, 40 * 50, 40 * (t - 50)));
    expect(worthDrawing(trail.pieces[0]!)).toContain(50);
  });

  it('leaves no point of a turn of 400 m radius farther off than the stated 1.5 m', () => {
    const trail = createTrail(1, 10);
    for (let t = 0; t < 100; t += 1) {
      const angle = (t * 40) / 400;
      extendTrail(trail, at(t, 400 * Math.sin(angle), 400 * (1 - Math.cos(angle))));
    }
    const piece = trail.pieces[0]!;
    const kept = worthDrawing(piece);
    for (let k = 0; k + 1 < kept.length; k += 1) {
      const [a, b] = [kept[k]!, kept[k + 1]!];
      const [ax, ay] = [piece.eastM[a]!, piece.northM[a]!];
      const [dx, dy] = [piece.eastM[b]! - ax, piece.northM[b]! - ay];
      for (let i = a + 1; i < b; i += 1) {
        const off = Math.abs((piece.eastM[i]! - ax) * dy - (piece.northM[i]! - ay) * dx) / Math.hypot(dx, dy);
        expect(off).toBeLessThanOrEqual(1.5);
      }
    }
  });
});
