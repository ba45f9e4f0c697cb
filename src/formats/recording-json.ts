import * as v from 'valibot';
import {
  type ChangeList,
  emptyChangeList,
  KEYFRAME_STEPS,
  type Keyframe,
  pushChange,
  RECORDING_VERSION,
  type Recording,
} from '../session/recording.ts';
import { CONTROLS, type ControlRange, neutralControls } from '../simulation/controls.ts';
import { type PilotEvent, pilotEventSchema } from '../simulation/pilot-event.ts';
import { STEP_HZ } from '../simulation/scenario.ts';
import { newState, STATE_SLOTS } from '../simulation/state.ts';
import { describeIssue } from '../units/issues.ts';
import { base64FromDoubles, doublesFromBase64 } from './base64.ts';
import { jsonFromPlain, plainFromJson } from './plain-json.ts';
import { parseScenario } from './scenario-json.ts';
import { seriesFromText, seriesText } from './series-text.ts';

/**
 * A recording as JSON text. Changes are written as series (steps, and ten-thousandths of travel); states carry the exact bits of their doubles, under the names of their slots.
 */
export const recordingText = (recording: Recording): string => JSON.stringify(recordingJson(recording));

/** The same as a value, to stand inside another file. */
export const recordingJson = (recording: Recording) => ({
  format: 'lapwing-recording',
  version: recording.version,
  model_version: recording.modelVersion,
  scenario: recording.scenario,
  steps: recording.steps,
  slots: STATE_SLOTS.map((slot) => slot.name),
  controls: Object.fromEntries(
    CONTROLS.map((control, i) => [control.column, changesJson(recording.changes[i] as ChangeList)]),
  ),
  keyframes: recording.keyframes.map((k, i) => keyframeJson(k, staysWhole(recording, i))),
  events: recording.events,
});

const keyframeJson = (k: Keyframe, whole: boolean) => ({
  step: k.step,
  whole,
  state: base64FromDoubles(k.state),
  controls: CONTROLS.map((c) => Math.round(k.controls[c.name] * 10000)),
  source: k.sourceName,
  memory: whole ? jsonFromPlain(k.sourceMemory) : null,
  folds: whole ? k.foldMemories.map(jsonFromPlain) : [],
});

/** Memories are written every three minutes, at the end, and where somebody else took the controls. */
const staysWhole = ({ keyframes }: Recording, index: number): boolean => {
  const k = keyframes[index] as Keyframe;
  const regular = k.step % KEYFRAME_STEPS === 0;
  return k.whole && (!regular || k.step % (18 * KEYFRAME_STEPS) === 0 || index === keyframes.length - 1);
};

const changesJson = (list: ChangeList): { steps: string; values: string } => ({
  steps: seriesText(list.steps, list.count),
  values: seriesText(list.values, list.count),
});

/** A day of flight: longer ones are no flights. */
const MOST_STEPS = 24 * 3600 * STEP_HZ;

const whole = v.pipe(v.number(), v.integer());
const count = v.pipe(whole, v.minValue(0));
const changesSchema = v.strictObject({ steps: v.string(), values: v.string() });
const recordingSchema = v.object({
  format: v.literal('lapwing-recording'),
  version: v.literal(RECORDING_VERSION),
  model_version: whole,
  scenario: v.unknown(),
  steps: v.pipe(count, v.maxValue(MOST_STEPS)),
  slots: v.optional(v.array(v.string())),
  controls: v.strictObject(
    Object.fromEntries(CONTROLS.map((c) => [c.column, changesSchema])) as Record<
      string,
      typeof changesSchema
    >,
  ),
  keyframes: v.pipe(
    v.array(
      v.strictObject({
        step: count,
        whole: v.boolean(),
        state: v.string(),
        controls: v.pipe(v.array(whole), v.length(CONTROLS.length)),
        source: v.string(),
        memory: v.optional(v.unknown()),
        folds: v.array(v.unknown()),
      }),
    ),
    v.minLength(1),
  ),
  /** Files of before there were any have none. */
  events: v.optional(v.array(pilotEventSchema), []),
});

const listFrom = (
  json: { readonly steps: string; readonly values: string },
  range: ControlRange,
  place: string,
): ChangeList => {
  const steps = seriesFromText(json.steps, `${place}.steps`);
  const values = seriesFromText(json.values, `${place}.values`);
  if (steps.length !== values.length) {
    throw new Error(`${place} must have as many values as steps, ${steps.length}, found ${values.length}`);
  }
  const list = emptyChangeList(Math.max(64, steps.length));
  let before = -1;
  steps.forEach((step, i) => {
    const value = values[i] as number;
    if (value < range.low * 10000 || value > range.high * 10000) {
      throw new Error(
        `${place}.values[${i}] must stay from ${range.low} to ${range.high}, was ${value / 10000}`,
      );
    }
    if (step <= before || step > MOST_STEPS) {
      throw new Error(`${place}.steps[${i}] must be above ${before} and at most ${MOST_STEPS}, was ${step}`);
    }
    pushChange(list, step, value);
    before = step;
  });
  return list;
};

/**
 * A state written by another version, put where this one keeps each number; what it did not know is 0, what we
 * do not know is left out. Throws an Error sentence at a number outside its range.
 */
const inOurSlots = (
  written: Float64Array,
  names: readonly string[] | undefined,
  place: string,
): Float64Array => {
  const slots = names ?? STATE_SLOTS.map((slot) => slot.name);
  if (written.length !== slots.length)
    throw new Error(`${place} must hold ${slots.length} numbers, found ${written.length}`);
  const state = newState();
  STATE_SLOTS.forEach((slot, i) => {
    const at = slots[i] === slot.name ? i : slots.indexOf(slot.name);
    if (at < 0) return;
    const value = written[at] as number;
    if (!(value >= slot.low && value <= slot.high)) {
      throw new Error(`${place}: ${slot.name} must be from ${slot.low} to ${slot.high}, was ${value}`);
    }
    state[i] = value;
  });
  return state;
};

const inOrder = (events: readonly PilotEvent[], file: string): PilotEvent[] => {
  let before = 0;
  events.forEach(({ step }, i) => {
    if (step < before) throw new Error(`${file}: events[${i}].step must be at least ${before}, was ${step}`);
    before = step;
  });
  return [...events];
};

/** Reads what `recordingText` wrote. Throws an Error sentence with place, expected and found. */
export const parseRecording = (json: unknown, file: string): Recording => {
  const result = v.safeParse(recordingSchema, json, { abortEarly: true });
  if (!result.success) throw new Error(describeIssue(file, result.issues[0]));
  const r = result.output;
  if (r.keyframes[0]?.step !== 0 || !r.keyframes[0].whole)
    throw new Error(`${file}: keyframes[0] must be whole and at step 0, was at step ${r.keyframes[0]?.step}`);
  return {
    version: r.version,
    modelVersion: r.model_version,
    scenario: parseScenario(r.scenario, `${file}: scenario`),
    steps: r.steps,
    changes: CONTROLS.map((c) =>
      listFrom(r.controls[c.column] as { steps: string; values: string }, c, `${file}: controls.${c.column}`),
    ),
    keyframes: r.keyframes.map((k, i) => {
      const place = `${file}: keyframes[${i}]`;
      const before = r.keyframes[i - 1]?.step ?? -1;
      if (k.step <= before || k.step > r.steps) {
        throw new Error(`${place}.step must be above ${before} and at most ${r.steps}, was ${k.step}`);
      }
      const state = inOurSlots(doublesFromBase64(k.state, `${place}.state`), r.slots, `${place}.state`);
      const controls = neutralControls();
      CONTROLS.forEach((c, at) => {
        controls[c.name] = (k.controls[at] as number) / 10000;
      });
      return {
        step: k.step,
        whole: k.whole,
        state,
        controls,
        sourceName: k.source,
        sourceMemory: plainFromJson(k.memory, `${place}.memory`),
        foldMemories: k.folds.map((fold, at) => plainFromJson(fold, `${place}.folds[${at}]`)),
      };
    }),
    events: inOrder(r.events, file),
  };
};
