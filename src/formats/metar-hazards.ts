/**
 * What in a report keeps a circuit lesson on the ground. Visibility below 5 km is no VMC below 3,000 ft (SERA.5001;
 * from memory), a cloud base less than 500 ft above circuit height leaves no room (common practice: 500 ft below
 * cloud), and thunderstorm, fog, hail, squall and anything freezing are flown by nobody in a light aeroplane
 * (common practice). Shapes of groups after WMO-No. 306, FM 15.
 */
import { ftFromM } from '../units/conversions.ts';
import { thousands } from '../units/format.ts';

const LEAST_VISIBILITY_M = 5000;
const STATUTE_MILE_M = 1609.344;
const UNDER_CLOUD_FT = 500;

const CEILING = /^(BKN|OVC|VV)(\d{3})(CB|TCU)?$/;
const METRES = /^(\d{4})(NDV)?$/;
const MILES = /^(?:(\d{1,2})|(\d)\/(\d{1,2}))SM$/;
const WEATHER = /^(\+|-|VC)?(MI|BC|PR|DR|BL|SH|TS|FZ)?((?:[A-Z]{2}){0,3})$/;

const CEILING_WORDS: Readonly<Record<string, string>> = {
  BKN: 'broken cloud',
  OVC: 'overcast',
  VV: 'sky not seen above',
};

/** What a weather group stands for that keeps one on the ground; empty where it does not. */
const hazardOf = (group: string): string => {
  const [, near, how, what = ''] = WEATHER.exec(group) ?? [];
  if (how === 'TS' || group === 'TS') return near === 'VC' ? 'thunderstorm near by' : 'thunderstorm';
  if (/CB$/.test(group)) return 'thundercloud';
  if (how === 'FZ') return 'freezing fog, drizzle or rain';
  if (/GR|GS/.test(what)) return 'hail';
  if (/SQ|FC/.test(what)) return 'squall';
  if (/FG/.test(what) && near !== 'VC' && how !== 'MI' && how !== 'BC' && how !== 'PR') return 'fog';
  return '';
};

const visibilityM = (group: string): number | null => {
  const metres = METRES.exec(group)?.[1];
  if (metres !== undefined) return metres === '9999' ? 10_000 : Number(metres);
  const miles = MILES.exec(group);
  if (miles === null) return null;
  const [, whole, over, under] = miles;
  return STATUTE_MILE_M * (whole === undefined ? Number(over) / Number(under) : Number(whole));
};

/** Of the groups in force, "fog (FG)", "overcast at 400 ft (OVC004)"; empty on a day for circuits. */
export const hazards = (groups: readonly string[], circuitHeightM: number): readonly string[] => {
  const lowestFt = ftFromM(circuitHeightM) + UNDER_CLOUD_FT;
  // "1 1/2SM" is one group in two words
  const mixed = groups.findIndex((word, i) => /^\d$/.test(word) && /SM$/.test(groups[i + 1] ?? ''));
  return groups.flatMap((group, i) => {
    if (i === mixed) return [];
    const [, cover = '', hundreds] = CEILING.exec(group) ?? [];
    const baseFt = 100 * Number(hundreds);
    if (hundreds !== undefined && baseFt < lowestFt)
      return [`${CEILING_WORDS[cover]} ${cover === 'VV' ? '' : 'at '}${thousands(baseFt)} ft (${group})`];
    const hazard = hazardOf(group);
    if (hazard !== '') return [`${hazard} (${group})`];
    const seenM = visibilityM(group);
    const wholeM = i - 1 === mixed && mixed >= 0 ? STATUTE_MILE_M * Number(groups[mixed]) : 0;
    if (seenM === null || seenM + wholeM >= LEAST_VISIBILITY_M) return [];
    return [`visibility ${thousands(10 * Math.round((seenM + wholeM) / 10))} m (${group})`];
  });
};
