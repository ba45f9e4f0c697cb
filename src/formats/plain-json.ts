import { base64FromDoubles, doublesFromBase64 } from './base64.ts';

/**
 * Memories as JSON without losing a bit: what JSON cannot say (-0, not a number, infinities, undefined,
 * arrays of doubles) becomes an object with the single key `$`.
 */
const ODD: readonly (readonly [string, unknown])[] = [
  ['-0', -0],
  ['nan', Number.NaN],
  ['+inf', Number.POSITIVE_INFINITY],
  ['-inf', Number.NEGATIVE_INFINITY],
  ['undefined', undefined],
];
const DOUBLES = 'f64:';

export const jsonFromPlain = (value: unknown): unknown => {
  const odd = ODD.find(([, it]) => Object.is(it, value));
  if (odd !== undefined) return { $: odd[0] };
  if (typeof value !== 'object' || value === null) return value;
  if (value instanceof Float64Array) return { $: DOUBLES + base64FromDoubles(value) };
  if (Array.isArray(value)) return value.map(jsonFromPlain);
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, jsonFromPlain(inner)]));
};

/** Throws an Error sentence at a mark it does not know. */
export const plainFromJson = (json: unknown, place: string): unknown => {
  if (typeof json !== 'object' || json === null) return json;
  if (Array.isArray(json)) return json.map((inner, i) => plainFromJson(inner, `${place}[${i}]`));
  const mark = (json as { $?: unknown }).$;
  if (typeof mark === 'string') {
    if (mark.startsWith(DOUBLES)) return doublesFromBase64(mark.slice(DOUBLES.length), place);
    const odd = ODD.find(([name]) => name === mark);
    if (odd === undefined) throw new Error(`${place} must be a known mark, was "${mark.slice(0, 20)}"`);
    return odd[1];
  }
  return Object.fromEntries(
    Object.entries(json).map(([key, inner]) => [key, plainFromJson(inner, `${place}.${key}`)]),
  );
};
