import { describe, expect, it } from 'vitest';
import { findBarriers } from './support/axe.ts';
import { readClock, readLeg, WITHOUT_WEBGL, waitUntilReady } from './support/cockpit.ts';
import { withBrowser } from './support/fixture.ts';

const { open } = withBrowser();

describe('a circuit watched to its end', () => {
  it('ends in a result card, leg by leg, from which the flight can be taken up again', async () => {
    const { page, complaints, close } = await open({ ownClock: true, before: WITHOUT_WEBGL });
    await waitUntilReady(page);
    await page.getByRole('button', { name: 'watch one flown' }).click();
    await page.clock.runFor(200);
    await page.keyboard.press('4');
    const result = page.locator('.sheet-result');
    // A circuit takes some seven minutes (two minutes at four-fold rate), ten at most.
    let marks = '';
    for (let i = 0; i < 20 && (await result.count()) === 0; i += 1) {
      await page.clock.runFor(10_000);
      marks = (await page.getByRole('list', { name: 'Judged so far' }).textContent()) ?? marks;
    }
    // Live: a mark for each row of each leg that is over
    expect(marks).toMatch(/Downwind: height inside.*Base: speed inside/);
    // Afterwards: value, target, tolerance and source of every row
    const rows = result.locator('.judged-items tbody tr:not(.group)');
    expect(await rows.count()).toBeGreaterThan(30);
    for (const cells of await rows.evaluateAll((all) =>
      all.map((row) => [...row.children].map((cell) => cell.textContent?.trim() ?? '')),
    )) {
      const [title, value, target, tolerance, , source] = cells;
      expect([value, target, tolerance, source], title).not.toContain('');
    }
    expect(await result.textContent()).toContain(
      'Flown with: whiteboard · coach reminded · hand holds · rudder assist · the model pilot flew',
    );
    expect(await result.getByRole('heading').first().textContent()).toContain('Demonstration. Stopped');
    for (const leg of ['upwind', 'crosswind', 'downwind', 'base', 'final']) {
      expect(await result.getByRole('rowheader', { name: leg, exact: true }).count(), leg).toBe(1);
    }
    expect(await result.getByRole('rowheader', { name: 'touchdown', exact: true }).count()).toBe(1);
    // What was shown, and no verdict
    expect(await result.locator('.verdict, .first-look, .against').count()).toBe(0);
    expect(await result.getByRole('region', { name: 'What was shown' }).textContent()).toMatch(
      /Check before take-off: all \d+ items\..*Check downwind: all \d+ items\..*Lookout: before every turn\./,
    );
    expect(await findBarriers(page)).toEqual([]);

    const end = await readClock(page);
    await result.getByRole('button', { name: /^final \d/ }).click();
    await page.clock.runFor(300);
    expect((await readClock(page)) < end).toBe(true);
    // At roll-out the turn may not be over for the lesson yet.
    expect(await readLeg(page)).toMatch(/final/i);
    await page.keyboard.press(' ');
    await page.clock.runFor(2000);
    await page.getByRole('button', { name: 'Watch it flown by the model pilot' }).waitFor();
    expect(complaints).toEqual([]);
    await close();
  });
});
