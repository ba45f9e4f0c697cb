import { parseAerodrome } from './aerodrome/parse.ts';
import type { Aerodrome } from './aerodrome/schema.ts';
import { parseAeroplane } from './aeroplane/parse.ts';
import type { Aeroplane } from './aeroplane/schema.ts';
import { namedAmong, parsedFiles } from './units/files.ts';

export { EXERCISES, exerciseNamed, exerciseOf } from './exercises.ts';

/** The assets, parsed and checked, the same in browser, tests and command line: a file in its folder is found. */
const aeroplaneFiles = import.meta.glob<unknown>('../assets/aeroplanes/*.json', {
  eager: true,
  import: 'default',
});
const aerodromeFiles = import.meta.glob<unknown>('../assets/aerodromes/*.json', {
  eager: true,
  import: 'default',
});

export const AEROPLANES: readonly Aeroplane[] = parsedFiles(aeroplaneFiles, parseAeroplane);
export const AERODROMES: readonly Aerodrome[] = parsedFiles(aerodromeFiles, parseAerodrome);

/** What is flown when nothing else is asked for. */
export const DEMO = {
  exercise: 'normal-circuit',
  aeroplane: 'sandpiper',
  aerodrome: 'curlew-sands',
} as const;

/** Each throws an Error sentence that lists what there is. */
export const aeroplaneNamed = (id: string): Aeroplane => namedAmong(AEROPLANES, 'aeroplane', id);
export const aerodromeNamed = (id: string): Aerodrome => namedAmong(AERODROMES, 'aerodrome', id);
