/**
 * Flights whose root is known by construction: the model pilot with one fault, put in from outside, by its hands
 * or by what it believes it sees. It knows nothing of the study.
 */
import type { CircuitPlan } from '../../src/circuit/types.ts';
import { DEFAULT_TOLERANCES } from '../../src/lesson/judge/tolerances.ts';
import { lessonOfScenario } from '../../src/lesson/lesson-of.ts';
import type { LessonMemory } from '../../src/lesson/memory.ts';
import { createLessonFold } from '../../src/lesson/watch/lesson-fold.ts';
import type { Briefing } from '../../src/pilot/briefing/briefing.ts';
import { briefingFor } from '../../src/pilot/briefing/briefing-for.ts';
import type { PilotMemory } from '../../src/pilot/memory.ts';
import { createPilot, type Ways } from '../../src/pilot/pilot.ts';
import { newPilotView, type PilotView, pilotView } from '../../src/pilot/view.ts';
import { createSession, tick } from '../../src/session/session.ts';
import type { ControlSource, Fold } from '../../src/session/source.ts';
import type { Controls } from '../../src/simulation/controls.ts';
import type { Model } from '../../src/simulation/model.ts';
import { MODEL_VERSION } from '../../src/simulation/scenario.ts';
import type { Snapshot } from '../../src/simulation/snapshot.ts';
import type { StudyFlight } from '../../src/study/flown.ts';
import { type Day, dayScenario } from './circuit-flight.ts';

/** What a fault may do at each step, after the model pilot has decided. */
interface Hands {
  readonly b: Briefing;
  readonly m: PilotMemory;
  /** As it is now, in circuit axes. */
  readonly v: PilotView;
  readonly s: Readonly<Snapshot>;
  readonly controls: Controls;
  /** Plain room for what the fault remembers. */
  readonly own: Record<string, number>;
}

export interface Fault {
  readonly name: string;
  readonly spoil: (h: Hands) => void;
  /** Needles that are read wrong. */
  readonly misread?: (m: PilotMemory, v: PilotView) => void;
  readonly briefing?: (b: Briefing, plan: CircuitPlan) => Briefing;
}

const noted = (h: Hands): void => {
  h.own.fromS ??= h.s.timeS;
};

const begin = (h: Hands, phase: PilotMemory['phase'], turning: boolean): void => {
  h.m.phase = phase;
  h.m.turning = turning;
  h.m.phaseFromS = h.s.timeS;
};

/** Base, so many seconds later than the model pilot would (negative: earlier). */
export const baseTurned = (lateS: number): Fault => ({
  name: `base turned ${lateS} s late`,
  spoil: (h) => {
    const { b, m, v, own } = h;
    const past = (b.corners.base.fromX - v.xM) / v.groundspeedMps;
    if (own.done === 1) return;
    if (lateS < 0) {
      if (m.phase !== 'downwind' || m.turning || past < lateS) return;
      begin(h, 'base', true);
    } else if (m.phase !== 'base') return;
    else if (past < lateS) {
      begin(h, 'downwind', false);
      return;
    }
    noted(h);
    own.done = 1;
  },
});

export const finalTurned = (lateS: number): Fault => ({
  name: `final turned ${lateS} s late`,
  spoil: (h) => {
    const { b, m, v, own } = h;
    if (own.done === 1) return;
    const past = (b.corners.final.fromY - v.yM) / v.groundspeedMps;
    if (lateS < 0) {
      if (m.phase !== 'base' || m.turning || past < lateS) return;
      begin(h, 'final', true);
    } else if (m.phase !== 'final') return;
    else if (past < lateS) {
      begin(h, 'base', false);
      return;
    }
    noted(h);
    own.done = 1;
  },
});

/** Power set by rote on base and in the turn to final, so much beside the plan's, and left. */
export const powerOnBase = (addedThrottle: number): Fault => ({
  name: `${addedThrottle} throttle on base`,
  spoil: (h) => {
    const { b, m, controls } = h;
    const there = (m.phase === 'base' && !m.turning) || (m.phase === 'final' && m.turning);
    if (!there) return;
    noted(h);
    controls.throttle = b.plan.legs.base.steady.throttle + addedThrottle;
  },
});

/** The same on final, down to the last gate. */
export const powerOnFinal = (addedThrottle: number): Fault => ({
  name: `${addedThrottle} throttle on final`,
  spoil: (h) => {
    const { b, m, v, controls } = h;
    if (m.phase !== 'final' || m.turning || v.heightM < 55) return;
    noted(h);
    controls.throttle = b.plan.legs.final.steady.throttle + addedThrottle;
  },
});

const ORDER = ['downwind', 'base', 'final'];
const isFrom = (leg: string, m: PilotMemory): boolean => {
  const at = ORDER.indexOf(m.phase);
  return at >= ORDER.indexOf(leg) && (m.phase !== leg || !m.turning);
};

/** The needle is believed to show so much less: flown that much too fast, from a leg on. */
export const speedFrom = (leg: 'downwind' | 'base' | 'final', addedMps: number): Fault => ({
  name: `${Math.round(addedMps * 1.944)} kt fast from ${leg}`,
  spoil: (h) => {
    if (isFrom(leg, h.m)) noted(h);
  },
  misread: (m, v) => {
    if (isFrom(leg, m)) v.iasMps -= addedMps;
  },
});

/** The flap lever stays where it was on downwind. */
export const flapNotTaken = (): Fault => ({
  name: 'flap not taken',
  spoil: (h) => {
    const { b, m, controls } = h;
    if (m.phase !== 'base' && m.phase !== 'final') return;
    if (m.phase === 'base' && m.turning) return;
    noted(h);
    controls.flapStage = b.habits.downwind.stage;
  },
});

/** Wings by a heading, whatever the wind does: no drift is held. */
const headingHeld = (h: Hands, headingRad: number): void => {
  const off = Math.atan2(Math.sin(headingRad - h.v.headingRad), Math.cos(headingRad - h.v.headingRad));
  const bank = Math.max(-0.35, Math.min(0.35, 1.2 * off));
  h.controls.aileron = h.b.side * (1.2 * (bank - h.v.bankRad) - 0.2 * h.v.rollRateRadps);
};

export const driftNotHeldOnDownwind = (): Fault => ({
  name: 'drift not held on downwind',
  spoil: (h) => {
    if (h.m.phase !== 'downwind' || h.m.turning) return;
    noted(h);
    headingHeld(h, Math.PI);
  },
});

export const driftNotHeldOnFinal = (): Fault => ({
  name: 'drift not held on final',
  spoil: (h) => {
    if (h.m.phase !== 'final' || h.m.turning || h.v.heightM < 50) return;
    noted(h);
    headingHeld(h, 0);
  },
});

/** Circuit height is kept until so many metres later along the circuit than planned. */
export const descentLate = (lateM: number): Fault => ({
  name: `descent ${lateM} m late`,
  briefing: (b) => {
    const top = Math.max(...b.profile.heightM);
    const fromM = b.profile.toGoM[b.profile.heightM.findIndex((height) => height > top - 1)] ?? 0;
    return {
      ...b,
      profile: {
        toGoM: b.profile.toGoM,
        heightM: b.profile.heightM.map((height, i) =>
          (b.profile.toGoM[i] ?? 0) > fromM - lateM ? top : height,
        ),
      },
    };
  },
  spoil: (h) => {
    const fromX = h.b.plan.descentFrom === 'abeam' ? 0 : h.b.corners.base.fromX;
    if (h.m.phase === 'downwind' && h.v.xM < fromX + 20) noted(h);
  },
});

/** The wheel stays where it was on downwind, and the hand holds only so much. */
export const trimLeft = (mostDegKpa: number): Fault => ({
  name: `trim left, hand of ${mostDegKpa} deg kPa`,
  spoil: (h) => {
    const { b, m, s, controls, own } = h;
    if (m.phase === 'downwind' && !m.turning) {
      if (h.v.xM > 0) own.trim = controls.trim;
    }
    if (own.trim === undefined || h.v.heightM < 30) return;
    controls.trim = own.trim;
    m.hands.trim = own.trim;
    if (h.v.xM > 0) return;
    noted(h);
    const mostRad = (mostDegKpa * Math.PI) / 180 / (s.dynamicPressurePa / 1000);
    controls.elevator = Math.max(
      -mostRad / b.shape.elevatorDownRad,
      Math.min(mostRad / b.shape.elevatorUpRad, controls.elevator),
    );
  },
});

/** Never steeper than this in the turn to final. */
export const shallowFinalTurn = (mostDeg: number): Fault => ({
  name: `final turn at ${mostDeg} deg`,
  spoil: (h) => {
    if (h.m.phase !== 'final' || !h.m.turning) return;
    noted(h);
    h.m.bankWantedRad = Math.min(h.m.bankWantedRad, (mostDeg * Math.PI) / 180);
  },
});

/** Circuit height, so much too high by a misread altimeter, until base is turned. */
export const highOnDownwind = (addedM: number): Fault => ({
  name: `${addedM} m high on downwind`,
  spoil: (h) => {
    if (!['crosswind', 'downwind'].includes(h.m.phase)) return;
    noted(h);
  },
  misread: (m, v) => {
    if (['crosswind', 'downwind'].includes(m.phase)) v.heightM -= addedM;
  },
});

/** Downwind is turned early and then flown parallel: the circuit is narrow. */
/** Stands for whatever distance the line has. */
const PARALLEL = 12_345;

export const downwindTurned = (lateS: number): Fault => ({
  name: `downwind turned ${lateS} s late and kept parallel`,
  // Content with the line it is on: flown by the heading alone, in still air
  misread: (m, v) => {
    if (m.phase === 'downwind' && !m.turning) v.yM = PARALLEL;
  },
  spoil: (h) => {
    const { b, m, v, own } = h;
    const { fromY, toY } = b.corners.downwind;
    const past = (v.yM - (b.plan.spacingM - (toY - fromY))) / v.groundspeedMps;
    if (own.done !== 1) {
      if (lateS < 0) {
        if (m.phase !== 'crosswind' || m.turning || past < lateS) return;
        begin(h, 'downwind', true);
      } else if (m.phase !== 'downwind') return;
      else if (past < lateS) {
        begin(h, 'crosswind', false);
        return;
      }
      noted(h);
      own.done = 1;
    }
  },
});

/** A pilot who sets the powers of the plan leg by leg and leaves them, whatever the slope says; beside the fault. */
export const byRote = (fault: Fault): Fault => ({
  ...fault,
  name: `${fault.name}, power by rote`,
  spoil: (h) => {
    fault.spoil(h);
    const { b, m, v, controls } = h;
    const { downwind, base } = b.plan.legs;
    const onDownwind = m.phase === 'downwind' || (m.phase === 'base' && m.turning);
    const onBase = m.phase === 'base' || (m.phase === 'final' && m.turning);
    if (onDownwind && v.xM < 0 && downwind.change !== null)
      controls.throttle = downwind.change.steady.throttle;
    else if (onBase) controls.throttle = base.steady.throttle;
  },
});

export const noFault: Fault = { name: 'no fault', spoil: () => {} };

export interface FaultFlight {
  readonly flight: StudyFlight;
  readonly model: Model;
  readonly memory: LessonMemory;
  /** When the fault began; null when it never did. */
  readonly fromS: number | null;
  /** When circuit height was first left by 20 m upwards. */
  readonly tooHighS: number | null;
}

/** Flies a day with a fault until ten seconds after the last gate of a circuit, or to the end. */
export const flyFault = (day: Day, fault: Fault, circuit = 1): FaultFlight => {
  const { scenario: of, model, plan } = dayScenario(day);
  const scenario = { ...of, modelVersion: MODEL_VERSION };
  const right = briefingFor(model, plan);
  const b = fault.briefing?.(right, plan) ?? right;
  const ways: Ways = {
    beforeLook: (_, m, v) => {
      if (fault.misread === undefined) return;
      fault.misread(m, v);
      if (v.yM === PARALLEL) v.yM = plan.spacingM;
    },
    afterLook: () => {},
  };
  const pilot = createPilot(model, plan, ways, b);
  const own: Record<string, number> = {};
  const v = newPilotView();
  const source: ControlSource<PilotMemory> = {
    ...pilot,
    name: 'spoilt',
    next: (s, m, controls) => {
      const before = m.phase;
      pilot.next(s, m, controls);
      // Whoever made the fault presses on
      if (m.phase === 'go-around' && before === 'final') m.phase = 'final';
      if (s.step % 3 === 0) pilotView(s, b.runway, b.side, v);
      fault.spoil({ b, m, v, s, controls, own });
    },
  };
  const lesson = lessonOfScenario(scenario, model.runway, plan, null);
  const fold = createLessonFold(lesson) as Fold<unknown>;
  const session = createSession([{ scenario, source: source as ControlSource<unknown>, folds: [fold] }]);
  const aircraft = session.aircraft[0]!;
  const memory = aircraft.foldMemories[0] as LessonMemory;
  let left = 10 * 60;
  let tooHighS: number | null = null;
  for (let i = 0; i < 900 * 60 && left > 0 && aircraft.snapshot.ended === null; i += 1) {
    tick(session);
    if (tooHighS === null && aircraft.snapshot.heightM > plan.heightM + 20)
      tooHighS = aircraft.snapshot.timeS;
    const last = memory.gates.some((gate) => gate.heightFt === 200 && gate.circuit === circuit);
    if (last || memory.goArounds.length > 0) left -= 1;
    if (aircraft.snapshot.parked && memory.touchdowns.length > 0) break;
  }
  const { recording } = aircraft.recorder;
  return {
    flight: { recording, plan, exercise: null, limits: DEFAULT_TOLERANCES },
    model,
    memory,
    fromS: own.fromS ?? null,
    tooHighS,
  };
};

/** The fault in one circuit of several. */
export const onlyIn = (circuit: number, fault: Fault): Fault => ({
  name: `${fault.name}, circuit ${circuit}`,
  spoil: (h) => {
    if (h.m.landings === circuit - 1) fault.spoil(h);
  },
  misread: (m, v) => {
    if (m.landings === circuit - 1) fault.misread?.(m, v);
  },
});

const WANDER_S = 9;

/**
 * A student's hands around the same fault: the throttle moves only when it is well off, and in steps; needle and
 * track are read wrong by an amount that wanders (some 2 kt, some 2 degrees), the same for the same seed.
 */
export const clumsy = (fault: Fault, seed: number): Fault => {
  const phase = seed * 1.7;
  return {
    ...fault,
    name: `${fault.name}, clumsy ${seed}`,
    spoil: (h) => {
      const { m, controls, own, v } = h;
      if (m.phase === 'round-out' || m.phase === 'landing-roll' || v.heightM < 30) return fault.spoil(h);
      const wanted = m.hands.throttle;
      const kept = own.lever ?? wanted;
      own.lever = Math.abs(wanted - kept) > 0.06 ? Math.round(wanted / 0.04) * 0.04 : kept;
      controls.throttle = Math.max(0, Math.min(1, own.lever));
      fault.spoil(h);
    },
    misread: (m, v) => {
      v.iasMps += 1.1 * Math.sin(v.timeS / WANDER_S + phase);
      v.trackRad += 0.035 * Math.sin(v.timeS / (1.3 * WANDER_S) + 2 * phase);
      fault.misread?.(m, v);
    },
  };
};
