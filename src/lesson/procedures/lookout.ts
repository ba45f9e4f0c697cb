import type { Lesson } from '../lesson.ts';
import type { TurnFact } from '../memory.ts';
import type { LookFact, ProcedureMemory } from './memory.ts';

/**
 * Lookout before a turn: away from it, ahead, and last into it; on downwind the look towards the runway side takes
 * in long final, on base the one away takes in the approach and the one ahead the opposite base (common practice;
 * "clear left, ahead, right" in South African instructor procedures).
 */
const BEFORE_S = 25;
/** A turn is recognised by its bank; the last look may fall into its first moments. */
const INTO_S = 3; // our choice: time for one look
const ASIDE_DEG = 45; // our choice: how near the eye has to be
const AHEAD_DEG = 22; // our choice: how near the eye has to be
/** Long final lies between ahead and abeam. */
const ABEAM_DEG = 90; // definition: across

/** What of the lookout was done, each true or false. */
export interface LookoutParts {
  readonly away: boolean;
  readonly ahead: boolean;
  readonly into: boolean;
  /** The last look went where the turn goes. */
  readonly endsInto: boolean;
}

export const lookoutBefore = (
  looks: readonly LookFact[],
  turn: Pick<TurnFact, 'onto' | 'fromS'>,
  side: 1 | -1,
): LookoutParts => {
  const mine = looks.filter(({ atS }) => atS >= turn.fromS - BEFORE_S && atS <= turn.fromS + INTO_S);
  // + into the turn
  const turned = mine.map(({ deg }) => deg * side);
  const last = turned[turned.length - 1];
  const into = turned.filter((deg) => deg >= ASIDE_DEG);
  return {
    away: turned.some((deg) => deg <= -ASIDE_DEG),
    ahead: turned.some((deg) => Math.abs(deg) <= AHEAD_DEG),
    into: turn.onto === 'base' ? into.some((deg) => deg <= ABEAM_DEG) : into.length > 0,
    endsInto: last !== undefined && last >= ASIDE_DEG,
  };
};

/** A flight that began so shortly before a turn left no time to look. */
const TIME_FOR_S = 6; // our choice: two seconds for each way

/** In percent of its four parts; null where there was no time for it. */
export const lookoutPercent = (
  p: ProcedureMemory,
  turn: Pick<TurnFact, 'onto' | 'fromS'>,
  { plan }: Lesson,
): number | null =>
  turn.fromS < TIME_FOR_S
    ? null
    : 25 * Object.values(lookoutBefore(p.looks, turn, plan.side)).filter(Boolean).length;
