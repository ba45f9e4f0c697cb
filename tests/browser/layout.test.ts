import { describe, expect, it } from 'vitest';
import { standReady } from './support/cockpit.ts';
import { withBrowser } from './support/fixture.ts';

const { open } = withBrowser();

/** A gusting wind makes the longest heading, the governed aeroplane the fullest row of levers. */
const kept = (aeroplane: string, more: object = {}): string =>
  `localStorage.setItem('lapwing/settings', ${JSON.stringify(JSON.stringify({ aeroplane, wind: '220/15g25', start: 'final', ...more }))})`;

describe('the flying page at the smallest screens it is made for', () => {
  it.each([
    [1280, 720, 'sandpiper'],
    [1024, 700, 'sandpiper'],
    [1024, 700, 'dotterel'],
    [1024, 700, 'whimbrel'],
  ])('cuts no word and keeps the levers in one row at %d by %d in %s', async (width, height, aeroplane) => {
    // On downwind altitude and what comes next are longest; a plan to be held has the fullest row of levers
    const more = { start: 'downwind', picture: 'cockpit-with-plan' };
    const { page, close } = await open({ width, height, ownClock: true, before: kept(aeroplane, more) });
    await standReady(page);
    await page.clock.runFor(1500);
    const cut = await page.evaluate(() =>
      [
        ...document.querySelectorAll(
          '.levers button, .bar button, .bar a, .bar p, .bar h1, .scale-name, .panel-head .next',
        ),
      ]
        .filter((each) => each.scrollWidth > each.clientWidth)
        .map((each) => each.textContent),
    );
    expect(cut).toEqual([]);
    const levers = page.locator('.levers');
    expect(await levers.evaluate((each) => each.scrollWidth - each.clientWidth)).toBe(0);
    // One row: no lever begins below the end of another
    const rows = await levers.evaluate((each) =>
      [...each.children]
        .map((child) => child.getBoundingClientRect())
        .map(({ top, bottom }) => [top, bottom]),
    );
    expect(Math.max(...rows.map(([top]) => top ?? 0))).toBeLessThan(
      Math.min(...rows.map(([, end]) => end ?? 0)),
    );
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

describe('under two thumbs', () => {
  it.each([
    [1024, 768, 'whiteboard'],
    [1180, 820, 'whiteboard'],
    [1024, 768, 'cockpit-with-plan'],
    [1024, 768, 'cockpit'],
    [844, 390, 'whiteboard'],
    [844, 390, 'cockpit'],
  ])('stick and power stand over nothing that is read, at %d by %d, %s', async (width, height, picture) => {
    const { page, close } = await open({
      width,
      height,
      touch: true,
      ownClock: true,
      before: kept('whimbrel', { picture, seenStart: true }),
    });
    for (let i = 0; i < 200 && (await page.locator('.freeze:enabled').count()) === 0; i += 1) {
      await page.clock.runFor(50);
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    await page.clock.runFor(300);
    const covered = await page.evaluate(() => {
      const pads = [...document.querySelectorAll('.touch > div')].map((pad) => pad.getBoundingClientRect());
      const read = [...document.querySelectorAll('.view, .scale, .panel-card, .levers, .bar')];
      return read
        .filter((each) => {
          const a = each.getBoundingClientRect();
          return pads.some(
            (b) =>
              a.width > 0 && a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom,
          );
        })
        .map((each) => each.getAttribute('aria-label') ?? each.className);
    });
    expect(covered).toEqual([]);
    expect(await page.locator('.touch > div').count()).toBe(2);
    // Nothing of the page lies outside the screen
    const beyond = await page.evaluate(() => [
      document.documentElement.scrollWidth - innerWidth,
      document.documentElement.scrollHeight - innerHeight,
    ]);
    expect(beyond).toEqual([0, 0]);
    await close();
  });
});
