import { fixed, signed } from '../../units/format.ts';

/** What a row is measured in: how it is written in a result, and how it is said after a value. */
export interface Unit {
  readonly written: string;
  readonly said: string;
  /** It takes a phrase to say, which is not said twice. */
  readonly phrase: boolean;
}

/** Said as it is written, after a space. */
export const plain = (written: string): Unit => ({ written, said: ` ${written}`, phrase: false });

/** Said in a phrase: " lamps off two and two". */
export const phrased = (written: string, said: string): Unit => ({ written, said, phrase: true });

export const FT = plain('ft');
export const KT = plain('kt');
export const M = plain('m');
export const S = plain('s');
export const DEG: Unit = { written: 'deg', said: '°', phrase: false };
export const PERCENT: Unit = { written: '%', said: ' %', phrase: false };
export const TIMES = plain('times');
export const FLAP_STAGES = phrased('stage', ' stages of flap');

/** "640 ft"; a dash where nothing could be measured. */
export const valueWords = (value: number | null, { said }: Unit): string => {
  if (value === null) return '–';
  const fine = Math.abs(value) < 10 && !Number.isInteger(value);
  return `${fixed(value, fine ? 1 : 0)}${said}`;
};

/** As it stands beside the value: a phrase is left out there. */
const briefUnit = (unit: Unit): Unit => (unit.phrase ? { ...unit, said: '' } : unit);

/** The same for a column beside the value: a unit that takes a phrase to say is not said twice. */
export const briefly = (value: number | null, unit: Unit): string => valueWords(value, briefUnit(unit));

/** There is no more than all of it. */
const isWhole = (unit: Unit, high: number | null): boolean =>
  unit.written === PERCENT.written && high === 100;

/** "±100 ft", "+10 / −5 kt", "at most 250 ft/min"; empty where nothing limits it. */
export const toleranceWords = (
  target: number | null,
  low: number | null,
  high: number | null,
  unit: Unit,
): string => {
  if (low === null && high === null) return '';
  if (low === null) return `at most ${briefly(high, unit)}`;
  if (high === null || isWhole(unit, high)) return `at least ${briefly(low, unit)}`;
  if (target === null) return `${briefly(low, unit)} to ${briefly(high, unit)}`;
  const [above, below] = [high - target, target - low];
  if (above === 0 && below === 0) return 'none allowed';
  const { said } = briefUnit(unit);
  if (Math.abs(above - below) < 0.05) return `±${fixed(above, above < 10 && above % 1 !== 0 ? 1 : 0)}${said}`;
  return `${signed(above)} / ${signed(-below)}${said}`;
};

/** "900 ft to 1100 ft", "at most 250 ft/min"; empty where nothing limits it. */
export const limitsWords = (low: number | null, high: number | null, unit: Unit): string => {
  if (low !== null && isWhole(unit, high)) return `at least ${valueWords(low, unit)}`;
  if (low !== null && high !== null) return `${valueWords(low, unit)} to ${valueWords(high, unit)}`;
  if (high !== null) return `at most ${valueWords(high, unit)}`;
  return low === null ? '' : `at least ${valueWords(low, unit)}`;
};
