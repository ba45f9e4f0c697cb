import { describe, expect, it } from 'vitest';
import { standReady } from './support/cockpit.ts';
import { withBrowser } from './support/fixture.ts';

const { open } = withBrowser();

/** A gusting wind makes the longest heading, the governed aeroplane the fullest row of levers. */
const kept = (aeroplane: string): string =>
  `localStorage.setItem('lapwing/settings', ${JSON.stringify(JSON.stringify({ aeroplane, wind: '220/15g25', start: 'final' }))})`;

describe('the flying page at the smallest screens it is made for', () => {
  it.each([
    [1280, 720, 'sandpiper'],
    [1024, 700, 'whimbrel'],
  ])('cuts no word at %d by %d in %s', async (width, height, aeroplane) => {
    const { page, close } = await open({ width, height, ownClock: true, before: kept(aeroplane) });
    await standReady(page);
    await page.clock.runFor(1500);
    const cut = await page.evaluate(() =>
      [...document.querySelectorAll('.levers button, .bar button, .bar a, .bar p, .bar h1, .scale-name')]
        .filter((each) => each.scrollWidth > each.clientWidth)
        .map((each) => each.textContent),
    );
    expect(cut).toEqual([]);
    await close();
  });

  it('keeps the buttons of the set-up sheet in sight', async () => {
    const { page, close } = await open({
      width: 1024,
      height: 700,
      ownClock: true,
      before: kept('sandpiper'),
    });
    await standReady(page);
    await page.getByRole('button', { name: 'set up', exact: true }).click();
    await page.clock.runFor(300);
    const row = await page.locator('.sheet-setup .sheet-buttons').boundingBox();
    expect((row?.y ?? 0) + (row?.height ?? 700)).toBeLessThanOrEqual(700);
    const sheet = page.locator('.sheet-setup');
    expect(await sheet.evaluate((each) => each.scrollWidth - each.clientWidth)).toBe(0);
    await close();
  });
});
