import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { findBarriers } from './support/axe.ts';
import { readLeg, readMeters, WITHOUT_WEBGL, waitUntilReady } from './support/cockpit.ts';
import { withBrowser } from './support/fixture.ts';
import { landingKeys, strike } from './support/flying.ts';

const { open } = withBrowser();

describe('a program that reads the meters and presses keys', () => {
  it('lands from final and stops on the runway', async () => {
    const { page, complaints, close } = await open({ ownClock: true, before: WITHOUT_WEBGL });
    await waitUntilReady(page);
    await page.getByRole('button', { name: 'fly from final' }).click();
    await page.clock.runFor(100);
    const result = page.locator('.sheet-result');
    for (let i = 0; i < 600 && (await result.count()) === 0; i += 1) {
      await strike(page, landingKeys({ meters: await readMeters(page), leg: await readLeg(page) }));
    }
    expect(await result.getByRole('heading').first().textContent()).toContain('Stopped');
    expect(await result.locator('p').first().textContent()).toContain('of runway left');
    expect(await result.locator('.verdict, .first-look').count()).toBe(2);
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('the first start', () => {
  const kept = (page: Page) =>
    page.evaluate(() => JSON.parse(localStorage.getItem('lapwing/settings') ?? '{}'));

  it('asks who flies, in one press; the set-up sheet changes it in one place', async () => {
    const { page, complaints, close } = await open({ ownClock: true, before: WITHOUT_WEBGL });
    await waitUntilReady(page);
    expect(await findBarriers(page)).toEqual([]);
    await page.getByLabel(/^first lessons/).check();
    await page.getByRole('button', { name: 'fly from final' }).click();
    await page.clock.runFor(300);
    expect(await kept(page)).toMatchObject({ who: 'first-lessons', coach: 'talked-through' });
    expect(await page.locator('.fly').getAttribute('data-lead')).toBe('window');
    await page.getByRole('button', { name: 'set up' }).click();
    await page.getByLabel('Who flies').selectOption('teaching');
    expect(await page.getByLabel('Coach', { exact: true }).inputValue()).toBe('silent');
    await page.getByRole('button', { name: /^keep this flight/ }).click();
    expect(await kept(page)).toMatchObject({
      who: 'teaching',
      coach: 'silent',
      tolerances: 'licence-test-faa',
      lead: 'plan',
    });
    expect(complaints).toEqual([]);
    await close();
  });

  it('leaves everything as it is for whoever just flies, or presses Escape', async () => {
    for (const leave of ['just fly', 'Escape']) {
      const { page, close } = await open({ ownClock: true, before: WITHOUT_WEBGL });
      await waitUntilReady(page);
      await page.getByLabel(/^rusty/).check();
      if (leave === 'Escape') await page.keyboard.press('Escape');
      else await page.getByRole('button', { name: leave }).click();
      await page.locator('.sheet-start').waitFor({ state: 'detached' });
      expect(await kept(page)).toEqual({ seenStart: true });
      await close();
    }
  });
});
