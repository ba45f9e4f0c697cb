import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames } from 'idb';
import { withCircuit } from '../formats/earlier-items.ts';
import type { AttemptRow } from '../lesson/attempts/attempt.ts';
import type { FlightHead, FlightState } from './flight-under-way.ts';
import type { JournalPart } from './journal.ts';

/** One attempt's flight: the gzipped text of its body. */
export interface Flight {
  readonly id: string;
  readonly packed: Uint8Array;
}

/** What stands where. Rows and flights are apart, so that a list reads no flight. */
export interface Shelves extends DBSchema {
  attempts: { key: string; value: AttemptRow; indexes: { pilotWhen: [string, string]; deletedAt: string } };
  flights: { key: string; value: Flight };
  pilots: { key: string; value: { readonly name: string } };
  /** Small things by name. */
  kept: { key: string; value: string };
  /** Flights under way, and what of them has been written each second. */
  underWay: { key: string; value: FlightHead };
  asides: { key: string; value: FlightState };
  journal: { key: [string, number]; value: JournalPart };
}

export type Database = IDBPDatabase<Shelves>;
type Upgrade = IDBPTransaction<Shelves, StoreNames<Shelves>[], 'versionchange'>;

/**
 * How the shelves came to stand as they do: the first entry builds version 1 from nothing, each later one turns
 * the version before into its own. Entries are never changed, only added.
 */
export const MIGRATIONS: readonly ((db: Database, upgrade: Upgrade) => void | Promise<void>)[] = [
  (db) => {
    const attempts = db.createObjectStore('attempts', { keyPath: 'id' });
    attempts.createIndex('pilotWhen', ['pilot', 'when']);
    // Holds only what is deleted: a row without a date there has no key.
    attempts.createIndex('deletedAt', 'deletedAt');
    db.createObjectStore('flights', { keyPath: 'id' });
    db.createObjectStore('pilots', { keyPath: 'name' });
    db.createObjectStore('kept');
    db.createObjectStore('underWay', { keyPath: 'id' });
    db.createObjectStore('asides', { keyPath: 'id' });
    db.createObjectStore('journal', { keyPath: ['flight', 'part'] });
  },
  // The circuit of a judged item stood in its id
  async (_, upgrade) => {
    for await (const cursor of upgrade.objectStore('attempts')) {
      const row = cursor.value;
      await cursor.update({ ...row, items: row.items.map(withCircuit) });
    }
  },
];

export interface DatabaseEvents {
  /** Another tab holds an older version open. */
  onBlocked(): void;
  /** Another tab wants to bring in a newer version: ours has been closed for it. */
  onOutdated(): void;
  /** The browser has closed it, as when the user clears the site's data. */
  onLost(): void;
}

export const DATABASE_NAME = 'lapwing';

/** Opens the shelves, brought to the last of `migrations`. Rejects where the browser refuses. */
export const openDatabase = async (
  events: DatabaseEvents,
  migrations: typeof MIGRATIONS = MIGRATIONS,
  name = DATABASE_NAME,
): Promise<Database> => {
  const db = await openDB<Shelves>(name, migrations.length, {
    async upgrade(database, oldVersion, _, transaction) {
      try {
        for (const migrate of migrations.slice(oldVersion)) await migrate(database, transaction);
      } catch {
        // Nothing half done: the database stays at the version it had, and opening it fails.
        transaction.done.catch(() => {});
        transaction.abort();
      }
    },
    blocked: () => events.onBlocked(),
    blocking: () => {
      db.close();
      events.onOutdated();
    },
    terminated: () => events.onLost(),
  });
  return db;
};

/** Work in one transaction, waited for to its end: it all stands, or none of it and one error. */
export const inOne = async <T>(tx: { readonly done: Promise<void> }, work: () => Promise<T>): Promise<T> => {
  const [answer] = await Promise.all([work(), tx.done]);
  return answer;
};
