import { lastWhere } from '../last-where.ts';
import type { Lesson } from '../lesson.ts';
import type { LegName } from '../names.ts';
import type { CircuitFacts } from '../watch/facts.ts';
import { bandOf } from './bands.ts';
import type { ItemReport } from './report.ts';
import type { Rule, SessionRule, Standard } from './rule.ts';
import { SESSION_RULES } from './rules/session.ts';
import { RULES, ruleOf } from './rules.ts';
import { selects } from './selection.ts';
import type { ToleranceSet } from './tolerances.ts';

/** Whether a row is looked at in this exercise. */
export const isAssessed = ({ assessed }: Lesson, id: string): boolean =>
  assessed === null || selects(assessed, id);

const item = (
  { id, leg, unit }: Rule | SessionRule,
  circuit: number,
  value: number | null,
  { target, low, high, source, amberLow }: Standard,
  unjudged: boolean,
): ItemReport => ({
  id,
  circuit,
  leg,
  value,
  unit: unit.written,
  target,
  low,
  high,
  band: unjudged ? 'not-judged' : bandOf(value, target, low, high, amberLow),
  source,
});

const IN_THE_AIR: ReadonlySet<LegName> = new Set([
  'upwind',
  'turn-to-crosswind',
  'crosswind',
  'turn-to-downwind',
  'downwind',
  'turn-to-base',
  'base',
  'turn-to-final',
  'final',
]);

/** With the engine stopped nobody flies the legs of the circuit: what was not over by then has no row. */
const isGlidedOver = ({ m, stretches, circuit }: CircuitFacts, { id, leg, besideFlying }: Rule): boolean => {
  if (m.engine === null || besideFlying || id.startsWith('engine-failure') || !IN_THE_AIR.has(leg))
    return false;
  const { failedS } = m.engine;
  const flown = lastWhere(stretches, (stretch) => stretch.leg === leg && stretch.circuit === circuit);
  return flown === null || flown.toS > failedS;
};

/** The rows that one circuit gives something to say to. */
export const judgeCircuit = (c: CircuitFacts, { allowed }: ToleranceSet): ItemReport[] => {
  const items: ItemReport[] = [];
  for (const rule of RULES) {
    if (!isAssessed(c.lesson, rule.id)) continue;
    if (isGlidedOver(c, rule)) continue;
    const value = rule.measure(c);
    if (value === undefined) continue;
    items.push(item(rule, c.circuit, value, rule.against(c, allowed), rule.unjudged?.(c) ?? false));
  }
  return items;
};

/** The rows that look at all circuits of a session together; they stand with the first. */
export const judgeSession = (circuits: readonly CircuitFacts[], { allowed }: ToleranceSet): ItemReport[] => {
  const [first] = circuits;
  if (first === undefined) return [];
  return SESSION_RULES.filter((rule) => isAssessed(first.lesson, rule.id)).flatMap((rule) => {
    const value = rule.measure(circuits, allowed);
    return value === undefined ? [] : [item(rule, 1, value, rule.against(allowed), false)];
  });
};

/** What was measured: "airspeed furthest from the planned one, once settled"; empty for a row that is no more. */
export const measuresOf = (id: string): string => ruleOf(id)?.measures ?? '';

/** What to say to a result that was not green; empty where there is nothing to say. */
export const wordsFor = ({ id, band, value, low }: ItemReport): string => {
  if (band === 'green' || band === 'not-judged' || value === null) return '';
  const say = ruleOf(id)?.say;
  return (low !== null && value < low ? say?.low : say?.high) ?? '';
};
