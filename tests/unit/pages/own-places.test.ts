// One's own runways and cards, and the settings, in the browser's storage: damaged texts, two tabs, no room.
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Aerodrome } from '../../../src/aerodrome/schema.ts';
import { ownFileText } from '../../../src/formats/own-file.ts';
import { aerodromeNamed } from '../../support/aerodromes.ts';

/** The browser's storage (HTML, Web Storage), with room for so many characters. */
const storageOf = (room = Number.POSITIVE_INFINITY): Record<string, unknown> => {
  const store: Record<string, unknown> = {};
  const hidden = (name: string, value: unknown) => Object.defineProperty(store, name, { value });
  hidden('getItem', (key: string) => store[key] ?? null);
  hidden('setItem', (key: string, text: string) => {
    const others = Object.entries(store).filter(([at]) => at !== key);
    const taken = others.reduce((sum, [, value]) => sum + String(value).length, 0);
    if (taken + text.length > room) throw new DOMException('full', 'QuotaExceededError');
    store[key] = text;
  });
  hidden('removeItem', (key: string) => delete store[key]);
  return store;
};

/** Each tab has its own modules and the same storage. */
const openTab = async () => {
  vi.resetModules();
  const places = await import('../../../src/pages/own/own-places.ts');
  const { useDamaged, forgetDamaged } = await import('../../../src/pages/own/damaged.ts');
  const { readSettings, writeSettings } = await import('../../../src/pages/settings.ts');
  return { ...places, damaged: () => useDamaged.getState().all, forgetDamaged, readSettings, writeSettings };
};

const field = (id: string, lengthM = 900): Aerodrome => {
  const known = aerodromeNamed('curlew-sands');
  return { ...known, id, title: `Field ${id}`, runway: { ...known.runway, lengthM } };
};
const allInOne = (...aerodromes: Aerodrome[]): string => ownFileText({ aerodromes, cards: [] });
const ids = (tab: Awaited<ReturnType<typeof openTab>>) => tab.ownPlaces().aerodromes.map(({ id }) => id);

let storage: Record<string, unknown>;
const use = (room?: number): void => {
  storage = storageOf(room);
  vi.stubGlobal('localStorage', storage);
};
beforeEach(() => use());
afterEach(() => vi.unstubAllGlobals());

describe('what was damaged', () => {
  it.each([
    ['cut off', (text: string) => text.slice(0, -30)],
    ['of a later version', (text: string) => text.replace('"version": 1', '"version": 9')],
  ])(
    'is set aside to the letter and told, when it was %s, and new things are kept beside it',
    async (_, spoil) => {
      const text = spoil(allInOne(field('a')));
      storage['lapwing/own'] = text;
      const tab = await openTab();
      expect(tab.keepAerodrome(field('b'))).toBe(true);
      const [aside] = tab.damaged();
      expect(aside?.text).toBe(text);
      expect(aside?.why).toMatch(/^runways and cards/);
      expect(ids(await openTab())).toContain('b');
      expect((await openTab()).damaged().map((each) => each.text)).toEqual([text]);
      tab.forgetDamaged(aside?.key ?? '');
      expect((await openTab()).damaged()).toEqual([]);
    },
  );

  it('takes nothing with it that can be read', async () => {
    const spoilt = { ...field('b'), runway: { ...field('b').runway, lengthM: -1 } };
    storage['lapwing/own'] = allInOne(field('a'), spoilt, field('c'));
    const tab = await openTab();
    expect(ids(tab)).toEqual(['a', 'c']);
    expect(tab.damaged().length).toBe(1);
  });

  it('stays where it is while there is no room elsewhere, and is not written over', async () => {
    const text = allInOne(field('a')).slice(0, -30);
    use(text.length + 10);
    storage['lapwing/own/aerodromes/a'] = text;
    const tab = await openTab();
    expect(tab.damaged().map((each) => each.text)).toEqual([text]);
    expect(tab.keepAerodrome(field('a'))).toBe(false);
    expect(storage['lapwing/own/aerodromes/a']).toBe(text);
    expect(ids(tab)).toEqual(['a']);
  });

  it('in the settings is set aside too', async () => {
    storage['lapwing/settings'] = '{"ownLimits":{"strict":{';
    const tab = await openTab();
    expect(tab.writeSettings({ theme: 'night' })).toBe(true);
    expect(tab.damaged().map((each) => each.text)).toEqual(['{"ownLimits":{"strict":{']);
    expect((await openTab()).readSettings().theme).toBe('night');
  });
});

describe('two tabs', () => {
  it('both keep what they were given', async () => {
    const [one, two] = [await openTab(), await openTab()];
    one.keepAerodrome(field('a'));
    two.keepAerodrome(field('b'));
    one.forgetAerodrome('nothing');
    expect(ids(await openTab())).toEqual(['a', 'b']);
  });

  it('agree on the later writing of one thing, and on nothing else', async () => {
    const [one, two] = [await openTab(), await openTab()];
    one.keepAerodrome(field('a', 800));
    two.keepAerodrome(field('a', 1000));
    one.keepAerodrome(field('b'));
    const seen = (await openTab()).ownPlaces().aerodromes;
    expect(seen.map(({ id, runway }) => [id, runway.lengthM])).toEqual([
      ['a', 1000],
      ['b', 900],
    ]);
  });

  it('change different settings without undoing each other’s', async () => {
    const [one, two] = [await openTab(), await openTab()];
    one.writeSettings({ ownLimits: { strict: { speed: { below: 1, above: 2 } } } });
    two.writeSettings({ theme: 'night' });
    const read = (await openTab()).readSettings();
    expect([read.theme, read.ownLimits]).toEqual(['night', { strict: { speed: { below: 1, above: 2 } } }]);
  });
});

it('what was kept all in one text is found again, each in its own place', async () => {
  storage['lapwing/own'] = allInOne(field('a'), field('b'));
  expect(ids(await openTab())).toEqual(['a', 'b']);
  expect(Object.keys(storage).sort()).toEqual(['lapwing/own/aerodromes/a', 'lapwing/own/aerodromes/b']);
  expect(ids(await openTab())).toEqual(['a', 'b']);
});

it('what finds no room lasts for the visit, and is said', async () => {
  use(10);
  const tab = await openTab();
  expect(tab.keepAerodrome(field('a'))).toBe(false);
  expect(ids(tab)).toEqual(['a']);
  expect(ids(await openTab())).toEqual([]);
});
