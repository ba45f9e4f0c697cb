import * as v from 'valibot';
import type { Taught } from '../circuit/brief/custom.ts';
import type { PlanOptions } from '../circuit/types.ts';
import { parseJson } from '../formats/json-text.ts';
import { mFromNmi, radFromDeg } from '../units/conversions.ts';
import { setAside } from './own/damaged.ts';

/** A circuit chosen otherwise than the aerodrome's custom, as the brief offers it. */
const circuitSchema = v.object({
  spacingNmi: v.optional(v.pipe(v.number(), v.gtValue(0))),
  approachDeg: v.optional(v.pipe(v.number(), v.minValue(2), v.maxValue(10))),
  descentFrom: v.optional(v.picklist(['abeam', 'base-turn'])),
  finalFromAimNmi: v.optional(v.pipe(v.number(), v.gtValue(0))),
});
export type CircuitChoice = v.InferOutput<typeof circuitSchema>;

const limitSchema = v.object({
  below: v.pipe(v.number(), v.finite(), v.minValue(0)),
  above: v.pipe(v.number(), v.finite(), v.minValue(0)),
});

/** What the user has chosen, kept from visit to visit. Words and cockpit units, as the panel shows them. */
export const settingsSchema = v.object({
  theme: v.fallback(v.picklist(['system', 'day', 'night']), 'system'),
  seenStart: v.fallback(v.boolean(), false),
  /** Who flies here, asked at the first start; empty: nobody said. */
  who: v.fallback(v.picklist(['', 'first-lessons', 'before-solo', 'rusty', 'teaching']), ''),
  aeroplane: v.fallback(v.string(), ''),
  aerodrome: v.fallback(v.string(), ''),
  /** Empty: by the wind. */
  runway: v.fallback(v.string(), ''),
  wind: v.fallback(v.string(), '240/08'),
  /** At circuit height; empty: worked out from the surface wind. */
  windAbove: v.fallback(v.string(), ''),
  turbulence: v.fallback(v.picklist(['none', 'light', 'moderate']), 'none'),
  temperature: v.fallback(v.string(), ''),
  qnh: v.fallback(v.string(), ''),
  /** Empty: dry air. */
  dewPoint: v.fallback(v.string(), ''),
  circuit: v.fallback(v.nullable(circuitSchema), null),
  /** How the school teaches the way down; empty: as the aerodrome has it. */
  descentTaught: v.fallback(v.picklist(['', 'abeam', 'base-turn']), ''),
  finalDoneTaught: v.fallback(v.picklist(['', '300', '500']), ''),
  start: v.fallback(v.picklist(['line-up', 'upwind', 'crosswind', 'downwind', 'base', 'final']), 'line-up'),
  seed: v.fallback(v.string(), '1'),
  /** Id of the exercise that is flown; empty: the circuit of the set-up. */
  exercise: v.fallback(v.string(), ''),
  /** What its weather, start and instructions are drawn from. */
  exerciseSeed: v.fallback(v.number(), 1),
  /** In the day of the set-up instead of its own, where the exercise allows it. */
  inMyWeather: v.fallback(v.boolean(), false),
  rudderAssist: v.fallback(v.boolean(), true),
  handStyle: v.fallback(v.picklist(['hold', 'stick']), 'hold'),
  arrowsAsStick: v.fallback(v.boolean(), true),
  picture: v.fallback(v.picklist(['whiteboard', 'cockpit-with-plan', 'cockpit']), 'whiteboard'),
  /** The large view of the whiteboard. */
  lead: v.fallback(v.picklist(['plan', 'window']), 'plan'),
  planMode: v.fallback(v.picklist(['runway-up', 'north-up', 'track-up']), 'runway-up'),
  announce: v.fallback(v.boolean(), true),
  /** Who answers the calls; `none`: no checks, calls or lookout. */
  radio: v.fallback(v.picklist(['none', 'untowered', 'towered']), 'untowered'),
  callWords: v.fallback(v.picklist(['icao', 'faa']), 'icao'),
  others: v.fallback(v.picklist([0, 1, 2]), 0),
  surprises: v.fallback(v.boolean(), false),
  coach: v.fallback(v.picklist(['talked-through', 'reminded', 'silent']), 'reminded'),
  voice: v.fallback(v.boolean(), false),
  /** The set that flights are judged by, and in each set the limits that were changed. */
  tolerances: v.fallback(v.string(), 'licence-test-faa'),
  ownLimits: v.fallback(v.record(v.string(), v.record(v.string(), limitSchema)), {}),
  /** Keys that stand otherwise than the table has them, by action. */
  keys: v.fallback(v.record(v.string(), v.array(v.string())), {}),
  /** Stick and levers on the screen, for fingers. */
  touch: v.fallback(v.picklist(['by-screen', 'always', 'never']), 'by-screen'),
});
export type Settings = v.InferOutput<typeof settingsSchema>;

/** What the school teaches, for the plan. */
export const taughtOf = ({
  descentTaught,
  finalDoneTaught,
}: Pick<Settings, 'descentTaught' | 'finalDoneTaught'>): Taught => ({
  ...(descentTaught !== '' && { descentFrom: descentTaught }),
  ...(finalDoneTaught !== '' && { finalTurnDoneFt: Number(finalDoneTaught) }),
});

/** What the circuit plan makes of the choice. */
export const circuitOptions = (choice: CircuitChoice | null): PlanOptions => ({
  ...(choice?.spacingNmi !== undefined && { spacingM: mFromNmi(choice.spacingNmi) }),
  ...(choice?.approachDeg !== undefined && { approachRad: radFromDeg(choice.approachDeg) }),
  ...(choice?.descentFrom !== undefined && { descentFrom: choice.descentFrom }),
  ...(choice?.finalFromAimNmi !== undefined && { finalFromAimM: mFromNmi(choice.finalFromAimNmi) }),
});

const PLACE = 'lapwing/settings';

/** What is kept, by whichever tab; a text that cannot be read is set aside. */
const kept = (): Readonly<Record<string, unknown>> => {
  const text = localStorage.getItem(PLACE) ?? '{}';
  try {
    const read = parseJson(text, 'settings');
    if (typeof read === 'object' && read !== null && !Array.isArray(read))
      return read as Readonly<Record<string, unknown>>;
    throw new Error('settings must be an object, were not');
  } catch (error) {
    if (!setAside(PLACE, text, (error as Error).message)) throw error;
    return {};
  }
};

/** Settings as they were left; the standard ones where nothing is kept, storage is refused or does not parse. */
export const readSettings = (): Settings => {
  try {
    return v.parse(settingsSchema, kept());
  } catch {
    return v.parse(settingsSchema, {});
  }
};

/**
 * Keeps what was changed, and leaves the rest as it lies, perhaps by another tab; false where the browser refuses, and
 * the visit goes on without.
 */
export const writeSettings = (changes: Partial<Settings>): boolean => {
  try {
    localStorage.setItem(PLACE, JSON.stringify({ ...kept(), ...changes }));
    return true;
  } catch {
    return false;
  }
};
