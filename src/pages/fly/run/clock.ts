import { STEP_HZ } from '../../../simulation/scenario.ts';

/**
 * When each step is due, in the time of `event.timeStamp` and of the animation frame. A step's instant follows
 * from the start of the run and its number alone, so that frames, fast, slow or stuttering, cannot move it.
 */
export interface FlightClock {
  rate: number;
  running: boolean;
  /** The instant from which steps are counted; moves when time is dropped, frozen or runs at another rate. */
  anchorMs: number;
  stepsSinceAnchor: number;
  lastFrameMs: number;
}

/** A frame owes at most this much; the rest is dropped. */
export const MOST_OWED_MS = 250;

export const RATES = [0.5, 1, 2, 4] as const;
export type Rate = (typeof RATES)[number];

export const newClock = (rate: Rate = 1): FlightClock => ({
  rate,
  running: false,
  anchorMs: 0,
  stepsSinceAnchor: 0,
  lastFrameMs: 0,
});

const stepMs = (clock: FlightClock): number => 1000 / STEP_HZ / clock.rate;

/** The instant of the last step taken, or of the start of the run. */
export const lastInstantMs = (clock: FlightClock): number =>
  clock.anchorMs + clock.stepsSinceAnchor * stepMs(clock);

/** The instant of the next step. */
export const nextInstantMs = (clock: FlightClock): number =>
  clock.anchorMs + (clock.stepsSinceAnchor + 1) * stepMs(clock);

export const startClock = (clock: FlightClock, nowMs: number): void => {
  clock.running = true;
  clock.anchorMs = nowMs;
  clock.stepsSinceAnchor = 0;
  clock.lastFrameMs = nowMs;
};

export const stopClock = (clock: FlightClock): void => {
  clock.running = false;
};

export const setRate = (clock: FlightClock, rate: Rate): void => {
  clock.anchorMs = lastInstantMs(clock);
  clock.stepsSinceAnchor = 0;
  clock.rate = rate;
};

/**
 * Begins a frame: drops what it may not owe of the time since the frame before it. Returns the milliseconds
 * dropped, 0 nearly always.
 */
export const dropArrears = (clock: FlightClock, nowMs: number): number => {
  const droppedMs = Math.max(0, nowMs - clock.lastFrameMs - MOST_OWED_MS);
  clock.lastFrameMs = nowMs;
  clock.anchorMs += droppedMs;
  return droppedMs;
};

/** True while a step is due at `nowMs`; take it, then call `tookStep`. */
export const isStepDue = (clock: FlightClock, nowMs: number): boolean =>
  clock.running && nextInstantMs(clock) <= nowMs;

export const tookStep = (clock: FlightClock): void => {
  clock.stepsSinceAnchor += 1;
};

/** How far `nowMs` lies between the last step and the next, 0..1. */
export const blendAt = (clock: FlightClock, nowMs: number): number =>
  clock.running ? Math.min(1, Math.max(0, (nowMs - lastInstantMs(clock)) / stepMs(clock))) : 1;
