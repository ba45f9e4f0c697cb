import { NO_EVENTS, type PilotEvent } from '../../simulation/pilot-event.ts';
import { STEP_S } from '../../simulation/scenario.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import { watchInstructions } from '../exercises/instructions.ts';
import { DEFAULT_TOLERANCES, type ToleranceSet } from '../judge/tolerances.ts';
import type { Lesson } from '../lesson.ts';
import type { LessonMemory } from '../memory.ts';
import { beginProcedures, takeEvents, watchProcedures } from '../procedures/watch.ts';
import { watchEngine } from './engine-failure.ts';
import { beginFlare, watchBrakes, watchFlare, watchNose } from './flare.ts';
import { watchGates } from './gates.ts';
import { GO_AROUND_SPELLS, isGoAroundDue, watchGoArounds } from './go-around.ts';
import { watchLanding } from './landing.ts';
import { beginLegs, watchLegs } from './legs.ts';
import { LOOK_S, LOOK_STEPS } from './look-interval.ts';
import { SAFETY_STOPS, watchSafety } from './safety.ts';
import { beginStretch, closeStretch, takeInLook } from './stretch.ts';
import { beginWheels, watchWheels } from './touchdown.ts';
import { noteTurnChange, takeInTurn } from './turns.ts';
import { lookFrom } from './where.ts';

const SPEED_LAG_S = 3; // our choice: what smooths a needle
const BANK_LAG_S = 1; // our choice: what smooths a needle
const BALL_LAG_S = 2; // our choice: what smooths a needle
const HELD_LAG_S = 3; // our choice: what smooths a needle

/** The lesson as a fold over the flight (`Fold<LessonMemory>` of a session). */
export interface LessonFold {
  begin(snapshot: Readonly<Snapshot>): LessonMemory;
  step(memory: LessonMemory, snapshot: Readonly<Snapshot>, events?: readonly PilotEvent[]): void;
}

export const createLessonFold = (lesson: Lesson, limits: ToleranceSet = DEFAULT_TOLERANCES): LessonFold => ({
  begin: (s) => beginLesson(lesson, s),
  step: (m, s, events = NO_EVENTS) => {
    if (events.length > 0) takeEvents(m, lesson, s, events);
    watchWheels(m, lesson, s, STEP_S);
    if (s.step % LOOK_STEPS === 0 || (s.ended !== null && m.ended === null)) look(m, lesson, s, limits);
  },
});

const beginLesson = (lesson: Lesson, s: Readonly<Snapshot>): LessonMemory => {
  lookFrom(lesson.runway, lesson.plan.side, s, lesson.where);
  const legs = beginLegs(lesson.where, lesson.bounds);
  const ids = [...SAFETY_STOPS.map(({ id }) => id), ...GO_AROUND_SPELLS];
  const m: LessonMemory = {
    legs,
    now: beginStretch(1, legs.leg, s.timeS, s.heightM),
    stretches: [],
    turns: [],
    gates: [],
    dues: [],
    goArounds: [],
    touchdowns: [],
    landings: [],
    wheels: beginWheels(lesson, s),
    smoothIasMps: s.iasMps,
    smoothBankRad: s.bankRad,
    startedInAir: !s.onGround,
    smoothBall: 0,
    smoothHeldDegKpa: s.heldPressureDegKpa,
    steadyFromS: null,
    flare: beginFlare(),
    brakeFromS: null,
    noseDown: false,
    said: [],
    engine: null,
    lastHeightM: s.heightM,
    lastS: s.timeS,
    gatesPassed: 0,
    finalFromM: Math.max(0, -lesson.where.alongM),
    lights: '',
    spells: Object.fromEntries(ids.map((id) => [id, { fromS: null, told: false }])),
    safety: [],
    ranOff: false,
    ranOffAt: null,
    landedOut: false,
    stop: null,
    ended: null,
    endedWhy: '',
    endS: s.timeS,
    procedures: beginProcedures(lesson),
  };
  takeInLook(m, lesson, s);
  return m;
};

const look = (m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>, limits: ToleranceSet): void => {
  if (m.ended !== null) return;
  const { where } = lesson;
  lookFrom(lesson.runway, lesson.plan.side, s, where);
  m.endS = s.timeS;
  m.smoothIasMps += (s.iasMps - m.smoothIasMps) * (LOOK_S / SPEED_LAG_S);
  m.smoothBankRad += (s.bankRad - m.smoothBankRad) * (LOOK_S / BANK_LAG_S);
  m.smoothBall += (s.ball - m.smoothBall) * (LOOK_S / BALL_LAG_S);
  m.smoothHeldDegKpa += (s.heldPressureDegKpa - m.smoothHeldDegKpa) * (LOOK_S / HELD_LAG_S);
  let changed = watchLegs(m.legs, where, lesson.bounds, isGoAroundDue(m));
  if (s.ended !== null) {
    m.ended = s.ended;
    m.endedWhy = s.endedWhy;
    if (s.ended === 'crashed') {
      m.legs.leg = 'crashed';
      m.legs.fromS = s.timeS;
      changed = true;
    }
  }
  if (changed) changeStretch(m, lesson, s);
  takeInLook(m, lesson, s);
  takeInTurn(m, lesson);
  watchEngine(m, s);
  watchFlare(m, lesson, s);
  watchNose(m, s);
  watchLanding(m, lesson, s);
  watchBrakes(m, s);
  watchInstructions(m, lesson, s);
  watchProcedures(m, lesson, s);
  watchGates(m, lesson, s, limits);
  watchGoArounds(m, lesson, changed);
  watchSafety(m, lesson, s);
  watchGround(m, lesson, s);
  m.lastHeightM = s.heightM;
  m.lastS = s.timeS;
};

const changeStretch = (m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>): void => {
  const { legs } = m;
  m.now.toS = Math.max(m.now.fromS, legs.fromS);
  // A turn that is recognised late begins earlier: what it leaves of the leg before may be nothing.
  if (m.now.toS > m.now.fromS) m.stretches.push(closeStretch(m.now));
  m.now = beginStretch(legs.circuit, legs.leg, m.now.toS, s.heightM);
  noteTurnChange(m);
  if (legs.leg === 'final') m.finalFromM = Math.max(0, -lesson.where.alongM);
};

const watchGround = (m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>): void => {
  const { leg } = m.legs;
  const run = leg === 'take-off-roll' || leg === 'landing-roll';
  if (run && s.onGround && !s.onRunway) {
    const last = m.touchdowns[m.touchdowns.length - 1];
    const touchedOff = leg === 'landing-roll' && last !== undefined && !last.onRunway;
    if (touchedOff) m.landedOut = true;
    else {
      m.ranOff = true;
      m.ranOffAt ??= lesson.where.alongM > lesson.runway.surfaceEndM ? 'end' : 'side';
    }
  }
  if (leg === 'stopped' && m.stop === null) {
    m.stop = { alongM: lesson.where.alongM, acrossM: lesson.where.acrossM };
  }
};
