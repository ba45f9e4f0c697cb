import { readdirSync, readFileSync } from 'node:fs';
import { parseAeroplane } from '../../src/aeroplane/parse.ts';
import type { Aeroplane } from '../../src/aeroplane/schema.ts';

const FOLDER = new URL('../../assets/aeroplanes/', import.meta.url);

export const aeroplaneFiles = (): string[] => readdirSync(FOLDER).filter((name) => name.endsWith('.json'));

/** The raw file, fresh at every call, for tests that spoil it. */
export const aeroplaneJson = (id: string): Record<string, unknown> =>
  JSON.parse(readFileSync(new URL(`${id}.json`, FOLDER), 'utf8'));

export const aeroplaneNamed = (id: string): Aeroplane => parseAeroplane(aeroplaneJson(id), `${id}.json`);

export const everyAeroplane = (): Aeroplane[] =>
  aeroplaneFiles().map((name) => aeroplaneNamed(name.replace('.json', '')));

/** What may be changed of an aeroplane: any part of any group, lists whole. */
export type Changes = {
  readonly [K in keyof Aeroplane]?: Aeroplane[K] extends readonly unknown[] | string
    ? Aeroplane[K]
    : Partial<Aeroplane[K]>;
};

/** A variant of an aeroplane, group by group; it goes through the parser, so it is one that could be flown. */
export const variantOf = (aeroplane: Aeroplane, changes: Changes): Aeroplane => {
  const json: Record<string, unknown> = { ...aeroplane };
  for (const [group, change] of Object.entries(changes))
    json[group] =
      typeof change === 'object' && change !== null
        ? { ...(json[group] as object), ...(change as object) }
        : change;
  return parseAeroplane(json, 'variant.json');
};

/**
 * The made-up aeroplane M of the closed forms: m 1000 kg, S 16 m2, A 7.5 (b 10.9545 m), e .75, CD0 .034.
 * All else is the Sandpiper's.
 */
export const aeroplaneM = (): Aeroplane =>
  variantOf(aeroplaneNamed('sandpiper'), {
    massKg: { empty: 700, flown: 1000, maximum: 1000 },
    wing: { areaM2: 16, spanM: Math.sqrt(7.5 * 16), oswald: 0.75 },
    drag: { parasite: 0.034 },
  });
