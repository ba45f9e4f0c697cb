import * as v from 'valibot';
import { parseAerodrome } from '../aerodrome/parse.ts';
import { MODEL_VERSION, type Scenario, scenarioSchema } from '../simulation/scenario.ts';
import { describeIssue } from '../units/issues.ts';

/**
 * A scenario, or a result that holds one under `scenario`. Throws an Error sentence with place, expected and
 * found. Another model version is no error here: `sameModel` tells.
 */
export const parseScenario = (json: unknown, file: string): Scenario => {
  const holder = json as { scenario?: unknown } | null;
  const inside = typeof holder === 'object' && holder !== null && holder.scenario !== undefined;
  const result = v.safeParse(scenarioSchema, inside ? holder.scenario : json, { abortEarly: true });
  if (!result.success) throw new Error(describeIssue(file, result.issues[0]));
  parseAerodrome(result.output.aerodrome, file);
  return result.output;
};

/** Only the same model version repeats a flight bit for bit. */
export const sameModel = (scenario: Scenario): boolean => scenario.modelVersion === MODEL_VERSION;
