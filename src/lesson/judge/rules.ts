import type { Rule, SessionRule } from './rule.ts';
import { APPROACH_RULES } from './rules/approach.ts';
import { CARD_RULES } from './rules/card.ts';
import { CIRCUIT_RULES } from './rules/circuit.ts';
import { DECISION_RULES } from './rules/decisions.ts';
import { LANDING_RULES } from './rules/landing.ts';
import { PROCEDURE_RULES } from './rules/procedures.ts';
import { SESSION_RULES } from './rules/session.ts';

/** The table of what is assessed once a circuit, in the order of the flight. */
export const RULES: readonly Rule[] = [
  ...CIRCUIT_RULES,
  ...APPROACH_RULES,
  ...CARD_RULES,
  ...DECISION_RULES,
  ...LANDING_RULES,
  ...PROCEDURE_RULES,
];

/** The same with what several circuits show together. */
export const ALL_RULES: readonly (Rule | SessionRule)[] = [...RULES, ...SESSION_RULES];

const BY_ID: ReadonlyMap<string, Rule | SessionRule> = new Map(ALL_RULES.map((rule) => [rule.id, rule]));

/** The row of that name; undefined where it is no more, as in an attempt of an earlier version. */
export const ruleOf = (id: string): Rule | SessionRule | undefined => BY_ID.get(id);
