/** The entry of the worker that checks a logbook's file: a file in, what passed every check or one sentence out. */
import { checkFile, type Incoming } from '../storage/check-file.ts';

export type FromCheck =
  | { readonly kind: 'progress'; readonly done: number; readonly of: number }
  | { readonly kind: 'done'; readonly incoming: readonly Incoming[] }
  | { readonly kind: 'failed'; readonly why: string };

/** As much of a worker's own scope as is used here. */
interface Scope {
  onmessage: ((event: MessageEvent<File>) => void) | null;
  postMessage(message: FromCheck, transfer?: readonly Transferable[]): void;
}
const scope = globalThis as unknown as Scope;

/** Between two messages of how far it is. */
const SAY_MS = 60;

scope.onmessage = ({ data }) => {
  let saidMs = Number.NEGATIVE_INFINITY;
  const say = ({ done, of }: { readonly done: number; readonly of: number }) => {
    if (performance.now() - saidMs < SAY_MS) return;
    saidMs = performance.now();
    scope.postMessage({ kind: 'progress', done, of });
  };
  checkFile()(data, say).then(
    (incoming) => {
      const buffers = new Set(incoming.map(({ packed }) => packed.buffer as ArrayBuffer));
      scope.postMessage({ kind: 'done', incoming }, [...buffers]);
    },
    (error: unknown) =>
      scope.postMessage({ kind: 'failed', why: error instanceof Error ? error.message : String(error) }),
  );
};
