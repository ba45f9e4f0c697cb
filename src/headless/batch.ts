import { availableParallelism } from 'node:os';
import { parentPort, Worker, workerData } from 'node:worker_threads';
import type { PrintedResult } from './flight.ts';
import { flyOne } from './fly.ts';
import { parseOptions } from './options.ts';
import { type Orders, ordersFrom } from './orders.ts';

/** One thread's share of a batch: every `parts`-th flight, beginning with number `part`. */
interface Share {
  readonly lapwingShare: true;
  readonly args: readonly string[];
  readonly folder: string;
  readonly part: number;
  readonly parts: number;
}

/** Below this many flights a second thread costs more than it saves. */
const WORTH_A_THREAD = 8;

export const threadsFor = (flights: number): number =>
  Math.max(1, Math.min(availableParallelism(), Math.floor(flights / WORTH_A_THREAD)));

/** Flies the batch on several threads; the results stand in the order of the seeds, as on one thread. */
export const flyInParts = async (
  program: URL,
  args: readonly string[],
  orders: Orders,
  parts: number,
): Promise<PrintedResult[]> => {
  const shares = await Promise.all(
    Array.from({ length: parts }, (_, part) => {
      const share: Share = { lapwingShare: true, args, folder: orders.folder, part, parts };
      return new Promise<PrintedResult[]>((resolve, reject) => {
        const worker = new Worker(program, { workerData: share });
        worker.once('message', resolve);
        worker.once('error', reject);
      });
    }),
  );
  return orders.scenarios.map((_, i) => shares[i % parts]?.[Math.floor(i / parts)] as PrintedResult);
};

/** On a thread that `flyInParts` started: flies its share and posts the results. Elsewhere: does nothing. */
export const flyShare = (): void => {
  const share = workerData as Partial<Share> | null;
  if (share?.lapwingShare !== true || parentPort === null) return;
  const { args = [], folder = '.', part = 0, parts = 1 } = share;
  const orders = ordersFrom(parseOptions(args), folder);
  parentPort.postMessage(
    orders.scenarios.filter((_, i) => i % parts === part).map((scenario) => flyOne(orders, scenario)),
  );
};
