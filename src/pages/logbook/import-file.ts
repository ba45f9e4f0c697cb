import { create } from 'zustand';
import type { CheckProgress } from '../../storage/check-file.ts';
import { theLogbook } from '../logbook-here.ts';

/** A file on its way into the logbook; it goes on while other pages are looked at. */
interface Importing {
  readonly file: string;
  /** Null while it is read. */
  readonly progress: CheckProgress | null;
  /** Being written: it cannot be stopped any more. */
  readonly writing: boolean;
  cancel(): void;
}

export interface Said {
  readonly words: string;
  readonly wrong: boolean;
}

interface ImportStore {
  readonly now: Importing | null;
  /** What came of the last one. */
  readonly said: Said | null;
}

export const useImport = create<ImportStore>()(() => ({ now: null, said: null }));

/** Takes a file in, one at a time. */
export const importFile = async (file: File, pilot: string): Promise<void> => {
  const say = (words: string, wrong: boolean) => useImport.setState({ said: { words, wrong } });
  if (useImport.getState().now !== null) {
    say('One file at a time; the other is still being checked.', true);
    return;
  }
  const stop = new AbortController();
  const change = (changes: Partial<Importing>) =>
    useImport.setState(({ now }) => ({ now: now && { ...now, ...changes } }));
  useImport.setState({
    now: { file: file.name, progress: null, writing: false, cancel: () => stop.abort() },
    said: null,
  });
  try {
    const book = await theLogbook();
    const outcome = await book.importFile(file, {
      onProgress: (progress) => change({ progress }),
      onChecked: () => change({ writing: true }),
      cancelled: stop.signal,
    });
    if (!outcome.ok) {
      say(outcome.why, !stop.signal.aborted);
      return;
    }
    const others = new Set(outcome.added.map((row) => row.pilot).filter((each) => each !== pilot));
    const whose = others.size > 0 ? ` They are under ${[...others].join(', ')}.` : '';
    say(`${outcome.says}${whose}`, false);
  } catch (error) {
    say(error instanceof Error ? error.message : String(error), true);
  } finally {
    useImport.setState({ now: null });
  }
};
