import { describe, expect, it } from 'vitest';
import { findBarriers } from './support/axe.ts';
import { withBrowser } from './support/fixture.ts';

const { open: openPage } = withBrowser();

describe.each(['light', 'dark'] as const)('the flying page, %s', (theme) => {
  it('has no barriers by axe-core at WCAG 2.2 AA, on any sheet and in any picture', async () => {
    const { page, complaints, close } = await openPage({ theme });
    const found: string[] = [];
    const look = async (where: string) => {
      for (const barrier of await findBarriers(page)) found.push(`${where}: ${barrier}`);
    };
    await page.getByText('fly from final').waitFor();
    await page.waitForFunction(() => document.querySelectorAll('button:disabled').length < 6);
    await look('start sheet');
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Begin' }).first().waitFor();
    await look('whiteboard');
    await page.keyboard.press('?');
    await page.getByRole('heading', { name: 'The keys' }).waitFor();
    await look('keys');
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'set up' }).click();
    await page.getByLabel('Wind', { exact: true }).fill('370/10');
    await look('set up');
    await page.getByLabel('Wind', { exact: true }).fill('240/08');
    await page.getByText('cockpit only').click();
    await page.getByText('roll it out').click();
    await page.locator('[data-picture=cockpit]').waitFor();
    await look('cockpit');
    expect(found).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  });
});
