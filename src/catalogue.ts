import { parseAerodrome } from './aerodrome/parse.ts';
import type { Aerodrome } from './aerodrome/schema.ts';
import { parseAeroplane } from './aeroplane/parse.ts';
import type { Aeroplane } from './aeroplane/schema.ts';
import { type Exercise, parseExercise } from './lesson/exercise.ts';

/** The assets, parsed and checked, the same in browser, tests and command line: a file in its folder is found. */
const aeroplaneFiles = import.meta.glob<unknown>('../assets/aeroplanes/*.json', {
  eager: true,
  import: 'default',
});
const aerodromeFiles = import.meta.glob<unknown>('../assets/aerodromes/*.json', {
  eager: true,
  import: 'default',
});
const exerciseFiles = import.meta.glob<unknown>('../assets/exercises/*.json', {
  eager: true,
  import: 'default',
});

const parsed = <T extends { readonly id: string }>(
  files: Readonly<Record<string, unknown>>,
  parse: (json: unknown, file: string) => T,
): readonly T[] =>
  Object.entries(files).map(([path, json]) => {
    const file = path.slice(path.lastIndexOf('/') + 1);
    const thing = parse(json, file);
    if (`${thing.id}.json` !== file)
      throw new Error(`${file}: id must be "${file.replace('.json', '')}", was "${thing.id}"`);
    return thing;
  });

export const AEROPLANES: readonly Aeroplane[] = parsed(aeroplaneFiles, parseAeroplane);
export const AERODROMES: readonly Aerodrome[] = parsed(aerodromeFiles, parseAerodrome);
export const EXERCISES: readonly Exercise[] = parsed(exerciseFiles, parseExercise);

/** What is flown when nothing else is asked for. */
export const DEMO = {
  exercise: 'normal-circuit',
  aeroplane: 'sandpiper',
  aerodrome: 'curlew-sands',
} as const;

const named = <T extends { readonly id: string }>(things: readonly T[], what: string, id: string): T => {
  const found = things.find((thing) => thing.id === id);
  if (found === undefined) {
    throw new Error(`${what} must be one of ${things.map((thing) => thing.id).join(', ')}, was "${id}"`);
  }
  return found;
};

/** Each throws an Error sentence that lists what there is. */
export const aeroplaneNamed = (id: string): Aeroplane => named(AEROPLANES, 'aeroplane', id);
export const aerodromeNamed = (id: string): Aerodrome => named(AERODROMES, 'aerodrome', id);
export const exerciseNamed = (id: string): Exercise => named(EXERCISES, 'exercise', id);

/** The exercise of a scenario, or null when it is none of these: then everything is looked at. */
export const exerciseOf = ({ exercise }: { readonly exercise: string }): Exercise | null =>
  EXERCISES.find(({ id }) => id === exercise) ?? null;
