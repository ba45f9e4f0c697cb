import { basename, resolve } from 'node:path';
import type { CircuitPlan } from '../circuit/types.ts';
import { parseControlsCsv } from '../formats/controls-csv.ts';
import { parseRecording } from '../formats/recording-json.ts';
import { type Result, refusedResult } from '../formats/result.ts';
import { summaryOf } from '../formats/summary.ts';
import { firstDifference } from '../session/replay.ts';
import { createScript } from '../session/script.ts';
import type { ControlSource } from '../session/source.ts';
import { type Model, prepare } from '../simulation/model.ts';
import { MODEL_VERSION, type Scenario } from '../simulation/scenario.ts';
import { callersFolder, checkOutput, readJson, readText, withSeed, writeWhole } from './files.ts';
import { flyOrder } from './flight.ts';
import { listText } from './list.ts';
import { createPilot, refusal } from './model-pilot.ts';
import { numberOption, type Options, parseOptions } from './options.ts';
import { HIGHEST_SEED, planOf, scenarioFrom } from './scenario.ts';

/** An argument or a file was wrong: one line, exit code 2. Anything else is a defect: exit code 1. */
class Refused extends Error {}

const RATES = [1, 2, 3, 4, 5, 6, 10, 12, 15, 20, 30, 60];

/** Everything that is known before the first step. */
interface Orders {
  readonly folder: string;
  readonly scenarios: readonly Scenario[];
  /** Of all of them: only the seed differs. Null: no circuit can be planned, `unplanned` says why. */
  readonly plan: CircuitPlan | null;
  readonly unplanned: string;
  readonly source: (model: Model, plan: CircuitPlan) => ControlSource<unknown>;
  readonly openLoop: boolean;
  readonly durationS: number | null;
  readonly trackHz: number;
  readonly track: string | null;
  readonly gpx: string | null;
  readonly result: string;
  readonly repeats: boolean;
}

/** Bad input speaks in sentences thrown as plain Errors; the engine's own error classes are defects. */
const asInput = <T>(read: () => T): T => {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof Error) || error.constructor !== Error) throw error;
    throw new Refused(error.message);
  }
};

const scenariosOf = (options: Options, folder: string): Scenario[] => {
  const scenario = scenarioFrom(options, folder);
  const repeat = numberOption(options, 'repeat', 1, 100000, true) ?? 1;
  if (scenario.seed + repeat - 1 > HIGHEST_SEED) {
    throw new Error(
      `--repeat must leave the last seed at most ${HIGHEST_SEED}, was ${repeat} from seed ${scenario.seed}`,
    );
  }
  return Array.from({ length: repeat }, (_, i) => ({ ...scenario, seed: scenario.seed + i }));
};

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

const ordersFrom = (options: Options, folder: string): Orders => {
  if (options.metar !== undefined) {
    throw new Error('--metar is not understood yet: give --wind, --temp and --qnh instead');
  }
  if (options.json !== undefined) throw new Error('--json must come with --list, found it alone');
  const outputs = outputsOf(options, folder);
  const trackHz = rateOf(options);
  const durationS = numberOption(options, 'duration', 0, 86400);
  const scenarios = scenariosOf(options, folder);
  const first = scenarios[0] as Scenario;
  checkStart(first, options);
  const controls = options.controls;
  const openLoop = controls !== undefined;
  const topStage = first.aeroplane.flap.stages.length - 1;
  const rows =
    controls === undefined || controls === 'none'
      ? []
      : parseControlsCsv(readText(folder, controls), basename(controls), topStage);
  let plan: CircuitPlan | null = null;
  let unplanned = '';
  try {
    plan = planOf(first);
  } catch (error) {
    if (openLoop || !(error instanceof Error) || error.constructor !== Error) throw error;
    unplanned = error.message;
  }
  return {
    folder,
    scenarios,
    plan,
    unplanned,
    source: openLoop ? () => createScript(rows) : createPilot,
    openLoop,
    durationS,
    trackHz,
    ...outputs,
    repeats: options.repeat !== undefined,
  };
};

const flyOne = (orders: Orders, scenario: Scenario): Result => {
  const { plan, folder, repeats } = orders;
  if (plan === null) return refusedResult(scenario, orders.unplanned);
  const model = prepare(scenario);
  const why = orders.openLoop ? null : refusal(model, plan);
  if (why !== null) return refusedResult(scenario, why);
  const flown = flyOrder({
    scenario,
    plan,
    model,
    source: orders.source(model, plan),
    durationS: orders.durationS,
    openLoop: orders.openLoop,
    trackHz: orders.track === null ? null : orders.trackHz,
    gpx: orders.gpx !== null,
  });
  const name = (file: string): string => (repeats ? withSeed(file, scenario.seed) : file);
  if (orders.track !== null) writeWhole(folder, name(orders.track), flown.track);
  if (orders.gpx !== null) writeWhole(folder, name(orders.gpx), flown.gpx);
  return flown.result;
};

const fly = (orders: Orders): string => {
  const results = orders.scenarios.map((scenario) => flyOne(orders, scenario));
  const told = orders.repeats ? { summary: summaryOf(results), flights: results } : results[0];
  const text = `${JSON.stringify(told, null, 2)}\n`;
  if (orders.result === '-') return text;
  writeWhole(orders.folder, orders.result, text);
  return '';
};

/** Flies a recording again and says where it first stands elsewhere. */
const play = (file: string, folder: string): string => {
  const recording = asInput(() => parseRecording(readJson(folder, file), basename(file)));
  const other =
    recording.modelVersion === MODEL_VERSION
      ? ''
      : `recorded with model version ${recording.modelVersion}, this is ${MODEL_VERSION}: differences are to be expected\n`;
  const difference = firstDifference(recording);
  if (difference === null) return `${other}no difference in ${recording.steps} steps\n`;
  const { step, slot, recorded, flown } = difference;
  return `${other}step ${step}, ${slot}: recorded ${recorded}, flown ${flown}\n`;
};

const run = (args: readonly string[], folder: string): string => {
  const options = asInput(() => parseOptions(args));
  if (options.list !== undefined) return listText(options.json !== undefined);
  if (options.play !== undefined) return play(options.play, folder);
  return fly(asInput(() => ordersFrom(options, folder)));
};

/** What the command says and how it ends: 0 flown, 2 an argument or a file is wrong, 1 a defect. */
export interface Answer {
  readonly code: 0 | 1 | 2;
  readonly out: string;
  readonly error: string;
}

/** The command without its process: `folder` is where the caller stands. */
export const answer = (args: readonly string[], folder: string): Answer => {
  try {
    return { code: 0, out: run(args, folder), error: '' };
  } catch (error) {
    if (error instanceof Refused) {
      return { code: 2, out: '', error: `${error.message.replaceAll(/\s*\n\s*/g, ' ')}\n` };
    }
    const trace = error instanceof Error ? (error.stack ?? error.message) : String(error);
    return { code: 1, out: '', error: `defect: ${trace}\n` };
  }
};

/** The command. Writes what it has to say, and returns the exit code. */
export const main = (args: readonly string[]): number => {
  const { code, out, error } = answer(args, callersFolder(process.env, process.cwd()));
  process.stdout.write(out);
  process.stderr.write(error);
  return code;
};
