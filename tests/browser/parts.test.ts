// Parts of the page that do not come: asked for again, told in a sentence, never a blank page, no attempt lost.
import type { Page, Route } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { findBarriers, findBarriersByDayAndNight } from './support/axe.ts';
import { WITHOUT_WEBGL, waitUntilReady } from './support/cockpit.ts';
import { withBrowser } from './support/fixture.ts';

const { open } = withBrowser();

/** The programs of the pages besides the flying page, as the bundler names their files. */
const PAGES = '**/assets/page-*.js';
const noAnswer = (route: Route) => route.abort('connectionrefused');
const gone = (route: Route) => route.fulfill({ status: 404, contentType: 'text/plain', body: 'not here' });

const stand = (page: Page) =>
  page.waitForFunction(() => document.querySelectorAll('button:disabled').length < 6);
const turnTo = (page: Page, hash: string) => page.evaluate((to) => location.assign(to), `#${hash}`);

/** Runs the page's clock until something is there; storage and network answer in real time. */
const runUntil = async (page: Page, there: () => Promise<boolean>, most = 400): Promise<void> => {
  for (let i = 0; i < most && !(await there()); i += 1) {
    await page.clock.runFor(250);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  expect(await there()).toBe(true);
};

describe('a page that does not come', () => {
  it('is asked for once more by itself', async () => {
    const { page, close } = await open({ before: WITHOUT_WEBGL });
    await stand(page);
    let asked = 0;
    await page.route(PAGES, (route) => {
      asked += 1;
      return asked === 1 ? noAnswer(route) : route.continue();
    });
    await turnTo(page, 'own');
    await page.getByRole('heading', { name: 'My runway, my numbers' }).waitFor({ timeout: 10_000 });
    expect(asked).toBeGreaterThan(1);
    await close();
  });

  it('says so, leaves the ways on open, and comes when it is tried again', async () => {
    const { page, close } = await open({ before: WITHOUT_WEBGL });
    await stand(page);
    await page.route(PAGES, noAnswer);
    await turnTo(page, 'own');
    await page.getByRole('alert').getByText('there was no answer').waitFor({ timeout: 10_000 });
    expect(await findBarriersByDayAndNight(page)).toEqual([]);
    await page.getByRole('link', { name: 'back to the flight' }).click();
    await page.locator('.fly').waitFor();
    await turnTo(page, 'own');
    await page.getByRole('button', { name: 'try again' }).waitFor();
    await page.unroute(PAGES);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'My runway, my numbers' }).waitFor({ timeout: 10_000 });
    await close();
  });

  it('is of an older version when its file is gone: told, and a reload keeps the flight', async () => {
    const { page, close } = await open({ ownClock: true, before: WITHOUT_WEBGL });
    await waitUntilReady(page);
    await page.getByRole('button', { name: 'fly from final' }).click();
    await runUntil(page, async () => ((await page.locator('.clock').textContent()) ?? '') >= '00:04');
    await page.route(PAGES, gone);
    await turnTo(page, 'own');
    const reload = page.getByRole('button', { name: 'reload the page' });
    await runUntil(page, async () => (await reload.count()) === 1);
    await page.getByRole('heading', { name: 'There is a newer version' }).waitFor();
    expect(await page.getByRole('alert').textContent()).toContain('a flight under way is offered again');
    await page.unroute(PAGES);
    await reload.click();
    await page.getByRole('heading', { name: 'My runway, my numbers' }).waitFor({ timeout: 10_000 });
    await turnTo(page, 'fly');
    const goOn = page.getByRole('button', { name: 'go on with it' });
    await runUntil(page, async () => (await goOn.count()) === 1);
    await close();
  });
});

it('a flight that does not come is tried again; a sheet meanwhile says what is missing', async () => {
  const { page, close } = await open({ before: WITHOUT_WEBGL });
  await page.route('**/assets/{flight,later}-*.js', noAnswer);
  await page.reload();
  const missing = page.locator('.missing');
  await missing.waitFor({ timeout: 10_000 });
  expect(await missing.textContent()).toContain('there was no answer');
  await page.keyboard.press('Escape');
  await page.getByText('This flight cannot begin').waitFor();
  expect(await findBarriers(page)).toEqual([]);
  await page.getByRole('button', { name: 'set up' }).click();
  await page.getByRole('heading', { name: 'This sheet is not here' }).waitFor({ timeout: 10_000 });
  expect(await findBarriers(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await page.unroute('**/assets/{flight,later}-*.js');
  await missing.getByRole('button', { name: 'try again' }).click();
  await page.getByRole('button', { name: 'Begin' }).first().waitFor({ timeout: 10_000 });
  await close();
});

it('a flight that ends while its logbook does not come is kept once it does', async () => {
  const { page, close } = await open({ ownClock: true, before: WITHOUT_WEBGL });
  await page.route('**/assets/logbook-*.js', noAnswer);
  await page.reload();
  await waitUntilReady(page);
  await page.getByRole('button', { name: 'fly from final' }).click();
  await page.keyboard.down('ArrowUp');
  const told = page.getByRole('dialog').getByText('The flight is over, but it is not in the logbook yet');
  await runUntil(page, async () => (await told.count()) > 0);
  expect(await findBarriers(page)).toEqual([]);
  await page.keyboard.up('ArrowUp');
  await page.unroute('**/assets/logbook-*.js');
  await page.getByRole('button', { name: 'try again' }).click();
  await runUntil(page, async () =>
    page.evaluate(
      () =>
        new Promise<boolean>((resolve) => {
          const request = indexedDB.open('lapwing');
          request.onupgradeneeded = () => request.transaction?.abort();
          request.onerror = () => resolve(false);
          request.onsuccess = () => {
            const db = request.result;
            const all = db.transaction('attempts').objectStore('attempts').count();
            all.onsuccess = () => {
              resolve(all.result === 1);
              db.close();
            };
          };
        }),
    ),
  );
  await close();
});
