import { parseMetar } from 'metar-taf-parser';
import { hpaFromInHg, ktFromMps } from '../units/conversions.ts';
import type { SpokenWind } from './wind-text.ts';

export { hazards } from './metar-hazards.ts';

/** The weather that a report gives; null where it says nothing. */
export interface MetarWeather extends SpokenWind {
  readonly temperatureC: number | null;
  readonly dewPointC: number | null;
  readonly qnhHpa: number | null;
  /** As reported, true. */
  readonly windFromDegT: number;
  /** Four letters, or empty where the text began with the wind. */
  readonly station: string;
  /** Groups that are understood and do not change the flight: visibility, weather, cloud, trend, remarks. */
  readonly leftAside: readonly string[];
  /** Those of them that are in force now, without trend and remarks. */
  readonly inForce: readonly string[];
}

/** Shapes of groups after WMO-No. 306, FM 15 METAR, and the US forms of visibility and pressure. */
const WIND = /^(\d{3})(\d{2})(?:G(\d{2}))?(KT|MPS)$/;
/** Light and from anywhere: flown as calm. Stronger, it gives nothing to plan for. */
const VARIABLE = /^VRB(\d{2})(KT|MPS)$/;
const CALM_TO_KT = 3;
const WIND_LIKE = /(KT|MPS|KMH)$/;
const TEMPERATURE = /^M?\d{2}\/(M?\d{2}|\/\/)?$/;
/** Without a dew point. */
const TEMPERATURE_ALONE = /^(M?)(\d{2})\/(\/\/)?$/;
/** Sensors that gave nothing. */
const NOT_MEASURED = /^[QA]?\/+$/;
const TEMPERATURE_LIKE = /^(M?\d{2}|\/\/)\/(M?\d{2}|\/{1,2})?$/;
const PRESSURE = /^(Q\d{4}|A\d{4})$/;
const PRESSURE_LIKE = /^[QA][\d/]{2,5}$/;
const REST = /^(NOSIG|BECMG|TEMPO|RMK)$/;
const ASIDE: readonly RegExp[] = [
  /^(AUTO|COR|CAVOK|NSC|NCD|CLR|SKC|NSW)$/,
  /^\d{3}V\d{3}$/,
  /^(\d{4}|\/\/\/\/)(NDV|[NESW]{1,2})?$/,
  /^[PM]?(\d{1,2}|\d\/\d{1,2})SM$/,
  /^\d$/,
  /^R\d{2}[LCR]?\//,
  /^(FEW|SCT|BKN|OVC|VV|\/\/\/)(\d{3}|\/\/\/)(CB|TCU|\/\/\/)?$/,
  /^(\+|-|VC|RE)?(MI|BC|PR|DR|BL|SH|TS|FZ)?(DZ|RA|SN|SG|PL|GR|GS|UP|BR|FG|FU|VA|DU|SA|HZ|PO|SQ|FC|SS|DS|IC){0,3}$/,
  /^\/\/$/,
  /^WS$|^ALL$|^RWY\d{0,2}[LCR]?$|^R\d{2}[LCR]?$/,
  /^(BLACK)?(BLU\+?|WHT|GRN|YLO[12]?|AMB|RED)$/,
  /^\$$/,
  /^W(M?\d{2}|\/\/)\/(S\d|H\d{1,3}|S\/)$/,
];

interface Groups {
  readonly station: string;
  readonly wind: string;
  readonly temperature: string | null;
  readonly pressure: string | null;
  readonly leftAside: readonly string[];
  readonly inForce: readonly string[];
}

/** Sorts the groups of a report; an Error sentence names the first that cannot be used. */
function sortGroups(text: string, place: string): Groups {
  const words = text.trim().toUpperCase().replace(/=$/, '').split(/\s+/);
  if (words[0] === 'TAF') throw new Error(`${place}: a TAF is a forecast; paste the METAR`);
  if (/^(METAR|SPECI):?$/.test(words[0] ?? '')) words.shift();
  if (words[0] === 'COR') words.shift();
  const station = /^[A-Z][A-Z0-9]{3}$/.test(words[0] ?? '') ? (words.shift() as string) : '';
  if (/^\d{6}Z$/.test(words[0] ?? '')) words.shift();
  let wind: string | null = null;
  let temperature: string | null = null;
  let pressure: string | null = null;
  const leftAside: string[] = [];
  const inForce: string[] = [];
  for (let i = 0; i < words.length; i += 1) {
    const word = words[i] as string;
    if (REST.test(word)) {
      leftAside.push(words.slice(i).join(' '));
      break;
    }
    if (word === 'NIL')
      throw new Error(`${place}: NIL says that no report was made; type the weather instead`);
    if (NOT_MEASURED.test(word)) leftAside.push(word);
    else if (wind === null && WIND_LIKE.test(word)) wind = word;
    else if (temperature === null && TEMPERATURE_LIKE.test(word) && word.length > 2) temperature = word;
    else if (PRESSURE_LIKE.test(word)) pressure ??= word;
    else if (ASIDE.some((shape) => shape.test(word))) {
      leftAside.push(word);
      inForce.push(word);
    } else throw new Error(`${place}: the group "${word}" is not one of a weather report`);
  }
  if (wind === null)
    throw new Error(`${place}: a wind group like 24012KT or 24012G22KT is needed, found none`);
  return { station, wind, temperature, pressure, leftAside, inForce };
}

const isCalm = (wind: string): boolean => {
  const [, speed, unit] = VARIABLE.exec(wind) ?? [];
  return speed !== undefined && (unit === 'MPS' ? ktFromMps(Number(speed)) : Number(speed)) <= CALM_TO_KT;
};

const checkWind = (wind: string, place: string): void => {
  if (wind.startsWith('/'))
    throw new Error(`${place}: no wind was measured ("${wind}"); type the wind instead`);
  if (wind.startsWith('VRB'))
    throw new Error(
      `${place}: the wind group "${wind}" gives no direction to plan for; type the wind instead`,
    );
  if (WIND.test(wind)) return;
  throw new Error(`${place}: the wind group must be like 24012KT, 24012G22KT or 24006MPS, was "${wind}"`);
};

const checkShape = (group: string | null, shape: RegExp, like: string, name: string, place: string): void => {
  if (group === null || shape.test(group)) return;
  throw new Error(`${place}: the ${name} group must be like ${like}, was "${group}"`);
};

const temperatureAloneC = (group: string | null): number | null => {
  const [, minus, digits] = TEMPERATURE_ALONE.exec(group ?? '') ?? [];
  return digits === undefined ? null : minus === 'M' ? 0 - Number(digits) : Number(digits);
};

/** Degrees magnetic from degrees true, whole, above 0 to 360; variation counted east. */
const magneticDeg = (trueDeg: number, variationDegE: number): number => {
  const turned = Math.round(trueDeg - variationDegE);
  const within = turned - 360 * Math.floor(turned / 360);
  return within === 0 ? 360 : within;
};

/**
 * Wind, temperature, dew point and QNH of a pasted METAR or SPECI. Its wind is true; it is turned magnetic with
 * the variation of the aerodrome. Throws an Error sentence that names the group that cannot be used: a variable or
 * missing wind, a damaged group, a word that belongs to no report. Station and time may be left out.
 */
export function parseMetarText(text: string, variationDegE: number, place = 'METAR'): MetarWeather {
  const sorted = sortGroups(text, place);
  const calm = isCalm(sorted.wind);
  const groups = calm
    ? { ...sorted, wind: '00000KT', leftAside: [`${sorted.wind}, flown as calm`, ...sorted.leftAside] }
    : sorted;
  checkWind(groups.wind, place);
  checkShape(groups.temperature, TEMPERATURE, '17/12 or M02/M05', 'temperature', place);
  checkShape(groups.pressure, PRESSURE, 'Q1013 or A2992', 'pressure', place);
  // Only the groups that count go to the parser, so that nothing else can be taken for one of them.
  const alone = temperatureAloneC(groups.temperature);
  const read = parseMetar(
    ['AAAA 010000Z', groups.wind, alone === null ? groups.temperature : null, groups.pressure]
      .filter((g) => g !== null)
      .join(' '),
  );
  const { wind, temperature, dewPoint, altimeter } = read;
  if (wind?.degrees === undefined)
    throw new Error(`${place}: the wind group must be like 24012KT, was "${groups.wind}"`);
  const kt = (speed: number): number => Math.round(wind.unit === 'MPS' ? ktFromMps(speed) : speed);
  const windKt = kt(wind.speed);
  const gustKt = wind.gust === undefined ? null : kt(wind.gust);
  if (wind.degrees > 360)
    throw new Error(`${place}: the wind direction must be 000 to 360, was "${groups.wind}"`);
  if (windKt > 99 || (gustKt ?? 0) > 99)
    throw new Error(`${place}: the wind must be at most 99 kt, was "${groups.wind}"`);
  if (gustKt !== null && gustKt <= windKt)
    throw new Error(`${place}: the gust must be above the mean wind, was "${groups.wind}"`);
  if (temperature !== undefined && dewPoint !== undefined && dewPoint > temperature)
    throw new Error(`${place}: the dew point must not be above the temperature, was "${groups.temperature}"`);
  const hpa =
    altimeter === undefined
      ? null
      : altimeter.unit === 'inHg'
        ? hpaFromInHg(altimeter.value)
        : altimeter.value;
  if (hpa !== null && (hpa < 850 || hpa > 1090))
    throw new Error(`${place}: the pressure must be 850 to 1090 hPa, was "${groups.pressure}"`);
  return {
    windFromDegT: wind.degrees,
    windFromDegM: windKt === 0 ? 0 : magneticDeg(wind.degrees, variationDegE),
    windKt,
    gustKt,
    // M00 is no less than nothing
    temperatureC: alone ?? (temperature === undefined ? null : temperature + 0),
    dewPointC: dewPoint === undefined ? null : dewPoint + 0,
    qnhHpa: hpa === null ? null : Math.round(hpa * 10) / 10,
    station: groups.station,
    leftAside: groups.leftAside,
    inForce: groups.inForce,
  };
}
