import { seeLights } from '../../../aerodrome/slope-lights.ts';
import type { Keyboard } from '../../../input/keyboard.ts';
import { endingOf } from '../../../lesson/judge/outcome.ts';
import { couldBeSeen } from '../../../lesson/procedures/could-be-seen.ts';
import { isComplete, openList } from '../../../lesson/procedures/watch-checks.ts';
import { forkSession } from '../../../session/fork.ts';
import { type Aircraft, changeSource, type Session, tick } from '../../../session/session.ts';
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
import { lessonMemory, type ReadyFlight } from './ready.ts';
import { watchTrafficOf } from './traffic.ts';

/** What the driver tells the page. */
export interface DriverEvents {
  /** Simulated time went by without being flown. */
  onDropped(seconds: number): void;
  onEnded(): void;
  /** What was to be practised is over, though the flight is not. */
  isPractised?(): boolean;
}

const REST_S = 1.5;
const AFTER_LANDING_S = 25;
/** Height that one hectopascal makes near sea level (ISA; common practice: 27 ft). */
const M_PER_HPA = 8.3;

/** How much the altimeter shows too much, when its subscale is not on the QNH. */
const misreadM = (flight: ReadyFlight): number => {
  const p = lessonMemory(flight).procedures;
  const qnhHpa = flight.lesson.procedures?.qnhHpa;
  return p && qnhHpa !== undefined ? (p.subscaleHpa - qnhHpa) * M_PER_HPA : 0;
};

/** Own aircraft of a session. */
export const ownAircraft = (session: Session): Aircraft => session.aircraft[0] as Aircraft;

/**
 * Runs one flight against the clock: takes the steps that are due, keeps the trail, blends the picture. It knows
 * no page: frames come in, and what must be said goes out.
 */
export const createDriver = (flight: ReadyFlight, keyboard: Keyboard, events: DriverEvents) => {
  const clock = newClock();
  const shown: Snapshot = newSnapshot();
  const others = watchTrafficOf(flight.scenario);
  const seen: Snapshot[] = [];
  let ended = false;
  let endsAtStep = Number.POSITIVE_INFINITY;

  const noteEnd = () => {
    const memory = lessonMemory(flight);
    if (!endingOf(memory, flight.lesson) && !events.isPractised?.()) {
      endsAtStep = Number.POSITIVE_INFINITY;
      return;
    }
    const { step } = flight.session;
    // A moment to see it come to rest; then time for the check after landing, as long as it takes.
    const check = memory.procedures ? openList(memory.procedures, 'after-landing') : null;
    const byHand = ownAircraft(flight.session).source.live === true;
    const waits = check !== null && byHand && !isComplete(check) ? AFTER_LANDING_S : REST_S;
    if (endsAtStep === Number.POSITIVE_INFINITY) endsAtStep = step + waits * STEP_HZ;
    else if (waits === REST_S) endsAtStep = Math.min(endsAtStep, step + REST_S * STEP_HZ);
  };
  const oneStep = () => {
    keyboard.advance(nextInstantMs(clock));
    tick(flight.session);
    others.step(flight.session);
    tookStep(clock);
    extendTrail(flight.trail, ownAircraft(flight.session).snapshot);
    if (flight.session.step % 6 === 0) noteEnd();
  };
  const finish = () => {
    ended = true;
    stopClock(clock);
    events.onEnded();
  };
  /** Those of the others that could be seen now. */
  const lookForTraffic = () => {
    if (flight.session.aircraft.length < 2) return;
    const { snapshot } = ownAircraft(flight.session);
    const wing = flight.scenario.aeroplane.wing.position;
    seen.length = 0;
    flight.session.aircraft.forEach((other, i) => {
      if (i === 0 || others.isGone(i - 1)) return;
      if (couldBeSeen(snapshot, other.snapshot, wing)) seen.push(other.snapshot);
    });
    flight.frame.traffic = seen;
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
      shown.altitudeM += misreadM(flight);
      lookForTraffic();
      const { lights } = flight.frame;
      if (lights) seeLights(flight.model.runway, shown.eyeEastM, shown.eyeNorthM, shown.eyeHeightM, lights);
      return shown;
    },
    /** Stands the flight where it was at a step, flown on from there by `source`. */
    goTo: (step: number, source: ControlSource<unknown>) => {
      const at = Math.max(0, Math.min(step, flight.session.step));
      const entries = flight.session.aircraft.map((aircraft, i) => ({
        recording: aircraft.recorder.recording,
        source: i === 0 ? source : aircraft.source,
        folds: aircraft.folds,
      }));
      stand(forkSession(entries, at));
      stopClock(clock);
    },
    /** Nothing more to do on the runway: the flight may end. */
    finish: () => {
      if (endsAtStep !== Number.POSITIVE_INFINITY) endsAtStep = flight.session.step;
    },
    giveTo: (source: ControlSource<unknown>) => changeSource(flight.session, 0, source),
  };
};

export type Driver = ReturnType<typeof createDriver>;
