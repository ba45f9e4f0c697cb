// npm run bench [-- step flight batch ...] [--flights 200] [--minutes 1]: figures beside their budgets.
// It measures and never fails a build on a time: it ends with 1 only when a bench cannot be run at all.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { buildBenches } from './build.mjs';
import { HEADINGS, line, rowText } from './table.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** In the order of the table. TypeScript is bundled first; the rest runs as it stands. */
const BENCHES = [
  { name: 'step', title: 'The core', built: true },
  { name: 'flight', title: 'Flights without a screen', built: true },
  { name: 'batch', title: 'Many flights', built: true },
  { name: 'debrief', title: 'Debrief and logbook', built: true },
  { name: 'study', title: 'Many futures', built: true },
  { name: 'command', title: 'The command line', built: false },
  { name: 'weight', title: 'The page as it is loaded', built: false },
  { name: 'page', title: 'The page in a browser', built: false },
];

const args = process.argv.slice(2);
const asked = args.filter((word, i) => !word.startsWith('--') && !args[i - 1]?.startsWith('--'));
const unknown = asked.find((name) => BENCHES.every((bench) => bench.name !== name));
if (unknown !== undefined) {
  console.error(`bench must be one of ${BENCHES.map((bench) => bench.name).join(', ')}, was ${unknown}`);
  process.exit(2);
}
const chosen = BENCHES.filter(
  (bench) =>
    (asked.length === 0 || asked.includes(bench.name)) &&
    existsSync(join(root, 'tests', 'bench', `${bench.name}.${bench.built ? 'ts' : 'mjs'}`)),
);

/** Runs one bench in a process of its own, so that none warms or litters the next; prints its rows as they come. */
const run = (file) =>
  new Promise((resolve) => {
    const child = spawn(process.execPath, ['--expose-gc', file, ...args], {
      cwd: root,
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    createInterface({ input: child.stdout }).on('line', (text) => {
      if (text.startsWith('{')) console.log(rowText(JSON.parse(text)));
      else console.log(text);
    });
    child.on('close', resolve);
  });

const built = chosen.filter((bench) => bench.built).map((bench) => bench.name);
const folder = built.length === 0 ? '' : await buildBenches(root, built);
console.log(line(HEADINGS));
for (const { name, title, built: isBuilt } of chosen) {
  console.log(`\n${title}`);
  const code = await run(isBuilt ? join(folder, `${name}.js`) : join(root, 'tests', 'bench', `${name}.mjs`));
  if (code !== 0) {
    console.log(`${name}: could not be measured`);
    process.exitCode = 1;
  }
}
console.log('\nA ratio of 1 and more keeps the budget; "!" marks one that does not.');
