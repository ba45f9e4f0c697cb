// What plan, profile and window look like, against pictures kept in tests/browser/golden. After a change that is
// meant to look different: LAPWING_GOLDEN=1 npx vitest run tests/browser/golden.test.ts, and look at every picture.
import type { Page } from 'playwright-core';
import type { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { withBrowser } from './support/fixture.ts';
import { differing, differingFromAfar, picturesOf } from './support/golden.ts';
import type { Visit, VisitOptions } from './support/visit.ts';

const { open } = withBrowser();

/** A letter set a little differently differs by some ten pixels; a plan without its aeroplane by 177, without its runway by 468. */
const MOST_PIXELS = 90;
/** A square of the picture at another pixel ratio: type and hairlines are set a little differently. */
const MOST_FROM_AFAR = 26;
const VIEWS = ['plan', 'profile', 'window'] as const;

const NO_WEBGL = `
  const real = HTMLCanvasElement.prototype.getContext;
  HTMLCanvasElement.prototype.getContext = function (kind, ...rest) {
    return String(kind).startsWith('webgl') ? null : real.call(this, kind, ...rest);
  };
`;

const settingsOf = (start: string): string => {
  const settings = { aeroplane: 'sandpiper', wind: '250/12', start, picture: 'whiteboard', seenStart: true };
  return `localStorage.setItem('lapwing/settings', ${JSON.stringify(JSON.stringify(settings))});`;
};

/** A flight that stands ready and has not begun: nothing moves. */
const still = async (start: string, options: VisitOptions = {}): Promise<Visit> => {
  const visit = await open({ ownClock: true, before: settingsOf(start), ...options });
  await standing(visit);
  return visit;
};

/** Device pixels of the canvas to its CSS pixels; 0 before it is drawn on. */
const canvasRatio = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const canvas = document.querySelector<HTMLCanvasElement>('canvas.stage');
    const ratio = (canvas?.width ?? 0) / (canvas?.clientWidth ?? 1);
    return Math.abs(ratio - devicePixelRatio) < 0.01 ? ratio : 0;
  });

const standing = async ({ page }: Visit): Promise<void> => {
  // Few frames while it loads: each is dear where software draws it
  for (let i = 0; i < 100; i += 1) {
    await page.clock.runFor(20);
    if ((await page.locator('.freeze:enabled').count()) > 0 && (await canvasRatio(page)) > 0) break;
    await new Promise((resolve) => setTimeout(resolve, 150));
  }
  await page.evaluate(() => document.fonts.ready);
  await page.clock.runFor(40);
};

describe('the drawn views', () => {
  it.each([
    ['final', 'light', [...VIEWS, 'lights']],
    ['downwind', 'dark', VIEWS],
    // The runway's paint, near
    ['line-up', 'light', ['window']],
  ] as const)('look on %s, %s, as they are kept', async (start, theme, views) => {
    const visit = await still(start, { theme });
    const pictures = await picturesOf<string>(visit.page, views);
    for (const view of views) {
      const picture = pictures[view] as PNG;
      expect(differing(picture, `${start}-${view}`), view).toBeLessThanOrEqual(MOST_PIXELS);
    }
    expect(visit.complaints).toEqual([]);
    await visit.close();
  });

  it.each(process.env.LAPWING_LONG === '1' ? [1.5, 2, 3] : [1.5, 2])(
    'look the same from afar on a screen of %d device pixels to a pixel',
    async (pixelRatio) => {
      const visit = await still('final', { pixelRatio });
      const pictures = await picturesOf(visit.page, VIEWS);
      for (const view of VIEWS) {
        const picture = pictures[view];
        expect(differingFromAfar(picture, pixelRatio, `final-${view}`), view).toBeLessThan(MOST_FROM_AFAR);
      }
      await visit.close();
    },
  );

  it('look the same from afar on a plain canvas, where there is no WebGL', async () => {
    const visit = await still('final', { before: settingsOf('final') + NO_WEBGL });
    const pictures = await picturesOf(visit.page, VIEWS);
    for (const view of VIEWS) {
      const picture = pictures[view];
      expect(differingFromAfar(picture, 1, `final-${view}`), view).toBeLessThan(MOST_FROM_AFAR);
    }
    expect(visit.complaints).toEqual([]);
    await visit.close();
  });

  it('follow the browser zoom and come back from it', async () => {
    const visit = await still('final');
    const session = await visit.context.newCDPSession(visit.page);
    const zoom = async (factor: number) => {
      const width = Math.round(1280 / factor);
      const height = Math.round(720 / factor);
      const screen = { width, height, deviceScaleFactor: factor, mobile: false };
      await session.send('Emulation.setDeviceMetricsOverride', screen);
      await visit.page.waitForFunction((wide) => innerWidth === wide, width);
      await new Promise((resolve) => setTimeout(resolve, 100));
      await visit.page.clock.runFor(60);
    };
    await zoom(1.25);
    expect(await canvasRatio(visit.page)).toBeCloseTo(1.25, 2);
    await zoom(1);
    expect(await canvasRatio(visit.page)).toBe(1);
    const pictures = await picturesOf(visit.page, VIEWS);
    for (const view of VIEWS)
      expect(differing(pictures[view], `final-${view}`), view).toBeLessThanOrEqual(MOST_PIXELS);
    await visit.close();
  });

  it('take over a pixel ratio that changes alone, as on another screen', async () => {
    const visit = await still('final');
    const session = await visit.context.newCDPSession(visit.page);
    const screen = { width: 1280, height: 720, deviceScaleFactor: 2, mobile: false };
    await session.send('Emulation.setDeviceMetricsOverride', screen);
    await visit.page.waitForFunction(() => devicePixelRatio === 2);
    await visit.page.clock.runFor(60);
    expect(await canvasRatio(visit.page)).toBe(2);
    await visit.close();
  });

  it('are drawn whole again after a lost context', async () => {
    const visit = await still('final');
    const { page } = visit;
    await page.evaluate(() => {
      const gl = document.querySelector<HTMLCanvasElement>('canvas.stage')?.getContext('webgl2');
      const extension = gl?.getExtension('WEBGL_lose_context');
      (window as unknown as { back: () => void }).back = () => extension?.restoreContext();
      extension?.loseContext();
    });
    await page.locator('.no-drawing').waitFor();
    await page.evaluate(() => (window as unknown as { back: () => void }).back());
    await page.locator('.no-drawing').waitFor({ state: 'detached' });
    await page.clock.runFor(60);
    const pictures = await picturesOf(page, VIEWS);
    for (const view of VIEWS)
      expect(differing(pictures[view], `final-${view}`), view).toBeLessThanOrEqual(MOST_PIXELS);
    expect(visit.complaints).toEqual([]);
    await visit.close();
  });
});
