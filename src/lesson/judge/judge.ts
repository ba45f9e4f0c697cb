import type { Lesson } from '../lesson.ts';
import { bandOf } from './bands.ts';
import { circuitOfItem } from './item-words.ts';
import type { ItemReport } from './report.ts';
import type { CircuitFacts, Rule, SessionRule, Standard } from './rule.ts';
import { RULES, SESSION_RULES } from './rules.ts';
import { selects } from './selection.ts';
import type { ToleranceSet } from './tolerances.ts';

/** Whether a row is looked at in this exercise. */
export const isAssessed = ({ assessed }: Lesson, id: string): boolean =>
  assessed === null || selects(assessed, id);

const item = (
  id: string,
  { leg, unit }: Pick<ItemReport, 'leg' | 'unit'>,
  value: number | null,
  { target, low, high, source, amberLow }: Standard,
  unjudged: boolean,
): ItemReport => ({
  id,
  leg,
  value,
  unit,
  target,
  low,
  high,
  band: unjudged ? 'not-judged' : bandOf(value, target, low, high, amberLow),
  source,
});

/** The rows that one circuit gives something to say to. */
export const judgeCircuit = (c: CircuitFacts, limits: ToleranceSet): ItemReport[] => {
  const items: ItemReport[] = [];
  for (const rule of RULES) {
    if (!isAssessed(c.lesson, rule.id)) continue;
    const value = rule.measure(c);
    if (value === undefined) continue;
    const id = c.circuit === 1 ? rule.id : `${rule.id}-${c.circuit}`;
    items.push(item(id, rule, value, rule.against(c, limits), rule.unjudged?.(c) ?? false));
  }
  return items;
};

/** The rows that look at all circuits of a session together. */
export const judgeSession = (circuits: readonly CircuitFacts[], limits: ToleranceSet): ItemReport[] => {
  const [first] = circuits;
  if (first === undefined) return [];
  return SESSION_RULES.filter((rule) => isAssessed(first.lesson, rule.id)).flatMap((rule) => {
    const value = rule.measure(circuits, limits);
    return value === undefined ? [] : [item(rule.id, rule, value, rule.against(limits), false)];
  });
};

/** The row that an item of a report was judged by. */
const rowOf = (item: string): Rule | SessionRule | undefined => {
  const { id } = circuitOfItem(item);
  return RULES.find((rule) => rule.id === id) ?? SESSION_RULES.find((rule) => rule.id === id);
};

/** What was measured: "airspeed furthest from the planned one, once settled"; empty for a row that is no more. */
export const measuresOf = (item: string): string => rowOf(item)?.measures ?? '';

/** What to say to a result that was not green; empty where there is nothing to say. */
export const wordsFor = (report: ItemReport): string => {
  if (report.band === 'green' || report.band === 'not-judged' || report.value === null) return '';
  const row = rowOf(report.id);
  if (row === undefined) return '';
  return (report.low !== null && report.value < report.low ? row.say.low : row.say.high) ?? '';
};
