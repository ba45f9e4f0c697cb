import type { Rule } from './rule.ts';
import { APPROACH_RULES } from './rules/approach.ts';
import { CARD_RULES } from './rules/card.ts';
import { CIRCUIT_RULES } from './rules/circuit.ts';
import { DECISION_RULES } from './rules/decisions.ts';
import { LANDING_RULES } from './rules/landing.ts';
import { PROCEDURE_RULES } from './rules/procedures.ts';

export { SESSION_RULES } from './rules/session.ts';

/**
 * The table of what is assessed, in the order of the flight: for each row the leg, what is measured and in which
 * unit, the target and how far from it is allowed, with the source, what to say, a good and a bad example.
 */
export const RULES: readonly Rule[] = [
  ...CIRCUIT_RULES,
  ...APPROACH_RULES,
  ...CARD_RULES,
  ...DECISION_RULES,
  ...LANDING_RULES,
  ...PROCEDURE_RULES,
];
