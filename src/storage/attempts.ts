import { type AttemptBody, type AttemptHead, headOf, rowOf } from '../formats/attempt.ts';
import { bodyText, LONGEST, parseBodyText } from '../formats/logbook-json.ts';
import { sameModel } from '../formats/scenario-json.ts';
import type { AttemptRow } from '../lesson/attempts/attempt.ts';
import type { ListQuestion, OpenedAttempt } from './attempt-questions.ts';
import { inOne } from './database.ts';
import { packText, unpackText } from './gzip.ts';
import type { Keeper } from './keeper.ts';
import { askToPersist } from './persist.ts';
import { Refusal } from './refusals.ts';

const newestFirst = (a: AttemptRow, b: AttemptRow): number =>
  a.when === b.when ? (a.id < b.id ? 1 : -1) : a.when < b.when ? 1 : -1;

/** Opened with another model version: what that means, as a sentence; empty when it flies again to the bit. */
const saysOf = (row: AttemptRow, exact: boolean): string =>
  exact
    ? ''
    : `Recorded with model version ${row.modelVersion}, which this page no longer flies: it is shown from its keyframes, one every ten seconds.`;

/** Attempts on their shelf, and those that stay only for this visit. */
export const attemptsOf = (keeper: Keeper) => {
  const { loose } = keeper;
  /** Deleted in this visit where there was no room even to write that down. */
  const gone = new Map<string, string>();
  const asShown = (row: AttemptRow): AttemptRow => {
    const deletedAt = gone.get(row.id);
    return deletedAt === undefined ? row : { ...row, deletedAt };
  };

  const packedOf = async (id: string): Promise<{ row: AttemptRow; packed: Uint8Array }> => {
    const here = loose.get(id);
    if (here !== undefined) return here;
    const found = await keeper.on(async (db) => {
      const tx = db.transaction(['attempts', 'flights']);
      const [row, flight] = await Promise.all([
        tx.objectStore('attempts').get(id),
        tx.objectStore('flights').get(id),
        tx.done,
      ]);
      return row === undefined || flight === undefined ? null : { row, packed: flight.packed };
    }, null);
    if (found === null) throw new Refusal(`logbook: attempt ${id} must be in the logbook, was not`);
    return found;
  };

  /** Changes rows here and there; ids that are nowhere are passed over. False: it could not be written down. */
  const change = async (ids: readonly string[], how: (row: AttemptRow) => AttemptRow): Promise<boolean> => {
    for (const id of ids) {
      const here = loose.get(id);
      if (here !== undefined) here.row = how(here.row);
    }
    const done = await keeper.on(async (db) => {
      const tx = db.transaction('attempts', 'readwrite');
      const one = async (id: string) => {
        const row = await tx.store.get(id);
        if (row !== undefined) await tx.store.put(how(row));
      };
      await inOne(tx, () => Promise.all(ids.map(one)));
      return true;
    }, false);
    keeper.changed();
    return done;
  };

  const put = (row: AttemptRow, packed: Uint8Array): Promise<boolean> =>
    keeper.on(async (db) => {
      const tx = db.transaction(
        ['attempts', 'flights', 'pilots', 'underWay', 'asides', 'journal'],
        'readwrite',
      );
      await Promise.all([
        tx.objectStore('attempts').put(row),
        tx.objectStore('flights').put({ id: row.id, packed }),
        tx.objectStore('pilots').put({ name: row.pilot }),
        tx.objectStore('underWay').delete(row.id),
        tx.objectStore('asides').delete(row.id),
        tx.objectStore('journal').delete(IDBKeyRange.bound([row.id, 0], [row.id, Infinity])),
        tx.done,
      ]);
      return true;
    }, false);

  /** What could not be kept before is tried again, once there is room. */
  const settle = async (): Promise<void> => {
    for (const [id, { row, packed }] of loose) if (await put(row, packed)) loose.delete(id);
  };

  return {
    packedOf,
    list: async ({ pilot, deleted = false }: ListQuestion = {}): Promise<readonly AttemptRow[]> => {
      const stored = await keeper.on(
        (db) =>
          pilot === undefined
            ? db.getAll('attempts')
            : db.getAllFromIndex('attempts', 'pilotWhen', IDBKeyRange.bound([pilot, ''], [pilot, '\uFFFF'])),
        [] as AttemptRow[],
      );
      const here = [...loose.values()]
        .map(({ row }) => row)
        .filter((row) => pilot === undefined || row.pilot === pilot);
      return [...stored.map(asShown), ...here]
        .filter((row) => (row.deletedAt !== null) === deleted)
        .sort(newestFirst);
    },
    open: async (id: string): Promise<OpenedAttempt> => {
      const { row, packed } = await packedOf(id);
      const place = `attempt of ${row.when}`;
      const body = parseBodyText(await unpackText(packed, place), place);
      const exact = sameModel(body.recording.scenario);
      return { row, attempt: { ...headOf(row), ...body }, exact, says: saysOf(row, exact) };
    },
    keep: async (head: AttemptHead, body: AttemptBody): Promise<AttemptRow> => {
      const packed = await packText(bodyText(body));
      const row = rowOf(head, body, packed.length);
      if (await put(row, packed)) askToPersist();
      else loose.set(row.id, { row, packed });
      keeper.changed();
      return row;
    },
    writeNotes: async (id: string, notes: string): Promise<void> => {
      if (notes.length > LONGEST.notes)
        throw new Refusal(`notes must be at most ${LONGEST.notes} characters long, were ${notes.length}`);
      await change([id], (row) => ({ ...row, notes }));
    },
    writeOwnView: async (id: string, ownView: readonly string[]): Promise<void> => {
      const words = ownView.slice(0, 20).map((text) => text.slice(0, LONGEST.view));
      await change([id], (row) => ({ ...row, ownView: words }));
    },
    remove: async (ids: readonly string[]): Promise<void> => {
      const deletedAt = new Date().toISOString();
      if (await change(ids, (row) => ({ ...row, deletedAt: row.deletedAt ?? deletedAt }))) return;
      for (const id of ids) gone.set(id, deletedAt);
    },
    restore: async (ids: readonly string[]): Promise<void> => {
      for (const id of ids) gone.delete(id);
      await change(ids, (row) => ({ ...row, deletedAt: null }));
    },
    /** For good, what was deleted longer ago than `ms`. */
    purgeOlderThan: async (ms: number): Promise<void> => {
      const before = new Date(Date.now() - ms).toISOString();
      await keeper.on(async (db) => {
        const old = await db.getAllKeysFromIndex('attempts', 'deletedAt', IDBKeyRange.upperBound(before));
        if (old.length === 0) return;
        const tx = db.transaction(['attempts', 'flights'], 'readwrite');
        await Promise.all([
          ...old.map((id) => tx.objectStore('attempts').delete(id)),
          ...old.map((id) => tx.objectStore('flights').delete(id)),
          tx.done,
        ]);
      }, undefined);
    },
    purge: async (ids: readonly string[]): Promise<void> => {
      for (const id of ids) if (loose.get(id)?.row.deletedAt) loose.delete(id);
      await keeper.on(async (db) => {
        const tx = db.transaction(['attempts', 'flights'], 'readwrite');
        const one = async (id: string) => {
          const row = await tx.objectStore('attempts').get(id);
          if (row === undefined || asShown(row).deletedAt === null) return;
          await Promise.all([tx.objectStore('attempts').delete(id), tx.objectStore('flights').delete(id)]);
        };
        await inOne(tx, () => Promise.all(ids.map(one)));
      }, undefined);
      await settle();
      keeper.changed();
    },
  };
};
