/** The surface wind as it is said: degrees magnetic it blows from, knots, gusts above the mean or null. */
export interface SpokenWind {
  readonly windFromDegM: number;
  readonly windKt: number;
  readonly gustKt: number | null;
}

const SHAPE = /^(\d{3})\/(\d{2,3})(?:g(\d{2,3}))?$/i;
const HIGHEST_KT = 99;

/**
 * Reads `DDD/SS` or `DDD/SSgGG`; `000/00` is calm. Throws an Error whose message is a sentence with what was
 * found and what was expected; `place` says where it stood.
 */
export const parseWind = (text: string, place = 'wind'): SpokenWind => {
  const found = SHAPE.exec(text.trim());
  if (found === null) {
    throw new Error(`${place} must be like 220/08 or 220/15g25 (degrees magnetic/knots), was "${text}"`);
  }
  const windFromDegM = Number(found[1]);
  const windKt = Number(found[2]);
  const gustKt = found[3] === undefined ? null : Number(found[3]);
  if (windFromDegM > 360)
    throw new Error(`${place}: direction must be 000 to 360, was ${found[1]} in "${text}"`);
  if (windKt > HIGHEST_KT)
    throw new Error(`${place}: speed must be at most ${HIGHEST_KT} kt, was ${found[2]} in "${text}"`);
  if (gustKt !== null && gustKt > HIGHEST_KT) {
    throw new Error(`${place}: gust must be at most ${HIGHEST_KT} kt, was ${found[3]} in "${text}"`);
  }
  if (gustKt !== null && gustKt <= windKt) {
    throw new Error(`${place}: gust must be above the mean wind of ${windKt} kt, was ${gustKt} in "${text}"`);
  }
  return { windFromDegM, windKt, gustKt };
};

/** Reads the wind at circuit height, `DDD/SS` without gusts; empty: undefined, it follows from the surface wind. */
export const parseWindAbove = (
  text: string,
  place: string,
): Pick<SpokenWind, 'windFromDegM' | 'windKt'> | undefined => {
  if (text.trim() === '') return undefined;
  const { windFromDegM, windKt, gustKt } = parseWind(text, place);
  if (gustKt !== null) throw new Error(`${place} must be without gusts, like 240/18, was "${text}"`);
  return { windFromDegM, windKt };
};

const digits = (n: number, count: number): string => String(Math.round(n)).padStart(count, '0');

/** The same wind as text: `220/15g25`. */
export const windText = (wind: SpokenWind): string =>
  `${digits(wind.windFromDegM, 3)}/${digits(wind.windKt, 2)}${wind.gustKt === null ? '' : `g${digits(wind.gustKt, 2)}`}`;
