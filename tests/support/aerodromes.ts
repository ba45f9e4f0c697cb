import { readdirSync, readFileSync } from 'node:fs';
import { parseAerodrome } from '../../src/aerodrome/parse.ts';
import type { Aerodrome } from '../../src/aerodrome/schema.ts';

const FOLDER = new URL('../../assets/aerodromes/', import.meta.url);

export const aerodromeFiles = (): string[] => readdirSync(FOLDER).filter((name) => name.endsWith('.json'));

/** The raw file, fresh at every call, for tests that spoil it. */
export const aerodromeJson = (id: string): Record<string, unknown> =>
  JSON.parse(readFileSync(new URL(`${id}.json`, FOLDER), 'utf8'));

export const aerodromeNamed = (id: string): Aerodrome => parseAerodrome(aerodromeJson(id), `${id}.json`);
