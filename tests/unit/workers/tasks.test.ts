import { describe, expect, it, vi } from 'vitest';
import { openStudy, type StudyWorker } from '../../../src/workers/ask-study.ts';
import type { FromStudy, StudyProgress, ToStudy } from '../../../src/workers/messages.ts';
import { createBench } from '../../../src/workers/tasks.ts';
import { baseTurned, flyFault } from '../../support/faults.ts';

const { flight } = flyFault({ leg: 'downwind' }, baseTurned(-18));

/** A bench whose clock jumps past every slice, so that it looks at the post after each flight. */
const slowBench = () => {
  const sent: FromStudy[] = [];
  const queue: (() => void)[] = [];
  let ms = 0;
  const post = createBench({
    now: () => {
      ms += 100;
      return ms;
    },
    soon: (go) => queue.push(go),
    send: (message) => sent.push(structuredClone(message)),
  });
  const run = (turns = 1000): void => {
    for (let i = 0; i < turns && queue.length > 0; i += 1) queue.shift()?.();
  };
  return { sent, post, run };
};

describe('the bench of the worker', () => {
  it('says how far it is after every flight, then the root, and all of it can be posted', () => {
    const { sent, post, run } = slowBench();
    post(structuredClone({ id: 7, ask: { task: 'root', flight, circuit: null } }));
    run();
    expect(sent.every(({ id }) => id === 7)).toBe(true);
    expect(sent.slice(0, -1).every(({ kind }) => kind === 'progress')).toBe(true);
    const last = sent[sent.length - 1]!;
    expect(last.kind === 'done' && 'change' in last.result && last.result.change?.kind).toBe('turn');
  });

  it('stops between two flights when it is told to, and has said the best so far', () => {
    const { sent, post, run } = slowBench();
    post({ id: 1, ask: { task: 'root', flight, circuit: null } });
    run(5);
    post({ id: 1, cancel: true });
    run();
    expect(sent[sent.length - 1]).toEqual({ id: 1, kind: 'cancelled' });
    const said = sent.flatMap((message) => (message.kind === 'progress' ? [message.progress] : []));
    expect(said.length).toBe(5);
    expect(said.some((progress) => 'best' in progress && progress.best !== null)).toBe(true);
  });

  it('goes on with the next task when one fails, and says why in a sentence', () => {
    const { sent, post, run } = slowBench();
    const { scenario } = flight.recording;
    const nowhere = {
      ...flight,
      recording: { ...flight.recording, scenario: { ...scenario, runway: '99' } },
    };
    post({ id: 1, ask: { task: 'root', flight: nowhere, circuit: null } });
    post({ id: 2, ask: { task: 'trail', flight, circuit: null } });
    run();
    const first = sent.find(({ id, kind }) => id === 1 && kind !== 'progress');
    expect(first?.kind === 'failed' && first.why).toMatch(/99/);
    const second = sent.find(({ id, kind }) => id === 2 && kind === 'done');
    expect(second?.kind === 'done' && Array.isArray(second.result) && second.result.length).toBeGreaterThan(
      0,
    );
  });

  it('knows nothing of a task that is over', () => {
    const { sent, post } = slowBench();
    post({ id: 3, cancel: true });
    expect(sent).toEqual([]);
  });
});

/** A worker that answers as it is told. */
const fakeWorker = () => {
  const got: ToStudy[] = [];
  const worker: StudyWorker = {
    onmessage: null,
    onerror: null,
    postMessage: (message) => got.push(message),
    terminate: () => {},
  };
  const say = (data: FromStudy): void => worker.onmessage?.({ data } as MessageEvent<FromStudy>);
  return { worker, got, say };
};

describe('asking the study', () => {
  it('hands out progress and the result to whoever asked', async () => {
    const { worker, got, say } = fakeWorker();
    const study = openStudy(() => worker);
    const heard: StudyProgress[] = [];
    const asked = study.ask({ task: 'trail', flight, circuit: null }, (progress) => heard.push(progress));
    const { id } = got[0]!;
    say({ id, kind: 'progress', progress: { flightsFlown: 1, done: 0.5 } });
    say({ id: id + 1, kind: 'progress', progress: { flightsFlown: 9, done: 0.9 } });
    say({ id, kind: 'done', result: [] });
    await expect(asked.result).resolves.toEqual([]);
    expect(heard).toEqual([{ flightsFlown: 1, done: 0.5 }]);
  });

  it('gives null for what was cancelled or closed, and an Error for what failed', async () => {
    const { worker, got, say } = fakeWorker();
    const study = openStudy(() => worker);
    const task = { task: 'trail', flight, circuit: null } as const;
    const [one, two, three] = [study.ask(task), study.ask(task), study.ask(task)];
    one.cancel();
    say({ id: 1, kind: 'cancelled' });
    say({ id: 2, kind: 'failed', why: 'It was no flight.' });
    study.close();
    expect(got[3]).toEqual({ id: 1, cancel: true });
    await expect(one.result).resolves.toBeNull();
    await expect(two.result).rejects.toThrow('It was no flight.');
    await expect(three.result).resolves.toBeNull();
  });

  const trail = { task: 'trail', flight, circuit: null } as const;
  const kill = ({ worker }: ReturnType<typeof fakeWorker>, message?: string): void =>
    worker.onerror?.({ message } as ErrorEvent);

  it('starts another worker for one that did not load or failed, and asks it what was open', async () => {
    const workers = [fakeWorker(), fakeWorker(), fakeWorker()];
    let begun = 0;
    const study = openStudy(() => workers[begun++]!.worker);
    const asked = study.ask(trail);
    kill(workers[0]!);
    expect(workers[1]!.got).toEqual([{ id: 1, ask: trail }]);
    workers[1]!.say({ id: 1, kind: 'done', result: [] });
    await expect(asked.result).resolves.toEqual([]);
  });

  it('answers later questions though one killed two workers, and says what became of that one', async () => {
    const workers = [fakeWorker(), fakeWorker(), fakeWorker()];
    let begun = 0;
    const study = openStudy(() => workers[begun++]!.worker);
    const deadly = study.ask(trail);
    kill(workers[0]!, 'out of memory');
    kill(workers[1]!, 'out of memory');
    await expect(deadly.result).rejects.toThrow(/stopped before it had an answer.*out of memory/);
    const later = study.ask(trail);
    expect(workers[2]!.got).toEqual([{ id: 2, ask: trail }]);
    workers[2]!.say({ id: 2, kind: 'done', result: [] });
    await expect(later.result).resolves.toEqual([]);
  });

  it('takes a worker that has fallen silent for dead, and not one that goes on saying something', async () => {
    vi.useFakeTimers();
    try {
      const workers = [fakeWorker(), fakeWorker(), fakeWorker()];
      let begun = 0;
      const study = openStudy(() => workers[begun++]!.worker);
      const asked = study.ask(trail);
      for (let i = 0; i < 10; i += 1) {
        vi.advanceTimersByTime(50_000);
        workers[0]!.say({ id: 1, kind: 'progress', progress: { flightsFlown: i, done: 0.1 } });
      }
      expect(begun).toBe(1);
      vi.advanceTimersByTime(70_000);
      expect(begun).toBe(2);
      workers[1]!.say({ id: 1, kind: 'done', result: [] });
      await expect(asked.result).resolves.toEqual([]);
      // With nothing open, silence is no sign of anything
      vi.advanceTimersByTime(600_000);
      expect(begun).toBe(2);
    } finally {
      vi.useRealTimers();
    }
  });
});
