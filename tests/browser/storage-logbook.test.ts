// The logbook on the storage of a real Chromium: tabs that close, tabs side by side, no room, no storage.
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { play } from '../../src/headless/play.ts';
import type {} from './pages/storage/main.ts';
import { openTestPage } from './support/desk.ts';
import { launchBrowser } from './support/launch.ts';
import type { Site } from './support/site.ts';

let site: Site;
let browser: Browser;
let context: BrowserContext;
const complaints: string[] = [];
beforeAll(async () => {
  [site, browser] = await Promise.all([openTestPage('storage'), launchBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await site.close();
});
afterEach(async () => {
  await context.close();
  expect(complaints.splice(0)).toEqual([]);
});

const begin = async (before?: string) => {
  context = await browser.newContext({ locale: 'en-GB' });
  if (before) await context.addInitScript(before);
};
const tab = async (versions = 0, before = async (_: Page) => {}): Promise<Page> => {
  const page = await context.newPage();
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  await page.goto(site.url);
  await before(page);
  await page.waitForFunction(() => window.desk !== undefined);
  await page.evaluate((n) => window.desk.openBook(n), versions);
  return page;
};
const told = (page: Page) => page.evaluate(() => window.desk.told);
const ids = (page: Page) => page.evaluate(() => window.desk.ids());

it('keeps attempts over a reload; what is saved flies again here, and on the command line', async () => {
  await begin();
  const page = await tab();
  const row = await page.evaluate(() => window.desk.keep('one', 30));
  expect(row).toMatchObject({ pilot: 'Wren', wind: '250/12g20', flightS: 30 });
  await page.close();
  const again = await tab();
  expect(await ids(again)).toEqual(['one']);
  expect(await again.evaluate(() => window.desk.flownAgain('one'))).toBeNull();
  const text = await again.evaluate(() => window.desk.exported(['one']));
  const folder = mkdtempSync(join(tmpdir(), 'lapwing-'));
  writeFileSync(join(folder, 'one.json'), text);
  expect(play('one.json', folder)).toBe('no difference in 1800 steps\n');
});

it('takes a saved logbook in elsewhere, all or nothing', async () => {
  await begin();
  const page = await tab();
  await page.evaluate(async () => {
    await window.desk.keep('one', 12);
    await window.desk.keep('two', 12);
  });
  const text = await page.evaluate(() => window.desk.exported('all'));
  await context.close();
  await begin();
  const there = await tab();
  const cut = await there.evaluate((t) => window.desk.imported(t), text.slice(0, text.length - 200));
  expect(cut).toMatchObject({ ok: false, why: expect.stringMatching(/^x\.json: must be JSON/) });
  expect(await ids(there)).toEqual([]);
  const whole = await there.evaluate((t) => window.desk.imported(t), text);
  expect(whole).toMatchObject({ ok: true, says: '2 attempts added.' });
  expect((await ids(there)).sort()).toEqual(['one', 'two']);
  expect(await there.evaluate(() => window.desk.flownAgain('two'))).toBeNull();
});

it.each([
  ['closed', (page: Page) => page.close()],
  [
    'killed',
    async (page: Page) => {
      const crashed = page.waitForEvent('crash');
      void page.goto('chrome://crash').catch(() => {});
      await crashed;
    },
  ],
])(
  'offers a flight again whose tab was %s, with at most a second lost, and it goes on the same',
  async (_, end) => {
    await begin();
    const page = await tab();
    await page.evaluate(() => window.desk.fly());
    await page.waitForFunction(() => window.desk.stepNow() > 200);
    const other = await tab();
    expect(await other.evaluate(() => window.desk.unfinished())).toEqual([]);
    const flown = await page.evaluate(() => window.desk.stepNow());
    await end(page);
    await expect.poll(() => other.evaluate(() => window.desk.unfinished())).toHaveLength(1);
    const [found] = await other.evaluate(() => window.desk.unfinished());
    expect(found).toMatchObject({ pilot: 'Wren', exercise: 'normal-circuit', runway: '22', goesOn: true });
    const taken = await other.evaluate((id) => window.desk.takeUp(id), found!.id);
    expect(taken?.difference).toBeNull();
    // A second, and the frames that its writing took.
    expect(flown - taken!.steps).toBeLessThanOrEqual(75);
    const [state, fresh] = await other.evaluate(() => [
      window.desk.stateAt(900),
      window.desk.freshStateAt(900),
    ]);
    expect(state).toEqual(fresh);
  },
);

it.each([
  ['by the browser’s locks', ''],
  ['by asking, where there are no locks', 'Object.defineProperty(navigator, "locks", { value: undefined })'],
])('lets no tab claim another’s live flight, %s', async (_, before) => {
  await begin(before);
  const page = await tab();
  const id = await page.evaluate(() => window.desk.fly());
  await page.waitForFunction(() => window.desk.stepNow() > 90);
  const other = await tab();
  expect(await other.evaluate(() => window.desk.unfinished())).toEqual([]);
  expect(await other.evaluate((flight) => window.desk.takeUp(flight), id)).toBeNull();
  await page.close();
  await expect.poll(() => other.evaluate(() => window.desk.unfinished())).toHaveLength(1);
  expect(await other.evaluate((flight) => window.desk.takeUp(flight), id)).not.toBeNull();
});

it('lets tabs hear of each other’s changes, and makes way for a newer version', async () => {
  await begin();
  const one = await tab();
  const two = await tab();
  const heard = two.evaluate(() => window.desk.nextChange());
  await one.evaluate(() => window.desk.keep('a', 2));
  await heard;
  expect(await ids(two)).toEqual(['a']);
  const newer = await tab(1);
  expect(await ids(newer)).toEqual(['a']);
  for (const old of [one, two])
    expect(await told(old)).toEqual([expect.stringMatching(/newer version .* reload this one/)]);
  await one.evaluate(() => window.desk.keep('b', 2));
  expect(await ids(one)).toEqual(['b']);
  const stale = await tab();
  expect(await told(stale)).toEqual([expect.stringMatching(/written by a newer version/)]);
});

it('says once that the storage is full; flights stay for the visit and are kept when there is room', async () => {
  await begin();
  const quota = async (page: Page, quotaSize?: number) => {
    const browserSide = await context.newCDPSession(page);
    const { origin } = new URL(site.url);
    await browserSide.send('Storage.overrideQuotaForOrigin', { origin, ...(quotaSize && { quotaSize }) });
  };
  const page = await tab(0, (fresh) => quota(fresh, 40_000));
  const all: string[] = [];
  while ((await told(page)).length === 0 && all.length < 20) {
    all.push(`flight-${all.length}`);
    await page.evaluate((id) => window.desk.keep(id, 120), all[all.length - 1] as string);
  }
  await page.evaluate(() => window.desk.fly());
  await page.waitForFunction(() => window.desk.stepNow() > 90);
  await page.evaluate(() => window.desk.keep('last', 60));
  expect(await told(page)).toEqual([expect.stringMatching(/storage is full; .*save it as a file\.$/)]);
  expect((await ids(page)).sort()).toEqual([...all, 'last'].sort());
  expect(await page.evaluate(() => window.desk.flownAgain('last'))).toBeNull();
  // Deleting makes room, and what stayed only for the visit moves in.
  await page.evaluate(
    async (old) => {
      await window.desk.remove(old);
      await window.desk.purge(old);
    },
    all.slice(0, 2),
  );
  expect((await ids(page)).sort()).toEqual([...all.slice(2), 'last'].sort());
  await quota(page);
  await page.evaluate(() => window.desk.purge([]));
  await page.close();
  expect((await ids(await tab())).sort()).toEqual([...all.slice(2), 'last'].sort());
});

it('goes on where the browser refuses storage, and says so once', async () => {
  await begin(
    'Object.defineProperty(window, "indexedDB", { get() { throw new DOMException("no", "SecurityError"); } })',
  );
  const page = await tab();
  await page.evaluate(() => window.desk.fly());
  await page.waitForFunction(() => window.desk.stepNow() > 90);
  await page.evaluate(() => window.desk.keep('a', 5));
  expect(await ids(page)).toEqual(['a']);
  expect(await page.evaluate(() => window.desk.flownAgain('a'))).toBeNull();
  expect(await told(page)).toEqual([expect.stringMatching(/keeps nothing for this page/)]);
});

it('asks the browser to keep its data once there is something to lose', async () => {
  await begin(`window.asked = 0;
    navigator.storage.persist = async () => { window.asked += 1; return false; };`);
  const page = await tab();
  const asked = () => page.evaluate(() => (window as unknown as { asked: number }).asked);
  expect(await asked()).toBe(0);
  await page.evaluate(async () => {
    await window.desk.keep('a', 2);
    await window.desk.keep('b', 2);
  });
  await expect.poll(asked).toBe(1);
  expect(await told(page)).toEqual([]);
});
