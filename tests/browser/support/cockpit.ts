import type { Page } from 'playwright-core';

/** Takes WebGL away from the page: its drawing costs much in software, and most tests read the meters only. */
export const WITHOUT_WEBGL = `
  const real = HTMLCanvasElement.prototype.getContext;
  HTMLCanvasElement.prototype.getContext = function (kind, ...rest) {
    return String(kind).startsWith('webgl') ? null : real.call(this, kind, ...rest);
  };
`;

/** Runs the page's own clock until the flight stands ready behind the first sheet. */
export const waitUntilReady = async (page: Page): Promise<void> => {
  const button = page.getByRole('button', { name: 'fly from final' });
  await button.waitFor();
  for (let i = 0; i < 100 && (await button.isDisabled()); i += 1) {
    await page.clock.runFor(50);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
};

/** What a meter says: the number and the words, as a program or a screen reader gets them. */
export const readMeter = async (page: Page, id: string): Promise<number> =>
  Number(await page.locator(`[data-meter="${id}"]`).getAttribute('aria-valuenow'));

/** All meters at once, by their id. */
export const readMeters = (page: Page): Promise<Readonly<Record<string, number>>> =>
  page.evaluate(() =>
    Object.fromEntries(
      [...document.querySelectorAll('[role=meter]')].map((meter) => [
        meter.getAttribute('data-meter') ?? '',
        Number(meter.getAttribute('aria-valuenow')),
      ]),
    ),
  );

/** The leg as the bar shows it, in the whiteboard picture. */
export const readLeg = (page: Page): Promise<string> =>
  page
    .locator('.bar-leg')
    .textContent()
    .then((text) => text ?? '');
