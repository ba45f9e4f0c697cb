import { describe, expect, it } from 'vitest';
import type { Intent } from '../../../src/input/intent.ts';
import { newIntent } from '../../../src/input/intent.ts';
import { addKeyEvent, advanceKeys, newKeyTimeline } from '../../../src/input/key-timeline.ts';
import { readKeys } from '../../../src/input/keyboard.ts';
import {
  dropArrears,
  isStepDue,
  MOST_OWED_MS,
  newClock,
  nextInstantMs,
  setRate,
  startClock,
  tookStep,
} from '../../../src/pages/fly/run/clock.ts';

/** A pupil's keys over five seconds, some presses shorter than a step, some between two frames. */
const SCRIPT = [
  { atMs: 1000, action: 'power-up', down: true },
  { atMs: 1003, action: 'flap-down', down: true },
  { atMs: 1009, action: 'flap-down', down: false },
  { atMs: 1777.7, action: 'nose-up', down: true },
  { atMs: 2301.2, action: 'power-up', down: false },
  { atMs: 2444, action: 'roll-left', down: true },
  { atMs: 2448, action: 'nose-up', down: false },
  { atMs: 2611, action: 'roll-left', down: false },
  { atMs: 3300, action: 'carb-heat', down: true },
  { atMs: 3380, action: 'carb-heat', down: false },
  { atMs: 3381, action: 'carb-heat', down: true },
  { atMs: 3383, action: 'carb-heat', down: false },
  { atMs: 4000, action: 'trim-down', down: true },
  { atMs: 4900, action: 'trim-down', down: false },
] as const;

/** What each step asks for when frames come at these instants; events arrive before the frame that follows them. */
const flown = (frameInstantsMs: readonly number[], steps: number, rate: 0.5 | 1 | 2 | 4 = 1): string[] => {
  const keys = newKeyTimeline();
  const clock = newClock();
  setRate(clock, rate);
  startClock(clock, 900);
  const asked: string[] = [];
  let given = 0;
  for (const nowMs of frameInstantsMs) {
    while (given < SCRIPT.length && (SCRIPT[given] as (typeof SCRIPT)[number]).atMs <= nowMs) {
      addKeyEvent(keys, SCRIPT[given] as (typeof SCRIPT)[number]);
      given += 1;
    }
    dropArrears(clock, nowMs);
    while (isStepDue(clock, nowMs) && asked.length < steps) {
      advanceKeys(keys, nextInstantMs(clock));
      const intent: Intent = newIntent();
      readKeys(keys, intent);
      asked.push(JSON.stringify(intent));
      tookStep(clock);
    }
  }
  return asked;
};

const frames = (hz: number): number[] =>
  Array.from({ length: 5 * hz }, (_, i) => 900 + (1000 * (i + 1)) / hz);
const stuttering = (): number[] => {
  const instants: number[] = [];
  for (let at = 905, i = 0; at < 5900; i += 1) {
    instants.push(at);
    at += [3, 40, 16, 200, 7, 90, 16.7, 240][i % 8] as number;
  }
  return instants;
};

describe('a scripted key timeline', () => {
  const steps = 285;
  const reference = flown(frames(60), steps);

  it('asks for something in the reference run', () => {
    expect(reference.length).toBe(steps);
    expect(new Set(reference).size).toBeGreaterThan(5);
  });

  it.each([10, 144, 240])('gives the same steps at %i frames a second as at 60', (hz) => {
    expect(flown(frames(hz), steps)).toEqual(reference);
  });

  it('gives the same steps on a stuttering screen', () => {
    expect(flown(stuttering(), steps)).toEqual(reference);
  });

  it('gives the same steps at four-fold rate at 10 and at 144 frames a second', () => {
    expect(flown(frames(10), 1000, 4)).toEqual(flown(frames(144), 1000, 4));
  });

  it('counts a press that is shorter than a step, once', () => {
    const flapSteps = reference.filter((step) => (JSON.parse(step) as Intent).flapStages !== 0);
    expect(flapSteps.map((step) => (JSON.parse(step) as Intent).flapStages)).toEqual([1]);
  });

  it('counts two presses of the heat, also when the second is very short', () => {
    const presses = reference.map((step) => (JSON.parse(step) as Intent).carbHeatPresses);
    expect(presses.reduce((sum, n) => sum + n, 0)).toBe(2);
  });
});

describe('the clock', () => {
  it('drops what a frame owes beyond a quarter of a second and says how much', () => {
    const clock = newClock();
    startClock(clock, 0);
    expect(dropArrears(clock, 1000)).toBeCloseTo(1000 - MOST_OWED_MS, 9);
    let taken = 0;
    while (isStepDue(clock, 1000)) {
      tookStep(clock);
      taken += 1;
    }
    expect(taken).toBe(15);
  });

  it('owes nothing while it stands', () => {
    const clock = newClock();
    expect(isStepDue(clock, 1e6)).toBe(false);
  });
});
