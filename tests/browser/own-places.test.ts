// One's own runways in the browser's storage: damaged, and kept by two tabs at once.
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { findBarriersByDayAndNight } from './support/axe.ts';
import { WITHOUT_WEBGL } from './support/cockpit.ts';
import { withBrowser } from './support/fixture.ts';

const { open } = withBrowser();

const DAMAGED = '{"kind":"lapwing-own","version":1,"aerodromes":[{"id":"mine","ti';

const keepRunway = async (page: Page, name: string): Promise<void> => {
  const form = page
    .locator('form')
    .filter({ has: page.getByRole('heading', { name: 'My runway', exact: true }) });
  await form.getByLabel('Name').fill(name);
  await form.getByLabel('Runway, one end').fill('22');
  await form.getByLabel('Length, m').fill('900');
  await form.getByLabel('Elevation, ft').fill('120');
  await form.getByRole('button', { name: 'keep it', exact: true }).click();
  await page.getByRole('status').getByText(`${name} is kept`).waitFor();
};
const openOnes = (page: Page) =>
  page.locator('.own-title').first().getByLabel('Open').locator('option').allTextContents();

it('a damaged text is told and kept to the letter until it is deleted', async () => {
  const { page, complaints, close } = await open({
    before: `${WITHOUT_WEBGL}; if (localStorage.length === 0) localStorage.setItem('lapwing/own', ${JSON.stringify(DAMAGED)});`,
  });
  await page.evaluate(() => location.assign('#own'));
  await page.getByRole('heading', { name: 'My runway, my numbers' }).waitFor();
  await keepRunway(page, 'Home field');
  const kept = () => page.evaluate(() => Object.values(localStorage).join('\n'));
  expect(await kept()).toContain(DAMAGED);
  const note = page.getByRole('region', { name: 'Set aside' });
  await note.getByText('could not be read').waitFor();
  expect(await findBarriersByDayAndNight(page)).toEqual([]);
  const saved = page.waitForEvent('download');
  await note.getByRole('button', { name: 'save the text' }).press('Enter');
  const stream = await (await saved).createReadStream();
  let text = '';
  for await (const piece of stream) text += String(piece);
  expect(text).toBe(DAMAGED);
  await note.getByRole('button', { name: 'delete it' }).press('Enter');
  await note.waitFor({ state: 'detached' });
  expect(await kept()).not.toContain(DAMAGED);
  expect(await openOnes(page)).toContain('Home field');
  expect(complaints).toEqual([]);
  await close();
});

it('two tabs keep a runway each, and each shows both', async () => {
  const { page, context, close } = await open({ before: WITHOUT_WEBGL });
  const other = await context.newPage();
  await other.goto(`${page.url()}#own`);
  await page.evaluate(() => location.assign('#own'));
  for (const each of [page, other])
    await each.getByRole('heading', { name: 'My runway, my numbers' }).waitFor();
  await keepRunway(page, 'East field');
  await keepRunway(other, 'West field');
  for (const each of [page, other]) {
    await each.locator('option', { hasText: 'East field' }).first().waitFor({ state: 'attached' });
    await each.locator('option', { hasText: 'West field' }).first().waitFor({ state: 'attached' });
  }
  await other.reload();
  await other.getByRole('heading', { name: 'My runway, my numbers' }).waitFor();
  expect(await openOnes(other)).toEqual(['a new one', 'East field', 'West field']);
  await close();
});
