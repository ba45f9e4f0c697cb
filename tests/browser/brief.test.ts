import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { findBarriers } from './support/axe.ts';
import { withBrowser } from './support/fixture.ts';

const { open } = withBrowser();

/** As after a first visit, what is chosen later being kept; a page of its own. */
const kept = (settings: object): string =>
  `if (localStorage.length === 0) localStorage.setItem('lapwing/settings', ${JSON.stringify(JSON.stringify({ seenStart: true, ...settings }))})`;

const turnTo = async (page: Page, route: 'brief' | 'own', heading: string): Promise<void> => {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, route);
  await page.getByRole('heading', { level: 1, name: heading }).waitFor();
};

/** Tabs on until the field with this label has the focus. */
const tabTo = async (page: Page, label: string): Promise<void> => {
  for (let i = 0; i < 80; i += 1) {
    await page.keyboard.press('Tab');
    const here = await page.evaluate(() => {
      const active = document.activeElement as HTMLInputElement | null;
      return active?.labels?.[0]?.textContent ?? active?.textContent ?? '';
    });
    if (here === label) return;
  }
  throw new Error(`a field "${label}" must be reached with the Tab key, was not in 80`);
};

const typeInto = async (page: Page, label: string, text: string): Promise<void> => {
  await tabTo(page, label);
  await page.keyboard.press('Control+a');
  await page.keyboard.type(text);
};

/** Every part of the sheet that is not wholly on the paper. */
const offThePaper = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const paper = document.querySelector('.brief')?.getBoundingClientRect();
    if (!paper) return ['no sheet'];
    const foot = document.querySelector('.brief-foot')?.getBoundingClientRect();
    const parts = [
      ...document.querySelectorAll(
        '.part, .brief-exercise, .brief-chart, .brief-table, .brief-head, .brief-foot',
      ),
    ];
    return parts.flatMap((part) => {
      const boxes = [...part.getClientRects()];
      const out = boxes.some(
        (box) =>
          box.height > 0 &&
          (box.right > paper.right + 1 ||
            box.bottom > (part.matches('.brief-foot') ? paper.bottom : (foot?.top ?? paper.bottom)) + 1),
      );
      return out ? [`${part.className}`] : [];
    });
  });

describe('the brief', () => {
  it('goes from one’s own runway and a METAR to one printed sheet, by keyboard alone', async () => {
    const { page, complaints, close } = await open({ before: kept({}) });
    await turnTo(page, 'own', 'My runway, my numbers');
    await typeInto(page, 'Name', 'Home field');
    await typeInto(page, 'Runway, one end', '7');
    await typeInto(page, 'Length, m', '3000 ft');
    await typeInto(page, 'Elevation, ft', '310');
    await typeInto(page, 'Variation, ° east', '-3');
    // The lights of the far end, 25: the second of two fields of the same name.
    await tabTo(page, 'Slope lights');
    await tabTo(page, 'Slope lights');
    await page.keyboard.type('P');
    await page.getByLabel('Their angle, °').waitFor();
    await tabTo(page, 'keep it and brief');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: /Home field, runway/ }).waitFor();

    await typeInto(page, 'or paste a METAR', 'METAR ABCD 211350Z 24012G22KT 9999 SCT025 18/12 Q1014 NOSIG');
    await page.getByText('wind 240 true is 243 magnetic, 12 kt gusting 22').waitFor();
    await page.getByRole('heading', { level: 1, name: 'Home field, runway 25' }).waitFor();
    expect(await page.getByText('aerodrome entered by you').count()).toBe(1);
    // 1,000 ft above an elevation of 310 ft, on QNH, on the way round.
    expect(await page.locator('.legs').textContent()).toContain('1,310');
    // Half of the 10 kt between wind and gust (FAA-H-8083-3C p. 9-20).
    expect(await page.locator('.part-approach').textContent()).toContain('half of the 10 kt');

    for (const format of ['A4', 'Letter'] as const) {
      const pdf = (await page.pdf({ format })).toString('latin1');
      expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length, format).toBe(1);
    }
    await page.emulateMedia({ media: 'print' });
    expect(await offThePaper(page)).toEqual([]);
    expect(await page.locator('.brief-foot').textContent()).toMatch(
      /For study only.*invented.*handbook.*local procedures and a licensed instructor decide/,
    );
    expect(await page.locator('.day').isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });

    // What was briefed is what is flown.
    await page.getByRole('button', { name: 'fly this' }).focus();
    await page.keyboard.press('Enter');
    await page.getByText(/Home field · runway 25/).waitFor();
    expect(complaints).toEqual([]);
    await close();
  });

  it('fits one sheet on the days with most to say', async () => {
    const days = [
      { aerodrome: 'dunlin-ridge', wind: '200/15g24', temperature: '33', circuit: { spacingNmi: 0.5 } },
      { aerodrome: 'plover-meadow', wind: '040/12g22', temperature: '-5', circuit: { spacingNmi: 0.5 } },
      { aerodrome: 'ptarmigan-flat', wind: '250/20g30', temperature: '30', circuit: { spacingNmi: 0.6 } },
    ];
    for (const day of days) {
      const { page, close } = await open({ before: kept(day) });
      await turnTo(page, 'brief', 'runway');
      await page.emulateMedia({ media: 'print' });
      expect(await offThePaper(page), day.aerodrome).toEqual([]);
      const pdf = (await page.pdf({ format: 'Letter' })).toString('latin1');
      expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length, day.aerodrome).toBe(1);
      await close();
    }
  });

  it('offers ways out of a conflict as buttons, and plans with the one that is pressed', async () => {
    const settings = { aerodrome: 'curlew-sands', wind: '220/08', circuit: { spacingNmi: 0.6 } };
    const { page, complaints, close } = await open({ before: kept(settings) });
    await turnTo(page, 'brief', 'Curlew Sands, runway 22');
    await page.getByText(/You will see .* whites? .*to 3-degree lights/).waitFor();
    await page.getByRole('button', { name: 'wider' }).click();
    await page.getByRole('heading', { name: 'The circuit as chosen' }).waitFor();
    expect(await page.getByText(/You will see/).count()).toBe(0);
    expect(await page.locator('.part-lights').textContent()).toContain('WWRR');
    await page.getByRole('button', { name: 'as the aerodrome has it' }).click();
    await page.getByRole('heading', { name: 'The circuit as chosen' }).waitFor({ state: 'detached' });
    expect(complaints).toEqual([]);
    await close();
  });

  it('keeps the last brief and says in a sentence what cannot be used', async () => {
    const { page, complaints, close } = await open({ before: kept({ wind: '220/08' }) });
    await turnTo(page, 'brief', 'Curlew Sands, runway 22');
    for (const [wind, sentence] of [
      ['370/10', /direction must be 000 to 360, was 370/],
      ['abc', /wind must be like 220\/08/],
      ['220/15g10', /gust must be above the mean wind of 15 kt, was 10/],
    ] as const) {
      await page.getByLabel('Wind, °M/kt').fill(wind);
      await page.getByText(sentence).waitFor();
    }
    await page.getByLabel('or paste a METAR').fill('ABCD 211350Z VRB12KT CAVOK 10/08 Q0998');
    await page.getByText(/"VRB12KT" gives no direction/).waitFor();
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Curlew Sands, runway 22');
    expect(complaints).toEqual([]);
    await close();
  });

  it('takes what was entered to another browser as one file, and refuses a damaged one in a sentence', async () => {
    const first = await open({ before: kept({}) });
    await turnTo(first.page, 'own', 'My runway, my numbers');
    const card = first.page.getByRole('form', { name: 'My numbers' });
    await card.getByLabel('Name').fill('Our trainer');
    await card.getByLabel('final', { exact: true }).first().fill('63');
    await card.getByRole('button', { name: 'keep the card', exact: true }).click();
    const saving = first.page.waitForEvent('download');
    await first.page.getByRole('button', { name: 'save the file' }).click();
    const path = await (await saving).path();
    const second = await open({ before: kept({}) });
    await turnTo(second.page, 'own', 'My runway, my numbers');
    await second.page.getByLabel('open a file').setInputFiles({
      name: 'broken.json',
      mimeType: 'application/json',
      buffer: Buffer.from('{"kind":"lapwing-own","version":1,"aerodromes":[{}],"cards":[]}'),
    });
    await second.page.getByText('broken.json, aerodromes[0]: id is missing').waitFor();
    await second.page.getByLabel('open a file').setInputFiles(path);
    await second.page.getByText('Taken in: Our trainer.').waitFor();
    await turnTo(second.page, 'brief', 'Curlew Sands');
    expect(await second.page.locator('.legs tbody').last().textContent()).toContain('63');
    expect([...first.complaints, ...second.complaints]).toEqual([]);
    await first.close();
    await second.close();
  });
});

describe('the brief of an exercise', () => {
  it('is chosen by keyboard, flown as briefed, and still there with the same weather after a reload', async () => {
    const { page, complaints, close } = await open({ before: kept({ wind: '220/08' }) });
    await turnTo(page, 'brief', 'Curlew Sands, runway 22');
    await tabTo(page, 'Exercise');
    await page.keyboard.type('Crosswind');
    const title = page.getByRole('heading', { level: 1, name: /: Crosswind circuit$/ });
    await title.waitFor();
    expect(await page.getByLabel('Wind, °M/kt').count()).toBe(0);
    const conditions = await page.locator('.brief-head p').first().textContent();
    const wind = /wind (\d{3})\/(\d{2})/.exec(conditions ?? '');
    if (wind === null) throw new Error(`a wind must stand in the conditions, was "${conditions}"`);
    await page.getByRole('button', { name: 'fly this' }).focus();
    await page.keyboard.press('Enter');
    const flown = page.locator('.bar-title', { hasText: `wind ${wind[1]}° ${Number(wind[2])} kt` });
    await flown.getByRole('heading', { name: 'Crosswind circuit' }).waitFor();
    await page.reload();
    await flown.getByRole('heading', { name: 'Crosswind circuit' }).waitFor();

    await turnTo(page, 'brief', ': Crosswind circuit');
    expect(await page.locator('.brief-head p').first().textContent()).toBe(conditions);
    await page.getByLabel('Exercise', { exact: true }).selectOption('');
    await page.getByRole('heading', { level: 1, name: 'Curlew Sands, runway 22', exact: true }).waitFor();
    expect(complaints).toEqual([]);
    await close();
  });

  it('takes one’s own runway and a METAR where it may be flown in any weather', async () => {
    const { page, complaints, close } = await open({ before: kept({}) });
    await turnTo(page, 'own', 'My runway, my numbers');
    await typeInto(page, 'Name', 'Home field');
    await typeInto(page, 'Runway, one end', '7');
    await typeInto(page, 'Length, m', '900');
    await typeInto(page, 'Elevation, ft', '310');
    await tabTo(page, 'keep it and brief');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: /Home field, runway/ }).waitFor();
    await page.getByLabel('Exercise', { exact: true }).selectOption({ label: 'Final and landing' });
    await page.getByLabel('Its weather').selectOption('mine');
    await page.getByLabel('or paste a METAR').fill('METAR ABCD 211350Z 24012G22KT 9999 SCT025 18/12 Q1014');
    await page.getByText('12 kt gusting 22').waitFor();
    await page.getByText(/It begins on final/).waitFor();
    await page.emulateMedia({ media: 'print' });
    expect(await offThePaper(page)).toEqual([]);
    expect(await page.locator('.brief-exercise').textContent()).toContain('you undershoot');
    await page.emulateMedia({ media: 'screen' });
    await page.getByLabel('Exercise', { exact: true }).selectOption({ label: 'Gusty day' });
    await page.getByRole('heading', { level: 1, name: /: Gusty day$/ }).waitFor();
    expect(await page.getByLabel('Its weather').isDisabled()).toBe(true);
    expect(complaints).toEqual([]);
    await close();
  });

  it('fits one sheet, whichever it is', async () => {
    const { page, complaints, close } = await open({ before: kept({}) });
    await turnTo(page, 'brief', 'runway');
    const ids = await page
      .getByLabel('Exercise', { exact: true })
      .locator('option')
      .evaluateAll((all) => all.map((each) => (each as HTMLOptionElement).value).filter((id) => id !== ''));
    expect(ids.length).toBe(24);
    for (const id of ids) {
      await page.emulateMedia({ media: 'screen' });
      await page.getByLabel('Exercise', { exact: true }).selectOption(id);
      await page.locator('.brief-exercise').waitFor();
      await page.emulateMedia({ media: 'print' });
      expect(await offThePaper(page), id).toEqual([]);
    }
    expect(await findBarriers(page)).toEqual([]);
    const pdf = (await page.pdf({ format: 'Letter' })).toString('latin1');
    expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length).toBe(1);
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('the brief of an exercise in a day of one’s own', () => {
  // The days with most to say, on the aeroplane and at the aerodrome with most to say
  const days = [
    {
      aeroplane: 'whimbrel',
      aerodrome: 'dunlin-ridge',
      wind: '200/15g24',
      temperature: '33',
      circuit: { spacingNmi: 0.5 },
    },
    { aerodrome: 'ptarmigan-flat', wind: '250/20g30', temperature: '30', circuit: { spacingNmi: 0.6 } },
  ];
  it.each(days)('fits one sheet whichever it is: $aerodrome, $wind', async (day) => {
    const settings = { ...day, exercise: 'normal-circuit', inMyWeather: true };
    const { page, complaints, close } = await open({ before: kept(settings) });
    await turnTo(page, 'brief', ': Normal circuit');
    const all = await page
      .getByLabel('Exercise', { exact: true })
      .locator('option')
      .evaluateAll((options) =>
        options.map((each) => ({ id: (each as HTMLOptionElement).value, title: each.textContent ?? '' })),
      );
    const off: string[] = [];
    for (const { id, title } of all.filter((each) => each.id !== '')) {
      await page.emulateMedia({ media: 'screen' });
      await page.getByLabel('Exercise', { exact: true }).selectOption(id);
      await page.getByRole('heading', { level: 1, name: `: ${title}` }).waitFor();
      const weather = page.getByLabel('Its weather');
      if (await weather.isEnabled()) {
        await weather.selectOption('mine');
        await page.locator('.brief-head p', { hasText: `wind ${day.wind}` }).waitFor();
      }
      await page.emulateMedia({ media: 'print' });
      for (const part of await offThePaper(page)) off.push(`${id}: ${part}`);
    }
    expect(off).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  });

  it('offers no way out where the exercise has its own circuit, and says whose it is', async () => {
    const { page, complaints, close } = await open({ before: kept({ exercise: 'short-field' }) });
    await turnTo(page, 'brief', ': Short field');
    // assets/exercises/short-field.json asks for 3.5 degrees, the lights of Curlew Sands stand at 3
    await page.getByText(/comes down at 3.5 degrees to 3-degree lights/).waitFor();
    await page.getByText('This exercise asks for its own circuit: 3.5° on final.').waitFor();
    expect(await page.getByRole('button', { name: 'wider' }).count()).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  });

  it('says of a missed base turn that it is past, and tells no height that is to be seen', async () => {
    const { page, complaints, close } = await open({ before: kept({ exercise: 'late-base-turn' }) });
    await turnTo(page, 'brief', ': Late base turn');
    expect(await page.locator('.part-approach').textContent()).not.toContain('Begin the base turn');
    await page.getByText('It begins on downwind, past the turn').waitFor();
    await page.getByLabel('Exercise', { exact: true }).selectOption('too-high-on-final');
    await page.getByRole('heading', { level: 1, name: ': Too high on final' }).waitFor();
    expect(await page.getByText(/begins here/).textContent()).toBe('begins here');
    expect(complaints).toEqual([]);
    await close();
  });

  it('shows the drawn day in the set-up sheet, and is left there for the circuit of the set-up', async () => {
    const settings = { exercise: 'crosswind-circuit', exerciseSeed: 7, wind: '220/08' };
    const { page, complaints, close } = await open({ before: kept(settings) });
    await turnTo(page, 'brief', ': Crosswind circuit');
    const drawn = /wind (\d{3}\/\d{2})/.exec(
      (await page.locator('.brief-head p').first().textContent()) ?? '',
    );
    await page.getByRole('button', { name: 'fly this' }).click();
    await page.getByRole('heading', { name: 'Crosswind circuit' }).waitFor();
    await page.getByRole('button', { name: 'set up' }).click();
    const sheet = page.locator('.sheet-setup');
    expect(await sheet.getByLabel('Wind', { exact: true }).inputValue()).toBe(drawn?.[1]);
    await sheet.getByLabel('Exercise').selectOption('');
    expect(await sheet.getByLabel('Wind', { exact: true }).inputValue()).toBe('220/08');
    await sheet.getByRole('button', { name: 'roll it out' }).click();
    await page.locator('.bar-title', { hasText: 'wind 220° 8 kt' }).waitFor();
    expect(await page.locator('.bar-title h1').textContent()).toBe('Normal circuit');
    expect(complaints).toEqual([]);
    await close();
  });
});

describe.each(['light', 'dark'] as const)('brief and own pages, %s', (theme) => {
  it.each([
    [1280, 720],
    [1024, 700],
  ])('have no barriers by axe-core and no sideways scrolling at %d x %d', async (width, height) => {
    const settings = { wind: '250/14g22', circuit: { spacingNmi: 0.6 } };
    const { page, complaints, close } = await open({ theme, width, height, before: kept(settings) });
    const found: string[] = [];
    for (const [route, heading] of [
      ['brief', 'Curlew Sands, runway 22'],
      ['own', 'My runway, my numbers'],
    ] as const) {
      await turnTo(page, route, heading);
      for (const barrier of await findBarriers(page)) found.push(`${route}: ${barrier}`);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      if (wide > 0) found.push(`${route}: ${wide} px too wide`);
    }
    expect(found).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  });
});
