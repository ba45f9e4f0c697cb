import { useCallback, useEffect, useState } from 'react';
import type { AttemptRow } from '../../lesson/attempts/attempt.ts';
import type { Logbook } from '../../storage/logbook.ts';
import { pilotNow, theLogbook } from '../logbook-here.ts';

/** What the page shows of the logbook, read anew after every change, here or in another tab. */
export interface LogbookNow {
  readonly book: Logbook;
  readonly pilot: string;
  readonly pilots: readonly string[];
  /** Newest first. */
  readonly rows: readonly AttemptRow[];
  readonly deleted: readonly AttemptRow[];
  readonly space: { readonly usedBytes: number; readonly mostBytes: number } | null;
}

const read = async (book: Logbook): Promise<LogbookNow> => {
  const pilot = await pilotNow(book);
  const [pilots, rows, deleted, space] = await Promise.all([
    book.pilots(),
    book.list({ pilot }),
    book.list({ pilot, deleted: true }),
    book.space(),
  ]);
  return { book, pilot, pilots: [...new Set([...pilots, pilot])], rows, deleted, space };
};

export const useLogbook = (): LogbookNow | null => {
  const [now, setNow] = useState<LogbookNow | null>(null);
  const refresh = useCallback(async (book: Logbook) => setNow(await read(book)), []);
  useEffect(() => {
    let gone = false;
    let stop: (() => void) | null = null;
    theLogbook().then((book) => {
      if (gone) return;
      void refresh(book);
      stop = book.onChange(() => void refresh(book));
    });
    return () => {
      gone = true;
      stop?.();
    };
  }, [refresh]);
  return now;
};
