import type { CheckFile, Incoming } from '../storage/check-file.ts';
import { CANCELLED, nameOf } from '../storage/file-words.ts';
import type { FromCheck } from './check-logbook.ts';

/** As much of a Worker as is needed. */
export interface CheckWorker {
  onmessage: ((event: MessageEvent<FromCheck>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  postMessage(file: File): void;
  terminate(): void;
}

const newWorker = (): CheckWorker =>
  new Worker(new URL('./check-logbook.ts', import.meta.url), { type: 'module' }) as unknown as CheckWorker;

/** Checks files off the main thread, each with a worker of its own, which is ended with the check. */
export interface FileChecks {
  readonly check: CheckFile;
  /** Has a worker stand ready, so that a file can be taken in without a network. */
  prepare(): void;
}

export const openFileChecks = (start: () => CheckWorker = newWorker): FileChecks => {
  let ready: CheckWorker | null = null;
  const prepare = (): void => {
    if (ready !== null) return;
    const begun = start();
    // One that did not load is not kept: the next file asks for another
    begun.onerror = () => {
      if (ready === begun) ready = null;
    };
    ready = begun;
  };
  const once = (
    file: File,
    ...[onProgress, cancelled]: Parameters<CheckFile> extends [File, ...infer R] ? R : never
  ) =>
    new Promise<readonly Incoming[] | null>((resolve, reject) => {
      prepare();
      const worker = ready as CheckWorker;
      ready = null;
      const end = () => {
        worker.terminate();
        cancelled?.removeEventListener('abort', cancel);
      };
      const cancel = () => {
        end();
        reject(new Error(CANCELLED));
      };
      cancelled?.addEventListener('abort', cancel);
      worker.onmessage = ({ data }) => {
        if (data.kind === 'progress') return onProgress?.(data);
        end();
        if (data.kind === 'done') resolve(data.incoming);
        else reject(new Error(data.why));
      };
      worker.onerror = () => {
        end();
        resolve(null);
      };
      worker.postMessage(file);
    });
  return {
    prepare,
    check: async (file, onProgress, cancelled) => {
      if (cancelled?.aborted) throw new Error(CANCELLED);
      // A worker that died is replaced once
      for (let tries = 0; tries < 2; tries += 1) {
        const incoming = await once(file, onProgress, cancelled);
        if (incoming !== null) return incoming;
      }
      throw new Error(
        `${nameOf(file)}: its check stopped before it was done; nothing was changed, try again`,
      );
    },
  };
};
