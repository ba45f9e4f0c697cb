import { withLimit } from '../lesson/edit-tolerances.ts';
import {
  DEFAULT_TOLERANCES,
  type LimitName,
  TOLERANCE_SETS,
  type ToleranceSet,
} from '../lesson/tolerances.ts';
import type { Settings } from './settings.ts';
import { useStore } from './store.ts';

/** The set chosen, with the limits that the user has changed in it. */
export const tolerancesOf = ({ tolerances, ownLimits }: Settings): ToleranceSet => {
  const set = TOLERANCE_SETS.find(({ id }) => id === tolerances) ?? DEFAULT_TOLERANCES;
  return Object.entries(ownLimits[set.id] ?? {}).reduce(
    (changed, [name, limit]) => (name in set ? withLimit(changed, name as LimitName, limit) : changed),
    set,
  );
};

/** What flights are judged by now. */
export const tolerancesNow = (): ToleranceSet => tolerancesOf(useStore.getState().settings);
