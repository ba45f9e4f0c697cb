import { fixed } from '../units/format.ts';

/** Units of the rows that are not said as they are written. */
const UNITS: Readonly<Record<string, string>> = {
  deg: '°',
  '%': ' %',
  'deg kPa': ' in the hand (1 is light)',
  '0.01 g': ' hundredths of g aside',
  stage: ' stages of flap',
  lamps: ' lamps off two and two',
  items: ' out of order',
};

export const unitWords = (unit: string): string => UNITS[unit] ?? ` ${unit}`;

/** "640 ft"; a dash where nothing could be measured. */
export const valueWords = (value: number | null, unit: string): string => {
  if (value === null) return '–';
  const fine = Math.abs(value) < 10 && !Number.isInteger(value);
  return `${fixed(value, fine ? 1 : 0)}${unitWords(unit)}`;
};

/** "900 ft to 1100 ft", "at most 250 ft/min"; empty where nothing limits it. */
export const limitsWords = (low: number | null, high: number | null, unit: string): string => {
  // There is no more than all of it
  if (unit === '%' && low !== null && high === 100) return `at least ${valueWords(low, unit)}`;
  if (low !== null && high !== null) return `${valueWords(low, unit)} to ${valueWords(high, unit)}`;
  if (high !== null) return `at most ${valueWords(high, unit)}`;
  return low === null ? '' : `at least ${valueWords(low, unit)}`;
};
