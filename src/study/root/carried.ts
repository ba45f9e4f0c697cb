import { approachOf } from '../approach.ts';
import type { Future } from '../future.ts';
import { STRAINS, type Strain, strainOf } from '../strain.ts';
import type { Span } from './finders/span.ts';

/** Differences smaller than this share of a tolerance tell nothing. */
const TELLING = 0.35;

/**
 * How much of the trouble the fork without the change still comes to, as a share of what the change gains at the
 * gate that was failed. 1 where it fails too. It is no copy of the flight: the style that is kept is an average of
 * what was flown, so it need not fail to the letter.
 */
export const carriedBy = (
  { flown, circuit }: Span,
  unchanged: Future,
  changed: Future,
  forkS: number,
): number => {
  if (!unchanged.approach.settled) return 1;
  const heightFt = approachOf(flown.memory, circuit).firstBad?.heightFt;
  if (heightFt === undefined) return 0;
  const strain = (m: Future['lesson'], fromS: number): Strain | null =>
    strainOf(m, flown.lesson, flown.flight.limits, { circuit, heightFt, fromS });
  const was = strain(flown.memory, 0);
  const without = strain(unchanged.lesson, forkS);
  const withIt = strain(changed.lesson, forkS);
  if (was === null || without === null || withIt === null) return 0;
  return STRAINS.reduce((most, name) => {
    const gained = was[name] - withIt[name];
    if (Math.abs(was[name]) < 1 || Math.abs(gained) < TELLING) return most;
    return Math.max(most, (without[name] - withIt[name]) / gained);
  }, 0);
};
