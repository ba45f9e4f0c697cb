import type { Logbook } from '../storage/logbook.ts';
import { openFileChecks } from '../workers/ask-check.ts';
import { fetchPart, getPart } from './parts/fetch-part.ts';
import { useStore } from './store.ts';

let opened: Promise<Logbook> | null = null;

/** Checks files that are taken in. */
export const fileChecks = openFileChecks();

/** What a pilot is called who has not said a name. */
export const NAMELESS = 'Pilot 1';

/** Its program; a page that reads it waits for it. */
export const logbookPart = () => getPart('storage/logbook.ts', () => import('../storage/logbook.ts'));

/** The one logbook of this visit, fetched and opened when it is first wanted; trouble with storage is told once. */
export const theLogbook = (): Promise<Logbook> => {
  opened ??= fetchPart('storage/logbook.ts', () => import('../storage/logbook.ts'))
    .then(({ openLogbook }) =>
      openLogbook({
        tell: (sentence) => useStore.setState({ notice: sentence, storageSays: sentence }),
        checkFile: fileChecks.check,
        fetchExchange: () => fetchPart('storage/exchange.ts', () => import('../storage/exchange.ts')),
      }),
    )
    .catch((error: unknown) => {
      opened = null;
      throw error;
    });
  return opened;
};

export const pilotNow = async (book: Logbook): Promise<string> => (await book.currentPilot()) || NAMELESS;
