import type { Moment, Teaching } from '../judge/rule.ts';
import type { ToleranceSet } from '../judge/tolerances.ts';

/** All that the coach looks at. */
export interface CoachContext extends Moment {
  readonly limits: ToleranceSet;
  readonly teaching: Teaching;
}

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
