import type { Aerodrome } from '../../aerodrome/schema.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import type { CircuitFacts } from '../judge/rule.ts';
import type { ToleranceSet } from '../judge/tolerances.ts';
import { lastWhere } from '../last-where.ts';
import type { Lesson } from '../lesson.ts';
import type { LessonMemory } from '../memory.ts';

export type Teaching = Aerodrome['circuit']['teaching'];

/** All that the coach looks at. */
export interface CoachContext {
  readonly m: LessonMemory;
  readonly lesson: Lesson;
  readonly s: Readonly<Snapshot>;
  readonly limits: ToleranceSet;
  readonly teaching: Teaching;
}

/** This circuit as the rows of the rules see it. */
export const factsNow = ({ m, lesson }: CoachContext): CircuitFacts => {
  const { circuit } = m.legs;
  return {
    circuit,
    stretches: [...m.stretches, m.now].filter((stretch) => stretch.circuit === circuit),
    turns: m.turns.filter((turn) => turn.circuit === circuit),
    touchdown: lastWhere(m.touchdowns, (touchdown) => touchdown.circuit === circuit),
    m,
    lesson,
  };
};

/** How urgent a word is: the lower the sooner. `talk`: only to somebody who is talked through. */
export interface Word {
  /** The same thing keeps its name, whatever the words. */
  readonly topic: string;
  readonly text: string;
  readonly rank: number;
  readonly talk?: boolean;
  /** How long it must have been so before it is said. */
  readonly afterS: number;
}
