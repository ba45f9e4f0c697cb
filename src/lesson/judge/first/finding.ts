/** How bad it is, the worst first: would have hurt; broke a gate; outside; the same beside the flying; untidy. */
export const HARMS = ['hurt', 'gate', 'outside', 'beside', 'untidy'] as const;
export type Harm = (typeof HARMS)[number];

/** One thing to speak of: how it ended, a safety stop, a go-around that was not flown, a cause, a row. */
export interface Finding {
  /** `ended-ran-off`, `warner`, `went-on`, `levelled-high`, `base-turn-angle:high`. */
  readonly key: string;
  readonly harm: Harm;
  readonly band: 'red' | 'amber';
  readonly circuit: number;
  /** Beside others of the same harm: the lower the worse; equal ones in the order of the flight. */
  readonly rank: number;
  /** Place along the flight, to tell what came before what. */
  readonly place: number;
  /** A whole sentence. */
  readonly says: string;
  /** The same as a clause, after "It began when" and "Then"; empty where there is none. */
  readonly short: string;
  /** What to do next time; may be empty. */
  readonly next: string;
  /** What trains it. */
  readonly exercise: string;
  /** What it came from besides its key: kinds of what was wrong at a gate. */
  readonly needs: readonly string[];
  /** Rows that say no more than it does. */
  readonly covers: readonly string[];
  /** How far outside, in shares of the tolerance; 0 where that is no figure. */
  readonly strain: number;
}
