import { basename } from 'node:path';
import { endNames, runwayInUse } from '../aerodrome/runway.ts';
import type { Aerodrome } from '../aerodrome/schema.ts';
import { DEMO, exerciseNamed } from '../catalogue.ts';
import { planCircuit } from '../circuit/plan.ts';
import { runwayByWind } from '../circuit/runway-choice.ts';
import { startOfLeg } from '../circuit/start-of-leg.ts';
import type { CircuitPlan } from '../circuit/types.ts';
import { parseScenario, sameModel } from '../formats/scenario-json.ts';
import { parseAirStart } from '../formats/start-json.ts';
import {
  LEG_STARTS,
  MODEL_VERSION,
  type Scenario,
  type Start,
  type Weather,
} from '../simulation/scenario.ts';
import { shapeOf } from '../simulation/shape.ts';
import { readJson } from './files.ts';
import { numberOption, type OptionName, type Options, wordOption } from './options.ts';
import { aerodromeFrom, aeroplaneFrom, weatherFrom } from './place.ts';

export const HIGHEST_SEED = 4294967295;

const isFile = (text: string): boolean => text.toLowerCase().endsWith('.json');

const runwayFrom = (options: Options, aerodrome: Aerodrome, weather: Weather): string => {
  const asked = options.runway;
  if (asked === undefined) return runwayByWind(aerodrome, weather);
  const ends = endNames(aerodrome);
  if (!ends.includes(asked))
    throw new Error(`--runway must be one of ${ends.join(', ')} at ${aerodrome.id}, was ${asked}`);
  return asked;
};

/** The circuit that a scenario asks for. Throws an Error sentence when there is none. */
export const planOf = (scenario: Scenario): CircuitPlan =>
  planCircuit(
    shapeOf(scenario.aeroplane),
    scenario.aeroplane,
    scenario.aerodrome,
    runwayInUse(scenario.aerodrome, scenario.runway),
    scenario.weather,
  );

const startFrom = (options: Options, folder: string, onTheRunway: Scenario): Start => {
  const asked = options.start ?? 'line-up';
  const trimmed = options.trimmed !== undefined;
  if (asked === 'line-up') {
    if (trimmed) throw new Error('--trimmed must come with a start in the air, found --start line-up');
    return { at: 'line-up', trimmed, leg: 'line-up' };
  }
  if (isFile(asked))
    return { at: parseAirStart(readJson(folder, asked), basename(asked)), trimmed, leg: null };
  const leg = LEG_STARTS.find((name) => name === asked);
  if (leg === undefined || leg === 'line-up') {
    throw new Error(`--start must be one of ${LEG_STARTS.join(', ')} or a .json file, was ${asked}`);
  }
  return { at: startOfLeg(planOf(onTheRunway), leg), trimmed, leg };
};

/** What a scenario file already says, so that no option may say it again. */
const SAID_BY_SCENARIO: readonly OptionName[] = [
  'exercise',
  'aeroplane',
  'aerodrome',
  'runway',
  'wind',
  'metar',
  'turbulence',
  'temp',
  'qnh',
  'seed',
  'start',
  'trimmed',
  'assists',
  'circuits',
];

const scenarioFromFile = (options: Options, file: string, folder: string): Scenario => {
  const twice = SAID_BY_SCENARIO.find((name) => options[name] !== undefined);
  if (twice !== undefined)
    throw new Error(`--scenario must stand without --${twice}, which the scenario already says`);
  const scenario = parseScenario(readJson(folder, file), basename(file));
  if (!sameModel(scenario)) {
    throw new Error(
      `${basename(file)}: modelVersion must be ${MODEL_VERSION} to fly the same flight, was ${scenario.modelVersion}`,
    );
  }
  return scenario;
};

/** Everything that is fixed before the first step. Throws an Error sentence at the first thing that is wrong. */
export const scenarioFrom = (options: Options, folder: string): Scenario => {
  if (options.scenario !== undefined) return scenarioFromFile(options, options.scenario, folder);
  const exercise = exerciseNamed(options.exercise ?? DEMO.exercise);
  const aeroplane = aeroplaneFrom(options.aeroplane ?? DEMO.aeroplane, folder);
  const aerodrome = aerodromeFrom(options.aerodrome ?? DEMO.aerodrome, folder);
  const weather = weatherFrom(options, aerodrome);
  const assists = wordOption(options, 'assists', ['none', 'rudder'], 'rudder');
  const onTheRunway: Scenario = {
    modelVersion: MODEL_VERSION,
    exercise: exercise.id,
    aeroplane,
    aerodrome,
    runway: runwayFrom(options, aerodrome, weather),
    weather,
    start: { at: 'line-up', trimmed: false, leg: 'line-up' },
    seed: numberOption(options, 'seed', 0, HIGHEST_SEED, true) ?? 1,
    assists: { rudder: assists === 'rudder' },
    failures: [],
    circuits: numberOption(options, 'circuits', 1, 50, true) ?? exercise.circuits,
  };
  return { ...onTheRunway, start: startFrom(options, folder, onTheRunway) };
};
