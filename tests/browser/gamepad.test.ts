import { describe, expect, it } from 'vitest';
import { readClock, readMeters, standReady, WITHOUT_WEBGL } from './support/cockpit.ts';
import { withBrowser } from './support/fixture.ts';

/** A pad in the layout "standard" (W3C Gamepad), handed to the page through its own interface. */
const WITH_PAD = `
  window.pad = {
    id: 'test pad', index: 0, connected: true, mapping: 'standard', timestamp: 0, axes: [0, 0, 0, 0],
    buttons: Array.from({ length: 17 }, () => ({ pressed: false, touched: false, value: 0 })),
  };
  window.plugged = true;
  Object.defineProperty(navigator, 'getGamepads', { value: () => [window.plugged ? window.pad : null] });
`;

const { open } = withBrowser();

describe('a game controller', () => {
  it('rolls the take-off, turns, and freezes the flight when it is pulled out', async () => {
    const { page, complaints, close } = await open({ ownClock: true, before: WITHOUT_WEBGL + WITH_PAD });
    const set = (script: string) => page.evaluate(script);
    await standReady(page);
    await set('pad.buttons[9] = { pressed: true, value: 1 }');
    await page.clock.runFor(200);
    await set('pad.buttons[9] = { pressed: false, value: 0 }; pad.buttons[7] = { pressed: true, value: 1 }');
    await page.clock.runFor(4000);
    await set('pad.buttons[7] = { pressed: false, value: 0 }');
    for (let i = 0; i < 60 && (await readMeters(page))('Airspeed') < 54; i += 1) await page.clock.runFor(500);
    await set('pad.axes[1] = 1');
    await page.clock.runFor(2600);
    await set('pad.axes[1] = 0');
    await page.clock.runFor(12_000);
    const climbing = await readMeters(page);
    expect(climbing('Vertical speed')).toBeGreaterThan(200);
    const heading = climbing('Heading');
    await set('pad.axes[0] = 0.9');
    await page.clock.runFor(900);
    await set('pad.axes[0] = 0');
    await page.clock.runFor(6000);
    const turned = ((await readMeters(page))('Heading') - heading + 360) % 360;
    expect(turned).toBeGreaterThan(10);
    expect(turned).toBeLessThan(150);

    await set('plugged = false');
    await page.clock.runFor(300);
    const at = await readClock(page);
    await page.clock.runFor(3000);
    expect(await readClock(page)).toBe(at);
    expect(await page.locator('.notice').textContent()).toContain('controller is gone');
    await set('plugged = true');
    await page.clock.runFor(100);
    await page.keyboard.press(' ');
    await page.clock.runFor(3000);
    expect(await readClock(page)).not.toBe(at);
    expect(complaints).toEqual([]);
    await close();
  });

  it('looks around with its hat', async () => {
    const { page, close } = await open({ ownClock: true, before: WITHOUT_WEBGL + WITH_PAD });
    await standReady(page);
    const looking = page.locator('.panel-window .panel-head .soft');
    await page.evaluate('pad.buttons[14] = { pressed: true, value: 1 }');
    await page.clock.runFor(600);
    expect(await looking.textContent()).toBe('45° left');
    await page.evaluate('pad.buttons[14] = { pressed: false, value: 0 }');
    await page.clock.runFor(100);
    await page.evaluate('pad.buttons[15] = { pressed: true, value: 1 }');
    await page.clock.runFor(600);
    expect(await looking.textContent()).toBe('ahead');
    await close();
  });
});
