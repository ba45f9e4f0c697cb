// The logbook's page: files in and out, a long book, hostile files, both themes, keyboard alone.
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { parseJson } from '../../src/formats/json-text.ts';
import { parseLogbook } from '../../src/formats/logbook-json.ts';
import { manyAttemptsFile, oneAttemptFile } from '../support/attempt-files.ts';
import { bodyOf, headNamed, NO_HELP } from '../support/attempts.ts';
import { findBarriers } from './support/axe.ts';
import { WITHOUT_WEBGL } from './support/cockpit.ts';
import { withBrowser } from './support/fixture.ts';

const { open } = withBrowser();
const body = bodyOf(20);
const head = headNamed('one', { pilot: 'Pilot 1' });
let one = '';
beforeAll(() => {
  one = oneAttemptFile(head, body);
});

const openLogbook = async (options: Parameters<typeof open>[0] = {}) => {
  const visit = await open(options);
  await visit.page.goto(`${visit.page.url()}#logbook`);
  await visit.page.getByRole('heading', { name: 'Attempts' }).waitFor();
  return visit;
};
const bringIn = (page: Page, text: string, name = 'x.json') =>
  page.setInputFiles('input[type=file]', { name, mimeType: 'application/json', buffer: Buffer.from(text) });
const status = (page: Page) => page.locator('.log-said');
const rows = (page: Page) => page.locator('.log-list tbody tr');

describe('the logbook', () => {
  it('takes a file in, keeps notes, finds by them, deletes with undo, and saves the same again', async () => {
    const { page, complaints, close } = await openLogbook();
    await bringIn(page, one);
    await status(page).getByText('1 attempt added').waitFor();
    expect(await rows(page).count()).toBe(1);

    await page.getByLabel('instructor’s notes').fill('Look for the windsock.');
    await page.getByLabel('search').fill('windsock');
    await page.getByRole('status').getByText('1 of 1 attempts').waitFor();
    await page.getByLabel('search').fill('hailstones');
    await page.getByText('Nothing is found.').waitFor();
    await page.getByLabel('search').fill('');

    await page.getByRole('button', { name: 'delete', exact: true }).click();
    await page.getByText('Nothing has been flown yet').waitFor();
    await page.getByRole('button', { name: 'undo' }).click();
    await rows(page).first().waitFor();

    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: /^Save as JSON/ }).click();
    const file = await (await download).path();
    const [before] = parseLogbook(parseJson(one, 'before'), 'before');
    const [after] = parseLogbook(parseJson(readFileSync(file, 'utf8'), 'after'), 'after');
    expect(after?.head).toEqual({ ...before?.head, notes: 'Look for the windsock.' });
    expect(JSON.stringify(after?.body)).toBe(JSON.stringify(before?.body));
    for (const kind of ['CSV', 'GPX', 'KML']) {
      const other = page.waitForEvent('download');
      await page.getByRole('button', { name: new RegExp(`^Save as ${kind}`) }).click();
      expect((await other).suggestedFilename()).toBe(`lapwing-2026-01-31-0930-test.${kind.toLowerCase()}`);
    }
    expect(complaints).toEqual([]);
    await close();
  });

  it('refuses hostile files with one sentence, changes nothing, and takes names as text', async () => {
    const { page, complaints, close } = await openLogbook();
    const script = '<img src=x onerror="document.title=1">';
    await bringIn(page, oneAttemptFile({ ...head, pilot: script, notes: script }, body));
    await status(page).getByText('1 attempt added').waitFor();
    await page.selectOption('#pilot', script);
    await rows(page).first().waitFor();
    expect(await page.locator('.logbook img').count()).toBe(0);
    expect(await page.getByLabel('instructor’s notes').inputValue()).toBe(script);

    const hostile: Readonly<Record<string, string>> = {
      'cut.json': one.slice(0, -300),
      'other.json': '{"type":"FeatureCollection","features":[]}',
      'newer.json': one.replace('"version":2', '"version":99'),
      'keys.json': one.replace('{"format"', '{"__proto__":{"polluted":1},"format"').slice(0, -40),
      'text.json': 'not at all',
      'empty.json': '',
    };
    for (const [name, text] of Object.entries(hostile)) {
      await bringIn(page, text, name);
      await status(page).getByText(name).waitFor();
      await page.locator('.log-said.wrong').waitFor();
      expect(await rows(page).count(), name).toBe(1);
    }
    expect(await page.evaluate(() => ({}) as { polluted?: number }).then((o) => o.polluted)).toBeUndefined();
    expect(complaints).toEqual([]);
    await close();
  });

  it('checks a file off the main thread, says how far it is, and stops when it is told to', async () => {
    const { page, complaints, close } = await openLogbook({ theme: 'dark', before: WITHOUT_WEBGL });
    await expect
      .poll(() => page.workers().some((worker) => worker.url().includes('check-logbook')))
      .toBe(true);
    const heads = Array.from({ length: 1000 }, (_, i) => headNamed(`a-${i}`, { pilot: 'Pilot 1' }));
    await bringIn(page, manyAttemptsFile(heads, body), 'many.json');
    await page.locator('.log-import-count').getByText('of 1000').waitFor();
    expect(await findBarriers(page)).toEqual([]);
    await page.getByRole('button', { name: 'cancel' }).press('Enter');
    await page.getByRole('status').getByText('The import was cancelled; nothing was changed.').waitFor();
    expect(await rows(page).count()).toBe(0);
    await bringIn(page, one);
    await page.getByRole('status').getByText('1 attempt added').waitFor();
    expect(complaints).toEqual([]);
    await close();
  });

  it('shows a thousand attempts a page at a time, with what to practise next and how it goes', async () => {
    const { page, complaints, close } = await openLogbook();
    const heads = Array.from({ length: 1000 }, (_, i) =>
      headNamed(`a-${i}`, {
        pilot: 'Pilot 1',
        when: new Date(Date.UTC(2026, 0, 1) + i * 3_600_000).toISOString(),
        help: NO_HELP,
        notes: i === 7 ? 'heron' : '',
      }),
    );
    await bringIn(page, manyAttemptsFile(heads, body));
    await status(page).getByText('1000 attempts added').waitFor();
    await page.getByText('page 1 of 40').waitFor();
    expect(await rows(page).count()).toBe(25);
    await page.getByLabel('search').fill('heron');
    await page.getByRole('status').getByText('1 of 1000 attempts').waitFor();
    expect(await page.getByRole('heading', { name: /^Practise next/ }).count()).toBe(1);
    expect(complaints).toEqual([]);
    await close();
  });

  it.each([
    ['light', 1280, 720],
    ['dark', 1024, 700],
  ] as const)(
    'has no barriers, in the %s theme, and is worked by keys alone',
    async (theme, width, height) => {
      const { page, complaints, close } = await openLogbook({ theme, width, height });
      await bringIn(page, one);
      await status(page).getByText('1 attempt added').waitFor();
      expect(await findBarriers(page)).toEqual([]);
      await page.getByRole('button', { name: 'another pilot' }).focus();
      await page.keyboard.press('Enter');
      await page.getByLabel('name of the new pilot').waitFor();
      await page.keyboard.type('Dunlin');
      await page.keyboard.press('Enter');
      await page.getByText('Nothing has been flown yet').waitFor();
      expect(await page.locator('#pilot').inputValue()).toBe('Dunlin');
      expect(complaints).toEqual([]);
      await close();
    },
  );
});
