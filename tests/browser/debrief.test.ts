// The debrief on a flight with a fault put in: own view, root, second aeroplane, another way from an instant, the sheet.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { keptBody, oneAttemptFile } from '../support/attempt-files.ts';
import { headNamed } from '../support/attempts.ts';
import { flyFault, powerOnFinal } from '../support/faults.ts';
import { findBarriers } from './support/axe.ts';
import { readClock, WITHOUT_WEBGL } from './support/cockpit.ts';
import { withBrowser } from './support/fixture.ts';

const { open } = withBrowser();
const { flight } = flyFault({ windDeg: 30, windKt: 8, leg: 'base' }, powerOnFinal(0.15));
const body = keptBody(flight);
const file = oneAttemptFile(headNamed('one', { pilot: 'Pilot 1' }), body);

const bringIn = async (page: Page): Promise<void> => {
  const address = page.url();
  await page.goto(`${address}#logbook`);
  await page.setInputFiles('input[type=file]', {
    name: 'x.json',
    mimeType: 'application/json',
    buffer: Buffer.from(file),
  });
  await page.getByText('1 attempt added').waitFor();
  await page.goto(`${address}#debrief/one`);
};

const openDebrief = async (options: Parameters<typeof open>[0] = {}) => {
  const visit = await open({ before: WITHOUT_WEBGL, ...options });
  await bringIn(visit.page);
  return visit;
};

const threeTaps = async (page: Page) => {
  for (const answer of ['high', 'fast', 'have gone around']) {
    await page.getByRole('button', { name: answer, exact: true }).focus();
    await page.keyboard.press('Enter');
  }
};
const searched = (page: Page) =>
  page.locator('.root-search').waitFor({ state: 'detached', timeout: 100_000 });

describe('the debrief', () => {
  it('starts the study anew when its worker did not load, and says so when that is of no use', async () => {
    const { page, close } = await open({ before: WITHOUT_WEBGL });
    let refused = 0;
    await page.route('**/assets/study-*.js', (route) => {
      refused += 1;
      return refused <= 2 ? route.abort('connectionrefused') : route.continue();
    });
    await bringIn(page);
    await threeTaps(page);
    await page.getByText('The search failed').waitFor({ timeout: 10_000 });
    expect(await findBarriers(page)).toEqual([]);
    await page.getByRole('button', { name: 'search again' }).press('Enter');
    await page.getByText('At the gates the approach was stabilised').waitFor({ timeout: 30_000 });
    expect(await page.getByText('The search failed').count()).toBe(0);
    expect(refused).toBe(3);
    await close();
  });

  it('asks first, then says what to change, and shows it as a second aeroplane on one cursor', async () => {
    const { page, complaints, close } = await openDebrief();
    await page.getByText('First, how did you see it?').waitFor();
    expect(await page.locator('.debrief-plan').count()).toBe(0);
    await threeTaps(page);
    expect(await page.locator('.own-view-again').textContent()).toContain(
      'You said: high, fast, have gone around.',
    );

    // Every item of the flight's own report is there, with its value judged alike.
    const judged = body.result.items.length;
    await page.getByRole('button', { name: `everything (${judged})` }).waitFor();
    expect(await page.locator('.judged-items tbody tr:not(.group)').count()).toBe(judged);
    const short = body.result.items.filter((item) => item.band === 'amber' || item.band === 'red').length;
    await page.getByRole('button', { name: `what fell short (${short})` }).click();
    expect(await page.locator('.judged-items tbody tr:not(.group)').count()).toBe(short);

    await searched(page);
    expect((await page.locator('.root-sentence').textContent())?.length).toBeGreaterThan(10);
    await page.selectOption('#against', 'model');
    await page.locator('.glyph-other').first().waitFor();
    expect(await page.locator('.glyph-other').count()).toBeGreaterThan(0);
    expect(await page.locator('.plot-other').count()).toBeGreaterThan(0);

    const slider = page.getByLabel('Instant');
    await slider.focus();
    const before = await slider.inputValue();
    const clock = await page.locator('.player-clock').textContent();
    for (let i = 0; i < 8; i += 1) await page.keyboard.press('ArrowLeft');
    expect(Number(await slider.inputValue())).toBeLessThan(Number(before));
    expect(await page.locator('.player-clock').textContent()).not.toBe(clock);
    expect(
      await page
        .getByRole('heading', { name: `At ${await page.locator('.player-clock').textContent()}` })
        .count(),
    ).toBe(1);
    expect(complaints).toEqual([]);
    await close();
  });

  it('hands the aeroplane over at an instant, and keeps the branch with its parent', async () => {
    const { page, complaints, close } = await openDebrief();
    await threeTaps(page);
    await page.getByRole('button', { name: 'final', exact: true }).last().click();
    const at = (await page.locator('.player-clock').textContent()) ?? '';
    await page.getByRole('button', { name: 'try it differently from here' }).click();
    await page.waitForFunction((clock) => document.querySelector('.clock')?.textContent === clock, at);
    expect(await readClock(page)).toBe(at);
    // Flown on by the model pilot, as fast as it goes, to its end.
    await page.keyboard.press('4');
    await page.getByRole('button', { name: 'Watch it flown by the model pilot' }).click();
    await page.keyboard.press('0');
    await page.locator('.sheet-result').waitFor({ timeout: 90_000 });
    await page.getByRole('button', { name: 'keep this demonstration' }).click();
    await page.getByRole('button', { name: 'debrief', exact: true }).click();
    await page.locator('.glyph-other').first().waitFor();
    expect(await page.locator('#against').inputValue()).toBe('one');
    expect(complaints).toEqual([]);
    await close();
  });

  it.each([
    ['light', 1280, 720],
    ['dark', 1024, 700],
  ] as const)(
    'has no barriers in the %s theme, before the three taps and after',
    async (theme, width, height) => {
      const { page, complaints, close } = await openDebrief({ theme, width, height });
      await page.getByText('First, how did you see it?').waitFor();
      expect(await findBarriers(page)).toEqual([]);
      await threeTaps(page);
      await page.getByRole('heading', { name: 'Item by item' }).waitFor();
      expect(await findBarriers(page)).toEqual([]);
      expect(complaints).toEqual([]);
      await close();
    },
  );

  it('prints on two pages of A4 or Letter at most, the caution included, and saves as a picture', async () => {
    const { page, complaints, close } = await openDebrief();
    await threeTaps(page);
    await page.getByRole('heading', { name: 'Item by item' }).waitFor();
    for (const format of ['A4', 'Letter']) {
      const pdf = (await page.pdf({ format })).toString('latin1');
      expect(pdf.match(/\/Type\s*\/Page[^s]/g)?.length, format).toBeLessThanOrEqual(2);
    }
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.debrief-foot').isVisible()).toBe(true);
    expect(await page.getByRole('button', { name: 'play' }).isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'save as a picture' }).click();
    expect((await download).suggestedFilename()).toMatch(/\.png$/);
    expect(complaints).toEqual([]);
    await close();
  });
});
