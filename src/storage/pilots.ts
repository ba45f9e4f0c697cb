import { LONGEST } from '../formats/logbook-json.ts';
import { inOne } from './database.ts';
import type { Keeper } from './keeper.ts';
import { Refusal } from './refusals.ts';

const CURRENT = 'current-pilot';

/** A pilot's name as it is kept: text of any script, without what cannot be seen. */
export const checkedName = (name: string): string => {
  const clean = name
    .replaceAll(/\p{Cc}+/gu, ' ')
    .trim()
    .replaceAll(/\s+/g, ' ');
  if (clean === '') throw new Refusal('pilot: the name must not be empty, was empty');
  if (clean.length > LONGEST.name) {
    throw new Refusal(`pilot: the name must be at most ${LONGEST.name} characters long, was ${clean.length}`);
  }
  return clean;
};

/** Who flies on this machine. */
export const pilotsOf = (keeper: Keeper) => {
  // For a visit without storage.
  const names = new Set<string>();
  let current = '';
  return {
    pilots: async (): Promise<readonly string[]> => {
      const stored = await keeper.on((db) => db.getAllKeys('pilots'), [] as string[]);
      return [...new Set([...stored, ...names])].sort((a, b) => a.localeCompare(b));
    },
    currentPilot: async (): Promise<string> =>
      current || ((await keeper.on((db) => db.get('kept', CURRENT), '')) ?? ''),
    choosePilot: async (name: string): Promise<void> => {
      const clean = checkedName(name);
      names.add(clean);
      current = clean;
      await keeper.on(async (db) => {
        const tx = db.transaction(['pilots', 'kept'], 'readwrite');
        await Promise.all([
          tx.objectStore('pilots').put({ name: clean }),
          tx.objectStore('kept').put(clean, CURRENT),
          tx.done,
        ]);
      }, undefined);
      keeper.changed();
    },
    renamePilot: async (from: string, to: string): Promise<void> => {
      const clean = checkedName(to);
      if (clean === from) return;
      names.delete(from);
      names.add(clean);
      if (current === from) current = clean;
      for (const loose of keeper.loose.values())
        if (loose.row.pilot === from) loose.row = { ...loose.row, pilot: clean };
      await keeper.on(async (db) => {
        const tx = db.transaction(['pilots', 'kept', 'attempts'], 'readwrite');
        await inOne(tx, async () => {
          const kept = tx.objectStore('kept');
          const attempts = tx.objectStore('attempts');
          await tx.objectStore('pilots').delete(from);
          await tx.objectStore('pilots').put({ name: clean });
          if ((await kept.get(CURRENT)) === from) await kept.put(clean, CURRENT);
          const theirs = IDBKeyRange.bound([from, ''], [from, '\uFFFF']);
          const rows = await attempts.index('pilotWhen').getAll(theirs);
          await Promise.all(rows.map((row) => attempts.put({ ...row, pilot: clean })));
        });
      }, undefined);
      keeper.changed();
    },
  };
};
