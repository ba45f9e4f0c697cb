import { exerciseOf } from '../catalogue.ts';
import type { CircuitPlan } from '../circuit/types.ts';
import { beginFlight } from '../flight/begin.ts';
import { COACH_STEPS, followCoach } from '../flight/coach.ts';
import { isStillDemonstrating } from '../flight/demonstrates.ts';
import { type Done, doneOf, type Said, saidOf } from '../flight/done.ts';
import { type Flight, lessonMemory, ownAircraft } from '../flight/flight.ts';
import {
  createGroundRunsFold,
  type GroundRuns,
  type GroundRunsMemory,
  groundRunsOf,
} from '../flight/ground-runs.ts';
import { otherPilot } from '../flight/model-pilot.ts';
import { resultOfFlight } from '../flight/result.ts';
import { advanceStep, decideStep, isLookStep } from '../flight/run.ts';
import { type Result, refusedResult } from '../formats/result.ts';
import { type TrackMoment, trackHeader, trackRow } from '../formats/track/csv-track.ts';
import { type GpxPoint, gpxText } from '../formats/track/gpx.ts';
import type { CoachLevel } from '../lesson/coach/coach.ts';
import { endingOf } from '../lesson/judge/outcome.ts';
import type { ControlSource, Fold } from '../session/source.ts';
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
  /** Silent unless said otherwise. */
  readonly coach?: CoachLevel;
  /** Rows a second; null: no track. */
  readonly trackHz: number | null;
  readonly gpx: boolean;
}

/** The result of the command line: that of the page, and what went on beside the flying. */
export interface PrintedResult extends Result {
  readonly done: readonly Done[];
  readonly ground_runs: GroundRuns;
  readonly said: readonly Said[];
}

export interface Flown {
  readonly result: PrintedResult;
  readonly track: string;
  readonly gpx: string;
}

const NO_RUNS: GroundRuns = {
  take_off_roll_m: null,
  take_off_to_50ft_m: null,
  landing_roll_m: null,
  landing_from_50ft_m: null,
};

/** A flight that was not begun, and why. */
export const refusedFlight = (scenario: Scenario, why: string): PrintedResult => ({
  ...refusedResult(scenario, why),
  done: [],
  ground_runs: NO_RUNS,
  said: [],
});

/** Half an hour, and for a session of many circuits eight minutes each. */
const LONGEST_S = 30 * 60;
const LONGEST_CIRCUIT_S = 8 * 60;

const ready = ({ scenario, plan, model, source }: FlightOrder): Flight =>
  beginFlight({
    scenario,
    model,
    plan,
    source: () => source,
    otherPilot,
    judgedBy: null,
    folds: [createGroundRunsFold(model.runway) as Fold<unknown>],
  });

/** Flies it without a screen. */
export const flyOrder = (order: FlightOrder): Flown => {
  const { scenario, model, durationS, trackHz, coach = 'silent', openLoop } = order;
  const flight = ready(order);
  const { session } = flight;
  const aircraft = ownAircraft(flight);
  const memory = lessonMemory(flight);
  const longestS = Math.max(LONGEST_S, scenario.circuits * LONGEST_CIRCUIT_S);
  const steps = Math.round((durationS ?? longestS) * STEP_HZ);
  const every = trackHz === null ? 0 : STEP_HZ / trackHz;
  const goesOn = openLoop && durationS !== null;
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
    decideStep(flight);
    writeDown();
    advanceStep(flight);
    if (coach !== 'silent' && session.step % COACH_STEPS === 0)
      followCoach(flight, aircraft.snapshot, coach, openLoop);
    if (aircraft.snapshot.ended !== null) break;
    const looks = isLookStep(flight) && !goesOn;
    if (looks && endingOf(memory, flight.lesson) !== null && !isStillDemonstrating(flight)) break;
  }
  writeDown();
  const timeUp =
    durationS === null
      ? `The ${Math.round(longestS / 60)} minutes of a flight were up.`
      : `The ${durationS} s asked for were up.`;
  return {
    result: {
      ...resultOfFlight(flight, exerciseOf(scenario), 0, { outcome: 'time-up', why: timeUp }),
      done: doneOf(flight, openLoop ? 'pilot' : 'model'),
      ground_runs: groundRunsOf(aircraft.foldMemories[1] as GroundRunsMemory),
      said: saidOf(flight),
    },
    track: trackHz === null ? '' : trackHeader() + rows.join(''),
    gpx: order.gpx
      ? gpxText(`${scenario.aeroplane.title}, ${scenario.aerodrome.title} ${scenario.runway}`, points)
      : '',
  };
};
