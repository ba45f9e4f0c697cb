import * as v from 'valibot';

/**
 * What an exercise asks of whoever flies, beyond the plain circuit: a way of flying, and what will be said to the
 * pilot on the way. Plain data of the scenario, so that student, model pilot and assessment have it from one place.
 */
export const TECHNIQUES = ['normal', 'glide', 'slip', 'short-field', 'soft-field'] as const;

const finite = v.pipe(v.number(), v.finite());
const circuit = v.optional(v.pipe(v.number(), v.integer(), v.minValue(1)), 1);

/** Something said to the pilot, once, in a circuit counted from 1; the place where it is said depends on what it is. */
const instructionSchema = v.variant('what', [
  /** On the take-off roll, when the airspeed reaches this. */
  v.strictObject({ what: v.literal('stop'), circuit, atIasKt: v.pipe(finite, v.minValue(10)) }),
  /** On final, when the wheels come below this height above the threshold. */
  v.strictObject({ what: v.literal('go-around'), circuit, atHeightFt: v.pipe(finite, v.minValue(10)) }),
  /** On downwind abeam the threshold: fly on so much further than planned before turning base. */
  v.strictObject({ what: v.literal('extend'), circuit, byM: v.pipe(finite, v.minValue(100)) }),
  /** The same, to follow another aeroplane. */
  v.strictObject({ what: v.literal('number-two'), circuit, byM: v.pipe(finite, v.minValue(100)) }),
  /** On downwind, this far along from the landing threshold: one full turn away from the runway. */
  v.strictObject({ what: v.literal('orbit'), circuit, atAlongM: finite }),
]);
export type Instruction = v.InferOutput<typeof instructionSchema>;

export const taskSchema = v.strictObject({
  technique: v.optional(v.picklist(TECHNIQUES), 'normal'),
  instructions: v.optional(v.array(instructionSchema), []),
});
export type Task = v.InferOutput<typeof taskSchema>;

/** A plain circuit: nothing special, nothing said. */
export const PLAIN_TASK: Task = { technique: 'normal', instructions: [] };
