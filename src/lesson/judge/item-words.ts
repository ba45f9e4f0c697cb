import { type LegName, legWords } from '../names.ts';
import type { ItemReport } from './report.ts';
import type { Part } from './rule.ts';
import { ruleOf } from './rules.ts';
import { limitsWords, plain, type Unit, valueWords } from './value-words.ts';

/** "downwind: height"; of a row that is no more, its id in words. */
export const itemWords = (id: string, leg: LegName): string => {
  const rule = ruleOf(id);
  if (rule?.alone) return rule.name;
  return `${legWords(leg)}: ${rule?.name ?? id.replaceAll('-', ' ')}`;
};

/** The same with a capital, to stand first, and with the circuit where it is not the first. */
export const itemTitle = ({
  id,
  leg,
  circuit = 1,
}: Pick<ItemReport, 'id' | 'leg'> & Partial<Pick<ItemReport, 'circuit'>>): string => {
  const words = itemWords(id, leg);
  const title = words.charAt(0).toUpperCase() + words.slice(1);
  return circuit === 1 ? title : `${title}, circuit ${circuit}`;
};

/** How the values of an item are said; as written, where the row was measured otherwise when it was flown. */
export const unitOf = ({ id, unit }: Pick<ItemReport, 'id' | 'unit'>): Unit => {
  const now = ruleOf(id)?.unit;
  return now?.written === unit ? now : plain(unit);
};

/** "Downwind: height was 640 ft; the tolerance is 900 ft to 1100 ft." */
export const itemSentence = (item: ItemReport): string => {
  const title = itemTitle(item);
  const sentence = ruleOf(item.id)?.sentence;
  if (sentence !== undefined && item.value !== null) return sentence(item.value, title);
  const unit = unitOf(item);
  const limits = limitsWords(item.low, item.high, unit);
  const tolerance = limits === '' ? '' : `; the tolerance is ${limits}`;
  return `${title} was ${valueWords(item.value, unit)}${tolerance}.`;
};

/** What is counted speaks for itself. */
const COUNTED = new Set(['times', 'bounces', 'found', 'items']);

/** The number beside what is said of an item: "54°, and 38° to 48° is the tolerance"; empty where it says nothing. */
export const besideNumber = (item: ItemReport): string => {
  const { value, low, high, unit } = item;
  if (value === null || COUNTED.has(unit)) return '';
  const aside = value < 0 && (low ?? 0) <= 0;
  const said = valueWords(aside ? -value : value, unitOf(item));
  // A unit that takes a phrase to say is not said twice
  const brief: Unit = unitOf(item).phrase ? { ...unitOf(item), said: '' } : unitOf(item);
  if (aside) return low === null || low === 0 ? said : `${said}, and ${valueWords(-low, brief)} is allowed`;
  if (low !== null && low === high) return `${said}, and ${valueWords(low, brief)} was asked for`;
  const limits = limitsWords(low !== null && low < 0 ? null : low, high, brief);
  return limits === '' ? said : `${said}, and ${limits} is the tolerance`;
};

/** "too high", or empty where a side says nothing. */
export const sideWords = (id: string, side: 'above' | 'below'): string =>
  ruleOf(id)?.sides?.[side === 'above' ? 'high' : 'low'] ?? '';

const PART_OF_LEG: Partial<Readonly<Record<LegName, Part>>> = {
  'line-up': 'Upwind and take-off',
  'take-off-roll': 'Upwind and take-off',
  upwind: 'Upwind and take-off',
  'turn-to-crosswind': 'Crosswind',
  crosswind: 'Crosswind',
  'turn-to-downwind': 'Downwind',
  downwind: 'Downwind',
  'turn-to-base': 'Base',
  base: 'Base',
  'turn-to-final': 'Final',
  final: 'Final',
  'hold-off': 'Hold-off',
};

/** With which part of the flight an item is talked over. */
export const partOf = ({ id, leg }: Pick<ItemReport, 'id' | 'leg'>): Part =>
  ruleOf(id)?.part ?? PART_OF_LEG[leg] ?? 'All through';
