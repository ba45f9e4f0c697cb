// How much JavaScript the page asks for, gzipped: before the first paint, and in all once the aeroplane is ready.
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const dist = join(root, '.cache', 'bench-page');
execFileSync(
  process.execPath,
  [join(root, 'node_modules/vite/bin/vite.js'), 'build', '--outDir', dist, '--emptyOutDir', '--manifest'],
  { cwd: root, stdio: ['ignore', 'ignore', 'inherit'], env: { ...process.env, NODE_ENV: 'production' } },
);

/** Source file -> its chunk, the chunks it imports at once and those it may ask for later. */
const manifest = JSON.parse(readFileSync(join(dist, '.vite', 'manifest.json'), 'utf8'));

/**
 * What waits for a press: the other pages, the exercises with their words, the voice, which is off until it is asked for, and the logbook's files out
 * and in, which the logbook's page fetches with itself. All else that the
 * flying page can load it loads by itself once the aeroplane is ready (sheets, model pilot, judge, logbook), so that
 * nothing is asked for later; it counts as asked for, and so does whatever is added without being named here.
 */
const WAITS_FOR_A_PRESS = [
  'src/pages/exercise-flight.ts',
  'src/pages/brief/page.tsx',
  'src/pages/debrief/page.tsx',
  'src/pages/exercises/page.tsx',
  'src/pages/logbook/page.tsx',
  'src/pages/own/page.tsx',
  'src/sound/voice.ts',
  'src/storage/exchange.ts',
];

/** The chunk, and everything it imports at once. */
const withImports = (key, found = new Set()) => {
  if (found.has(key)) return found;
  found.add(key);
  for (const next of manifest[key].imports ?? []) withImports(next, found);
  return found;
};

const weightKb = (keys) => {
  const files = new Set([...keys].map((key) => manifest[key].file).filter((file) => file.endsWith('.js')));
  return [...files].reduce((sum, file) => sum + gzipSync(readFileSync(join(dist, file))).length, 0) / 1024;
};

const say = (row) => console.log(JSON.stringify({ unit: 'KB', sense: 'at most', ...row }));

const first = withImports('index.html');
const missing = WAITS_FOR_A_PRESS.filter((key) => manifest[key] === undefined);
if (missing.length > 0) throw new Error(`the page no longer loads ${missing.join(', ')} on a press`);
const flying = new Set(first);
for (const key of flying)
  for (const next of manifest[key].dynamicImports ?? [])
    if (!WAITS_FOR_A_PRESS.includes(next)) withImports(next, flying);
const everything = Object.keys(manifest).filter((key) => manifest[key].file.endsWith('.js'));

say({ name: 'JavaScript before the first paint, gzip', figure: weightKb(first), budget: 120 });
say({ name: 'JavaScript asked for by the flying page, gzip', figure: weightKb(flying), budget: 260 });
say({
  name: 'JavaScript of every page and sheet together, gzip',
  figure: weightKb(everything),
  budget: null,
});
