import type { AttemptBody, AttemptHead } from '../formats/attempt.ts';
import type { AttemptRow } from '../lesson/attempts/attempt.ts';
import type { ListQuestion, OpenedAttempt } from './attempt-questions.ts';
import { attemptsOf } from './attempts.ts';
import type { CheckFile, CheckProgress } from './check-file.ts';
import { type Claims, claimsHere } from './claims.ts';
import type { FlightAside } from './flight-under-way.ts';
import { type KeeperOptions, openKeeper } from './keeper.ts';
import { spaceHere } from './persist.ts';
import { pilotsOf } from './pilots.ts';
import {
  type FlightJournal,
  type FlightTakenUp,
  flightsUnderWay,
  type UnfinishedFlight,
} from './under-way.ts';

export type { Attempt, AttemptBody, AttemptHead, Mark } from '../formats/attempt.ts';
export type { FlownResult } from '../formats/result.ts';
export type { AttemptRow, HelpUsed, Parent } from '../lesson/attempts/attempt.ts';
export type { ListQuestion, OpenedAttempt } from './attempt-questions.ts';
export type { FlightAside } from './flight-under-way.ts';
export type { FlightJournal, FlightTakenUp, UnfinishedFlight } from './under-way.ts';

/** What came of an import: all of it, or nothing and one sentence. */
export type ImportOutcome =
  | {
      readonly ok: true;
      readonly added: readonly AttemptRow[];
      readonly already: number;
      readonly says: string;
    }
  | { readonly ok: false; readonly why: string };

/** Follows an import, and stops it as long as nothing has been written. */
export interface ImportWatch {
  readonly onProgress?: (progress: CheckProgress) => void;
  /** All was checked; from now on it cannot be cancelled. */
  readonly onChecked?: () => void;
  readonly cancelled?: AbortSignal;
}

/** A file for the user to save. */
export interface FileOut {
  readonly name: string;
  readonly type: string;
  readonly blob: Blob;
}

/**
 * The logbook: every attempt of every pilot on this machine. Reading and writing never throws for want of
 * storage: what cannot be kept stays for this visit and `tell` hears one sentence.
 */
export interface Logbook {
  /** Attempts outlast this visit. */
  readonly kept: boolean;

  /** In the order of the alphabet. */
  pilots(): Promise<readonly string[]>;
  /** Empty while nobody has been named. */
  currentPilot(): Promise<string>;
  /** Makes a pilot the current one; a new name is added. Throws a sentence at an empty or overlong name. */
  choosePilot(name: string): Promise<void>;
  /** Renames in every attempt; an existing name takes the attempts over. */
  renamePilot(from: string, to: string): Promise<void>;

  /** Rows only: no flight is read. */
  list(question?: ListQuestion): Promise<readonly AttemptRow[]>;
  /** Throws a sentence when it is not there or cannot be read. */
  open(id: string): Promise<OpenedAttempt>;
  /** Keeps a flight that has ended, and ends its journal in the same stroke. */
  keep(head: AttemptHead, body: AttemptBody): Promise<AttemptRow>;
  writeNotes(id: string, notes: string): Promise<void>;
  writeOwnView(id: string, ownView: readonly string[]): Promise<void>;
  /** Deletes so that `restore` brings it back. */
  remove(ids: readonly string[]): Promise<void>;
  restore(ids: readonly string[]): Promise<void>;
  /** Deletes for good what `remove` has deleted. */
  purge(ids: readonly string[]): Promise<void>;

  /** As JSON: one attempt, several, or all that are not deleted. */
  exportJson(ids: readonly string[] | 'all'): Promise<FileOut>;
  exportCsv(id: string): Promise<FileOut>;
  exportGpx(id: string): Promise<FileOut>;
  exportKml(id: string): Promise<FileOut>;
  /** All or nothing. */
  importFile(file: File, watch?: ImportWatch): Promise<ImportOutcome>;

  /** Begins the journal of a flight; `asideNow` is asked at each write. Its id becomes the attempt's. */
  beginJournal(
    pilot: string,
    parent: AttemptRow['parent'],
    asideNow: () => FlightAside,
  ): Promise<FlightJournal>;
  /** Flights of closed tabs, newest first; those that another tab flies now are left out. */
  unfinished(): Promise<readonly UnfinishedFlight[]>;
  /**
   * Goes on with one; null when another tab has it, it is gone, or another model version began it. `asideNow`
   * gets what stood there before.
   */
  takeUp(id: string, asideNow: (before: FlightAside) => FlightAside): Promise<FlightTakenUp | null>;
  discard(id: string): Promise<void>;

  /** What is taken of the browser's storage; null where it does not say. */
  space(): Promise<{ readonly usedBytes: number; readonly mostBytes: number } | null>;

  /** Called after every change, here or in another tab. Returns the way to stop listening. */
  onChange(listener: () => void): () => void;
  close(): void;
}

export interface LogbookOptions extends KeeperOptions {
  /** How tabs agree on who flies what; the browser's own way unless said otherwise. */
  readonly claims?: Claims;
  /** Checks a file that is taken in; on this thread unless said otherwise. */
  readonly checkFile?: CheckFile;
  /** Fetches what writes files out and reads them in; as it is imported unless said otherwise. */
  readonly fetchExchange?: () => Promise<typeof import('./exchange.ts')>;
}

/** What was deleted can be had back for so long. */
const PURGE_AFTER_MS = 30 * 24 * 3600 * 1000;

/** Opens the logbook; never rejects. `tell` hears one sentence for each kind of trouble with storage. */
export const openLogbook = async (options: LogbookOptions): Promise<Logbook> => {
  const keeper = await openKeeper(options);
  const claims = options.claims ?? claimsHere();
  const attempts = attemptsOf(keeper);
  await attempts.purgeOlderThan(PURGE_AFTER_MS);
  const { fetchExchange = () => import('./exchange.ts') } = options;
  let fetched: Promise<ReturnType<typeof import('./exchange.ts')['exchangeOf']>> | null = null;
  const exchange = () => {
    fetched ??= fetchExchange()
      .then(({ exchangeOf }) => exchangeOf(keeper, attempts, options.checkFile))
      .catch((error: unknown) => {
        fetched = null;
        throw error;
      });
    return fetched;
  };
  return {
    get kept() {
      return keeper.kept;
    },
    ...pilotsOf(keeper),
    ...attempts,
    exportJson: async (ids) => (await exchange()).exportJson(ids),
    exportCsv: async (id) => (await exchange()).exportCsv(id),
    exportGpx: async (id) => (await exchange()).exportGpx(id),
    exportKml: async (id) => (await exchange()).exportKml(id),
    importFile: async (file, watch) => (await exchange()).importFile(file, watch),
    ...flightsUnderWay(keeper, claims),
    space: spaceHere,
    onChange: keeper.onChange,
    close: () => {
      claims.close();
      keeper.close();
    },
  };
};
