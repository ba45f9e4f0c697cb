import * as v from 'valibot';
import { beginStream, nextUniform, STREAM_SLOTS, seedStream } from '../../maths/random.ts';

const finite = v.pipe(v.number(), v.finite());

/** A figure of an exercise: fixed, or to be drawn evenly between two. */
export const bandSchema = v.union([
  finite,
  v.pipe(
    v.tuple([finite, finite]),
    v.check(([low, high]) => low <= high, 'two figures, the lower first'),
  ),
]);
export type Band = v.InferOutput<typeof bandSchema>;

/** Gives each figure of one attempt its value. The name keeps draws apart, so that a new figure moves no other. */
export interface Draw {
  /** Evenly spread over [0, 1). */
  share(name: string): number;
  of(name: string, band: Band): number;
  /** One of the two, as a coin falls. */
  sign(name: string): 1 | -1;
  pick<T>(name: string, choices: readonly T[]): T;
}

const memory = new Float64Array(STREAM_SLOTS.length);

/** The draws of one exercise with one seed: the same seed, the same figures. */
export const drawFor = (seed: number, exercise: string): Draw => {
  const share = (name: string): number => {
    beginStream(memory, 0, seedStream(`${seed}/${exercise}/${name}`));
    return nextUniform(memory, 0);
  };
  return {
    share,
    of: (name, band) => (typeof band === 'number' ? band : band[0] + share(name) * (band[1] - band[0])),
    sign: (name) => (share(name) < 0.5 ? -1 : 1),
    pick: (name, choices) => choices[Math.floor(share(name) * choices.length)] as never,
  };
};
