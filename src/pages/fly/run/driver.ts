import { seeLights } from '../../../aerodrome/slope-lights.ts';
import { setBack } from '../../../flight/begin.ts';
import { ownAircraft } from '../../../flight/flight.ts';
import { othersInSight } from '../../../flight/others.ts';
import { finish, flyStep, isLookStep, isOver, misreadM, noteEnd } from '../../../flight/run.ts';
import type { Keyboard } from '../../../input/keyboard.ts';
import { changeSource } from '../../../session/session.ts';
import type { ControlSource } from '../../../session/source.ts';
import { STEP_HZ } from '../../../simulation/scenario.ts';
import { newSnapshot, type Snapshot } from '../../../simulation/snapshot.ts';
import { extendTrail, rewindTrail } from '../../../views/trail.ts';
import { blend } from '../drawing/blend.ts';
import {
  blendAt,
  dropArrears,
  isStepDue,
  newClock,
  nextInstantMs,
  type Rate,
  setRate,
  startClock,
  stopClock,
  tookStep,
} from './clock.ts';
import type { ReadyFlight } from './ready.ts';

/** What the driver tells the page. */
export interface DriverEvents {
  /** Simulated time went by without being flown. */
  onDropped(seconds: number): void;
  onEnded(): void;
  /** What was to be practised is over, though the flight is not. */
  isPractised?(): boolean;
}

/**
 * Runs one flight against the clock: takes the steps that are due, keeps the trail, blends the picture. It knows
 * no page: frames come in, and what must be said goes out.
 */
export const createDriver = (flight: ReadyFlight, keyboard: Keyboard, events: DriverEvents) => {
  const clock = newClock();
  const shown: Snapshot = newSnapshot();
  let ended = false;

  const oneStep = () => {
    keyboard.advance(nextInstantMs(clock));
    flyStep(flight);
    tookStep(clock);
    extendTrail(flight.trail, ownAircraft(flight).snapshot);
    if (isLookStep(flight)) noteEnd(flight, events.isPractised?.() ?? false);
  };
  const end = () => {
    ended = true;
    stopClock(clock);
    events.onEnded();
  };
  return {
    get running() {
      return clock.running;
    },
    get ended() {
      return ended;
    },
    start: (nowMs: number) => {
      if (!ended) startClock(clock, nowMs);
    },
    freeze: () => stopClock(clock),
    setRate: (rate: Rate) => setRate(clock, rate),
    /** Takes what is due at `nowMs` and returns the picture to draw. */
    frame: (nowMs: number): Snapshot => {
      if (clock.running) {
        const droppedMs = dropArrears(clock, nowMs);
        if (droppedMs > 0) events.onDropped((droppedMs / 1000) * clock.rate);
        while (isStepDue(clock, nowMs) && !ended) {
          oneStep();
          if (isOver(flight)) end();
        }
      }
      const { before, snapshot } = ownAircraft(flight);
      blend(before, snapshot, blendAt(clock, nowMs), shown);
      shown.altitudeM += misreadM(flight);
      flight.frame.traffic = othersInSight(flight);
      const { lights } = flight.frame;
      if (lights) seeLights(flight.model.runway, shown.eyeEastM, shown.eyeNorthM, shown.eyeHeightM, lights);
      return shown;
    },
    /** Stands the flight where it was at a step, flown on from there by `source`. */
    goTo: (step: number, source: ControlSource<unknown>) => {
      setBack(flight, step, source);
      rewindTrail(flight.trail, flight.session.step / STEP_HZ);
      ended = false;
      stopClock(clock);
    },
    /** Nothing more to do on the runway: the flight may end. */
    finish: () => finish(flight),
    giveTo: (source: ControlSource<unknown>) => changeSource(flight.session, 0, source),
  };
};

export type Driver = ReturnType<typeof createDriver>;
