import * as v from 'valibot';
import { type AirStart, airStartSchema } from '../simulation/scenario.ts';
import { describeIssue } from '../units/issues.ts';

const PATHS = ['flight_path_deg', 'vertical_speed_fpm', 'rpm', 'throttle'] as const;

/** A start in the air as its file says it. Throws an Error sentence with place, expected and found. */
export const parseAirStart = (json: unknown, file: string): AirStart => {
  const result = v.safeParse(airStartSchema, json, { abortEarly: true });
  if (!result.success) throw new Error(describeIssue(file, result.issues[0]));
  const given = PATHS.filter((key) => result.output[key] !== undefined);
  if (given.length !== 1) {
    throw new Error(
      `${file}: must have exactly one of ${PATHS.join(', ')}, found ${given.join(', ') || 'none'}`,
    );
  }
  return result.output;
};
