import { newSnapshot, type Snapshot } from '../../simulation/snapshot.ts';
import { wrapPi, wrapTwoPi } from '../../units/angles.ts';

type NumberKey = { [K in keyof Snapshot]: Snapshot[K] extends number ? K : never }[keyof Snapshot];

/** Directions turn the short way round; whole numbers and states belong to the last step. */
const DIRECTIONS: ReadonlySet<string> = new Set(['headingRadT', 'trackRadT']);
const WHOLE: ReadonlySet<string> = new Set(['step', 'flapStage', 'carbHeat', 'gear', 'gearLever', 'pump']);

const sample = newSnapshot();
const STRAIGHT = (Object.keys(sample) as NumberKey[]).filter(
  (key) => typeof sample[key] === 'number' && !DIRECTIONS.has(key) && !WHOLE.has(key),
);
const REST = (Object.keys(sample) as (keyof Snapshot)[]).filter(
  (key) => !DIRECTIONS.has(key) && !(STRAIGHT as string[]).includes(key),
);

/** What a view shows between two steps: `at` is 0 at the step before, 1 at the last one. Fills `into`. */
export const blend = (
  before: Readonly<Snapshot>,
  now: Readonly<Snapshot>,
  at: number,
  into: Snapshot,
): Snapshot => {
  for (let i = 0; i < STRAIGHT.length; i += 1) {
    const key = STRAIGHT[i] as NumberKey;
    into[key] = before[key] + at * (now[key] - before[key]);
  }
  for (let i = 0; i < REST.length; i += 1) {
    const key = REST[i] as keyof Snapshot;
    (into as unknown as Record<string, unknown>)[key] = now[key];
  }
  into.headingRadT = wrapTwoPi(before.headingRadT + at * wrapPi(now.headingRadT - before.headingRadT));
  into.trackRadT = wrapTwoPi(before.trackRadT + at * wrapPi(now.trackRadT - before.trackRadT));
  return into;
};
