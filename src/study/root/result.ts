import type { LegName } from '../../lesson/names.ts';
import type { Recording } from '../../session/recording.ts';
import type { Approach } from '../approach.ts';
import type { ChangeKind, ChangeUnit } from './finders/departure.ts';

/** One change, as it would be said. */
export interface Change {
  readonly kind: ChangeKind;
  readonly leg: LegName;
  /** When it would be made, seconds of the flight. */
  readonly atS: number;
  /** The smallest that works, in its unit; 1 where it is all or nothing. */
  readonly size: number;
  /** What it would be to do it exactly as planned; `size` or more. */
  readonly plannedSize: number;
  readonly unit: ChangeUnit;
  /** "Turn base 7 s later." */
  readonly sentence: string;
}

/** One thing to do next time, and where it is trained. */
export interface NextTime {
  readonly sentence: string;
  /** Id of an exercise. */
  readonly exercise: string;
}

/** What is accepted after a gate was passed unstabilised: going around, flown from there to see that it goes. */
export interface AfterGate {
  readonly atS: number;
  readonly sentence: string;
  /** Flown from the gate it climbs away without a safety stop. */
  readonly flown: boolean;
}

export interface RootResult {
  /**
   * `nothing-wrong`: the approach was inside its tolerances. `one-change`: here it is. `no-single-change`: none was
   * found. `not-searched`: this flight is none that the search is for; `why` says the reason.
   */
  readonly kind: 'nothing-wrong' | 'one-change' | 'no-single-change' | 'not-searched';
  /** The circuit looked at, counted from 1. */
  readonly circuit: number;
  readonly sentence: string;
  readonly why: string;
  readonly change: Change | null;
  /** Where no single change would have done it: those that would together; empty where not even that. */
  readonly together: readonly Change[];
  /** The changed flight, to a stop, forked off the original at `branchFromS`: playable beside it. */
  readonly branch: Recording | null;
  readonly branchFromS: number | null;
  readonly before: Approach | null;
  readonly after: Approach | null;
  readonly afterGate: AfterGate | null;
  readonly nextTime: NextTime | null;
  /** Everything that was done otherwise than planned, the earliest first, whether or not it mattered. */
  readonly departures: readonly Change[];
  readonly flightsFlown: number;
}

/** Given after every flight; `best` is the best change known so far. */
export interface RootProgress {
  readonly flightsFlown: number;
  /** 0 to 1, at a guess. */
  readonly done: number;
  readonly trying: string;
  readonly best: Change | null;
}
