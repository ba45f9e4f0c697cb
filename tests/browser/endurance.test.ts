import { describe, expect, it } from 'vitest';
import { readClock, readMeters, standReady, WITHOUT_WEBGL } from './support/cockpit.ts';
import { withBrowser } from './support/fixture.ts';

const { open } = withBrowser();

/** Pretends that the tab is hidden, or not. */
const HIDE = `
  window.hide = (hidden) => {
    Object.defineProperty(document, 'hidden', { value: hidden, configurable: true });
    document.dispatchEvent(new Event('visibilitychange'));
  };
`;

describe('the flying page, when things go wrong', () => {
  it('asks the network for nothing once it stands, and keeps its policy', async () => {
    const { page, requests, complaints, close } = await open();
    await page.getByText('fly from final').waitFor();
    await page.waitForFunction(() => !document.querySelector('.sheet-start .soft'));
    await page.keyboard.press('Escape');
    await page.waitForLoadState('networkidle');
    const loaded = requests.length;
    await page.keyboard.press('?');
    const keys = page.getByRole('heading', { name: 'The keys' });
    await keys.waitFor();
    await page.keyboard.press('Escape');
    await keys.waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'set up' }).click();
    await page.getByRole('button', { name: 'leave it as it is' }).click();
    await page.getByRole('button', { name: 'Begin' }).first().click();
    await page.keyboard.press('w');
    await page.waitForFunction(() => document.querySelector('.clock')?.textContent !== '00:00');
    expect(requests.slice(loaded)).toEqual([]);
    expect(requests.every((url) => url.startsWith('http://127.0.0.1') || url.startsWith('blob:'))).toBe(true);
    expect(complaints).toEqual([]);
    await close();
  });

  it('freezes when the tab is hidden and says so', async () => {
    const { page, close } = await open({ ownClock: true, before: WITHOUT_WEBGL + HIDE });
    await standReady(page);
    await page.keyboard.press(' ');
    await page.clock.runFor(2000);
    await page.evaluate('hide(true)');
    await page.clock.runFor(100);
    const at = await readClock(page);
    await page.evaluate('hide(false)');
    await page.clock.runFor(3000);
    expect(await readClock(page)).toBe(at);
    expect(await page.locator('.notice').textContent()).toContain('hidden');
    await close();
  });

  it('freezes when the window is left with a key down, and lets the key go', async () => {
    const { page, close } = await open({ ownClock: true, before: WITHOUT_WEBGL });
    await standReady(page);
    await page.keyboard.press(' ');
    await page.keyboard.down('w');
    await page.clock.runFor(500);
    await page.evaluate(() => window.dispatchEvent(new Event('blur')));
    await page.clock.runFor(100);
    const power = () => page.getByRole('slider', { name: 'Power' }).inputValue();
    const at = await readClock(page);
    await page.clock.runFor(2000);
    expect(await readClock(page)).toBe(at);
    await page.keyboard.press(' ');
    await page.clock.runFor(600);
    const set = await power();
    expect(Number(set)).toBeGreaterThan(5);
    await page.clock.runFor(2000);
    expect(await power()).toBe(set);
    await close();
  });

  it('flies with nothing to draw on, and says in one sentence what is missing', async () => {
    const { page, complaints, close } = await open({ ownClock: true, before: WITHOUT_WEBGL });
    await standReady(page);
    expect(await page.locator('.no-drawing').textContent()).toContain('WebGL');
    await page.keyboard.press(' ');
    await page.keyboard.down('w');
    await page.clock.runFor(8000);
    await page.keyboard.up('w');
    expect((await readMeters(page))('Airspeed')).toBeGreaterThan(15);
    expect(complaints).toEqual([]);
    await close();
  });

  it('flies on where the browser keeps nothing', async () => {
    const refuse = `Object.defineProperty(window, 'localStorage', { get() { throw new Error('refused'); } });`;
    const { page, complaints, close } = await open({ ownClock: true, before: WITHOUT_WEBGL + refuse });
    await standReady(page);
    await page.keyboard.press(' ');
    await page.clock.runFor(2000);
    expect(await readClock(page)).not.toBe('00:00');
    expect(complaints).toEqual([]);
    await close();
  });

  it('is silent until asked, and sounds without a complaint once it is', async () => {
    const count = `
      window.sounds = 0;
      window.AudioContext = class extends window.AudioContext { constructor() { super(); window.sounds += 1; } };
    `;
    const { page, complaints, close } = await open({ ownClock: true, before: WITHOUT_WEBGL + count });
    await standReady(page);
    await page.keyboard.press(' ');
    await page.clock.runFor(500);
    expect(await page.evaluate('sounds')).toBe(0);
    await page.getByRole('button', { name: 'Sound on' }).click();
    await page.clock.runFor(2000);
    expect(await page.evaluate('sounds')).toBe(1);
    await page.getByRole('button', { name: 'Sound off' }).click();
    await page.clock.runFor(500);
    expect(complaints).toEqual([]);
    await close();
  });

  it('comes back whole from a lost graphics context, with the flight frozen meanwhile', async () => {
    const { page, complaints, close } = await open();
    await page.getByText('fly from final').waitFor();
    await page.waitForFunction(() => !document.querySelector('.sheet-start .soft'));
    await page.keyboard.press('Escape');
    await page.keyboard.press(' ');
    await page.waitForFunction(() => document.querySelector('.clock')?.textContent !== '00:00');
    await page.evaluate(() => {
      const gl = document.querySelector<HTMLCanvasElement>('canvas.stage')?.getContext('webgl2');
      const extension = gl?.getExtension('WEBGL_lose_context');
      (window as unknown as { back: () => void }).back = () => extension?.restoreContext();
      extension?.loseContext();
    });
    await page.locator('.no-drawing').waitFor();
    const at = await readClock(page);
    await page.evaluate(() => (window as unknown as { back: () => void }).back());
    await page.locator('.no-drawing').waitFor({ state: 'detached' });
    expect(await readClock(page)).toBe(at);
    await page.keyboard.press(' ');
    await page.waitForFunction((was) => document.querySelector('.clock')?.textContent !== was, at);
    expect(complaints).toEqual([]);
    await close();
  });

  it.each([
    [1280, 720],
    [1024, 700],
    [1920, 1080],
  ])('shows everything at %i x %i without scrolling or overlap', async (width, height) => {
    const { page, close } = await open({ ownClock: true, before: WITHOUT_WEBGL, width, height });
    await standReady(page);
    const outside = await page.evaluate(() =>
      [...document.querySelectorAll('.fly button, .fly [role=meter], .fly input, .panel')]
        // A long check scrolls inside its card
        .filter((element) => element.closest('.card-lines') === null)
        .filter((element) => {
          const box = element.getBoundingClientRect();
          return (
            box.width > 0 && (box.right > innerWidth + 1 || box.bottom > innerHeight + 1 || box.left < -1)
          );
        })
        .map((element) => element.outerHTML.slice(0, 90)),
    );
    expect(outside).toEqual([]);
    const scrolls = await page.evaluate(() => document.documentElement.scrollWidth > innerWidth + 1);
    expect(scrolls).toBe(false);
    await close();
  });
});
