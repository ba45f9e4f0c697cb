// Several workers at once: the same bytes as one, on stdout and in every file, and no less said when it goes wrong.
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, it } from 'vitest';

const home = mkdtempSync(join(tmpdir(), 'lapwing-jobs-'));
afterAll(() => rmSync(home, { recursive: true, force: true }));

const program = fileURLToPath(new URL('../../../src/headless/run.mjs', import.meta.url));

/** Runs the command in a folder of its own: how it ended, what it said, and every file that it left. */
const flown = (name: string, ...args: string[]) => {
  const folder = join(home, name);
  mkdirSync(folder);
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
    encoding: 'utf8',
    cwd: folder,
  });
  const files = readdirSync(folder)
    .sort()
    .map((file) => [file, readFileSync(join(folder, file), 'utf8')]);
  return { status, stdout, stderr, files };
};

const BATCH = '--start final --wind 060/12g20 --turbulence light --seed 4 --repeat 7'.split(' ');

it('gives the same bytes by one worker, by two and by more than there are flights', () => {
  const one = flown('one', ...BATCH, '--jobs', '1', '--track', 't.csv', '--gpx', 't.gpx');
  const two = flown('two', ...BATCH, '--jobs', '2', '--track', 't.csv', '--gpx', 't.gpx');
  expect(one.stderr).toBe('');
  expect(one.files.map(([file]) => file)).toHaveLength(14);
  expect(
    (JSON.parse(one.stdout) as { flights: { scenario: { seed: number } }[] }).flights.map(
      ({ scenario }) => scenario.seed,
    ),
  ).toEqual([4, 5, 6, 7, 8, 9, 10]);
  expect(two).toEqual(one);
  const short = '--start final --repeat 2 --result r.json'.split(' ');
  expect(flown('many', ...short, '--jobs', '64')).toEqual(flown('few', ...short, '--jobs', '1'));
}, 60_000);

it('refuses in the same sentence, before a worker begins', () => {
  const bad = flown('bad', ...BATCH, '--jobs', '2', '--wind', '370/10');
  expect([bad.status, bad.stdout, bad.files]).toEqual([2, '', []]);
  expect(bad.stderr).toMatch(/^--wind /);
  const none = flown('none', '--repeat', '3', '--jobs', 'two');
  expect([none.status, none.stdout]).toEqual([2, '']);
  expect(none.stderr).toBe('--jobs must be a whole number from 1 to 64, was two\n');
});
