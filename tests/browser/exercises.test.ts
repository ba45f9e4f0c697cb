import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { findBarriers } from './support/axe.ts';
import { standReady, WITHOUT_WEBGL } from './support/cockpit.ts';
import { withBrowser } from './support/fixture.ts';

const { open } = withBrowser();

/** Tabs on until the element with this name has the focus. */
const tabTo = async (page: Page, name: RegExp): Promise<void> => {
  for (let i = 0; i < 60; i += 1) {
    const now = await page.evaluate(() => document.activeElement?.textContent ?? '');
    if (name.test(now)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`nothing named ${name} was reached by 60 times Tab`);
};

describe.each(['light', 'dark'] as const)('an exercise, by keys alone, %s', (theme) => {
  it('is picked, briefed and shown, without a verdict, and kept as what it is when asked for', async () => {
    const { page, complaints, close } = await open({ ownClock: true, before: WITHOUT_WEBGL, theme });
    await standReady(page);
    await page.evaluate(() => {
      location.hash = 'exercises';
    });
    await page.getByRole('heading', { name: 'Exercises' }).waitFor();
    await tabTo(page, /^Final and landing/);
    await page.keyboard.press('Enter');
    const brief = page.locator('.exercise-card');
    expect(await brief.getByRole('heading', { name: 'Final and landing' }).count()).toBe(1);
    // As the exercise's file has it
    expect(await brief.textContent()).toContain('you undershoot');
    expect(await findBarriers(page)).toEqual([]);
    await tabTo(page, /^fly this/);
    await page.keyboard.press('Enter');
    await page.locator('.bar h1', { hasText: 'Final and landing' }).waitFor();
    await page.clock.runFor(300);
    await page.keyboard.press('o');
    await page.clock.runFor(300);
    await page.keyboard.press('4');
    const result = page.locator('.sheet-result');
    // Some two minutes from a mile and more on final to the stop.
    for (let i = 0; i < 20 && (await result.count()) === 0; i += 1) await page.clock.runFor(3000);
    expect(await result.getByRole('region', { name: 'What was shown' }).count()).toBe(1);
    expect(await page.locator('.verdict').count()).toBe(0);
    expect(await findBarriers(page)).toEqual([]);
    const keep = result.getByRole('button', { name: 'keep this demonstration' });
    await keep.click();
    const debrief = result.getByRole('button', { name: 'debrief', exact: true });
    for (let i = 0; i < 100 && !(await debrief.isEnabled().catch(() => false)); i += 1)
      await page.clock.runFor(100);
    await debrief.click();
    await page.locator('.debrief-shown').waitFor();
    await page.evaluate(() => {
      location.hash = 'logbook';
    });
    await page.locator('.log-list tbody tr', { hasText: 'demonstration' }).waitFor();
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('after a flight has ended', () => {
  const crashed = async (page: Page) => {
    // Straight down from final: over in a minute
    await page.getByRole('button', { name: 'set up' }).click();
    await page.getByLabel('Begin on').selectOption('final');
    await page.getByRole('button', { name: 'roll it out' }).click();
    await page.clock.runFor(300);
    await page.keyboard.press('4');
    await page.keyboard.press(' ');
    await page.keyboard.down('ArrowUp');
    const result = page.locator('.sheet-result');
    for (let i = 0; i < 20 && (await result.count()) === 0; i += 1) await page.clock.runFor(2000);
    await page.keyboard.up('ArrowUp');
    return result;
  };

  it('what it showed is trained there, in that aeroplane and air', async () => {
    const { page, complaints, close } = await open({ ownClock: true, before: WITHOUT_WEBGL });
    await standReady(page);
    const result = await crashed(page);
    await result.getByRole('button', { name: 'train this' }).click();
    for (let i = 0; i < 40 && (await result.count()) > 0; i += 1) {
      await page.clock.runFor(100);
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    expect(await page.locator('.bar h1').textContent()).not.toBe('Normal circuit');
    expect(await page.locator('.bar-title').textContent()).toContain('240° 8 kt');
    expect(await page.locator('.clock').textContent()).toBe('00:00');
    expect(complaints).toEqual([]);
    await close();
  });

  it('the next exercise begins from the list, the last result out of its way', async () => {
    const { page, complaints, close } = await open({ ownClock: true, before: WITHOUT_WEBGL });
    await standReady(page);
    await crashed(page);
    await page.evaluate(() => {
      location.hash = 'exercises';
    });
    await page.getByRole('button', { name: /^Go-around/ }).click();
    await page.getByRole('button', { name: 'fly this' }).click();
    await page.locator('.bar h1', { hasText: 'Go-around' }).waitFor();
    await page.clock.runFor(500);
    await page.keyboard.press(' ');
    await page.clock.runFor(3000);
    expect(await page.locator('.clock').textContent()).not.toBe('00:00');
    expect(complaints).toEqual([]);
    await close();
  });
});
