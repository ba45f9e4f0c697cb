import { type JudgedBy, limitsOf } from '../lesson/judge/edit-tolerances.ts';
import type { ToleranceSet } from '../lesson/judge/tolerances.ts';
import type { Settings } from './settings.ts';
import { useStore } from './store.ts';

const judgedByOf = ({ tolerances, ownLimits }: Settings): JudgedBy => ({
  set: tolerances,
  changed: ownLimits[tolerances] ?? {},
});

/** The set chosen, with the limits that the user has changed in it. */
export const tolerancesOf = (settings: Settings): ToleranceSet => limitsOf(judgedByOf(settings));

/** What flights are judged by now. */
export const judgedByNow = (): JudgedBy => judgedByOf(useStore.getState().settings);
