// A thousand whole circuits with seeds, on two threads, and what happens to memory meanwhile.
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { flyOrder } from '../../src/headless/flight.ts';
import { planOf, scenarioFrom } from '../../src/headless/scenario.ts';
import { createPilot } from '../../src/pilot/pilot.ts';
import { prepare } from '../../src/simulation/model.ts';
import { numberAsked, say } from './rows.ts';

const THREADS = 2;

interface Share {
  readonly first: number;
  readonly flights: number;
}
interface Told {
  readonly flownS: number;
  /** Heap in use after a collection, early on and at the end. */
  readonly earlyB: number;
  readonly endB: number;
}

const heapB = (): number => {
  (globalThis as { gc?: () => void }).gc?.();
  return process.memoryUsage().heapUsed;
};

const flyShare = ({ first, flights }: Share): Told => {
  let flownS = 0;
  let earlyB = 0;
  const base = scenarioFrom({ wind: '050/08', turbulence: 'light' }, '.');
  const plan = planOf(base);
  for (let i = 0; i < flights; i += 1) {
    const scenario = { ...base, seed: first + i };
    const model = prepare(scenario);
    const source = createPilot(model, plan);
    const order = {
      scenario,
      plan,
      model,
      source,
      durationS: null,
      openLoop: false,
      trackHz: null,
      gpx: false,
    };
    flownS += flyOrder(order).result.flight_s;
    if (i === Math.floor(flights / 10)) earlyB = heapB();
  }
  return { flownS, earlyB, endB: heapB() };
};

const flyAll = async (): Promise<void> => {
  const flights = Math.round(numberAsked('flights', 1000));
  const begun = performance.now();
  const cpuBefore = process.cpuUsage();
  const each = Math.ceil(flights / THREADS);
  const told = await Promise.all(
    Array.from({ length: THREADS }, (_, i) => {
      const share: Share = { first: 1 + i * each, flights: Math.min(each, flights - i * each) };
      return new Promise<Told>((resolve, reject) => {
        const worker = new Worker(new URL(import.meta.url), { workerData: share });
        worker.once('message', resolve);
        worker.once('error', reject);
      });
    }),
  );
  const seconds = (performance.now() - begun) / 1000;
  const { user, system } = process.cpuUsage(cpuBefore);
  const hours = told.reduce((sum, one) => sum + one.flownS, 0) / 3600;
  say({
    name: `${flights} circuits on ${THREADS} threads (${hours.toFixed(0)} hours flown)`,
    figure: seconds,
    unit: 's',
    sense: 'at most',
    budget: (60 * flights) / 1000,
  });
  say({
    name: 'the same by the CPU it took, on as many free cores',
    figure: (user + system) / 1e6 / THREADS,
    unit: 's',
    sense: 'at most',
    budget: (60 * flights) / 1000,
  });
  say({
    name: 'heap at the end of it over heap after a tenth of it',
    figure: Math.max(...told.map((one) => one.endB / one.earlyB)),
    unit: '',
    sense: 'at most',
    budget: 1.1,
  });
};

if (isMainThread) await flyAll();
else parentPort?.postMessage(flyShare(workerData as Share));
