import type { Aerodrome } from '../../src/aerodrome/schema.ts';
import type { Aeroplane } from '../../src/aeroplane/schema.ts';
import { begin, startControls } from '../../src/simulation/begin.ts';
import { type Controls, quantiseControls } from '../../src/simulation/controls.ts';
import { type Model, prepare } from '../../src/simulation/model.ts';
import { observe } from '../../src/simulation/observe.ts';
import {
  type AirStart,
  MODEL_VERSION,
  type Scenario,
  STEP_HZ,
  type Weather,
} from '../../src/simulation/scenario.ts';
import { newSnapshot, type Snapshot } from '../../src/simulation/snapshot.ts';
import type { State } from '../../src/simulation/state.ts';
import { step } from '../../src/simulation/step.ts';
import { aerodromeNamed } from './aerodromes.ts';
import { aeroplaneNamed } from './aeroplanes.ts';

/** A standard day at sea level: dry, no wind. */
export const STILL: Weather = {
  windFromDegM: 0,
  windKt: 0,
  gustKt: null,
  turbulence: 'none',
  temperatureC: 15,
  dewPointC: null,
  qnhHpa: 1013.25,
};

/** A runway at sea level exactly, heading north, with slope and surface as asked: for closed forms. */
export const northRunway = (
  changes: { slopePercent?: number; surface?: 'tarmac' | 'grass'; elevationFt?: number } = {},
): Aerodrome => {
  const base = aerodromeNamed('curlew-sands');
  const end = { ...base.runway.ends[0], slopeLights: null };
  return {
    ...base,
    elevationFt: changes.elevationFt ?? 0,
    variationDegE: 0,
    runway: {
      ...base.runway,
      lengthM: 3000,
      widthM: 60,
      surface: changes.surface ?? 'tarmac',
      slopePercent: changes.slopePercent ?? 0,
      ends: [
        { ...end, designator: '36', headingDegM: 360 },
        { ...end, designator: '18', headingDegM: 180 },
      ],
    },
  };
};

export interface ScenarioChanges {
  readonly aeroplane?: Aeroplane;
  readonly aerodrome?: Aerodrome;
  readonly runway?: string;
  readonly weather?: Partial<Weather>;
  /** Not given: the line-up. */
  readonly start?: Partial<AirStart>;
  readonly trimmed?: boolean;
  readonly seed?: number;
  readonly rudderAssist?: boolean;
  readonly failures?: Scenario['failures'];
}

/** A scenario on the northward runway; a start in the air is 80 kt at 1,000 ft well to the side, level. */
export const scenarioOf = (changes: ScenarioChanges = {}): Scenario => {
  const { start } = changes;
  const path =
    start !== undefined &&
    ['flight_path_deg', 'vertical_speed_fpm', 'rpm', 'throttle'].some((key) => key in start)
      ? {}
      : { flight_path_deg: 0 };
  const at: AirStart | 'line-up' =
    start === undefined
      ? 'line-up'
      : {
          east_m: -3000,
          north_m: 0,
          height_ft: 1000,
          heading_deg: 0,
          ias_kt: 80,
          flap_deg: 0,
          gear: 'down',
          bank_deg: 0,
          ...path,
          ...start,
        };
  return {
    modelVersion: MODEL_VERSION,
    exercise: 'test',
    aeroplane: changes.aeroplane ?? aeroplaneNamed('sandpiper'),
    aerodrome: changes.aerodrome ?? northRunway(),
    runway: changes.runway ?? '36',
    weather: { ...STILL, ...changes.weather },
    start: { at, trimmed: changes.trimmed ?? at !== 'line-up', leg: null },
    seed: changes.seed ?? 1,
    assists: { rudder: changes.rudderAssist ?? true },
    failures: changes.failures ?? [],
    circuits: 1,
  };
};

/** One aeroplane flown by a test: no session, no recorder. */
export interface Flight {
  readonly model: Model;
  readonly state: State;
  readonly controls: Controls;
  readonly seen: Snapshot;
}

export type Hands = (seen: Snapshot, controls: Controls) => void;

/** Leaves the controls as they are. */
export const handsOff: Hands = () => {};

export const beginFlight = (scenario: Scenario): Flight => {
  const model = prepare(scenario);
  const state = begin(model);
  const controls = startControls(model);
  const seen = newSnapshot();
  observe(model, state, controls, seen);
  return { model, state, controls, seen };
};

/** One step with whatever the hands do. */
export const flyStep = (flight: Flight, hands: Hands): void => {
  const { model, state, controls, seen } = flight;
  hands(seen, controls);
  quantiseControls(controls, model.topStage);
  step(model, state, controls);
  observe(model, state, controls, seen);
};

/** Flies on for so many seconds, or until the flight ends or `until` says so. Returns the Snapshot, filled anew. */
export const fly = (
  flight: Flight,
  seconds: number,
  hands: Hands = handsOff,
  until: (seen: Snapshot) => boolean = () => false,
): Snapshot => {
  const steps = Math.round(seconds * STEP_HZ);
  for (let i = 0; i < steps && flight.seen.ended === null && !until(flight.seen); i += 1)
    flyStep(flight, hands);
  return flight.seen;
};
