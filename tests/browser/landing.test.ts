import { describe, expect, it } from 'vitest';
import { readLeg, readMeters, WITHOUT_WEBGL, waitUntilReady } from './support/cockpit.ts';
import { withBrowser } from './support/fixture.ts';
import { landingKeys, strike } from './support/flying.ts';

const { open } = withBrowser();

describe('a program that reads the meters and presses keys', () => {
  it('lands from final and stops on the runway', async () => {
    const { page, complaints, close } = await open({ ownClock: true, before: WITHOUT_WEBGL });
    await waitUntilReady(page);
    await page.getByRole('button', { name: 'fly from final' }).click();
    await page.clock.runFor(100);
    const result = page.locator('.sheet-result');
    for (let i = 0; i < 600 && (await result.count()) === 0; i += 1) {
      await strike(page, landingKeys({ meters: await readMeters(page), leg: await readLeg(page) }));
    }
    expect(await result.getByRole('heading').first().textContent()).toContain('Stopped');
    expect(await result.locator('p').first().textContent()).toContain('of runway left');
    expect(await result.locator('.verdict, .first-look').count()).toBe(2);
    expect(complaints).toEqual([]);
    await close();
  });
});
