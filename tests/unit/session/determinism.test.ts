// Two runs are compared, never a stored hash: same seed and controls, same bytes; cut anywhere and continued.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseRecording, recordingText } from '../../../src/formats/recording-json.ts';
import { forkSession } from '../../../src/session/fork.ts';
import { createPlayback } from '../../../src/session/playback.ts';
import { firstDifference } from '../../../src/session/replay.ts';
import { createScript, type ScriptRow } from '../../../src/session/script.ts';
import { changeSource, createSession, type Session, tick } from '../../../src/session/session.ts';
import type { ControlSource, Fold } from '../../../src/session/source.ts';
import { CONTROLS } from '../../../src/simulation/controls.ts';
import type { Scenario } from '../../../src/simulation/scenario.ts';
import { scenarioOf } from '../../support/flight.ts';

const gusty = (seed: number): Scenario =>
  scenarioOf({
    start: {},
    seed,
    weather: { windFromDegM: 250, windKt: 15, gustKt: 25, turbulence: 'light' },
  });

/** Hands that follow a sum of its own, with memory: what a pilot looks like to a session. */
const wanderer: ControlSource<{ phase: number; kicks: Float64Array }> = {
  name: 'wanderer',
  begin: () => ({ phase: 1, kicks: new Float64Array(2) }),
  next: (snapshot, memory, controls) => {
    memory.phase = (memory.phase * 16807) % 2147483647;
    memory.kicks[0] = (memory.kicks[0] as number) * 0.9 + (memory.phase / 2147483647 - 0.5) * 0.1;
    controls.elevator = (memory.kicks[0] as number) - 0.5 * snapshot.pitchRad;
    controls.aileron = -0.8 * snapshot.bankRad;
    controls.throttle = 0.7 + (memory.kicks[0] as number);
  },
};

/** Counts and sums what it sees. */
const witness: Fold<{ steps: number; sum: number }> = {
  begin: () => ({ steps: 0, sum: 0 }),
  step: (memory, snapshot) => {
    memory.steps += 1;
    memory.sum += snapshot.heightM;
  },
};

const fly = (session: Session, steps: number): Session => {
  for (let i = 0; i < steps; i += 1) tick(session);
  return session;
};
const begun = (seed = 1, source: ControlSource<unknown> = wanderer) =>
  createSession([{ scenario: gusty(seed), source, folds: [witness] }]);
const bytesOf = (session: Session) =>
  session.aircraft.map((a) => ({
    state: [...new Uint8Array(a.state.buffer, a.state.byteOffset, a.state.byteLength)],
    controls: { ...a.controls },
    source: structuredClone(a.sourceMemory),
    folds: structuredClone(a.foldMemories),
    step: a.snapshot.step,
  }));

/** The same session some seconds earlier, as the flying page steps back. */
const stepBack = (session: Session, seconds: number): Session =>
  forkSession(
    session.aircraft.map(({ recorder, source, folds }) => ({ recording: recorder.recording, source, folds })),
    Math.max(0, session.step - seconds * 60),
  );

describe('a session', () => {
  it('gives the same bytes for the same seed and hands, and others for another seed', () => {
    const one = bytesOf(fly(begun(7), 900));
    expect(bytesOf(fly(begun(7), 900))).toEqual(one);
    expect(bytesOf(fly(begun(8), 900))[0]?.state).not.toEqual(one[0]?.state);
  });

  it('is cut anywhere and goes on to the same bytes and the same memories', () => {
    const whole = fly(begun(), 1500);
    const wanted = bytesOf(whole);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1500 }), (cut) => {
        const { recording } = whole.aircraft[0]!.recorder;
        const again = forkSession([{ recording, source: wanderer, folds: [witness] }], cut);
        expect(again.aircraft[0]?.snapshot.step).toBe(cut);
        expect(bytesOf(fly(again, 1500 - cut))).toEqual(wanted);
      }),
      { numRuns: 12, examples: [[0], [599], [600], [601], [1500]] },
    );
  });

  it('is saved, loaded and goes on to the same bytes', () => {
    const whole = fly(begun(), 1300);
    const text = recordingText(whole.aircraft[0]!.recorder.recording);
    const recording = parseRecording(JSON.parse(text), 'flight.json');
    const again = forkSession([{ recording, source: wanderer, folds: [witness] }], 1300);
    expect(bytesOf(again)).toEqual(bytesOf(whole));
    expect(bytesOf(fly(again, 400))).toEqual(bytesOf(fly(whole, 400)));
  });

  it('is loaded from a file that leaves most memories out, cut anywhere, and goes on the same', () => {
    const whole = fly(begun(), 4900);
    const wanted = bytesOf(whole);
    const text = recordingText(whole.aircraft[0]!.recorder.recording);
    const recording = parseRecording(JSON.parse(text), 'flight.json');
    expect(recording.keyframes.filter((k) => k.whole).map((k) => k.step)).toEqual([0, 4800]);
    for (const cut of [0, 1234, 3599, 3600, 4500, 4900]) {
      const again = forkSession([{ recording, source: wanderer, folds: [witness] }], cut);
      expect(bytesOf(fly(again, 4900 - cut))).toEqual(wanted);
    }
  });

  it('records a fork as if it had been flown in one go', () => {
    const whole = fly(begun(), 1300);
    const { recording } = whole.aircraft[0]!.recorder;
    const again = fly(forkSession([{ recording, source: wanderer, folds: [witness] }], 700), 600);
    expect(recordingText(again.aircraft[0]!.recorder.recording)).toBe(recordingText(recording));
  });

  it('is played back to the same bytes', () => {
    const whole = fly(begun(), 1300);
    const { recording } = whole.aircraft[0]!.recorder;
    const again = fly(begun(1, createPlayback(recording)), 1300);
    expect(bytesOf(again)[0]?.state).toEqual(bytesOf(whole)[0]?.state);
    expect(firstDifference(recording)).toBeNull();
  });

  it('says which slot differs first when a recording was tampered with', () => {
    const { recording } = fly(begun(), 1300).aircraft[0]!.recorder;
    recording.keyframes[1]!.state[6] = 0.5;
    expect(firstDifference(recording)).toMatchObject({ step: 600, slot: 'pitchRad', recorded: 0.5 });
  });

  it('steps back again and again, and no earlier than its beginning', () => {
    const session = fly(begun(), 1300);
    const back = stepBack(session, 10);
    expect(back.step).toBe(700);
    expect(stepBack(stepBack(back, 10), 10).step).toBe(0);
    expect(bytesOf(fly(back, 600))).toEqual(bytesOf(session));
  });

  it('changes hands in flight, and a fork after that goes on with the new ones', () => {
    const session = fly(begun(), 300);
    changeSource(session, 0, createScript([]));
    fly(session, 400);
    const { recording } = session.aircraft[0]!.recorder;
    const again = forkSession([{ recording, source: createScript([]), folds: [witness] }], 500);
    expect(bytesOf(fly(again, 200))).toEqual(bytesOf(session));
  });

  it('begins a live source anew at a fork', () => {
    const live: ControlSource<{ begunAt: number }> = {
      name: 'keys',
      live: true,
      begin: (snapshot) => ({ begunAt: snapshot.step }),
      next: () => {},
    };
    const session = fly(begun(1, live), 300);
    const back = stepBack(session, 1);
    expect(back.aircraft[0]?.sourceMemory).toEqual({ begunAt: 240 });
  });

  it('flies several aircraft at one tick without one disturbing the other', () => {
    const entry = (seed: number) => ({ scenario: gusty(seed), source: wanderer, folds: [witness] });
    const both = bytesOf(fly(createSession([entry(1), entry(2)]), 700));
    expect(both[0]).toEqual(bytesOf(fly(begun(1), 700))[0]);
    expect(both[1]).toEqual(bytesOf(fly(begun(2), 700))[0]);
  });

  it('is cut anywhere with a source that looks at another aircraft, and goes on to the same bytes', () => {
    const follower: ControlSource<{ seenM: number }> = {
      name: 'follower',
      begin: () => ({ seenM: 0 }),
      next: (snapshot, memory, controls, around) => {
        memory.seenM += 0.01 * ((around?.[0]?.snapshot.heightM ?? 0) - memory.seenM);
        controls.elevator = 0.001 * (memory.seenM - snapshot.heightM);
        controls.throttle = 0.6;
      },
    };
    const session = createSession([
      { scenario: gusty(1), source: wanderer, folds: [witness] },
      { scenario: gusty(2), source: follower, folds: [] },
    ]);
    fly(session, 700);
    // From here the two have keyframes at different steps
    changeSource(session, 0, createScript([]));
    fly(session, 500);
    const wanted = bytesOf(session);
    const sources = [createScript([]), follower];
    for (const cut of [701, 900, 1199, 1200]) {
      const entries = session.aircraft.map(({ recorder, folds }, i) => ({
        recording: recorder.recording,
        source: sources[i] as ControlSource<unknown>,
        folds,
      }));
      expect(bytesOf(fly(forkSession(entries, cut), 1200 - cut)), `${cut}`).toEqual(wanted);
    }
  });

  it('refuses to go where the recording has not been', () => {
    const { recording } = fly(begun(), 10).aircraft[0]!.recorder;
    expect(() => forkSession([{ recording, source: wanderer, folds: [] }], 11)).toThrow(
      'recording: step must be a whole number from 0 to 10, was 11',
    );
  });
});

describe('a script', () => {
  const row = (step: number, set: Record<string, number>, add: Record<string, number> = {}): ScriptRow => ({
    step,
    set: CONTROLS.map((c) => set[c.column] ?? null),
    add: CONTROLS.map((c) => add[c.column] ?? null),
  });

  it('holds a row until the next, and gives back what a row no longer names', () => {
    const rows = [row(0, { elevator: 0.1 }), row(10, { aileron: 0.2 }, { throttle: 0.1 })];
    const session = createSession([{ scenario: gusty(1), source: createScript(rows), folds: [] }]);
    const { controls } = session.aircraft[0]!;
    const start = { ...controls };
    fly(session, 10);
    expect(controls.elevator).toBe(0.1);
    fly(session, 1);
    expect(controls.elevator).toBe(start.elevator);
    expect(controls.aileron).toBe(0.2);
    expect(controls.throttle).toBeCloseTo(start.throttle + 0.1, 4);
  });
});
