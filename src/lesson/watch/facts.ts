import type { CircuitFacts } from '../judge/rule.ts';
import { lastWhere } from '../last-where.ts';
import type { SaidFact, Stretch, TurnFact } from '../memory.ts';
import type { LegName } from '../names.ts';

/** Looks at what a circuit left behind, for the rows of the rules. */
export const lastStretch = (c: CircuitFacts, leg: LegName): Stretch | null =>
  lastWhere(c.stretches, (stretch) => stretch.leg === leg);

export const turnOntoLeg = (c: CircuitFacts, onto: TurnFact['onto']): TurnFact | null =>
  lastWhere(c.turns, (turn) => turn.onto === onto);

export const saidOf = (c: CircuitFacts, what: SaidFact['what']): SaidFact | null =>
  lastWhere(c.m.said, (said) => said.what === what && said.circuit === c.circuit);

/** Whether base was turned late by order. */
export const wasExtended = (c: CircuitFacts): boolean =>
  saidOf(c, 'extend') !== null || saidOf(c, 'number-two') !== null;
