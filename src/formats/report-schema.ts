import * as v from 'valibot';
import { CAUSE_IDS } from '../lesson/judge/cause-words.ts';
import { OUTCOMES } from '../lesson/judge/report.ts';
import { DUE_IDS, EDGES, GATE_FAULTS } from '../lesson/memory.ts';
import { LEG_NAMES } from '../lesson/names.ts';
import { withCircuit, withDue, withStopId } from './earlier-items.ts';
import type { FlownResult } from './result.ts';

/**
 * A result as it stands in a file. Keys that a later version adds are let through: they are data, and whoever
 * does not know them does not look at them.
 */
const number = v.pipe(v.number(), v.finite());
const words = v.pipe(v.string(), v.maxLength(2000));
const orNull = v.nullable(number);
const leg = v.picklist(LEG_NAMES);
const spread = v.nullable(v.looseObject({ mean: number, min: number, max: number }));
const list = <S extends v.GenericSchema>(of: S) => v.pipe(v.array(of), v.maxLength(10000));

const legReport = v.looseObject({
  circuit: number,
  leg,
  from_s: number,
  to_s: number,
  height_ft: spread,
  ias_kt: spread,
  bank_deg: spread,
  track_error_m: spread,
});

const turnReport = v.looseObject({
  circuit: number,
  onto: v.picklist(['crosswind', 'downwind', 'base', 'final']),
  from_s: number,
  to_s: number,
  bank_deg: v.looseObject({ mean: number, max: number }),
  overshoot_m: orNull,
  angle_behind_wing_deg: orNull,
  planned_angle_deg: orNull,
});

const gateReport = v.looseObject({
  circuit: number,
  height_ft: number,
  at_s: number,
  slope_deg: number,
  lights: v.nullable(words),
  ias_kt: number,
  sink_fpm: number,
  centreline_m: number,
  bank_deg: number,
  stabilised: v.boolean(),
  why: list(words),
  faults: v.optional(list(v.picklist(GATE_FAULTS)), []),
});

const touchdownReport = v.looseObject({
  circuit: number,
  at_s: number,
  past_threshold_m: number,
  past_aim_m: number,
  past_specified_m: number,
  sink_fpm: number,
  ias_kt: number,
  centreline_m: number,
  crab_deg: number,
  drift_kt: number,
  pitch_deg: number,
  bounces: number,
});

const itemAsWritten = v.looseObject({
  id: v.pipe(v.string(), v.minLength(1), v.maxLength(80)),
  circuit: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1))),
  leg,
  value: orNull,
  unit: v.pipe(v.string(), v.maxLength(40)),
  target: orNull,
  low: orNull,
  high: orNull,
  band: v.picklist(['green', 'amber', 'red', 'not-judged']),
  source: words,
});
const itemReport = v.pipe(itemAsWritten, v.transform(withCircuit));

const goAroundReport = v.pipe(
  v.looseObject({
    at_s: orNull,
    height_ft: orNull,
    due_at_s: orNull,
    why: words,
    due: v.optional(v.nullable(v.picklist(DUE_IDS))),
    circuit: v.optional(number, 1),
    gate_ft: v.optional(orNull, null),
  }),
  v.transform(withDue),
);

const safetyReport = v.pipe(
  v.looseObject({ id: v.optional(v.pipe(v.string(), v.maxLength(80))), at_s: number, what: words }),
  v.transform(withStopId),
);

const causeReport = v.looseObject({
  id: v.picklist(CAUSE_IDS),
  circuit: number,
  at_s: number,
  amount: number,
  band: v.picklist(['amber', 'red']),
});

export const resultSchema: v.GenericSchema<unknown, FlownResult> = v.looseObject({
  outcome: v.picklist(OUTCOMES),
  why: words,
  flight_s: v.pipe(number, v.minValue(0)),
  legs: list(legReport),
  turns: list(turnReport),
  gates: list(gateReport),
  go_arounds: list(goAroundReport),
  touchdowns: list(touchdownReport),
  stop: v.nullable(v.looseObject({ past_threshold_m: number, remaining_m: number, centreline_m: number })),
  ran_off: v.optional(v.nullable(v.picklist(EDGES)), null),
  items: list(itemReport),
  safety: list(safetyReport),
  causes: v.optional(list(causeReport), []),
});
