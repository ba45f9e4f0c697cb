import { basename } from 'node:path';
import { parseAerodrome } from '../aerodrome/parse.ts';
import type { Aerodrome } from '../aerodrome/schema.ts';
import { parseAeroplane } from '../aeroplane/parse.ts';
import type { Aeroplane } from '../aeroplane/schema.ts';
import { aerodromeNamed, aeroplaneNamed } from '../catalogue.ts';
import { parseMetarText } from '../formats/metar.ts';
import { aeroplaneOfCard, isOwnFile, parseOwnFile } from '../formats/own-file.ts';
import { parseWind, parseWindAbove } from '../formats/wind-text.ts';
import type { Weather } from '../simulation/scenario.ts';
import { readJson } from './files.ts';
import { numberOption, type Options, wordOption } from './options.ts';

const isFile = (text: string): boolean => text.toLowerCase().endsWith('.json');

/** Of what one entered in the page: the one kept last. */
const lastOf = <T>(all: readonly T[], what: string, file: string): T => {
  const last = all.at(-1);
  if (last === undefined) throw new Error(`${file}: ${what} must hold at least one, was empty`);
  return last;
};

/** A built-in one, the file of one, or the card of the file that the page saves: its model with the card's figures. */
export const aeroplaneFrom = (text: string, folder: string): Aeroplane => {
  if (!isFile(text)) return aeroplaneNamed(text);
  const file = basename(text);
  const json = readJson(folder, text);
  if (!isOwnFile(json)) return parseAeroplane(json, file);
  const card = lastOf(parseOwnFile(json, file).cards, 'cards', file);
  return aeroplaneOfCard(card, aeroplaneNamed(card.flownBy));
};

/** A built-in one, the file of one, or the runway of the file that the page saves. */
export const aerodromeFrom = (text: string, folder: string): Aerodrome => {
  if (!isFile(text)) return aerodromeNamed(text);
  const file = basename(text);
  const json = readJson(folder, text);
  if (!isOwnFile(json)) return parseAerodrome(json, file);
  return lastOf(parseOwnFile(json, file).aerodromes, 'aerodromes', file);
};

/** What the options say of the day, explicit ones before the METAR; what neither says stays the exercise's. */
export const weatherFrom = (options: Options, aerodrome: Aerodrome): Partial<Weather> => {
  const metar =
    options.metar === undefined ? null : parseMetarText(options.metar, aerodrome.variationDegE, '--metar');
  const reported = metar !== null && {
    windFromDegM: metar.windFromDegM,
    windKt: metar.windKt,
    gustKt: metar.gustKt,
    ...(metar.temperatureC !== null && { temperatureC: metar.temperatureC }),
    ...(metar.dewPointC !== null && { dewPointC: metar.dewPointC }),
    ...(metar.qnhHpa !== null && { qnhHpa: metar.qnhHpa }),
  };
  const temperatureC = numberOption(options, 'temp', -60, 60);
  const qnhHpa = numberOption(options, 'qnh', 850, 1090);
  const above = parseWindAbove(options['wind-above'] ?? '', '--wind-above');
  return {
    ...reported,
    ...(options.wind !== undefined && parseWind(options.wind, '--wind')),
    ...(above !== undefined && { above }),
    ...(options.turbulence !== undefined && {
      turbulence: wordOption(options, 'turbulence', ['none', 'light', 'moderate'], 'none'),
    }),
    // The report's dew point belongs to its own temperature
    ...(temperatureC !== null && { temperatureC, dewPointC: null }),
    ...(qnhHpa !== null && { qnhHpa }),
  };
};
