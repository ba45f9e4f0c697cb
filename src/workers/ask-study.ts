import type { FromStudy, StudyProgress, StudyResults, StudyTask, ToStudy } from './messages.ts';

/** A task under way. */
export interface Asked<Result> {
  /** Rejects with an Error sentence when it failed; resolves with null when it was cancelled. */
  readonly result: Promise<Result | null>;
  cancel(): void;
}

/** The study, off the main thread. */
export interface Study {
  ask<Task extends StudyTask>(
    task: Task,
    onProgress?: (progress: StudyProgress) => void,
  ): Asked<StudyResults[Task['task']]>;
  /** Ends the worker; what is under way is cancelled. */
  close(): void;
}

/** As much of a Worker as is needed. */
export interface StudyWorker {
  onmessage: ((event: MessageEvent<FromStudy>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  postMessage(message: ToStudy): void;
  terminate(): void;
}

interface Open {
  readonly task: StudyTask;
  readonly settle: (result: unknown) => void;
  readonly fail: (error: Error) => void;
  readonly onProgress: (progress: StudyProgress) => void;
  /** A worker has died over it. */
  askedAgain: boolean;
}

const newWorker = (): StudyWorker =>
  new Worker(new URL('./study.ts', import.meta.url), { type: 'module' }) as unknown as StudyWorker;

/** A worker that works says something between two flights; a browser that ends one for want of memory tells nobody. */
const SILENT_MS = 60_000;
/** What has arrived while the page slept is read first. */
const GRACE_MS = 5_000;

const DIED = 'The study stopped before it had an answer; asking again starts it anew.';

/**
 * A worker is started when something is asked. One that died (did not load, failed, fell silent) is replaced:
 * what was open is asked once more, and fails when that one dies too.
 */
export const openStudy = (start: () => StudyWorker = newWorker): Study => {
  const open = new Map<number, Open>();
  let lastId = 0;
  let worker: StudyWorker | null = null;
  let watch: ReturnType<typeof setTimeout> | undefined;

  const died = (why: string): void => {
    clearTimeout(watch);
    worker?.terminate();
    worker = null;
    for (const [id, asked] of open) {
      if (asked.askedAgain) {
        open.delete(id);
        asked.fail(new Error(why ? `${DIED} (${why})` : DIED));
        continue;
      }
      asked.askedAgain = true;
      post(id, asked.task);
    }
  };
  const listen = (): void => {
    clearTimeout(watch);
    if (open.size === 0) return;
    watch = setTimeout(() => {
      watch = setTimeout(() => died(''), GRACE_MS);
    }, SILENT_MS);
  };
  const hear = ({ data }: MessageEvent<FromStudy>): void => {
    const asked = open.get(data.id);
    if (asked !== undefined) {
      if (data.kind === 'progress') asked.onProgress(data.progress);
      else {
        open.delete(data.id);
        if (data.kind === 'failed') asked.fail(new Error(data.why));
        else asked.settle(data.kind === 'done' ? data.result : null);
      }
    }
    listen();
  };
  const begin = (): StudyWorker => {
    const begun = start();
    begun.onmessage = hear;
    // One that did not load gives no message, only an event
    begun.onerror = (event) => {
      if (begun === worker) died(event.message ?? '');
    };
    return begun;
  };
  const post = (id: number, task: StudyTask): void => {
    worker ??= begin();
    worker.postMessage({ id, ask: task });
    listen();
  };
  return {
    ask: (task, onProgress = () => {}) => {
      lastId += 1;
      const id = lastId;
      const result = new Promise<never>((settle, fail) => {
        open.set(id, { task, settle: settle as Open['settle'], fail, onProgress, askedAgain: false });
      });
      post(id, task);
      return {
        result,
        cancel: () => {
          if (open.has(id)) worker?.postMessage({ id, cancel: true });
        },
      };
    },
    close: () => {
      clearTimeout(watch);
      worker?.terminate();
      worker = null;
      for (const asked of open.values()) asked.settle(null);
      open.clear();
    },
  };
};
