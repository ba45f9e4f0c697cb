// What the page saves, the command line flies again: one attempt written out, a whole logbook packed.
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { play } from '../../../src/headless/play.ts';
import { bodyOf, headNamed } from '../../support/attempts.ts';
import { openTestLogbook } from '../../support/logbook.ts';

const folder = mkdtempSync(join(tmpdir(), 'lapwing-play-'));
const { logbook } = await openTestLogbook();
await logbook.keep(headNamed('one'), bodyOf(11));
await logbook.keep(headNamed('two', { when: '2026-01-01T00:00:00.000Z' }), bodyOf(7));
afterAll(() => logbook.close());

const save = async (ids: string[] | 'all', change = (text: string) => text) => {
  writeFileSync(join(folder, 'x.json'), change(await (await logbook.exportJson(ids)).blob.text()));
};

it('flies one saved attempt again to the bit', async () => {
  await save(['one']);
  expect(play('x.json', folder)).toBe('no difference in 660 steps\n');
});

it('flies every attempt of a saved logbook', async () => {
  await save('all');
  expect(play('x.json', folder)).toBe('one: no difference in 660 steps\ntwo: no difference in 420 steps\n');
});

it('says in one sentence what is wrong with a file', async () => {
  await save('all', (text) => text.replace(/"packed":"[^"]{400}/, '"packed":"'));
  expect(() => play('x.json', folder)).toThrow(
    /^x\.json: attempts\[0\]\.packed must be a whole gzipped text/,
  );
});
