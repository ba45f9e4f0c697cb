import type { Limit } from './limit.ts';
import { DEFAULT_TOLERANCES, TOLERANCE_SETS, type ToleranceSet } from './tolerances.ts';

/** The same set with one limit of somebody's own; it says so, and what it was before. As it was, where it has no such limit. */
export const withLimit = (
  set: ToleranceSet,
  name: string,
  change: Pick<Limit, 'below' | 'above'>,
): ToleranceSet => {
  const was = Object.hasOwn(set.allowed, name) ? set.allowed[name] : undefined;
  if (was === undefined) return set;
  const source = was.sure === 'own' ? was.source : `entered by you; before: ${was.source}`;
  return {
    id: ownId(set.id),
    title: ownTitle(set.title),
    allowed: { ...set.allowed, [name]: { ...change, source, sure: 'own' } },
  };
};

/** Which set a flight is judged by, and what was changed in it: kept with the flight, enough to have the set again. */
export interface JudgedBy {
  readonly set: string;
  readonly changed: Readonly<Record<string, Pick<Limit, 'below' | 'above'>>>;
}

/** The set in full; the usual one where nothing says otherwise or the named one is no more. */
export const limitsOf = (by: JudgedBy | null): ToleranceSet => {
  const set = TOLERANCE_SETS.find(({ id }) => id === by?.set) ?? DEFAULT_TOLERANCES;
  return Object.entries(by?.changed ?? {}).reduce(
    (changed, [name, limit]) => withLimit(changed, name, limit),
    set,
  );
};

const ownId = (id: string): string => (id.startsWith('own-') ? id : `own-${id}`);
const ownTitle = (title: string): string => (title.endsWith(', changed') ? title : `${title}, changed`);
