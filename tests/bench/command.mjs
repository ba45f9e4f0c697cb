// How long the command line takes to answer, from the shell's point of view.
import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const command = join(root, 'src', 'headless', 'run.mjs');

const seconds = (args) => {
  const begun = performance.now();
  const { status, stderr } = spawnSync(process.execPath, [command, ...args], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  if (status !== 0) throw new Error(`the command must end with 0, ended with ${status}: ${stderr}`);
  return (performance.now() - begun) / 1000;
};

/** Median of five, after one that may have to build. */
const median = (args) => {
  seconds(args);
  return [1, 2, 3, 4, 5].map(() => seconds(args)).sort((a, b) => a - b)[2];
};

const say = (name, args, budget) =>
  console.log(JSON.stringify({ name, figure: median(args), unit: 's', sense: 'at most', budget }));

say('start of the command line (--list)', ['--list'], 2);
say('one circuit flown and told', ['--turbulence', 'moderate', '--wind', '050/10g20'], null);

// A batch by one worker and by two, in turn; on a machine with less than two free cores it says little
const batch = (jobs) =>
  seconds(['--repeat', '300', '--wind', '050/08', '--turbulence', 'light', '--jobs', String(jobs)]);
const gains = [1, 2, 3].map(() => batch(1) / batch(2)).sort((a, b) => a - b);
console.log(
  JSON.stringify({
    name: '300 circuits: time by one worker over time by two',
    figure: gains[1],
    unit: 'times',
    sense: 'at least',
    budget: 1.8,
  }),
);
