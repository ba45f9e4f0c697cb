import * as v from 'valibot';
import { aerodromeSchema } from '../aerodrome/schema.ts';
import { aeroplaneSchema } from '../aeroplane/schema.ts';
import { proceduresSchema } from './procedures.ts';
import { taskSchema } from './task.ts';

/** Rises with any change of the bytes that a flight gives. */
export const MODEL_VERSION = 4; // definition: a count of changes

/** Steps a second; the only timestep there is. */
export const STEP_HZ = 60; // our choice: as a screen draws
export const STEP_S = 1 / STEP_HZ; // derived: of STEP_HZ

const finite = v.pipe(v.number(), v.finite());

const weatherSchema = v.strictObject({
  /** Surface wind at 10 m, degrees magnetic, 0..360. */
  windFromDegM: v.pipe(finite, v.minValue(0), v.maxValue(360)),
  windKt: v.pipe(finite, v.minValue(0), v.maxValue(99)),
  gustKt: v.nullable(v.pipe(finite, v.minValue(0), v.maxValue(140))),
  turbulence: v.picklist(['none', 'light', 'moderate']),
  temperatureC: v.pipe(finite, v.minValue(-60), v.maxValue(60)),
  /** Null: dry air, no carburettor ice. */
  dewPointC: v.nullable(v.pipe(finite, v.minValue(-90), v.maxValue(60))),
  qnhHpa: v.pipe(finite, v.minValue(850), v.maxValue(1090)),
  /** Wind at circuit height, degrees magnetic, where a forecast or an estimate says it; else it follows from the surface wind. */
  above: v.exactOptional(
    v.strictObject({
      windFromDegM: v.pipe(finite, v.minValue(0), v.maxValue(360)),
      windKt: v.pipe(finite, v.minValue(0), v.maxValue(99)),
    }),
  ),
  /** Where a wind that changes during the flight gets to, evenly, over so many seconds; then it stays. */
  driftTo: v.exactOptional(
    v.strictObject({
      windFromDegM: v.pipe(finite, v.minValue(0), v.maxValue(360)),
      windKt: v.pipe(finite, v.minValue(0), v.maxValue(99)),
      overS: v.pipe(finite, v.gtValue(0)),
    }),
  ),
});
export type Weather = v.InferOutput<typeof weatherSchema>;

export const LEG_STARTS = ['line-up', 'upwind', 'crosswind', 'downwind', 'base', 'final'] as const;
export type LegStart = (typeof LEG_STARTS)[number];

/** A solved steady state relative to the air at a point; exactly one of the last four is given. */
export const airStartSchema = v.strictObject({
  east_m: finite,
  north_m: finite,
  height_ft: finite,
  heading_deg: v.pipe(finite, v.minValue(0), v.maxValue(360)),
  ias_kt: v.pipe(finite, v.gtValue(0)),
  flap_deg: v.optional(v.pipe(finite, v.minValue(0)), 0),
  gear: v.optional(v.picklist(['down', 'up']), 'down'),
  bank_deg: v.optional(v.pipe(finite, v.minValue(-60), v.maxValue(60)), 0),
  /** Propeller lever, fully forward when not given. */
  propeller: v.exactOptional(v.pipe(finite, v.minValue(0), v.maxValue(1))),
  flight_path_deg: v.optional(finite),
  vertical_speed_fpm: v.optional(finite),
  rpm: v.optional(v.pipe(finite, v.gtValue(0))),
  throttle: v.optional(v.literal(0)),
});
export type AirStart = v.InferOutput<typeof airStartSchema>;

const startSchema = v.strictObject({
  /** 'line-up', or the steady state to begin in (a leg's start is resolved to one by the circuit plan). */
  at: v.union([v.literal('line-up'), airStartSchema]),
  trimmed: v.boolean(),
  /** The leg this start was asked for as, or null when it was given as a file. */
  leg: v.nullable(v.picklist(LEG_STARTS)),
});
export type Start = v.InferOutput<typeof startSchema>;

/** A model failure at a time; `amount` is the share of power left, for partial power. */
export const failureSchema = v.strictObject({
  atS: v.pipe(finite, v.minValue(0)),
  what: v.picklist([
    'engine-stop',
    'partial-power',
    'flap-stuck',
    'trim-stuck',
    'fuel-pump',
    'airspeed-blocked',
    'radio',
    'brakes',
  ]),
  amount: v.optional(v.pipe(finite, v.minValue(0.3), v.maxValue(0.7)), 0.5),
  /** Not before the wheels have been this high above the ground. */
  aboveFt: v.exactOptional(v.pipe(finite, v.minValue(0))),
});
export type Failure = v.InferOutput<typeof failureSchema>;

export const scenarioSchema = v.strictObject({
  modelVersion: v.pipe(v.number(), v.integer()),
  exercise: v.string(),
  aeroplane: aeroplaneSchema,
  aerodrome: aerodromeSchema,
  /** Designator of the landing end in use. */
  runway: v.string(),
  weather: weatherSchema,
  start: startSchema,
  seed: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(4294967295)),
  assists: v.strictObject({ rudder: v.boolean() }),
  failures: v.array(failureSchema),
  /** Touch-and-goes before the full stop, plus one. */
  circuits: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(50)),
  /** Not given: a plain circuit. */
  task: v.exactOptional(taskSchema),
  /** Not given: nothing is checked, called or looked out for, and nobody else flies. */
  procedures: v.exactOptional(proceduresSchema),
});

/** All that is fixed before the first step, as plain JSON. */
export type Scenario = v.InferOutput<typeof scenarioSchema>;
