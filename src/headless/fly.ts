import { type Result, refusedResult } from '../formats/result.ts';
import { summaryOf } from '../formats/summary.ts';
import { refusal } from '../pilot/pilot.ts';
import { prepare } from '../simulation/model.ts';
import type { Scenario } from '../simulation/scenario.ts';
import { withSeed, writeWhole } from './files.ts';
import { flyOrder } from './flight.ts';
import type { Orders } from './orders.ts';

/** Flies one of them, writes its tracks, and gives its result. */
export const flyOne = (orders: Orders, scenario: Scenario): Result => {
  const { folder, repeats } = orders;
  const plan = orders.planFor(scenario);
  if (typeof plan === 'string') return refusedResult(scenario, plan);
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

/** What is told of the results: on stdout, or in a file and nothing on stdout. */
export const tell = (orders: Orders, results: readonly Result[]): string => {
  const told = orders.repeats ? { summary: summaryOf(results), flights: results } : results[0];
  const text = `${JSON.stringify(told, null, 2)}\n`;
  if (orders.result === '-') return text;
  writeWhole(orders.folder, orders.result, text);
  return '';
};
