import { basename } from 'node:path';
import { endNames } from '../aerodrome/runway.ts';
import type { Aerodrome } from '../aerodrome/schema.ts';
import { DEMO, exerciseNamed } from '../catalogue.ts';
import { startOfLeg } from '../circuit/start-of-leg.ts';
import { parseScenario, sameModel } from '../formats/scenario-json.ts';
import { parseAirStart } from '../formats/start-json.ts';
import { exerciseScenario, type Overrides, scenarioPlan } from '../lesson/exercises/exercise-scenario.ts';
import { chooseProcedures } from '../lesson/procedures/choose.ts';
import { LEG_STARTS, MODEL_VERSION, type Scenario, type Start } from '../simulation/scenario.ts';
import { readJson } from './files.ts';
import { numberOption, type OptionName, type Options, wordOption } from './options.ts';
import { aerodromeFrom, aeroplaneFrom, weatherFrom } from './place.ts';

const HIGHEST_SEED = 4294967295;

const isFile = (text: string): boolean => text.toLowerCase().endsWith('.json');

const runwayFrom = (options: Options, aerodrome: Aerodrome): string | null => {
  const asked = options.runway;
  if (asked === undefined) return null;
  const ends = endNames(aerodrome);
  if (!ends.includes(asked))
    throw new Error(`--runway must be one of ${ends.join(', ')} at ${aerodrome.id}, was ${asked}`);
  return asked;
};

/** The circuit that a scenario asks for. Throws an Error sentence when there is none. */
export const planOf = scenarioPlan;

const LINE_UP: Start = { at: 'line-up', trimmed: false, leg: 'line-up' };

/** The start that is asked for; null: the exercise's own. `atLineUp` says what the plan of a leg is. */
const startFrom = (options: Options, folder: string, atLineUp: () => Scenario): Start | null => {
  const asked = options.start;
  const trimmed = options.trimmed !== undefined;
  if (asked === undefined && !trimmed) return null;
  if (asked === undefined || asked === 'line-up') {
    if (trimmed) throw new Error('--trimmed must come with a start in the air, found --start line-up');
    return LINE_UP;
  }
  if (isFile(asked))
    return { at: parseAirStart(readJson(folder, asked), basename(asked)), trimmed, leg: null };
  const leg = LEG_STARTS.find((name) => name === asked);
  if (leg === undefined || leg === 'line-up') {
    throw new Error(`--start must be one of ${LEG_STARTS.join(', ')} or a .json file, was ${asked}`);
  }
  return { at: startOfLeg(planOf(atLineUp()), leg), trimmed, leg };
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
  'radio',
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

/** Checks, calls and lookout belong to the flight; alone in the circuit, and nothing waits behind a check. */
const withChecks = (scenario: Scenario, radio: 'untowered' | 'towered'): Scenario => {
  const choice = { radio, words: 'icao', others: 0, surprises: false } as const;
  const { seed, weather, start } = scenario;
  const { procedures } = chooseProcedures(choice, seed, weather.qnhHpa, start.leg ?? 'final');
  return { ...scenario, procedures };
};

/** Every scenario with its seed, from what the options say. Throws an Error sentence at the first thing that is wrong. */
const scenarioBySeed = (options: Options, folder: string): ((seedsLater: number) => Scenario) => {
  if (options.scenario !== undefined) {
    const scenario = scenarioFromFile(options, options.scenario, folder);
    return (later) => ({ ...scenario, seed: scenario.seed + later });
  }
  const exercise = exerciseNamed(options.exercise ?? DEMO.exercise);
  const aeroplane = aeroplaneFrom(options.aeroplane ?? DEMO.aeroplane, folder);
  const aerodrome = aerodromeFrom(options.aerodrome ?? exercise.aerodrome ?? DEMO.aerodrome, folder);
  const weather = weatherFrom(options, aerodrome);
  const runway = runwayFrom(options, aerodrome);
  const assists = wordOption(options, 'assists', ['none', 'rudder'], 'rudder');
  const seed = numberOption(options, 'seed', 0, HIGHEST_SEED, true) ?? 1;
  const circuits = numberOption(options, 'circuits', 1, 50, true);
  const overrides: Overrides = {
    weather,
    rudderAssist: assists === 'rudder',
    ...(runway !== null && { runway }),
    ...(circuits !== null && { circuits }),
  };
  const made = (later: number, more: Overrides): Scenario =>
    exerciseScenario(exercise, aeroplane, aerodrome, seed + later, { ...overrides, ...more });
  const radio = wordOption(options, 'radio', ['none', 'untowered', 'towered'], 'none');
  return (later) => {
    const start = startFrom(options, folder, () => made(later, { start: LINE_UP }));
    const scenario = made(later, start === null ? {} : { start });
    return radio === 'none' ? scenario : withChecks(scenario, radio);
  };
};

/** Everything that is fixed before the first step, of the first flight. */
export const scenarioFrom = (options: Options, folder: string): Scenario =>
  scenarioBySeed(options, folder)(0);

/** Of all flights of a batch: an exercise may draw its figures from the seed, so each has its own. */
export const scenariosFrom = (options: Options, folder: string): Scenario[] => {
  const bySeed = scenarioBySeed(options, folder);
  const first = bySeed(0);
  const repeat = numberOption(options, 'repeat', 1, 100000, true) ?? 1;
  if (first.seed + repeat - 1 > HIGHEST_SEED) {
    throw new Error(
      `--repeat must leave the last seed at most ${HIGHEST_SEED}, was ${repeat} from seed ${first.seed}`,
    );
  }
  return Array.from({ length: repeat }, (_, i) => (i === 0 ? first : bySeed(i)));
};
