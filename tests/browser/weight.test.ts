import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { withBrowser } from './support/fixture.ts';

const { open } = withBrowser();

const DIST = fileURLToPath(new URL('../../dist', import.meta.url));
/** The project's own budget; `npm run bench -- weight` says what is near it and what counts. */
const MOST_KB = 340;

const gzippedKb = (url: string): number =>
  gzipSync(readFileSync(join(DIST, new URL(url).pathname))).length / 1024;

it('the flying page asks for no more JavaScript than its budget, all that it fetches by itself included', async () => {
  const { page, requests, close } = await open();
  // Shell, flight, what draws, and what is fetched last: before that too little is weighed.
  for (const part of ['index', 'flight', 'stage', 'later', 'logbook'])
    await expect
      .poll(() => requests.some((url) => url.includes(`/${part}-`)), { timeout: 30_000 })
      .toBe(true);
  await page.waitForLoadState('networkidle');
  const scripts = [...new Set(requests)].filter((url) => new URL(url).pathname.endsWith('.js'));
  expect(scripts.reduce((sum, url) => sum + gzippedKb(url), 0)).toBeLessThanOrEqual(MOST_KB);
  await close();
});
