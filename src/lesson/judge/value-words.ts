import { fixed, signed } from '../../units/format.ts';

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

/** Those that are said in a phrase. */
const PHRASES: ReadonlySet<string> = new Set(['deg kPa', '0.01 g', 'stage', 'lamps', 'items']);

export const unitWords = (unit: string): string => UNITS[unit] ?? ` ${unit}`;

/** "640 ft"; a dash where nothing could be measured. */
export const valueWords = (value: number | null, unit: string): string => {
  if (value === null) return '–';
  const fine = Math.abs(value) < 10 && !Number.isInteger(value);
  return `${fixed(value, fine ? 1 : 0)}${unitWords(unit)}`;
};

/** The same for a column beside the value: a unit that takes a phrase to say is not said twice. */
export const briefly = (value: number | null, unit: string): string =>
  valueWords(value, PHRASES.has(unit) ? '' : unit).trimEnd();

/** "±100 ft", "+10 / −5 kt", "at most 250 ft/min"; empty where nothing limits it. */
export const toleranceWords = (
  target: number | null,
  low: number | null,
  high: number | null,
  unit: string,
): string => {
  const whole = unit === '%' && high === 100;
  if (low === null && high === null) return '';
  if (low === null) return `at most ${briefly(high, unit)}`;
  if (high === null || whole) return `at least ${briefly(low, unit)}`;
  if (target === null) return `${briefly(low, unit)} to ${briefly(high, unit)}`;
  const [above, below] = [high - target, target - low];
  if (above === 0 && below === 0) return 'none allowed';
  const name = PHRASES.has(unit) ? '' : unitWords(unit);
  if (Math.abs(above - below) < 0.05) return `±${fixed(above, above < 10 && above % 1 !== 0 ? 1 : 0)}${name}`;
  return `${signed(above)} / ${signed(-below)}${name}`;
};

/** "900 ft to 1100 ft", "at most 250 ft/min"; empty where nothing limits it. */
export const limitsWords = (low: number | null, high: number | null, unit: string): string => {
  // There is no more than all of it
  if (unit === '%' && low !== null && high === 100) return `at least ${valueWords(low, unit)}`;
  if (low !== null && high !== null) return `${valueWords(low, unit)} to ${valueWords(high, unit)}`;
  if (high !== null) return `at most ${valueWords(high, unit)}`;
  return low === null ? '' : `at least ${valueWords(low, unit)}`;
};
