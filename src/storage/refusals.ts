const STAYS = 'what you fly stays until this tab is closed: save it as a file.';

/** What the user is told, one sentence for each way in which storage can fail. */
export const SENTENCES = {
  full: `The browser's storage is full; ${STAYS}`,
  refused: `The browser keeps nothing for this page, as in a private window; ${STAYS}`,
  failed: `The browser could not write to the logbook; ${STAYS}`,
  newer: `The logbook was written by a newer version of this page, reload it; ${STAYS}`,
  blocked: 'Another tab holds an older version of the logbook open; close it and this one goes on.',
  outdated: `A newer version of this page was opened in another tab, reload this one; ${STAYS}`,
  lost: `The browser has closed the logbook, reload the page; ${STAYS}`,
} as const;

export type Trouble = keyof typeof SENTENCES;

const BY_NAME: Readonly<Record<string, Trouble>> = {
  QuotaExceededError: 'full',
  VersionError: 'newer',
  InvalidStateError: 'lost',
  UnknownError: 'lost',
};

const nameOf = (error: unknown): string => (error as { name?: string } | null)?.name ?? '';

/** Which trouble an error of the database is. */
export const troubleOf = (error: unknown, otherwise: Trouble): Trouble => BY_NAME[nameOf(error)] ?? otherwise;

/** An Error whose message is meant for the user: it is passed on, never swallowed as trouble with storage. */
export class Refusal extends Error {}
