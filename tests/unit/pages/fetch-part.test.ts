// Every part that pages fetch later goes the one way that is tried again, under the path its files are listed by.
import { posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { readSources } from '../../support/source.ts';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const IMPORT = /(?<!typeof )\bimport\(\s*'([^']+)'/g;
const FETCHED = /\b(?:get|fetch)Part\(\s*'([^']+)',\s*\(\) => import\('([^']+)'\),?\s*\)/g;

it('the pages import nothing later but by getPart or fetchPart, each under its own path', () => {
  const faults: string[] = [];
  let found = 0;
  for (const { path, uncommented } of readSources(ROOT, 'src/pages')) {
    const imported = [...uncommented.matchAll(IMPORT)].map(([, specifier]) => specifier);
    const fetched = [...uncommented.matchAll(FETCHED)];
    found += fetched.length;
    for (const specifier of imported)
      if (!fetched.some((each) => each[2] === specifier))
        faults.push(`${path}: ${specifier} must be fetched as a part`);
    for (const [, named, specifier] of fetched) {
      const at = posix.join(posix.dirname(path), specifier as string).replace(/^src\//, '');
      if (at !== named) faults.push(`${path}: ${named} must be ${at}`);
    }
  }
  expect(faults).toEqual([]);
  expect(found).toBeGreaterThan(15);
});
