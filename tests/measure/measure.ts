import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { parseAeroplane } from '../../src/aeroplane/parse.ts';
import type { Aeroplane } from '../../src/aeroplane/schema.ts';
import { parseJson } from '../../src/formats/json-text.ts';
import { MEASURES } from '../support/claims.ts';

/** A file is wrong, or there is none: a sentence, no stack. */
class Wrong extends Error {}

const read = (asked: string, root: string, here: string): Aeroplane => {
  const folder = join(root, 'assets', 'aeroplanes');
  const path = asked.endsWith('.json') ? resolve(here, asked) : join(folder, `${asked}.json`);
  if (!existsSync(path)) {
    const names = readdirSync(folder).map((name) => name.replace('.json', ''));
    throw new Wrong(`aeroplane must be one of ${names.join(', ')} or a .json file, was ${asked}`);
  }
  try {
    return parseAeroplane(parseJson(readFileSync(path, 'utf8'), basename(path)), basename(path));
  } catch (error) {
    throw error instanceof Error && error.constructor === Error ? new Wrong(error.message) : error;
  }
};

const digits = (x: number): string => x.toFixed(Math.abs(x) < 20 ? 2 : Math.abs(x) < 100 ? 1 : 0);

/** One line a claim: its name, what is claimed and within what, what the model does, and whether that keeps it. */
const lines = (aeroplane: Aeroplane): { readonly text: string; readonly kept: boolean }[] =>
  Object.entries(aeroplane.claims).map(([key, { value, low, high }]) => {
    const name = key.padEnd(30);
    const claimed = `${digits(value)} (${digits(low)} to ${digits(high)})`.padEnd(26);
    const measured = MEASURES[key]?.(aeroplane);
    if (measured === undefined) return { text: `${name}${claimed}cannot be measured`, kept: false };
    const kept = measured >= low && measured <= high;
    return { text: `${name}${claimed}${digits(measured).padStart(8)}${kept ? '' : '  not kept'}`, kept };
  });

/** Prints the claims of each aeroplane beside what is measured; the exit code. */
export const measure = (asked: readonly string[], root: string, here: string): number => {
  try {
    if (asked.length === 0) throw new Wrong('measure must be told which aeroplane, was told none');
    const aeroplanes = asked.map((name) => read(name, root, here));
    let kept = true;
    for (const aeroplane of aeroplanes) {
      console.log(`${aeroplane.title}\n${'claim'.padEnd(30)}${'claimed (within)'.padEnd(26)}measured`);
      for (const line of lines(aeroplane)) {
        kept &&= line.kept;
        console.log(line.text);
      }
    }
    return kept ? 0 : 1;
  } catch (error) {
    if (!(error instanceof Wrong)) throw error;
    console.error(error.message);
    return 2;
  }
};
