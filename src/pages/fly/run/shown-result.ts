import type { FlownResult } from '../../../formats/result.ts';
import type { Verdict } from '../../../lesson/judge/verdict.ts';
import type { FlownPath } from './flown-path.ts';

/** What the result card shows: what is kept of the flight, and words for it. */
export interface ResultCard {
  readonly result: FlownResult;
  /** What the model pilot has shown, where the flight was a demonstration: no attempt, no verdict. */
  readonly shown: readonly string[] | null;
  /** From when on it was the pilot's own; 0: from the beginning. */
  readonly theirsFromS: number;
  readonly firstLook: string;
  /** The exercise that trains what is to be looked at first; null: there is none. */
  readonly trains: string | null;
  /** Of the exercise; null where it is none of the catalogue's. */
  readonly verdict: Verdict | null;
  readonly exercise: string;
  /** What is said to rows that left their tolerance. */
  readonly advice: readonly string[];
  /** Items of checks and calls that were left out, by name. */
  readonly leftOut: readonly string[];
  /** The set it was judged by. */
  readonly judgedBy: string;
  readonly drawn: FlownPath;
  /** How much help there was. */
  readonly help: string;
}
