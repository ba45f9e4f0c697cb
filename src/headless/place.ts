import { basename } from 'node:path';
import { parseAerodrome } from '../aerodrome/parse.ts';
import type { Aerodrome } from '../aerodrome/schema.ts';
import { parseAeroplane } from '../aeroplane/parse.ts';
import type { Aeroplane } from '../aeroplane/schema.ts';
import { isaTemperatureK } from '../atmosphere/isa.ts';
import { aerodromeNamed, aeroplaneNamed } from '../catalogue.ts';
import { parseMetarText } from '../formats/metar.ts';
import { aeroplaneOfCard, isOwnFile, parseOwnFile } from '../formats/own-file.ts';
import { parseWind } from '../formats/wind-text.ts';
import type { Weather } from '../simulation/scenario.ts';
import { degCFromKelvin, mFromFt } from '../units/conversions.ts';
import { readJson } from './files.ts';
import { numberOption, type Options, wordOption } from './options.ts';

/** Sea-level pressure of the standard atmosphere, hPa (ICAO Doc 7488). */
const STANDARD_QNH_HPA = 1013.25;

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

/** The day: explicit options before the METAR, and a calm standard day for what neither says. */
export const weatherFrom = (options: Options, aerodrome: Aerodrome): Weather => {
  const standardC = degCFromKelvin(isaTemperatureK(mFromFt(aerodrome.elevationFt)));
  const metar =
    options.metar === undefined ? null : parseMetarText(options.metar, aerodrome.variationDegE, '--metar');
  const reported =
    metar === null
      ? parseWind('000/00')
      : { windFromDegM: metar.windFromDegM, windKt: metar.windKt, gustKt: metar.gustKt };
  const typed = options.wind === undefined ? null : parseWind(options.wind, '--wind');
  const temperatureC = numberOption(options, 'temp', -60, 60);
  return {
    ...(typed ?? reported),
    turbulence: wordOption(options, 'turbulence', ['none', 'light', 'moderate'], 'none'),
    temperatureC: temperatureC ?? metar?.temperatureC ?? Math.round(standardC * 100) / 100,
    // The report's dew point belongs to its own temperature.
    dewPointC: temperatureC === null ? (metar?.dewPointC ?? null) : null,
    qnhHpa: numberOption(options, 'qnh', 850, 1090) ?? metar?.qnhHpa ?? STANDARD_QNH_HPA,
  };
};
