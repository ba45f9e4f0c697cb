import { beforeAll, describe, expect, it } from 'vitest';
import { DEFAULT_TOLERANCES } from '../../../src/lesson/judge/tolerances.ts';
import { layOut, type Replayed, sampleAt } from '../../../src/pages/debrief/replayed.ts';
import { forkSession } from '../../../src/session/fork.ts';
import { createPlayback } from '../../../src/session/playback.ts';
import { tick } from '../../../src/session/session.ts';
import type { ControlSource } from '../../../src/session/source.ts';
import { newSnapshot } from '../../../src/simulation/snapshot.ts';
import { keptBody } from '../../support/attempt-files.ts';
import { flyFault, noFault, speedFrom } from '../../support/faults.ts';

describe('a flight laid out for the debrief', () => {
  const { flight } = flyFault({ windDeg: 30, windKt: 8, leg: 'base' }, speedFrom('final', 12));
  let replayed: Replayed;
  beforeAll(() => {
    replayed = layOut(flight.recording, DEFAULT_TOLERANCES);
  });

  it('stands at any instant exactly where a session that flies the recorded hands stands', () => {
    const source = createPlayback(flight.recording) as ControlSource<unknown>;
    const session = forkSession([{ recording: flight.recording, source, folds: [] }], 0);
    const seen = newSnapshot();
    for (const timeS of [0.5, 12.35, 47, 80.1]) {
      while (session.step < Math.round(timeS * 60)) tick(session);
      expect(replayed.at(timeS, seen)).toEqual(session.aircraft[0]?.snapshot);
    }
    // Backwards too.
    expect(replayed.at(3, seen).step).toBe(180);
  });

  it('has found the same gates as the result that was kept, and colours what came after a missed one', () => {
    const { result } = keptBody(flight);
    expect(replayed.memory?.gates.map((gate) => gate.why.length === 0)).toEqual(
      result.gates.map((gate) => gate.stabilised),
    );
    const missed = result.go_arounds.find((g) => g.at_s === null && g.due_at_s !== null);
    expect(missed).toBeDefined();
    const after = replayed.samples.filter((s) => s.timeS > (missed?.due_at_s ?? 0) + 1 && s.leg === 'final');
    expect(after.length).toBeGreaterThan(5);
    expect(new Set(after.map((s) => s.band))).toEqual(new Set(['go-around']));
  });

  it('colours nothing go around on a final that was stabilised', () => {
    const good = layOut(flyFault({ leg: 'final' }, noFault).flight.recording, DEFAULT_TOLERANCES);
    const bands = new Set(good.samples.filter((s) => s.leg === 'final').map((s) => s.band));
    expect(bands.has('stabilised')).toBe(true);
    expect(bands.has('go-around')).toBe(false);
  });

  it('samples twice a second, in order, and finds the one before a time', () => {
    expect(replayed.samples.length).toBe(Math.ceil(flight.recording.steps / 30) + 1);
    expect(sampleAt(replayed, 10.3).timeS).toBe(10);
    expect(sampleAt(replayed, -1).timeS).toBe(0);
  });
});
