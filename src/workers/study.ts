/** The entry of the study's worker: post in, post out. What it does is in tasks.ts. */
import type { FromStudy, ToStudy } from './messages.ts';
import { createBench } from './tasks.ts';

/** As much of a worker's own scope as is used here. */
interface Scope {
  onmessage: ((event: MessageEvent<ToStudy>) => void) | null;
  postMessage(message: FromStudy): void;
}
const scope = globalThis as unknown as Scope;

const bench = createBench({
  now: () => performance.now(),
  soon: (go) => {
    setTimeout(go, 0);
  },
  send: (message) => scope.postMessage(message),
});
scope.onmessage = ({ data }) => bench(data);
