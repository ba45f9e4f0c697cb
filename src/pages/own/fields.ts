import { mFromFt } from '../../units/conversions.ts';

/** What is typed into a field, checked as typed: the value, or an Error sentence with the field's name. */
export type Reader<T> = (text: string) => T;

const shown = (text: string): string => (text.trim() === '' ? 'nothing' : `"${text.trim()}"`);

const plainNumber = (text: string): number => {
  const tidy = text
    .trim()
    .replace(/,(?=\d{3}\b)/g, '')
    .replace('−', '-');
  return /^[+-]?(\d+(\.\d*)?|\.\d+)$/.test(tidy) ? Number(tidy) : Number.NaN;
};

/** A number between two ends, both included. */
export const numberField =
  (name: string, low: number, high: number): Reader<number> =>
  (text) => {
    const value = plainNumber(text);
    if (value >= low && value <= high) return value;
    throw new Error(`${name} must be a number from ${low} to ${high}, was ${shown(text)}`);
  };

/** As `numberField`, or null where nothing is typed. */
export const optionalNumber = (name: string, low: number, high: number): Reader<number | null> => {
  const read = numberField(name, low, high);
  return (text) => (text.trim() === '' ? null : read(text));
};

/** Metres; feet where the text ends in ft. */
export const lengthField = (name: string, lowM: number, highM: number): Reader<number> => {
  const read = (text: string): number => {
    const found = /^(.*?)\s*(m|ft)?$/i.exec(text.trim());
    const value = plainNumber(found?.[1] ?? '');
    return found?.[2]?.toLowerCase() === 'ft' ? Math.round(mFromFt(value)) : value;
  };
  return (text) => {
    const metres = read(text);
    if (metres >= lowM && metres <= highM) return metres;
    throw new Error(`${name} must be ${lowM} to ${highM} m (or feet, like 3000 ft), was ${shown(text)}`);
  };
};

export const optionalLength = (name: string, lowM: number, highM: number): Reader<number | null> => {
  const read = lengthField(name, lowM, highM);
  return (text) => (text.trim() === '' ? null : read(text));
};

export const nameField =
  (name: string): Reader<string> =>
  (text) => {
    const tidy = text.trim().replaceAll(/\s+/g, ' ');
    if (tidy.length >= 1 && tidy.length <= 40) return tidy;
    throw new Error(`${name} must be 1 to 40 letters, was ${tidy === '' ? 'nothing' : `${tidy.length}`}`);
  };

/** As painted: 01 to 36, with L, R or C where there are parallels. */
export const designatorField: Reader<string> = (text) => {
  const found = /^(\d{1,2})([LRC])?$/.exec(text.trim().toUpperCase());
  const number = Number(found?.[1]);
  if (found !== null && number >= 1 && number <= 36)
    return `${String(number).padStart(2, '0')}${found[2] ?? ''}`;
  throw new Error(`runway must be 01 to 36, with L, R or C where painted, was ${shown(text)}`);
};

/** Every field's sentence; empty where all can be used. */
export const wrongIn = <D extends object>(
  draft: D,
  readers: { readonly [K in keyof D]?: Reader<unknown> },
): Partial<Record<keyof D, string>> => {
  const wrong: Partial<Record<keyof D, string>> = {};
  for (const key of Object.keys(readers) as (keyof D)[]) {
    try {
      readers[key]?.(String(draft[key]));
    } catch (error) {
      wrong[key] = error instanceof Error ? error.message : String(error);
    }
  }
  return wrong;
};

/** `My home field` as `own-my-home-field`. */
export const ownId = (title: string): string =>
  `own-${
    title
      .toLowerCase()
      .replaceAll(/[^a-z0-9]+/g, '-')
      .replaceAll(/^-|-$/g, '') || 'place'
  }`;
