import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { ownAircraft } from '../../../src/flight/flight.ts';
import { createHands } from '../../../src/input/hands.ts';
import type { Intent } from '../../../src/input/intent.ts';
import { addKeyEvent, advanceKeys, type KeyEvent, newKeyTimeline } from '../../../src/input/key-timeline.ts';
import { type Keyboard, readKeys } from '../../../src/input/keyboard.ts';
import type { Rate } from '../../../src/pages/fly/run/clock.ts';
import { createDriver } from '../../../src/pages/fly/run/driver.ts';
import { readyFlight } from '../../../src/pages/fly/run/ready.ts';
import { scenarioOf } from '../../../src/pages/fly/sheets/scenario-of-settings.ts';
import { type Settings, settingsSchema } from '../../../src/pages/settings.ts';

const standardSettings = (): Settings => v.parse(settingsSchema, {});

/** A take-off with a turn by keys: the same events whatever the screen does. */
const SCRIPT: readonly KeyEvent[] = [
  { atMs: 500, action: 'power-up', down: true },
  { atMs: 3100, action: 'power-up', down: false },
  { atMs: 3104, action: 'flap-down', down: true },
  { atMs: 3107, action: 'flap-down', down: false },
  { atMs: 20_003, action: 'nose-up', down: true },
  { atMs: 22_750, action: 'nose-up', down: false },
  { atMs: 27_000, action: 'trim-down', down: true },
  { atMs: 27_301, action: 'trim-down', down: false },
  { atMs: 29_000, action: 'roll-left', down: true },
  { atMs: 29_444, action: 'roll-left', down: false },
];

interface Flown {
  readonly bytes: string;
  readonly changes: string;
  readonly steps: number;
  readonly heightM: number;
}

/** Flies the script with frames at these instants; an event reaches the page before the frame that follows it. */
const fly = (
  framesMs: readonly number[],
  steps: number,
  rate: Rate = 1,
  changes: Partial<Settings> = {},
): Flown => {
  const { scenario, model } = scenarioOf({
    ...standardSettings(),
    wind: '250/11g16',
    turbulence: 'light',
    ...changes,
  });
  const keys = newKeyTimeline();
  const keyboard: Keyboard = {
    advance: (instantMs) => advanceKeys(keys, instantMs),
    read: (into: Intent) => readKeys(keys, into),
    strike: () => {},
    release: () => {},
    anyDown: () => false,
    destroy: () => {},
  };
  const hands = createHands([keyboard], scenario.aeroplane, 'hold');
  const flight = readyFlight(scenario, () => hands as never, model);
  const driver = createDriver(flight, keyboard, { onDropped: () => {}, onEnded: () => {} });
  driver.setRate(rate);
  driver.start(0);
  let given = 0;
  for (const nowMs of framesMs) {
    while (given < SCRIPT.length && (SCRIPT[given] as KeyEvent).atMs <= nowMs) {
      addKeyEvent(keys, SCRIPT[given] as KeyEvent);
      given += 1;
    }
    driver.frame(nowMs);
    if (flight.session.step >= steps) break;
  }
  const { recorder, snapshot } = ownAircraft(flight);
  const keyframe = recorder.recording.keyframes.at(-1);
  return {
    bytes: JSON.stringify([...(keyframe?.state ?? [])]),
    changes: JSON.stringify(
      recorder.recording.changes.map((list) => {
        const upTo = [...list.steps.subarray(0, list.count)].filter((step) => step < steps);
        return [upTo, [...list.values.subarray(0, upTo.length)]];
      }),
    ),
    steps: flight.session.step,
    heightM: snapshot.heightM,
  };
};

const framesAt = (hz: number): number[] => Array.from({ length: 36 * hz }, (_, i) => (1000 * (i + 1)) / hz);
const stuttering = (): number[] => {
  const instants: number[] = [];
  for (let at = 5, i = 0; at < 36_000; i += 1) {
    instants.push(at);
    at += [3, 40, 16, 200, 7, 90, 16.7, 240][i % 8] as number;
  }
  return instants;
};

describe('one scripted key timeline, one recording (architecture.md)', () => {
  const steps = 31 * 60;
  const reference = fly(framesAt(60), steps);

  it('flies in the reference run', () => {
    expect(reference.heightM).toBeGreaterThan(5);
  });

  it.each([10, 144, 240])('gives the same bytes at %i frames a second as at 60', (hz) => {
    const flown = fly(framesAt(hz), steps);
    expect(flown.bytes).toBe(reference.bytes);
    expect(flown.changes).toBe(reference.changes);
  });

  it('gives the same bytes on a stuttering screen', () => {
    const flown = fly(stuttering(), steps);
    expect(flown.bytes).toBe(reference.bytes);
    expect(flown.changes).toBe(reference.changes);
  });

  it('takes four times the steps at four-fold rate', () => {
    expect(fly(framesAt(60).slice(0, 600), 1e9, 4).steps).toBe(4 * 600);
  });
});

describe('stepping back', () => {
  it('stands exactly where the flight stood, and can be done again and again', () => {
    const { scenario, model } = scenarioOf({ ...standardSettings(), start: 'downwind', wind: '250/11g16' });
    const keys = newKeyTimeline();
    const keyboard: Keyboard = {
      advance: (instantMs) => advanceKeys(keys, instantMs),
      read: (into: Intent) => readKeys(keys, into),
      strike: () => {},
      release: () => {},
      anyDown: () => false,
      destroy: () => {},
    };
    const hands = createHands([keyboard], scenario.aeroplane, 'hold') as never;
    const flight = readyFlight(scenario, () => hands, model);
    const driver = createDriver(flight, keyboard, { onDropped: () => {}, onEnded: () => {} });
    driver.start(0);
    const at: Record<number, string> = {};
    for (let ms = 1000 / 60; flight.session.step < 40 * 60; ms += 1000 / 60) {
      driver.frame(ms);
      at[flight.session.step] = JSON.stringify(ownAircraft(flight).snapshot);
    }
    for (const seconds of [30, 20, 10]) {
      driver.goTo(seconds * 60, hands);
      expect(flight.session.step).toBe(seconds * 60);
      expect(JSON.stringify(ownAircraft(flight).snapshot)).toBe(at[seconds * 60]);
    }
  });
});
