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

/** Pages other than the flying one; each waits for a press. */
const PAGES = ['brief', 'debrief', 'exercises', 'logbook', 'own'].map((name) => `src/pages/${name}/page.tsx`);
/**
 * By source file or by the chunk's name. What waits for a press: the other pages, the exercises with their words,
 * the voice, which is off until it is asked for, and the logbook's files out and in, which the logbook's page fetches
 * with itself. What is never asked for: pixi's own lists of all it has, which `skipExtensionImports` passes by; and, where
 * there is WebGL, pixi's renderer on a plain canvas. All
 * else that the flying page can load it loads by itself once the aeroplane is ready (sheets, model pilot, judge,
 * logbook), so that nothing is asked for later; it counts as asked for, and so does whatever is added without being
 * named here.
 */
const LEFT_OUT = [
  ...PAGES,
  'exercise-flight',
  'src/sound/voice.ts',
  'src/storage/exchange.ts',
  'browserAll',
  'webworkerAll',
  'src/views/pen/plain.ts',
];
const DRAWN_VIEWS = 'src/views/stage.ts';

const keyOf = (name) => {
  const key = Object.keys(manifest).find((each) => each === name || manifest[each].name === name);
  if (key === undefined)
    throw new Error(`weight.mjs: the build has no chunk ${name} any more; name what took its place`);
  return key;
};
const leftOut = new Set(LEFT_OUT.map(keyOf));
keyOf(DRAWN_VIEWS);

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
const flying = new Set(first);
for (const key of flying)
  for (const next of manifest[key].dynamicImports ?? []) if (!leftOut.has(next)) withImports(next, flying);
const everything = Object.keys(manifest).filter((key) => manifest[key].file.endsWith('.js'));

say({ name: 'JavaScript before the first paint, gzip', figure: weightKb(first), budget: 90 });
say({ name: 'JavaScript asked for by the flying page, gzip', figure: weightKb(flying), budget: 340 });
/** A page, the shell, and what the page may load by itself, without the drawn views and their library. */
const pageKb = (page) => {
  const asked = withImports(page, new Set(first));
  for (const next of manifest[page].dynamicImports ?? []) if (next !== DRAWN_VIEWS) withImports(next, asked);
  return weightKb(asked);
};
const heaviest = PAGES.map((page) => [pageKb(page), page]).sort(([a], [b]) => b - a)[0];
say({
  name: `JavaScript of another page without pixi, gzip: ${heaviest[1]}`,
  figure: heaviest[0],
  budget: 150,
});
say({
  name: 'JavaScript of every page and sheet together, gzip',
  figure: weightKb(everything),
  budget: null,
});
