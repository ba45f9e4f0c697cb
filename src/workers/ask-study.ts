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
  readonly settle: (result: unknown) => void;
  readonly fail: (error: Error) => void;
  readonly onProgress: (progress: StudyProgress) => void;
}

const newWorker = (): StudyWorker =>
  new Worker(new URL('./study.ts', import.meta.url), { type: 'module' }) as unknown as StudyWorker;

/** Starts a worker; it costs nothing until it is asked. */
export const openStudy = (worker: StudyWorker = newWorker()): Study => {
  const open = new Map<number, Open>();
  let lastId = 0;
  worker.onmessage = ({ data }) => {
    const asked = open.get(data.id);
    if (asked === undefined) return;
    if (data.kind === 'progress') return asked.onProgress(data.progress);
    open.delete(data.id);
    if (data.kind === 'failed') asked.fail(new Error(data.why));
    else asked.settle(data.kind === 'done' ? data.result : null);
  };
  worker.onerror = (event) => {
    for (const asked of open.values()) asked.fail(new Error(`study: ${event.message}`));
    open.clear();
  };
  return {
    ask: (task, onProgress = () => {}) => {
      lastId += 1;
      const id = lastId;
      const result = new Promise<never>((settle, fail) => {
        open.set(id, { settle: settle as Open['settle'], fail, onProgress });
      });
      worker.postMessage({ id, ask: task });
      return { result, cancel: () => worker.postMessage({ id, cancel: true }) };
    },
    close: () => {
      worker.terminate();
      for (const asked of open.values()) asked.settle(null);
      open.clear();
    },
  };
};
