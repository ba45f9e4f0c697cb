// The built page in a deep folder of a server that sends files and nothing else: no policy, no cache, no redirect.
import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import { extname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { WITHOUT_WEBGL } from './support/cockpit.ts';
import { launchBrowser } from './support/launch.ts';
import { openSite } from './support/site.ts';
import { visit } from './support/visit.ts';

const DIST = fileURLToPath(new URL('../../dist', import.meta.url));
const FOLDER = '/some/deep/folder/';
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
};

const fileAt = async (path: string): Promise<{ readonly body: Buffer; readonly type: string } | null> => {
  if (!path.startsWith(FOLDER)) return null;
  const name = normalize(`/${path.slice(FOLDER.length) || 'index.html'}`);
  const body = await readFile(join(DIST, name)).catch(() => null);
  return body && { body, type: TYPES[extname(name)] ?? 'application/octet-stream' };
};

let server: Server;
let browser: Browser;
let port = 0;
beforeAll(async () => {
  // Builds the page where a source is newer.
  await (await openSite()).close();
  server = createServer(async ({ url = '/' }, answer) => {
    const file = await fileAt(new URL(url, 'http://x').pathname);
    answer.writeHead(file ? 200 : 404, { 'content-type': file?.type ?? 'text/plain' });
    answer.end(file?.body ?? 'not here');
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const address = server.address();
  port = typeof address === 'object' && address !== null ? address.port : 0;
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser.close();
  server.close();
});

const turnTo = (page: Page, hash: string) => page.evaluate((to) => location.assign(to), `#${hash}`);
const stand = (page: Page) =>
  page.waitForFunction(() => document.querySelectorAll('button:disabled').length < 6);

describe('in any folder of any server', () => {
  it('opens with all its parts, typeface and worker', async () => {
    const at = `http://127.0.0.1:${port}${FOLDER}`;
    const { page, complaints, requests, close } = await visit(browser, at);
    await stand(page);
    expect(await page.evaluate(() => document.fonts.check('15px "Lapwing Sans"'))).toBe(true);
    for (const [hash, heading] of [
      ['brief', /runway/],
      ['own', 'My runway, my numbers'],
      ['exercises', 'Exercises'],
      ['debrief', 'Debrief'],
      ['logbook', 'Logbook'],
    ] as const) {
      await turnTo(page, hash);
      await page.getByRole('heading', { name: heading }).first().waitFor();
    }
    await expect.poll(() => page.workers().length).toBeGreaterThan(0);
    expect(requests.filter((url) => !url.startsWith(at) && !url.startsWith('blob:'))).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  });

  it('holds its policy by itself: no script, style or request of another’s', async () => {
    const { page, complaints, close } = await visit(browser, `http://127.0.0.1:${port}${FOLDER}index.html`);
    await stand(page);
    expect(complaints).toEqual([]);
    const outcome = await page.evaluate(async () => {
      const script = document.createElement('script');
      script.textContent = 'window.cameIn = true';
      document.head.append(script);
      const style = document.createElement('style');
      style.textContent = 'body { color: red }';
      document.head.append(style);
      const refused = await fetch('https://elsewhere.example/').then(
        () => false,
        () => true,
      );
      return { refused, cameIn: 'cameIn' in window };
    });
    expect(outcome.cameIn).toBe(false);
    expect(outcome.refused).toBe(true);
    const broken = () =>
      complaints.flatMap((words) => /^console: policy: (\S+)/.exec(words)?.[1] ?? []).sort();
    await expect.poll(broken).toEqual(['connect-src', 'script-src-elem', 'style-src-elem']);
    await close();
  });

  it('flies where the page is not served securely, and the browser keeps some of its interfaces back', async () => {
    const { page, context, complaints, close } = await visit(browser, 'about:blank', {
      before: `${WITHOUT_WEBGL}; delete Navigator.prototype.getGamepads;`,
    });
    await context.route('http://lapwing.example/**', async (route) => {
      const file = await fileAt(new URL(route.request().url()).pathname);
      await route.fulfill(file ? { body: file.body, contentType: file.type } : { status: 404 });
    });
    await page.goto(`http://lapwing.example${FOLDER}`);
    expect(await page.evaluate(() => isSecureContext)).toBe(false);
    await stand(page);
    await page.getByRole('button', { name: 'fly from final' }).click();
    await page.waitForFunction(() => (document.querySelector('.clock')?.textContent ?? '') >= '00:02');
    expect(complaints).toEqual([]);
    await close();
  });
});
