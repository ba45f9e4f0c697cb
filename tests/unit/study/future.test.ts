import { describe, expect, it } from 'vitest';
import { createPlayback } from '../../../src/session/playback.ts';
import type { ControlSource } from '../../../src/session/source.ts';
import { MODEL_VERSION } from '../../../src/simulation/scenario.ts';
import { flyByModelPilot } from '../../../src/study/by-model-pilot.ts';
import { instantAt, seeAgain } from '../../../src/study/flown.ts';
import { flyStep, takeUp } from '../../../src/study/future.ts';
import { departuresOf } from '../../../src/study/root/finders/departures.ts';
import { spanOf } from '../../../src/study/root/finders/span.ts';
import { approachToStudy, findRoot } from '../../../src/study/root/root.ts';
import { baseTurned, flyFault, noFault } from '../../support/faults.ts';

const rough = { leg: 'base', windKt: 10, windDeg: 60, turbulence: 'light' } as const;
const good = flyFault(rough, noFault);
const flown = seeAgain(good.flight);

describe('a flight seen again', () => {
  it('comes to the same lesson, gate for gate', () => {
    expect(flown.memory.gates).toEqual(good.memory.gates);
    expect(flown.memory.turns).toEqual(good.memory.turns);
  });

  it('stands at every keyframe where the recording stood, bit for bit', () => {
    const { keyframes } = good.flight.recording;
    expect(keyframes.length).toBeGreaterThan(3);
    for (const keyframe of keyframes) {
      const instant = instantAt(flown, keyframe.step / 60);
      expect(instant.step).toBe(keyframe.step);
      expect(instant.state).toEqual(keyframe.state);
    }
  });

  it('taken up at an instant with its own hands goes where it went', () => {
    const from = instantAt(flown, 20);
    const hands = createPlayback(good.flight.recording) as ControlSource<unknown>;
    const aloft = takeUp(flown, from, hands);
    for (let i = 0; i < 600; i += 1) flyStep(flown, aloft);
    expect(aloft.state).toEqual(instantAt(flown, 30).state);
  });

  it('departs from nothing when the model pilot flew it', () => {
    expect(departuresOf(spanOf(flown, approachToStudy(flown)!))).toEqual([]);
  });
});

describe('the model pilot in the same wind', () => {
  it('flies the same scenario to a stop', () => {
    const by = flyByModelPilot(good.flight);
    if (!('flown' in by)) throw new Error(by.refused);
    expect(by.flown.lesson.stop).not.toBeNull();
    expect(by.flown.recording.scenario).toEqual(good.flight.recording.scenario);
  });

  it('refuses in a sentence what it would not fly', () => {
    const { recording, plan } = good.flight;
    const weather = { ...recording.scenario.weather, windKt: 45, windFromDegM: 310 };
    const stormy = { ...recording, scenario: { ...recording.scenario, weather } };
    const by = flyByModelPilot({ ...good.flight, recording: stormy, plan });
    expect('refused' in by && by.refused).toMatch(/\.$/);
  });
});

describe('what is not searched', () => {
  const kindOf = (recording: typeof good.flight.recording) => {
    const search = findRoot({ ...good.flight, recording });
    for (;;) {
      const { done, value } = search.next();
      if (done === true) return value;
    }
  };

  it('is a flight of another model version', () => {
    const result = kindOf({ ...good.flight.recording, modelVersion: MODEL_VERSION - 1 });
    expect(result.kind).toBe('not-searched');
    expect(result.why).toMatch(/model version/);
  });

  it('is a flight in which something failed', () => {
    const { recording } = good.flight;
    const scenario = { ...recording.scenario, failures: [{ atS: 5, what: 'radio' as const, amount: 0.5 }] };
    expect(kindOf({ ...recording, scenario }).kind).toBe('not-searched');
  });

  it('is a flight that never came down to a gate', () => {
    const { recording } = flyFault({ leg: 'downwind' }, baseTurned(-5)).flight;
    const cut = { ...recording, steps: 30 * 60 };
    const result = kindOf(cut);
    expect(result.kind).toBe('not-searched');
  });
});
