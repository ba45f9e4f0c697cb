import type { Attempt } from '../formats/attempt.ts';
import type { AttemptRow } from '../lesson/attempts/attempt.ts';

/** An attempt taken from its shelf. */
export interface OpenedAttempt {
  readonly row: AttemptRow;
  readonly attempt: Attempt;
  /** It flies again to the bit; otherwise only its keyframes stand, and `says` tells. */
  readonly exact: boolean;
  /** A sentence for the user, or empty. */
  readonly says: string;
}

/** Which attempts a list shows, newest first. */
export interface ListQuestion {
  /** Without it: of every pilot. */
  readonly pilot?: string;
  /** Only those that were deleted and can still be had back. */
  readonly deleted?: boolean;
}
