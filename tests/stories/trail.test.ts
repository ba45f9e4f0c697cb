// The colours of a trail against flying on: the pilot of the stories takes over in an ordinary fork, and the lesson judges.
import { describe, expect, it } from 'vitest';
import type { LessonMemory } from '../../src/lesson/memory.ts';
import { createLessonFold } from '../../src/lesson/watch/lesson-fold.ts';
import { createPilot } from '../../src/pilot/pilot.ts';
import { forkSession } from '../../src/session/fork.ts';
import { tick } from '../../src/session/session.ts';
import type { ControlSource, Fold } from '../../src/session/source.ts';
import { approachOf } from '../../src/study/approach.ts';
import { type Flown, seeAgain } from '../../src/study/flown.ts';
import { approachToStudy } from '../../src/study/root/root.ts';
import { colourTrail, type TrailPiece } from '../../src/study/trail.ts';
import {
  baseTurned,
  type Fault,
  flapNotTaken,
  flyFault,
  noFault,
  powerOnBase,
  speedFrom,
} from '../support/faults.ts';
import { DAYS, dayOf } from '../support/root-cases.ts';

const trailOf = (flown: Flown): readonly TrailPiece[] => {
  const colouring = colourTrail(flown, approachToStudy(flown)!);
  for (;;) {
    const { done, value } = colouring.next();
    if (done === true) return value;
  }
};

/** Forks the recording, hands the aeroplane to the model pilot, and waits for the last gate. */
const settlesFrom = (flown: Flown, timeS: number): boolean => {
  const { model, flight, lesson } = flown;
  const source = createPilot(model, flight.plan) as ControlSource<unknown>;
  const folds = [createLessonFold(lesson, flight.limits) as Fold<unknown>];
  const session = forkSession([{ recording: flight.recording, source, folds }], Math.round(timeS * 60));
  const aircraft = session.aircraft[0]!;
  const memory = aircraft.foldMemories[0] as LessonMemory;
  const goArounds = memory.goArounds.length;
  for (let i = 0; i < 400 * 60 && aircraft.snapshot.ended === null; i += 1) {
    tick(session);
    if (memory.goArounds.length > goArounds || memory.gates.some((gate) => gate.heightFt === 200)) break;
  }
  return approachOf(memory, 1, timeS).settled;
};

const flights: readonly (readonly [Fault, string])[] = [
  [noFault, 'from the left'],
  [baseTurned(-18), 'still'],
  [powerOnBase(-0.25), 'still'],
  [speedFrom('base', 8), 'headwind'],
  [flapNotTaken(), 'tight, still'],
];

describe.each(flights)('the trail of: %o', (fault, day) => {
  const flown = seeAgain(flyFault(dayOf(DAYS, day), fault).flight);
  const pieces = trailOf(flown);
  const firstBad = approachToStudy(flown)?.firstBad ?? null;

  it('runs without a gap from abeam to the last gate', () => {
    expect(pieces.length).toBeGreaterThan(0);
    for (const [i, piece] of pieces.entries()) {
      expect(piece.toS).toBeGreaterThan(piece.fromS);
      if (i > 0) expect(piece.fromS).toBeCloseTo(pieces[i - 1]!.toS, 6);
    }
  });

  it('agrees with flying on: lost where it says so, to be had until then', () => {
    const lost = pieces.find(({ colour }) => colour === 'go-around');
    const until = firstBad?.atS ?? Number.POSITIVE_INFINITY;
    for (const { fromS, toS, colour } of pieces) {
      if (colour !== 'go-around') continue;
      for (let s = fromS; s < Math.min(toS, until); s += 6)
        expect(settlesFrom(flown, s), `lost at ${s} s`).toBe(false);
    }
    // Every spoilt approach is lost somewhere on the way, and the good one nowhere
    expect(lost === undefined).toBe(fault === noFault);
    const good = pieces.filter(({ colour }) => colour !== 'go-around');
    if (lost !== undefined)
      expect(settlesFrom(flown, lost.fromS - 2), `still good at ${lost.fromS - 2} s`).toBe(true);
    // Earlier than that the same pilot nearly always manages too, and at once
    const earlier = good.flatMap(({ fromS, toS }) => [fromS, Math.floor((fromS + toS) / 2)]);
    const settled = earlier.filter((s) => settlesFrom(flown, s));
    expect(earlier.length).toBeGreaterThan(1);
    expect(settled.length).toBeGreaterThanOrEqual(0.8 * earlier.length);
  });

  it('is never good again behind a gate that was failed', () => {
    expect(firstBad === null).toBe(fault === noFault);
    if (firstBad === null) return expect(pieces.every(({ colour }) => colour === 'stabilised')).toBe(true);
    const behind = pieces.filter(({ fromS }) => fromS > firstBad.atS);
    expect(behind.every(({ colour }) => colour === 'go-around')).toBe(true);
    expect(pieces.some(({ colour }) => colour !== 'stabilised')).toBe(true);
  });
});
