import type { Logbook } from '../storage/logbook.ts';
import { useStore } from './store.ts';

let opened: Promise<Logbook> | null = null;

/** What a pilot is called who has not said a name. */
export const NAMELESS = 'Pilot 1';

/** The one logbook of this visit, fetched and opened when it is first wanted; trouble with storage is told once. */
export const theLogbook = (): Promise<Logbook> => {
  opened ??= import('../storage/logbook.ts').then(({ openLogbook }) =>
    openLogbook({ tell: (sentence) => useStore.setState({ notice: sentence, storageSays: sentence }) }),
  );
  return opened;
};

export const pilotNow = async (book: Logbook): Promise<string> => (await book.currentPilot()) || NAMELESS;
