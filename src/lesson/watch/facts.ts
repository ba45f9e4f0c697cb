import { lastWhere } from '../last-where.ts';
import type { Lesson } from '../lesson.ts';
import type { LessonMemory, SaidFact, Stretch, TouchdownFact, TurnFact } from '../memory.ts';
import type { LegName } from '../names.ts';

/** What one circuit left behind, for the rows of the rules to look at. */
export interface CircuitFacts {
  readonly circuit: number;
  readonly stretches: readonly Stretch[];
  readonly turns: readonly TurnFact[];
  readonly touchdown: TouchdownFact | null;
  readonly m: LessonMemory;
  readonly lesson: Lesson;
}

/** Of one circuit, what there is so far. */
export const circuitFacts = (m: LessonMemory, lesson: Lesson, circuit: number): CircuitFacts => ({
  circuit,
  stretches: [...m.stretches, m.now].filter((stretch) => stretch.circuit === circuit),
  turns: m.turns.filter((turn) => turn.circuit === circuit),
  touchdown: lastWhere(m.touchdowns, (touchdown) => touchdown.circuit === circuit),
  m,
  lesson,
});

export const lastStretch = (c: CircuitFacts, leg: LegName): Stretch | null =>
  lastWhere(c.stretches, (stretch) => stretch.leg === leg);

export const turnOntoLeg = (c: CircuitFacts, onto: TurnFact['onto']): TurnFact | null =>
  lastWhere(c.turns, (turn) => turn.onto === onto);

export const saidOf = (c: CircuitFacts, what: SaidFact['what']): SaidFact | null =>
  lastWhere(c.m.said, (said) => said.what === what && said.circuit === c.circuit);

/** Whether base was turned late by order. */
export const wasExtended = (c: CircuitFacts): boolean =>
  saidOf(c, 'extend') !== null || saidOf(c, 'number-two') !== null;
