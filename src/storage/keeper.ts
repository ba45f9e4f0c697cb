import type { AttemptRow } from '../lesson/attempts/attempt.ts';
import { type Database, type MIGRATIONS, openDatabase } from './database.ts';
import { Refusal, SENTENCES, type Trouble, troubleOf } from './refusals.ts';

/** An attempt that could not be kept and stays for this visit. */
export interface Loose {
  row: AttemptRow;
  readonly packed: Uint8Array;
}

/** What everything that reads and writes shares. */
export interface Keeper {
  readonly kept: boolean;
  readonly loose: Map<string, Loose>;
  /**
   * Does `work` on the database. Without one, or when it fails, the user has been told and the answer is
   * `otherwise`. A Refusal goes on to whoever asked.
   */
  on<T, O = T>(work: (db: Database) => Promise<T>, otherwise: O): Promise<T | O>;
  /** Says a trouble; the same one not twice in a visit. */
  tell(trouble: Trouble): void;
  /** Every tab is told, this one too. */
  changed(): void;
  onChange(listener: () => void): () => void;
  close(): void;
}

export interface KeeperOptions {
  readonly tell: (sentence: string) => void;
  readonly migrations?: typeof MIGRATIONS;
  readonly databaseName?: string;
}

const channelHere = (): BroadcastChannel | null =>
  typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('lapwing/logbook');

/** Opens what there is to be opened; never rejects. */
export const openKeeper = async (options: KeeperOptions): Promise<Keeper> => {
  let db: Database | null = null;
  let closed = false;
  const told = new Set<Trouble>();
  const listeners = new Set<() => void>();
  const channel = channelHere();
  const tell = (trouble: Trouble) => {
    if (told.has(trouble) || closed) return;
    told.add(trouble);
    options.tell(SENTENCES[trouble]);
  };
  const hear = () => {
    for (const listener of listeners) listener();
  };
  if (channel !== null) channel.onmessage = hear;

  const open = async (): Promise<Database | null> => {
    try {
      return await openDatabase(
        {
          onBlocked: () => tell('blocked'),
          onOutdated: () => {
            db = null;
            tell('outdated');
          },
          onLost: () => {
            db = null;
          },
        },
        options.migrations,
        options.databaseName,
      );
    } catch (error) {
      tell(troubleOf(error, 'refused'));
      return null;
    }
  };
  /** Once, and once more after the browser has closed the database by itself. */
  const tryOn = async <T>(work: (db: Database) => Promise<T>): Promise<{ readonly answer: T } | null> => {
    if (db === null) return null;
    try {
      return { answer: await work(db) };
    } catch (error) {
      if (error instanceof Refusal || troubleOf(error, 'failed') !== 'lost') throw error;
      db = closed ? null : await open();
      return db === null ? null : { answer: await work(db) };
    }
  };
  db = await open();
  return {
    get kept() {
      return db !== null;
    },
    loose: new Map(),
    on: async (work, otherwise) => {
      try {
        const done = await tryOn(work);
        return done === null ? otherwise : done.answer;
      } catch (error) {
        if (error instanceof Refusal) throw error;
        tell(troubleOf(error, 'failed'));
        return otherwise;
      }
    },
    tell,
    changed: () => {
      channel?.postMessage('changed');
      hear();
    },
    onChange: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close: () => {
      closed = true;
      channel?.close();
      db?.close();
      db = null;
    },
  };
};
