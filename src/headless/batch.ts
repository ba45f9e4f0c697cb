import { availableParallelism } from 'node:os';
import { parentPort, Worker, workerData } from 'node:worker_threads';
import type { PrintedResult } from './flight.ts';
import { flyOne } from './fly.ts';
import { parseOptions } from './options.ts';
import { type Orders, ordersFrom } from './orders.ts';

/** What a worker is started with: the same command, for it to read again. */
interface Hired {
  readonly lapwingWorker: true;
  readonly args: readonly string[];
  readonly folder: string;
}

/** A worker's answer: the number of a flight and what came of it. */
interface Done {
  readonly flight: number;
  readonly result: PrintedResult;
}

/** Room for what is made new: with more of it the collector comes by less often, and two of them get less in each other's way. */
const YOUNG_MB = 64;

/** Below this many flights a second worker costs more than it saves. */
const WORTH_A_WORKER = 8;

/** As many workers as were asked for; else as many as the machine's cores and the flights are worth. */
export const workersFor = ({ jobs, scenarios }: Orders): number =>
  Math.min(
    scenarios.length,
    jobs ?? Math.max(1, Math.min(availableParallelism(), Math.floor(scenarios.length / WORTH_A_WORKER))),
  );

/**
 * Flies the batch by several workers; each takes the next flight as it has done with one. The results stand in the
 * order of the seeds, as from one. What goes wrong in a worker ends them all and is thrown here.
 */
export const flyByWorkers = async (
  program: URL,
  args: readonly string[],
  orders: Orders,
  count: number,
): Promise<PrintedResult[]> => {
  const hired: Hired = { lapwingWorker: true, args, folder: orders.folder };
  const workers = Array.from(
    { length: count },
    () => new Worker(program, { workerData: hired, resourceLimits: { maxYoungGenerationSizeMb: YOUNG_MB } }),
  );
  const flights = orders.scenarios.length;
  const results = new Array<PrintedResult>(flights);
  let next = 0;
  const work = (worker: Worker): Promise<void> =>
    new Promise((resolve, reject) => {
      const hand = (): void => {
        if (next === flights) return resolve();
        worker.postMessage(next);
        next += 1;
      };
      worker.on('message', ({ flight, result }: Done) => {
        results[flight] = result;
        hand();
      });
      worker.once('error', reject);
      worker.once('exit', (code) => reject(new Error(`a worker ended with ${code} before its flights`)));
      hand();
    });
  try {
    await Promise.all(workers.map(work));
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
  return results;
};

/** On a worker that `flyByWorkers` has started: flies what it is handed, one after the other. Elsewhere: nothing. */
export const workIfHired = (): void => {
  const hired = workerData as Partial<Hired> | null;
  const port = parentPort;
  if (hired?.lapwingWorker !== true || port === null) return;
  const orders = ordersFrom(parseOptions(hired.args ?? []), hired.folder ?? '.');
  port.on('message', (flight: number) => {
    const scenario = orders.scenarios[flight];
    if (scenario === undefined)
      throw new Error(`a batch of ${orders.scenarios.length} has no flight ${flight}`);
    const done: Done = { flight, result: flyOne(orders, scenario) };
    port.postMessage(done);
  });
};
