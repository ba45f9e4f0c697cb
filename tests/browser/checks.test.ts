// A circuit from downwind to the stop, flown by reading the meters and striking keys, with its checks worked, its
// calls made and read back, and its lookout looked: all by the keys of the help sheet.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { findBarriers } from './support/axe.ts';
import { readClock, readLeg, readMeters, WITHOUT_WEBGL } from './support/cockpit.ts';
import { withBrowser } from './support/fixture.ts';
import { circuitKeys, strike } from './support/flying.ts';

const { open } = withBrowser();

const settings = (more: object): string => `
  if (!localStorage.getItem('lapwing/settings'))
    localStorage.setItem('lapwing/settings', JSON.stringify({ seenStart: true, ...${JSON.stringify(more)} }));
`;

/** Right wordings, by what they begin or end with; everything else that is offered is wrong. */
const RIGHT =
  /^Lapwing 21, downwind, to land$|report final, Lapwing 21$|^Lapwing 21, final$|^Runway 22, cleared to land|runway vacated$/;

const press = async (page: Page, key: string): Promise<void> => {
  await page.keyboard.press(key);
  await page.clock.runFor(60);
};

/** Chooses the right wording where one is asked for. */
const answer = async (page: Page): Promise<boolean> => {
  const options = await page.locator('.radio-options button').allTextContents();
  const right = options.find((text) => RIGHT.test(text.slice(1).trim()));
  if (right === undefined) return false;
  await press(page, right[0] as string);
  return true;
};

const seconds = async (page: Page): Promise<number> => {
  const clock = await readClock(page);
  return Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));
};

describe('a circuit with checks, calls and lookout', () => {
  it('is flown from downwind to the stop by keys, and all of it is found in the result', async () => {
    const { page, complaints, close } = await open({
      ownClock: true,
      before:
        WITHOUT_WEBGL + settings({ start: 'downwind', wind: '220/05', radio: 'towered', coach: 'reminded' }),
    });
    for (let i = 0; i < 200 && (await page.locator('.freeze:enabled').count()) === 0; i += 1) {
      await page.clock.runFor(50);
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    await press(page, '0');
    const result = page.locator('.sheet-result');
    const done = new Set<string>();
    const once = async (what: string, act: () => Promise<void>): Promise<void> => {
      if (done.has(what)) return;
      done.add(what);
      await act();
    };
    /** Keys of the check and of the lookout, where the leg asks for them. */
    const beside = async (leg: string): Promise<void> => {
      const now = await seconds(page);
      if (await answer(page)) return;
      if (leg === 'Downwind') {
        if (now >= 2) await once('brakes', () => page.keyboard.down('b'));
        if (now >= 3) await once('brakes off', () => page.keyboard.up('b'));
        if (now >= 3) await once('call downwind', () => press(page, 'v'));
        if (now >= 9) await once('heat', () => press(page, 'h'));
        if (now >= 22) await once('heat cold', () => press(page, 'h'));
        if (now >= 12 && now < 30) await press(page, 'c');
        const meters = await readMeters(page);
        if (meters('Distance') > 0.72) await once('look before base', () => lookOut(page));
        if (meters('Distance') > 0.2) await once('flap', () => press(page, 'f'));
      }
      if (leg === 'Base') {
        const meters = await readMeters(page);
        if (Math.abs(meters('Offset')) < 900) await once('look before final', () => lookOut(page));
      }
      if (leg === 'Final') {
        await once('call final', () => press(page, 'v'));
        if (now % 2 === 0) await press(page, 'c');
      }
      if (leg === 'Stopped') {
        await once('call vacated', () => press(page, 'v'));
        await press(page, 'c');
        await press(page, 'r');
      }
    };
    for (let i = 0; i < 1200 && (await result.count()) === 0; i += 1) {
      const leg = await readLeg(page);
      await beside(leg);
      await strike(page, circuitKeys({ meters: await readMeters(page), leg }));
    }
    expect(await result.getByRole('heading').first().textContent()).toContain('Stopped');
    const band = async (name: string): Promise<string> =>
      (await result.locator('tr', { hasText: name }).locator('.band').first().textContent()) ?? '';
    expect(await band('Downwind: check')).toContain('100');
    expect(await band('Turn to base: lookout before it')).toContain('inside');
    expect(await band('Turn to final: lookout before it')).toContain('inside');
    expect(await band('calls')).toContain('100');
    expect(await band('reading back')).toContain('inside');
    expect(await band('without a clearance')).toContain('inside');
    expect(complaints).toEqual([]);
    await close();
  }, 300_000);
});

/** Right, ahead, left: the looks of a left-hand turn. */
const lookOut = async (page: Page): Promise<void> => {
  await press(page, 'a');
  await press(page, 'e');
  await page.clock.runFor(500);
  await press(page, 'e');
  await page.clock.runFor(500);
  await press(page, 'a');
  await page.clock.runFor(500);
  await press(page, 'q');
};

describe.each(['light', 'dark'] as const)('checks and calls on the page, %s', (theme) => {
  it('have no barriers by axe-core, with a call open, in every picture', async () => {
    const found: string[] = [];
    for (const picture of ['whiteboard', 'cockpit'] as const) {
      const { page, complaints, close } = await open({
        theme,
        before:
          WITHOUT_WEBGL +
          settings({
            start: 'downwind',
            radio: 'towered',
            // Called on entering the leg, so that nothing is to be waited for
            callWords: 'faa',
            coach: 'talked-through',
            picture,
            touch: 'always',
          }),
      });
      await page.locator('.freeze:enabled').waitFor();
      await page.keyboard.press('0');
      await page.locator('.radio-options button').first().waitFor();
      await page.locator('.coach-line').waitFor();
      await page.keyboard.press('0');
      for (const barrier of await findBarriers(page)) found.push(`${picture}: ${barrier}`);
      expect(complaints).toEqual([]);
      await close();
    }
    expect(found).toEqual([]);
  }, 120_000);
});

/** Keys of a check and how long each is held: brakes, stick to its stops, then what this aeroplane has. */
const BEFORE_TAKE_OFF: readonly (readonly [string, number])[] = [
  ['b', 700],
  ['ArrowDown', 1600],
  ['ArrowUp', 1600],
  ['ArrowLeft', 1000],
  ['ArrowRight', 1000],
];
const DOWNWIND: Readonly<Record<string, readonly (readonly [string, number])[]>> = {
  sandpiper: [
    ['b', 700],
    ['h', 60],
    ['', 11_000],
    ['h', 60],
  ],
  dotterel: [
    ['b', 700],
    ['i', 60],
  ],
  whimbrel: [
    ['b', 700],
    ['u', 60],
    ['i', 60],
    ['k', 4000],
    ['', 6000],
  ],
};

describe.each(['sandpiper', 'dotterel', 'whimbrel'])('the checks of the %s, by its keys', (aeroplane) => {
  const work = async (
    start: 'line-up' | 'downwind',
    keys: readonly (readonly [string, number])[],
  ): Promise<string> => {
    const { page, complaints, close } = await open({
      ownClock: true,
      before: WITHOUT_WEBGL + settings({ start, wind: '220/05', qnh: '1005', aeroplane, picture: 'cockpit' }),
    });
    for (let i = 0; i < 200 && (await page.locator('.freeze:enabled').count()) === 0; i += 1) {
      await page.clock.runFor(50);
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    await press(page, '0');
    for (const [key, ms] of keys) {
      if (key !== '') await page.keyboard.down(key);
      await page.clock.runFor(ms);
      if (key !== '') await page.keyboard.up(key);
      await page.clock.runFor(200);
    }
    for (let i = 0; i < 14; i += 1) await press(page, 'c');
    await page.clock.runFor(500);
    const options = await page.locator('.radio-options button').allTextContents();
    const right = options.find((text) => /throttle closed, straight, brakes/.test(text));
    if (right !== undefined) await press(page, right[0] as string);
    await page.clock.runFor(500);
    const done = (await page.locator('.by-heart').textContent()) ?? '';
    expect(complaints).toEqual([]);
    await close();
    return done;
  };

  it('are done before take-off, with what one does if the engine stops', async () => {
    // Those of these three that have an electric pump stand with it off; flap stands as planned
    const pump = aeroplane === 'sandpiper' ? [] : ([['i', 60]] as const);
    const done = await work('line-up', [...BEFORE_TAKE_OFF, ...pump]);
    expect(done).toMatch(/^Before take-off check: (\d+) of \1$/);
  }, 60_000);

  it('are done on downwind', async () => {
    const done = await work('downwind', DOWNWIND[aeroplane] ?? []);
    expect(done).toMatch(/^Downwind check: (\d+) of \1$/);
  }, 60_000);
});

describe('keys of one’s own', () => {
  it('are changed in the sheet of the keys and kept for the next visit', async () => {
    const { page, complaints, close } = await open({
      before: WITHOUT_WEBGL + settings({ start: 'downwind' }),
    });
    await page.locator('.freeze:enabled').waitFor();
    await page.keyboard.press('?');
    await page.getByRole('button', { name: 'Carburettor heat: change the key' }).press('Enter');
    await page.keyboard.press(';');
    await page.getByText('Carburettor heat: key ;.').waitFor();
    await page.reload();
    await page.locator('.freeze:enabled').waitFor();
    await page.keyboard.press('0');
    await page.keyboard.press(';');
    await page.locator('button[aria-pressed=true]', { hasText: 'carb. heat' }).waitFor();
    expect(complaints).toEqual([]);
    await close();
  }, 60_000);
});

describe('two thumbs at once', () => {
  it('bank the aeroplane and take power off; a tap makes the call and chooses its words', async () => {
    const { page, context, complaints, close } = await open({
      ownClock: true,
      touch: true,
      width: 1024,
      height: 768,
      before: WITHOUT_WEBGL + settings({ start: 'downwind', wind: '220/05' }),
    });
    for (let i = 0; i < 200 && (await page.locator('.freeze:enabled').count()) === 0; i += 1) {
      await page.clock.runFor(50);
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    const tap = async (selector: string): Promise<void> => {
      const box = await page.locator(selector).first().boundingBox();
      if (!box) throw new Error(`there is no ${selector} on the screen`);
      await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
      await page.clock.runFor(400);
    };
    await tap('.freeze');
    const before = await readMeters(page);
    const stick = await page.locator('.touch-stick').boundingBox();
    const power = await page.locator('.touch-power').boundingBox();
    if (!stick || !power) throw new Error('there is nothing for thumbs on the screen');
    const session = await context.newCDPSession(page);
    const thumbs = (aside: number, forward: number) => [
      { x: stick.x + (stick.width * (1 + aside)) / 2, y: stick.y + stick.height / 2, id: 1 },
      { x: power.x + power.width / 2, y: power.y + power.height * (1 - forward), id: 2 },
    ];
    await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: thumbs(0, 0.5) });
    for (let i = 1; i <= 5; i += 1) {
      await session.send('Input.dispatchTouchEvent', {
        type: 'touchMove',
        touchPoints: thumbs(-0.12 * i, 0.5 - 0.06 * i),
      });
      await page.clock.runFor(60);
    }
    await page.clock.runFor(900);
    await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await page.clock.runFor(1500);
    const later = await readMeters(page);
    expect(later('Bank')).toBeLessThan(-4);
    expect(later('Power')).toBeLessThan(before('Power') - 300);
    await tap('.panel-card .joined button:nth-child(2)');
    expect(await page.locator('.radio-options button').count()).toBe(3);
    await tap('.radio-options button');
    expect(await page.locator('.radio-options button').count()).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  }, 60_000);
});

describe('a finger on the stick', () => {
  it('rolls the aeroplane while it holds it aside', async () => {
    const { page, complaints, close } = await open({
      before: WITHOUT_WEBGL + settings({ start: 'downwind', touch: 'always' }),
    });
    await page.locator('.freeze:enabled').waitFor();
    await page.keyboard.press('0');
    const box = await page.locator('.touch-stick').boundingBox();
    if (!box) throw new Error('there is no stick on the screen');
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * 0.95, box.y + box.height / 2, { steps: 4 });
    await page.waitForFunction(() => {
      const bank = [...document.querySelectorAll('[role=meter]')].find((meter) =>
        meter.getAttribute('aria-label')?.startsWith('Bank'),
      );
      return Number(bank?.getAttribute('aria-valuenow')) > 8;
    });
    await page.mouse.up();
    expect(complaints).toEqual([]);
    await close();
  }, 60_000);
});
