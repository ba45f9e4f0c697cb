import { seeLights } from '../../aerodrome/slope-lights.ts';
import type { Keyboard } from '../../input/keyboard.ts';
import { endingOf } from '../../lesson/outcome.ts';
import { forkSession } from '../../session/fork.ts';
import { type Aircraft, changeSource, type Session, tick } from '../../session/session.ts';
import type { ControlSource } from '../../session/source.ts';
import { STEP_HZ } from '../../simulation/scenario.ts';
import { newSnapshot, type Snapshot } from '../../simulation/snapshot.ts';
import { extendTrail, rewindTrail } from '../../views/trail.ts';
import { blend } from './blend.ts';
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
import { lessonMemory, type ReadyFlight } from './ready.ts';

/** What the driver tells the page. */
export interface DriverEvents {
  /** Simulated time went by without being flown. */
  onDropped(seconds: number): void;
  onEnded(): void;
}

/** Own aircraft of a session. */
export const ownAircraft = (session: Session): Aircraft => session.aircraft[0] as Aircraft;

/**
 * Runs one flight against the clock: takes the steps that are due, keeps the trail, blends the picture. It knows
 * no page: frames come in, and what must be said goes out.
 */
export const createDriver = (flight: ReadyFlight, keyboard: Keyboard, events: DriverEvents) => {
  const clock = newClock();
  const shown: Snapshot = newSnapshot();
  let ended = false;
  let endsAtStep = Number.POSITIVE_INFINITY;

  const noteEnd = () => {
    if (endsAtStep !== Number.POSITIVE_INFINITY || !endingOf(lessonMemory(flight), flight.lesson)) return;
    // A moment to see it come to rest.
    endsAtStep = flight.session.step + 1.5 * STEP_HZ;
  };
  const oneStep = () => {
    keyboard.advance(nextInstantMs(clock));
    tick(flight.session);
    tookStep(clock);
    extendTrail(flight.trail, ownAircraft(flight.session).snapshot);
    if (flight.session.step % 6 === 0) noteEnd();
  };
  const finish = () => {
    ended = true;
    stopClock(clock);
    events.onEnded();
  };
  const stand = (session: Session) => {
    flight.session = session;
    rewindTrail(flight.trail, session.step / STEP_HZ);
    ended = false;
    endsAtStep = Number.POSITIVE_INFINITY;
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
          if (flight.session.step >= endsAtStep) finish();
        }
      }
      const { before, snapshot } = ownAircraft(flight.session);
      blend(before, snapshot, blendAt(clock, nowMs), shown);
      const { lights } = flight.frame;
      if (lights) seeLights(flight.model.runway, shown.eyeEastM, shown.eyeNorthM, shown.eyeHeightM, lights);
      return shown;
    },
    /** Stands the flight where it was at a step, flown on from there by `source`. */
    goTo: (step: number, source: ControlSource<unknown>) => {
      const { recorder, folds } = ownAircraft(flight.session);
      const at = Math.max(0, Math.min(step, flight.session.step));
      stand(forkSession([{ recording: recorder.recording, source, folds }], at));
      stopClock(clock);
    },
    giveTo: (source: ControlSource<unknown>) => changeSource(flight.session, 0, source),
  };
};

export type Driver = ReturnType<typeof createDriver>;
