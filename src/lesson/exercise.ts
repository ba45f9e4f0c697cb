import * as v from 'valibot';
import { describeIssue } from '../units/issues.ts';

const text = v.pipe(v.string(), v.minLength(1));

/** The file of one exercise: what is to be flown, and why. */
export const exerciseSchema = v.strictObject({
  id: text,
  title: text,
  aim: text,
  /** Touch-and-goes before the full stop, plus one. */
  circuits: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(50)),
  sources: v.record(v.string(), text),
});

export type Exercise = v.InferOutput<typeof exerciseSchema>;

/** Throws an Error whose message is one sentence with place, expected and found. */
export const parseExercise = (json: unknown, file: string): Exercise => {
  const result = v.safeParse(exerciseSchema, json, { abortEarly: true });
  if (!result.success) throw new Error(describeIssue(file, result.issues[0]));
  return result.output;
};
