import { basename, resolve } from 'node:path';
import type { CircuitPlan } from '../circuit/types.ts';
import { parseControlsCsv } from '../formats/controls-csv.ts';
import { createPilot } from '../pilot/pilot.ts';
import { createScript } from '../session/script.ts';
import type { ControlSource } from '../session/source.ts';
import { type Model, prepare } from '../simulation/model.ts';
import type { Scenario } from '../simulation/scenario.ts';
import { checkOutput, readText } from './files.ts';
import { numberOption, type Options } from './options.ts';
import { planOf, scenariosFrom } from './scenario.ts';

const RATES = [1, 2, 3, 4, 5, 6, 10, 12, 15, 20, 30, 60];

/** Everything that is known before the first step. */
export interface Orders {
  readonly folder: string;
  readonly scenarios: readonly Scenario[];
  /** The circuit of each; where none can be planned, why not. */
  readonly planFor: (scenario: Scenario) => CircuitPlan | string;
  readonly source: (model: Model, plan: CircuitPlan) => ControlSource<unknown>;
  readonly openLoop: boolean;
  readonly durationS: number | null;
  readonly trackHz: number;
  readonly track: string | null;
  readonly gpx: string | null;
  readonly result: string;
  readonly repeats: boolean;
  /** Workers that fly a batch at once; null: as many as suit. */
  readonly jobs: number | null;
}

const rateOf = (options: Options): number => {
  const rate = numberOption(options, 'rate', 1, 60, true) ?? 10;
  if (!RATES.includes(rate))
    throw new Error(`--rate must divide 60, one of ${RATES.join(', ')}, was ${rate}`);
  return rate;
};

const outputsOf = (options: Options, folder: string): Pick<Orders, 'track' | 'gpx' | 'result'> => {
  const { track = null, gpx = null, result = '-' } = options;
  const files = [track, gpx, result === '-' ? null : result].filter((file) => file !== null);
  const paths = files.map((file) => resolve(folder, file));
  files.forEach((file, i) => {
    checkOutput(folder, file);
    if (paths.indexOf(paths[i] as string) !== i)
      throw new Error(`${file}: must be another file for each output, was given twice`);
  });
  return { track, gpx, result };
};

/** A start that cannot be is said with the name of the file it came from. */
const checkStart = (scenario: Scenario, options: Options): void => {
  try {
    prepare(scenario);
  } catch (error) {
    const file = options.start?.endsWith('.json') === true ? basename(options.start) : 'start';
    throw error instanceof Error && error.constructor === Error
      ? new Error(error.message.replace(/^start: /, `${file}: `))
      : error;
  }
};

/** Plans each circuit, and those that differ by their seed alone once. */
const plansOf = (openLoop: boolean): Orders['planFor'] => {
  const plans = new Map<string, CircuitPlan | string>();
  return (scenario) => {
    const { aeroplane, aerodrome, runway, weather } = scenario;
    const key = JSON.stringify([aeroplane, aerodrome, runway, weather]);
    let plan = plans.get(key);
    if (plan === undefined) {
      plan = planned(scenario, openLoop);
      plans.set(key, plan);
    }
    return plan;
  };
};

const planned = (scenario: Scenario, openLoop: boolean): CircuitPlan | string => {
  try {
    return planOf(scenario);
  } catch (error) {
    if (openLoop || !(error instanceof Error) || error.constructor !== Error) throw error;
    return error.message;
  }
};

/** Reads and checks everything. Throws an Error sentence at the first thing that is wrong. */
export const ordersFrom = (options: Options, folder: string): Orders => {
  if (options.json !== undefined) throw new Error('--json must come with --list, found it alone');
  if (options.jobs !== undefined && options.repeat === undefined)
    throw new Error('--jobs must come with --repeat, found it alone');
  const jobs = numberOption(options, 'jobs', 1, 64, true);
  const outputs = outputsOf(options, folder);
  const trackHz = rateOf(options);
  const durationS = numberOption(options, 'duration', 0, 86400);
  const scenarios = scenariosFrom(options, folder);
  const first = scenarios[0] as Scenario;
  checkStart(first, options);
  const controls = options.controls;
  const openLoop = controls !== undefined;
  const topStage = first.aeroplane.flap.stages.length - 1;
  const rows =
    controls === undefined || controls === 'none'
      ? []
      : parseControlsCsv(readText(folder, controls), basename(controls), topStage);
  const planFor = plansOf(openLoop);
  // An open loop without a circuit is refused at once; the model pilot refuses in its result
  planFor(first);
  return {
    folder,
    scenarios,
    planFor,
    source: openLoop ? () => createScript(rows) : createPilot,
    openLoop,
    durationS,
    trackHz,
    ...outputs,
    repeats: options.repeat !== undefined,
    jobs,
  };
};
