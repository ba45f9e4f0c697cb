import { create } from 'zustand';
import type { Aeroplane } from '../../aeroplane/schema.ts';
import { AEROPLANES } from '../../catalogue.ts';
import { parseJson } from '../../formats/json-text.ts';
import {
  aeroplaneOfCard,
  type OwnFile,
  ownFileText,
  parseOwnFile,
  type SpeedsCard,
} from '../../formats/own-file.ts';
import { isAside, setAside, showDamaged, useDamaged } from './damaged.ts';

/**
 * Runways and cards entered by the user, kept in this browser, each under a key of its own and written in one stroke:
 * of two tabs the later writing of one thing wins over that thing only.
 */
const PLACE = 'lapwing/own/';
/** All in one text: where they were kept before each had its own place. */
const ALL_IN_ONE = 'lapwing/own';
/** What the texts are called in sentences. */
const KEPT = 'runways and cards';
const NONE: OwnFile = { aerodromes: [], cards: [] };

type Kind = keyof OwnFile;
type Own = OwnFile[Kind][number];

const placeOf = (kind: Kind, id: string): string => `${PLACE}${kind}/${id}`;
const textOf = (kind: Kind, one: Own): string => ownFileText({ ...NONE, [kind]: [one] });

/** What could not be kept, for this visit. */
const loose = new Map<string, { readonly kind: Kind; readonly one: Own }>();

const sentence = (error: unknown): string => (error instanceof Error ? error.message : String(error));

const parse = (text: string): OwnFile => parseOwnFile(parseJson(text, KEPT), KEPT);

/** One kept thing; what cannot be read is set aside, and stays in its place where there is no room for that. */
const readOne = (key: string, text: string): OwnFile => {
  try {
    return parse(text);
  } catch (error) {
    setAside(key, text, sentence(error));
    return NONE;
  }
};

/** Of a text that cannot be read as a whole: those parts that can. */
const readableOf = (text: string): OwnFile => {
  const found: OwnFile[] = [];
  try {
    const whole = parseJson(text, '') as Readonly<Record<string, unknown>>;
    for (const kind of ['aerodromes', 'cards'] as const) {
      const all = whole[kind];
      for (const one of Array.isArray(all) ? all : []) {
        try {
          found.push(parseOwnFile({ ...whole, ...NONE, [kind]: [one] }, ''));
        } catch {
          // This one is in the text that was set aside.
        }
      }
    }
  } catch {
    // None of it can be read.
  }
  return {
    aerodromes: found.flatMap(({ aerodromes }) => aerodromes),
    cards: found.flatMap(({ cards }) => cards),
  };
};

/** Gives each its own place. One that is there already was written later and stays. */
const spreadOut = (text: string): void => {
  const { aerodromes, cards } = readableOf(text);
  const spread = (kind: Kind, one: Own) => {
    const place = placeOf(kind, one.id);
    if (localStorage.getItem(place) === null) localStorage.setItem(place, textOf(kind, one));
  };
  for (const one of aerodromes) spread('aerodromes', one);
  for (const one of cards) spread('cards', one);
  try {
    parse(text);
    localStorage.removeItem(ALL_IN_ONE);
  } catch (error) {
    setAside(ALL_IN_ONE, text, sentence(error));
  }
};

const byTitle = <T extends { readonly id: string; readonly title: string }>(
  all: readonly T[],
): readonly T[] => [...all].sort((a, b) => a.title.localeCompare(b.title) || a.id.localeCompare(b.id));

/** What is kept now, by whichever tab; nothing where storage is refused. */
const readOwn = (): OwnFile => {
  const aerodromes = new Map<string, OwnFile['aerodromes'][number]>();
  const cards = new Map<string, SpeedsCard>();
  const take = (read: OwnFile) => {
    for (const one of read.aerodromes) aerodromes.set(one.id, one);
    for (const one of read.cards) cards.set(one.id, one);
  };
  try {
    const before = localStorage.getItem(ALL_IN_ONE);
    if (before !== null) {
      try {
        spreadOut(before);
      } catch {
        // No room to spread them out: they are read where they are.
        take(readableOf(before));
      }
    }
    for (const key of Object.keys(localStorage)) {
      if (key.startsWith(PLACE)) take(readOne(key, localStorage.getItem(key) ?? ''));
    }
  } catch {
    // Storage is refused: what is entered lasts for this visit.
  }
  for (const { kind, one } of loose.values()) take({ ...NONE, [kind]: [one] });
  return { aerodromes: byTitle([...aerodromes.values()]), cards: byTitle([...cards.values()]) };
};

export const useOwnPlaces = create<OwnFile>()(() => readOwn());

export const ownPlaces = (): OwnFile => useOwnPlaces.getState();

/** What another tab keeps or forgets is shown here too. */
if (typeof window !== 'undefined') {
  window.addEventListener('storage', ({ key }) => {
    if (key === null || key.startsWith(ALL_IN_ONE)) useOwnPlaces.setState(readOwn());
    if (key === null || isAside(key)) showDamaged();
  });
}

/** Keeps one; false where the browser refuses, and it lasts for this visit. */
const keep = (kind: Kind, one: Own): boolean => {
  const place = placeOf(kind, one.id);
  let kept = true;
  try {
    // What cannot be read, and found no room elsewhere, is not written over
    if (useDamaged.getState().all.some(({ key }) => key === place)) throw new Error('no room');
    localStorage.setItem(place, textOf(kind, one));
    loose.delete(place);
  } catch {
    loose.set(place, { kind, one });
    kept = false;
  }
  useOwnPlaces.setState(readOwn());
  return kept;
};

const forget = (kind: Kind, id: string): void => {
  loose.delete(placeOf(kind, id));
  try {
    localStorage.removeItem(placeOf(kind, id));
  } catch {
    // Nothing was kept.
  }
  useOwnPlaces.setState(readOwn());
};

export const keepAerodrome = (aerodrome: OwnFile['aerodromes'][number]): boolean =>
  keep('aerodromes', aerodrome);

export const keepCard = (card: SpeedsCard): boolean => keep('cards', card);

export const forgetAerodrome = (id: string): void => forget('aerodromes', id);

export const forgetCard = (id: string): void => forget('cards', id);

/** Takes in a file; one with the same id replaces what is here. Throws an Error sentence, and nothing is taken. */
export const takeIn = (text: string, file: string): { readonly read: OwnFile; readonly kept: boolean } => {
  const read = parseOwnFile(parseJson(text, file), file);
  for (const card of read.cards) flownBy(card);
  const kept = [...read.aerodromes.map(keepAerodrome), ...read.cards.map(keepCard)];
  return { read, kept: kept.every(Boolean) };
};

/** The model that flies a card, with the card's figures. Throws an Error sentence where they are at odds. */
export const flownBy = (card: SpeedsCard): Aeroplane => {
  const model = AEROPLANES.find((each) => each.id === card.flownBy) ?? AEROPLANES[0];
  if (model === undefined) throw new Error('there is no built-in aeroplane to fly the card');
  return aeroplaneOfCard(card, model);
};

/** Every card that still fits a model. */
export const ownAeroplanes = (): readonly Aeroplane[] =>
  ownPlaces().cards.flatMap((card) => {
    try {
      return [flownBy(card)];
    } catch {
      return [];
    }
  });
