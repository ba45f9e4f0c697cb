import { begin, startControls } from '../simulation/begin.ts';
import { type Controls, quantiseControls, quantiseMoved } from '../simulation/controls.ts';
import { type Model, prepare } from '../simulation/model.ts';
import { observe } from '../simulation/observe.ts';
import { NO_EVENTS, type PilotEvent } from '../simulation/pilot-event.ts';
import type { Scenario } from '../simulation/scenario.ts';
import { newSnapshot, type Snapshot } from '../simulation/snapshot.ts';
import type { State } from '../simulation/state.ts';
import { step } from '../simulation/step.ts';
import {
  beginRecorder,
  isKeyframeDue,
  type Recorder,
  recordControls,
  recordEvents,
  recordKeyframe,
} from './recorder.ts';
import type { ControlSource, Fold } from './source.ts';

/** Who flies what, and who watches: the entry of one aircraft into a session. */
export interface AircraftEntry {
  readonly scenario: Scenario;
  readonly source: ControlSource<unknown>;
  readonly folds: readonly Fold<unknown>[];
}

/** One aircraft in flight. The memories are plain data; everything else can be made again from the entry. */
export interface Aircraft {
  readonly model: Model;
  readonly state: State;
  readonly controls: Controls;
  source: ControlSource<unknown>;
  sourceMemory: unknown;
  readonly folds: readonly Fold<unknown>[];
  readonly foldMemories: unknown[];
  /** Now, and one step ago: what a view blends between. The two objects change places every step. */
  snapshot: Snapshot;
  before: Snapshot;
  readonly recorder: Recorder;
  /** Done beside the controls since the last step, and taken by the next. */
  waiting: PilotEvent[];
  /** What the step that is being taken has taken. */
  taken: readonly PilotEvent[];
}

/** Several aircraft at one tick. */
export interface Session {
  step: number;
  readonly aircraft: readonly Aircraft[];
}

/** Every aircraft at the start of its scenario, with a first keyframe. */
export const createSession = (entries: readonly AircraftEntry[]): Session => ({
  step: 0,
  aircraft: entries.map(beginAircraft),
});

const beginAircraft = (entry: AircraftEntry): Aircraft => {
  const model = prepare(entry.scenario);
  const state = begin(model);
  const controls = startControls(model);
  quantiseControls(controls, model.topStage);
  const snapshot = newSnapshot();
  const before = newSnapshot();
  observe(model, state, controls, snapshot);
  observe(model, state, controls, before);
  const aircraft: Aircraft = {
    model,
    state,
    controls,
    source: entry.source,
    sourceMemory: entry.source.begin(snapshot, controls),
    folds: entry.folds,
    foldMemories: entry.folds.map((fold) => fold.begin(snapshot)),
    snapshot,
    before,
    recorder: beginRecorder(entry.scenario, controls),
    waiting: [],
    taken: NO_EVENTS,
  };
  keep(aircraft, 0);
  return aircraft;
};

const keep = (aircraft: Aircraft, at: number): void =>
  recordKeyframe(
    aircraft.recorder,
    at,
    aircraft.state,
    aircraft.controls,
    aircraft.source.name,
    aircraft.sourceMemory,
    aircraft.foldMemories,
  );

/**
 * The first half of a tick: every source sets its hands for the step that begins now; they are recorded. `around`: what
 * a source may see of others, where not all of them fly in this session.
 */
export const decide = (
  session: Session,
  around: readonly {
    readonly snapshot: Readonly<Snapshot>;
  }[] = session.aircraft,
): void => {
  for (const aircraft of session.aircraft) {
    if (session.step > 0 && isKeyframeDue(session.step)) keep(aircraft, session.step);
    aircraft.source.next(aircraft.snapshot, aircraft.sourceMemory, aircraft.controls, around);
    quantiseMoved(aircraft.controls, aircraft.model.topStage, aircraft.recorder.last);
    recordControls(aircraft.recorder, session.step, aircraft.controls);
    take(aircraft, session.step);
  }
};

/** What was done since the last step belongs to this one, with what the source itself does. */
const take = (aircraft: Aircraft, step: number): void => {
  const own = aircraft.source.events?.(step) ?? NO_EVENTS;
  if (own.length === 0 && aircraft.waiting.length === 0) {
    aircraft.taken = NO_EVENTS;
    return;
  }
  aircraft.taken = [...own, ...aircraft.waiting.map(({ kind, value }) => ({ step, kind, value }))];
  aircraft.waiting = [];
  recordEvents(aircraft.recorder, aircraft.taken);
};

/** Something done beside the controls, for the next step to take. */
export const tell = (session: Session, index: number, kind: PilotEvent['kind'], value: string): void => {
  session.aircraft[index]?.waiting.push({ step: session.step, kind, value });
};

/** The second half: one step of physics for everyone, then those who watch. */
export const advance = (session: Session): void => {
  session.step += 1;
  for (const aircraft of session.aircraft) {
    step(aircraft.model, aircraft.state, aircraft.controls);
    watch(aircraft);
    aircraft.recorder.recording.steps = session.step;
  }
};

/** One step of the whole session. */
export const tick = (session: Session): void => {
  decide(session);
  advance(session);
};

/** Looks at the state after a step and shows it to the folds. */
export const watch = (aircraft: Aircraft): void => {
  const { snapshot, before } = aircraft;
  observe(aircraft.model, aircraft.state, aircraft.controls, before);
  aircraft.snapshot = before;
  aircraft.before = snapshot;
  for (let i = 0; i < aircraft.folds.length; i += 1) {
    (aircraft.folds[i] as Fold<unknown>).step(aircraft.foldMemories[i], aircraft.snapshot, aircraft.taken);
  }
};

/** Somebody else takes the controls, as they stand, from the next step on. */
export const changeSource = (session: Session, index: number, source: ControlSource<unknown>): void => {
  const aircraft = session.aircraft[index];
  if (aircraft === undefined)
    throw new Error(`session: no aircraft ${index}, there are ${session.aircraft.length}`);
  aircraft.source = source;
  aircraft.sourceMemory = source.begin(aircraft.snapshot, aircraft.controls);
  keep(aircraft, session.step);
};
