// How long the command line takes to answer, from the shell's point of view.
import { spawn, spawnSync } from 'node:child_process';
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
const FLIGHTS = 300;
const batchArgs = (flights, jobs) =>
  `--repeat ${flights} --wind 050/08 --turbulence light --jobs ${jobs}`.split(' ');
const batch = (jobs) => seconds(batchArgs(FLIGHTS, jobs));

/** Half of the batch by each of two commands that share nothing but the machine: the most that two workers can gain. */
const halvesApart = async () => {
  const begun = performance.now();
  const half = () =>
    new Promise((resolve) =>
      spawn(process.execPath, [command, ...batchArgs(FLIGHTS / 2, 1)], { cwd: root, stdio: 'ignore' }).on(
        'close',
        resolve,
      ),
    );
  const codes = await Promise.all([half(), half()]);
  if (codes.some((code) => code !== 0)) throw new Error(`the command must end with 0, ended with ${codes}`);
  return (performance.now() - begun) / 1000;
};

const byTwo = [];
const apart = [];
for (let round = 0; round < 3; round += 1) {
  const one = batch(1);
  byTwo.push(one / batch(2));
  apart.push(one / (await halvesApart()));
}
const middle = (values) => values.sort((a, b) => a - b)[1];
const sayGain = (name, figure, budget) =>
  console.log(JSON.stringify({ name, figure, unit: 'times', sense: 'at least', budget }));
sayGain(`${FLIGHTS} circuits: time by one worker over time by two`, middle(byTwo), 1.8);
sayGain('the same by two commands that share nothing, half each', middle(apart), null);
