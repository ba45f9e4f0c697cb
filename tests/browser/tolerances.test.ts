import { describe, expect, it } from 'vitest';
import { findBarriers } from './support/axe.ts';
import { standReady, WITHOUT_WEBGL } from './support/cockpit.ts';
import { withBrowser } from './support/fixture.ts';

const { open } = withBrowser();

describe.each(['light', 'dark'] as const)('the tolerances that flights are judged by, %s', (theme) => {
  it('are read, changed by keyboard, kept over a reload, judged by and put back', async () => {
    const { page, complaints, close } = await open({ ownClock: true, before: WITHOUT_WEBGL, theme });
    await standReady(page);
    const openEditor = async () => {
      await page.getByRole('button', { name: 'set up' }).click();
      await page.getByRole('heading', { name: 'Set up a flight' }).waitFor();
      await page.locator('.tolerances summary').focus();
      await page.keyboard.press('Enter');
    };
    await openEditor();
    await page.getByLabel('Judged by').selectOption({ label: 'Licence test, EASA and UK' });
    // AMC1 FCL.235: height within 150 ft
    const row = page.locator('.tolerances tr', { has: page.getByText('height, ft', { exact: true }) });
    expect(await row.getByLabel('height, ft, above').inputValue()).toBe('150');
    expect(await row.textContent()).toMatch(/quoted by another source.*AMC1 FCL\.235/);
    expect(await findBarriers(page)).toEqual([]);

    const above = row.getByLabel('height, ft, above');
    await above.focus();
    await page.keyboard.press('Control+a');
    await page.keyboard.type('abc');
    await page.keyboard.press('Tab');
    await page
      .getByText('height, ft, above must be a number from 0, was "abc"; the limit stays 150.')
      .waitFor();
    await above.focus();
    await page.keyboard.press('Control+a');
    await page.keyboard.type('170');
    await page.keyboard.press('Tab');
    await page.getByText('Licence test, EASA and UK, changed: the limits').waitFor();
    expect(await row.textContent()).toMatch(/entered by you; before: AMC1 FCL\.235/);
    await page.getByRole('button', { name: 'roll it out' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Set up a flight' }).waitFor({ state: 'detached' });

    await page.reload();
    await page.getByRole('button', { name: 'set up' }).waitFor();
    await page.clock.runFor(500);
    await openEditor();
    expect(await above.inputValue()).toBe('170');
    await page.getByRole('button', { name: 'all as they were' }).click();
    expect(await above.inputValue()).toBe('150');
    expect(complaints).toEqual([]);
    await close();
  });
});
