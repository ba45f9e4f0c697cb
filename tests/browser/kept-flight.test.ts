import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { readClock, WITHOUT_WEBGL, waitUntilReady } from './support/cockpit.ts';
import { withBrowser } from './support/fixture.ts';

const { open } = withBrowser();

/** Runs the page's clock until something is there; storage answers in real time. */
const runUntil = async (page: Page, there: () => Promise<boolean>, most = 120): Promise<void> => {
  for (let i = 0; i < most && !(await there()); i += 1) {
    await page.clock.runFor(250);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  expect(await there()).toBe(true);
};

describe('a flight under way', () => {
  it('is offered again after the tab was reloaded, at most a second earlier, and goes on', async () => {
    const { page, complaints, close } = await open({ ownClock: true, before: WITHOUT_WEBGL });
    await waitUntilReady(page);
    await page.getByRole('button', { name: 'fly from final' }).click();
    for (let i = 0; i < 24; i += 1) {
      await page.clock.runFor(250);
      await new Promise((resolve) => setTimeout(resolve, 30));
    }
    const flown = await readClock(page);
    expect(flown >= '00:05').toBe(true);
    await page.reload();
    const goOn = page.getByRole('button', { name: 'go on with it' });
    await runUntil(page, async () => (await goOn.count()) === 1);
    await page.keyboard.press('Enter');
    await runUntil(page, async () => (await readClock(page)) !== '00:00');
    const seconds = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));
    expect(seconds(flown) - seconds(await readClock(page))).toBeLessThanOrEqual(2);
    const before = await readClock(page);
    await page.keyboard.press('0');
    await page.clock.runFor(3000);
    expect((await readClock(page)) > before).toBe(true);
    expect(complaints).toEqual([]);
    await close();
  });
});
