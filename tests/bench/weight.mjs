// How much JavaScript the page asks for, gzipped: before the first paint, and in all while flying.
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

/** Modules that the flying page asks for by itself once it has been painted; sheets and other pages wait for a click. */
const ASKED_WHILE_FLYING = ['src/pages/fly/flight.ts', 'src/views/stage.ts'];

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
const missing = ASKED_WHILE_FLYING.filter((key) => manifest[key] === undefined);
if (missing.length > 0) throw new Error(`the page no longer asks for ${missing.join(', ')} by itself`);
const flying = new Set(first);
for (const key of ASKED_WHILE_FLYING) withImports(key, flying);
const everything = Object.keys(manifest).filter((key) => manifest[key].file.endsWith('.js'));

say({ name: 'JavaScript before the first paint, gzip', figure: weightKb(first), budget: 120 });
say({ name: 'JavaScript asked for by the flying page, gzip', figure: weightKb(flying), budget: 260 });
say({
  name: 'JavaScript of every page and sheet together, gzip',
  figure: weightKb(everything),
  budget: null,
});
