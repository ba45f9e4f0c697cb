import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { readClock, readLeg, readMeters, standReady, WITHOUT_WEBGL } from './support/cockpit.ts';
import { withBrowser } from './support/fixture.ts';
import type { Visit } from './support/visit.ts';

const { open: openPage } = withBrowser();

const open = async (): Promise<Visit> => {
  const visited = await openPage({ ownClock: true, before: WITHOUT_WEBGL });
  await standReady(visited.page);
  return visited;
};

const holdFor = async (page: Page, key: string, ms: number): Promise<void> => {
  await page.keyboard.down(key);
  await page.clock.runFor(ms);
  await page.keyboard.up(key);
};

/** Full power, and the nose up at 52 kt: the roll takes some 15 to 20 s. */
const takeOff = async (page: Page): Promise<void> => {
  await page.keyboard.press(' ');
  await holdFor(page, 'w', 3000);
  for (let i = 0; i < 60 && (await readMeters(page))('Airspeed') < 54; i += 1) await page.clock.runFor(500);
  await holdFor(page, 'ArrowDown', 2600);
};

describe('real keys on the built page', () => {
  it('take off, climb and turn', async () => {
    const { page, complaints, close } = await open();
    await takeOff(page);
    await page.clock.runFor(15_000);
    const climbing = await readMeters(page);
    expect(await readLeg(page)).toBe('Upwind');
    // What must hold (model.md): a climb of 600 to 750 ft/min at 70 to 75 kt; wide, because the hands are rough.
    expect(climbing('Airspeed')).toBeGreaterThan(55);
    expect(climbing('Vertical speed')).toBeGreaterThan(200);
    const heading = climbing('Heading');
    await holdFor(page, 'ArrowLeft', 900);
    await page.clock.runFor(8000);
    const turning = await readMeters(page);
    const turned = (heading - turning('Heading') + 360) % 360;
    expect(turned).toBeGreaterThan(15);
    expect(turned).toBeLessThan(120);
    expect(complaints).toEqual([]);
    await close();
  });

  it('freeze, change the rate and step back as often as asked', async () => {
    const { page, close } = await open();
    await takeOff(page);
    await page.keyboard.press('0');
    const frozenAt = await readClock(page);
    await page.clock.runFor(5000);
    expect(await readClock(page)).toBe(frozenAt);
    await page.keyboard.press('4');
    await page.keyboard.press(' ');
    await page.clock.runFor(3000);
    const seconds = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));
    const later = seconds(await readClock(page));
    expect(later - seconds(frozenAt)).toBeGreaterThanOrEqual(11);
    expect(later - seconds(frozenAt)).toBeLessThanOrEqual(13);
    await page.keyboard.press('Backspace');
    await page.keyboard.press('Backspace');
    await page.clock.runFor(200);
    const back = seconds(await readClock(page));
    expect(later - back).toBeGreaterThanOrEqual(19);
    expect(later - back).toBeLessThanOrEqual(21);
    await close();
  });

  it('leave Enter, Space and Tab to a focused button', async () => {
    const { page, close } = await open();
    const night = page.getByRole('button', { name: 'Night colours' });
    await night.focus();
    await page.keyboard.press(' ');
    await page.clock.runFor(100);
    expect(await page.locator('html').getAttribute('data-theme')).toBe('night');
    expect(await readClock(page)).toBe('00:00');
    await close();
  });

  it('fly on after a click: Space and arrows belong to the flight again', async () => {
    const { page, close } = await open();
    await page.getByRole('button', { name: 'Night colours' }).click();
    await page.getByRole('slider', { name: 'Power' }).click();
    await page.clock.runFor(100);
    await page.keyboard.press(' ');
    await page.clock.runFor(3300);
    expect(await readClock(page)).toBe('00:03');
    expect(await page.locator('html').getAttribute('data-theme')).toBe('night');
    await close();
  });

  it('show every key at "?" and put the sheet away with Escape', async () => {
    const { page, close } = await open();
    await page.keyboard.press('?');
    await page.getByRole('heading', { name: 'The keys' }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('heading', { name: 'The keys' }).waitFor({ state: 'detached' });
    await close();
  });

  it('say what is wrong with a wind in the command line’s sentence, and the flight goes on', async () => {
    const { page, close } = await open();
    await takeOff(page);
    const before = await readClock(page);
    await page.getByRole('button', { name: 'set up' }).click();
    const wind = page.getByLabel('Wind', { exact: true });
    for (const [typed, said] of [
      ['370/10', 'direction must be 000 to 360, was 370'],
      ['abc', 'was "abc"'],
      ['220/15g10', 'gust must be above the mean wind of 15 kt, was 10'],
    ] as const) {
      await wind.fill(typed);
      await page.getByRole('button', { name: 'roll it out' }).click();
      expect(await page.getByRole('alert').textContent()).toContain(said);
    }
    await page.keyboard.press('Escape');
    await page.clock.runFor(100);
    expect(await readClock(page)).toBe(before);
    await page.keyboard.press(' ');
    await page.clock.runFor(2000);
    expect(await readClock(page)).not.toBe(before);
    await close();
  });

  it('read the slope lights as text: two and two on the slope', async () => {
    const { page, close } = await open();
    await page.getByRole('button', { name: 'set up' }).click();
    await page.getByLabel('Begin on').selectOption('final');
    await page.getByRole('button', { name: 'roll it out' }).click();
    await page.clock.runFor(300);
    // "Two red two white on slope; reds on the runway side" (ICAO Annex 14 vol. I 5.3.5); outermost unit first.
    expect(await page.locator('[data-text=slope-lights]').textContent()).toBe('white white red red');
    await close();
  });

  it('hand over to the model pilot and take over from it', async () => {
    const { page, close } = await open();
    // Handed over before it has begun, it begins
    await page.keyboard.press('o');
    // First the check, shown item by item, then the run
    await page.clock.runFor(20_000);
    expect(await page.locator('.card-title').textContent()).toMatch(
      /^Before take-off check, ([5-9]|1\d) of 13$/,
    );
    await page.clock.runFor(42_000);
    expect((await readMeters(page))('Airspeed')).toBeGreaterThan(40);
    await page.getByRole('button', { name: 'Take over' }).click();
    await page.clock.runFor(1000);
    await page.getByRole('button', { name: 'Watch it flown by the model pilot' }).waitFor();
    await close();
  });

  it('count by their place where the letters are not Latin, by their letter where they are', async () => {
    const { page, context, close } = await open();
    const session = await context.newCDPSession(page);
    const struck = async (key: string, code: string, ms = 100) => {
      await session.send('Input.dispatchKeyEvent', { type: 'keyDown', key, code, text: key });
      await page.clock.runFor(ms);
      await session.send('Input.dispatchKeyEvent', { type: 'keyUp', key, code });
      await page.clock.runFor(400);
    };
    const power = async () => Number((await readMeters(page))('Power'));
    const flap = () => page.locator('[data-meter=flap]').getAttribute('aria-valuenow');
    await page.keyboard.press(' ');
    const idle = await power();
    await struck('ц', 'KeyW', 2500);
    const more = await power();
    expect(more).toBeGreaterThan(idle + 300);
    await struck('σ', 'KeyS', 2500);
    expect(await power()).toBeLessThan(more - 300);
    const up = await flap();
    await struck('а', 'KeyF');
    await page.clock.runFor(4000);
    expect(await flap()).not.toBe(up);
    await struck('к', 'KeyR');
    await page.clock.runFor(4000);
    expect(await flap()).toBe(up);
    // AZERTY: what stands where US keyboards have W writes Z, which is the left foot and no power
    const before = await power();
    await struck('z', 'KeyW', 2500);
    expect(Math.abs((await power()) - before)).toBeLessThan(100);
    await close();
  });
});
