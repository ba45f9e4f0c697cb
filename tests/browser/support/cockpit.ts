import type { Page } from 'playwright-core';

/** Takes WebGL and the plain canvas of the drawn views away: drawing costs much, and most tests read the meters only. */
export const WITHOUT_WEBGL = `
  const real = HTMLCanvasElement.prototype.getContext;
  HTMLCanvasElement.prototype.getContext = function (kind, ...rest) {
    const drawing = String(kind).startsWith('webgl') || this.matches('.stage, .cursor-canvas');
    return drawing ? null : real.call(this, kind, ...rest);
  };
`;

/** Runs the page's own clock until the flight stands ready behind the first sheet. */
export const waitUntilReady = async (page: Page): Promise<void> => {
  const button = page.getByRole('button', { name: 'fly from final' });
  await button.waitFor();
  for (let i = 0; i < 200 && (await button.isDisabled()); i += 1) {
    await page.clock.runFor(50);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
};

/** What the meters say, as a program or a screen reader gets it: numbers by the beginning of their name. */
export type Meters = (name: string) => number;

export const readMeters = async (page: Page): Promise<Meters> => {
  const all = await page.evaluate(() =>
    [...document.querySelectorAll('[role=meter]')].map(
      (meter) =>
        [meter.getAttribute('aria-label') ?? '', Number(meter.getAttribute('aria-valuenow'))] as const,
    ),
  );
  return (name) => {
    const found = all.find(([label]) => label.toLowerCase().startsWith(name.toLowerCase()));
    if (!found)
      throw new Error(`no meter is named ${name}; there are ${all.map(([label]) => label).join(', ')}`);
    return found[1];
  };
};

const text = async (page: Page, selector: string): Promise<string> =>
  (await page.locator(selector).textContent()) ?? '';

/** The leg as the bar shows it, in the whiteboard picture. */
export const readLeg = (page: Page): Promise<string> => text(page, '.bar-leg');

/** Time flown, "04:41". */
export const readClock = (page: Page): Promise<string> => text(page, '.clock');

/** Leaves the first sheet for a flight from line-up that stands ready. */
export const standReady = async (page: Page): Promise<void> => {
  await waitUntilReady(page);
  await page.keyboard.press('Escape');
  await page.clock.runFor(100);
};
