import { create } from 'zustand';
import type { Aeroplane } from '../aeroplane/schema.ts';
import { AEROPLANES } from '../catalogue.ts';
import { parseJson } from '../formats/json-text.ts';
import {
  aeroplaneOfCard,
  type OwnFile,
  ownFileText,
  parseOwnFile,
  type SpeedsCard,
} from '../formats/own-file.ts';

/** Runways and cards entered by the user, kept in this browser. */
const PLACE = 'lapwing/own';
const NONE: OwnFile = { aerodromes: [], cards: [] };

/** What was kept; nothing where storage is refused, empty or damaged. */
const readOwn = (): OwnFile => {
  try {
    const text = localStorage.getItem(PLACE);
    return text === null ? NONE : parseOwnFile(JSON.parse(text), 'kept places');
  } catch {
    return NONE;
  }
};

export const useOwnPlaces = create<OwnFile>()(() => readOwn());

export const ownPlaces = (): OwnFile => useOwnPlaces.getState();

/** Keeps them; false where the browser refuses, and they last for this visit. */
const keep = (own: OwnFile): boolean => {
  useOwnPlaces.setState(own);
  try {
    localStorage.setItem(PLACE, ownFileText(own));
    return true;
  } catch {
    return false;
  }
};

const withOne = <T extends { readonly id: string }>(all: readonly T[], one: T): readonly T[] => [
  ...all.filter((each) => each.id !== one.id),
  one,
];

export const keepAerodrome = (aerodrome: OwnFile['aerodromes'][number]): boolean =>
  keep({ ...ownPlaces(), aerodromes: withOne(ownPlaces().aerodromes, aerodrome) });

export const keepCard = (card: SpeedsCard): boolean =>
  keep({ ...ownPlaces(), cards: withOne(ownPlaces().cards, card) });

export const forgetAerodrome = (id: string): boolean =>
  keep({ ...ownPlaces(), aerodromes: ownPlaces().aerodromes.filter((each) => each.id !== id) });

export const forgetCard = (id: string): boolean =>
  keep({ ...ownPlaces(), cards: ownPlaces().cards.filter((each) => each.id !== id) });

/** Takes in a file; one with the same id replaces what is here. Throws an Error sentence, and nothing is taken. */
export const takeIn = (text: string, file: string): OwnFile => {
  const read = parseOwnFile(parseJson(text, file), file);
  for (const card of read.cards) flownBy(card);
  const own = ownPlaces();
  keep({
    aerodromes: read.aerodromes.reduce((all, one) => withOne(all, one), own.aerodromes),
    cards: read.cards.reduce((all, one) => withOne(all, one), own.cards),
  });
  return read;
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
