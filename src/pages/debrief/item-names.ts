import { circuitOfItem, itemWords } from '../../lesson/item-words.ts';
import type { LegName } from '../../lesson/names.ts';
import { RULES, SESSION_RULES } from '../../lesson/rules.ts';
import { unitWords, valueWords } from '../../lesson/value-words.ts';
import { fixed, signed } from '../../units/format.ts';

const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What an item measures, in the words of its row: "Height at the start of the turn". */
export const itemName = (id: string, leg: LegName): string => {
  const { id: bare, circuit } = circuitOfItem(id);
  const row = [...RULES, ...SESSION_RULES].find((rule) => rule.id === bare);
  const words = row?.measures ?? itemWords(bare, leg);
  return upperFirst(circuit === 1 ? words : `${words}, circuit ${circuit}`);
};

/** "±100 ft", "+10 / −5 kt", "at most 250 ft/min". */
export const toleranceWords = (
  target: number | null,
  low: number | null,
  high: number | null,
  unit: string,
): string => {
  if (low === null && high === null) return '';
  if (low === null) return `at most ${valueWords(high, unit)}`;
  if (high === null) return `at least ${valueWords(low, unit)}`;
  if (target === null) return `${valueWords(low, unit)} to ${valueWords(high, unit)}`;
  const [above, below] = [high - target, target - low];
  if (above === 0 && below === 0) return 'none allowed';
  const name = unitWords(unit);
  if (Math.abs(above - below) < 0.05) return `±${fixed(above, above < 10 && above % 1 !== 0 ? 1 : 0)}${name}`;
  return `${signed(above)} / ${signed(-below)}${name}`;
};
