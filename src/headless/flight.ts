import { exerciseOf } from '../catalogue.ts';
import type { CircuitPlan } from '../circuit/types.ts';
import { type TrackMoment, trackHeader, trackRow } from '../formats/csv-track.ts';
import { type GpxPoint, gpxText } from '../formats/gpx.ts';
import { type Result, resultOf } from '../formats/result.ts';
import { createLessonFold } from '../lesson/lesson-fold.ts';
import { lessonOfScenario } from '../lesson/lesson-of.ts';
import type { LessonMemory } from '../lesson/memory.ts';
import { endingOf } from '../lesson/outcome.ts';
import { advance, createSession, decide } from '../session/session.ts';
import type { ControlSource } from '../session/source.ts';
import type { Model } from '../simulation/model.ts';
import { type Scenario, STEP_HZ } from '../simulation/scenario.ts';

/** One flight to be flown, and what is wanted of it. */
export interface FlightOrder {
  readonly scenario: Scenario;
  readonly plan: CircuitPlan;
  readonly model: Model;
  readonly source: ControlSource<unknown>;
  /** Null: to a stop, or half an hour. */
  readonly durationS: number | null;
  /** Nobody looks out: with a duration the flight goes on to its end whatever happens short of a crash. */
  readonly openLoop: boolean;
  /** Rows a second; null: no track. */
  readonly trackHz: number | null;
  readonly gpx: boolean;
}

export interface Flown {
  readonly result: Result;
  readonly track: string;
  readonly gpx: string;
}

/** Half an hour, and for a session of many circuits eight minutes each. */
const LONGEST_S = 30 * 60;
const LONGEST_CIRCUIT_S = 8 * 60;
const LOOK_STEPS = 6;

/** Flies it without a screen. */
export const flyOrder = (order: FlightOrder): Flown => {
  const { scenario, plan, model, durationS, trackHz } = order;
  const lesson = lessonOfScenario(scenario, model.runway, plan, exerciseOf(scenario));
  const fold = createLessonFold(lesson);
  const session = createSession([{ scenario, source: order.source, folds: [fold] }]);
  const aircraft = session.aircraft[0];
  if (aircraft === undefined) throw new Error('session: one aircraft was expected, found none');
  const memory = aircraft.foldMemories[0] as LessonMemory;
  const longestS = Math.max(LONGEST_S, scenario.circuits * LONGEST_CIRCUIT_S);
  const steps = Math.round((durationS ?? longestS) * STEP_HZ);
  const every = trackHz === null ? 0 : STEP_HZ / trackHz;
  const goesOn = order.openLoop && durationS !== null;
  const rows: string[] = [];
  const points: GpxPoint[] = [];
  const writeDown = (): void => {
    const { snapshot, controls } = aircraft;
    if (every > 0 && session.step % every === 0) {
      const moment: TrackMoment = { snapshot, controls, leg: memory.legs.leg, runway: model.runway };
      rows.push(trackRow(moment));
    }
    if (!order.gpx || session.step % STEP_HZ !== 0) return;
    const altitudeM = model.runway.thresholdElevationM + snapshot.heightM;
    points.push({ timeS: snapshot.timeS, eastM: snapshot.eastM, northM: snapshot.northM, altitudeM });
  };
  while (session.step < steps) {
    decide(session);
    writeDown();
    advance(session);
    if (aircraft.snapshot.ended !== null) break;
    if (session.step % LOOK_STEPS === 0 && !goesOn && endingOf(memory, lesson) !== null) break;
  }
  writeDown();
  const timeUp =
    durationS === null
      ? `The ${Math.round(longestS / 60)} minutes of a flight were up.`
      : `The ${durationS} s asked for were up.`;
  return {
    result: resultOf(scenario, lesson, memory, session.step / STEP_HZ, { outcome: 'time-up', why: timeUp }),
    track: trackHz === null ? '' : trackHeader() + rows.join(''),
    gpx: order.gpx
      ? gpxText(`${scenario.aeroplane.title}, ${scenario.aerodrome.title} ${scenario.runway}`, points)
      : '',
  };
};
