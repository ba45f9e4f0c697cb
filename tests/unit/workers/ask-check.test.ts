import { describe, expect, it } from 'vitest';
import { type CheckWorker, openFileChecks } from '../../../src/workers/ask-check.ts';
import type { FromCheck } from '../../../src/workers/check-logbook.ts';

/** A worker that answers as it is told. */
const fakeWorker = () => {
  const seen = { files: [] as File[], ended: false };
  const worker: CheckWorker = {
    onmessage: null,
    onerror: null,
    postMessage: (file) => seen.files.push(file),
    terminate: () => {
      seen.ended = true;
    },
  };
  const say = (data: FromCheck): void => worker.onmessage?.({ data } as MessageEvent<FromCheck>);
  return { worker, seen, say, die: () => worker.onerror?.({} as ErrorEvent) };
};

const file = new File(['{}'], 'mine.json');
const withWorkers = (count: number) => {
  const workers = Array.from({ length: count }, fakeWorker);
  let begun = 0;
  return { workers, ...openFileChecks(() => workers[begun++]!.worker) };
};
/** What follows an answer that has been given. */
const settled = () => new Promise((resolve) => setTimeout(resolve, 0));

describe('checking a file off the main thread', () => {
  it('says how far it is, hands over what passed, and ends the worker', async () => {
    const { workers, check } = withWorkers(1);
    const heard: number[] = [];
    const checked = check(file, ({ done }) => heard.push(done));
    workers[0]!.say({ kind: 'progress', done: 3, of: 9 });
    workers[0]!.say({ kind: 'done', incoming: [] });
    await expect(checked).resolves.toEqual([]);
    expect(heard).toEqual([3]);
    expect(workers[0]!.seen).toEqual({ files: [file], ended: true });
  });

  it('ends the worker when it is cancelled, and says that nothing was changed', async () => {
    const { workers, check } = withWorkers(1);
    const stop = new AbortController();
    const checked = check(file, undefined, stop.signal);
    stop.abort();
    await expect(checked).rejects.toThrow('nothing was changed');
    expect(workers[0]!.seen.ended).toBe(true);
  });

  it('asks another worker when the first died, and the next file when both did', async () => {
    const { workers, check } = withWorkers(3);
    const checked = check(file);
    workers[0]!.die();
    await settled();
    expect(workers[1]!.seen.files).toEqual([file]);
    workers[1]!.die();
    await expect(checked).rejects.toThrow(/^mine\.json: .*nothing was changed/);
    const next = check(file);
    workers[2]!.say({ kind: 'failed', why: 'mine.json: must be JSON, was not' });
    await expect(next).rejects.toThrow('must be JSON');
  });

  it('does not count on a worker that stood ready and did not load', async () => {
    const { workers, check, prepare } = withWorkers(2);
    prepare();
    workers[0]!.die();
    const checked = check(file);
    workers[1]!.say({ kind: 'done', incoming: [] });
    await expect(checked).resolves.toEqual([]);
  });
});
