import 'fake-indexeddb/auto';
import type { Claims } from '../../src/storage/claims.ts';
import { type Logbook, type LogbookOptions, openLogbook } from '../../src/storage/logbook.ts';

/** Claims shared by several logbooks of one test, as by the tabs of one browser. */
export const sharedClaims = (): Claims => {
  const held = new Set<string>();
  return {
    claim: async (flight) => {
      if (held.has(flight)) return null;
      held.add(flight);
      return () => held.delete(flight);
    },
    isFree: async (flight) => !held.has(flight),
    close: () => {},
  };
};

let count = 0;
export const freshName = (): string => {
  count += 1;
  return `test-${count}`;
};

/** A logbook of its own, and what it told the user. */
export const openTestLogbook = async (
  options: Partial<LogbookOptions> = {},
): Promise<{ logbook: Logbook; told: string[] }> => {
  const told: string[] = [];
  const logbook = await openLogbook({
    tell: (sentence) => told.push(sentence),
    databaseName: freshName(),
    claims: sharedClaims(),
    ...options,
  });
  return { logbook, told };
};
