import { bandOf } from './bands.ts';
import type { Lesson } from './lesson.ts';
import type { ItemReport } from './report.ts';
import type { CircuitFacts, Standard } from './rule.ts';
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

/** What to say to a result that was not green; empty where there is nothing to say. */
export const wordsFor = (report: ItemReport): string => {
  if (report.band === 'green' || report.band === 'not-judged' || report.value === null) return '';
  const row = [...RULES, ...SESSION_RULES].find(
    ({ id }) =>
      report.id === id || (report.id.startsWith(`${id}-`) && /^\d+$/.test(report.id.slice(id.length + 1))),
  );
  if (row === undefined) return '';
  return (report.low !== null && report.value < report.low ? row.say.low : row.say.high) ?? '';
};
