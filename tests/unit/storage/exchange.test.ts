// Out and in: what goes out comes back the same; whatever is offered is opened, or refused with one sentence and
// nothing changes (issue 4, part 3). Gzip is RFC 1952, made here by Node's zlib, not by our own packing.
import { gzipSync } from 'node:zlib';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { recordingText } from '../../../src/formats/recording-json.ts';
import { seriesText } from '../../../src/formats/series-text.ts';
import { firstDifference } from '../../../src/session/replay.ts';
import { checkFile } from '../../../src/storage/check-file.ts';
import { unpackText } from '../../../src/storage/gzip.ts';
import type { Logbook } from '../../../src/storage/logbook.ts';
import { bodyOf, headNamed } from '../../support/attempts.ts';
import { openTestLogbook } from '../../support/logbook.ts';

const opened: Logbook[] = [];
const open = async (options: Parameters<typeof openTestLogbook>[0] = {}) => {
  const all = await openTestLogbook(options);
  opened.push(all.logbook);
  return all;
};
afterEach(() => {
  vi.restoreAllMocks();
  for (const logbook of opened.splice(0)) logbook.close();
});

const body = bodyOf(12);
const SCRIPT = '<script>alert("Wren")</script>';
const head = headNamed('one', {
  pilot: SCRIPT,
  notes: 'a & b < c',
  ownView: ['high'],
  parent: { id: 'zero', atS: 7.5 },
});

const fileOf = async (blob: Blob, name = 'x.json') => new File([await blob.text()], name);
const jsonOf = async (logbook: Logbook, ids: string[]) =>
  JSON.parse(await (await logbook.exportJson(ids)).blob.text());
const fileFrom = (json: unknown) =>
  new File([typeof json === 'string' ? json : JSON.stringify(json)], 'x.json');

/** One attempt, written out and packed. */
const written = async () => {
  const { logbook } = await open();
  await logbook.keep(head, body);
  await logbook.keep(headNamed('two'), body);
  return { one: await jsonOf(logbook, ['one']), both: await jsonOf(logbook, ['one', 'two']) };
};

describe('an exported logbook', () => {
  it.each([['one'], ['all']])('comes back the same elsewhere (%s)', async (which) => {
    const { logbook } = await open();
    await logbook.keep(head, body);
    if (which === 'all') await logbook.keep(headNamed('two'), body);
    const out = await logbook.exportJson(which === 'all' ? 'all' : ['one']);
    expect(out.name).toMatch(/^lapwing-[a-z0-9-]+\.json$/);
    const there = await open();
    const outcome = await there.logbook.importFile(await fileOf(out.blob));
    expect(outcome).toMatchObject({ ok: true, already: 0 });
    const here = await logbook.open('one');
    const back = await there.logbook.open('one');
    expect(recordingText(back.attempt.recording)).toBe(recordingText(here.attempt.recording));
    expect(firstDifference(back.attempt.recording)).toBeNull();
    expect({ ...back.attempt, recording: null }).toEqual({ ...here.attempt, recording: null });
    expect({ ...back.row, sizeBytes: 0 }).toEqual({ ...here.row, sizeBytes: 0 });
    expect(await there.logbook.pilots()).toContain(SCRIPT);
  });

  it('adds nothing a second time, and brings back what was deleted', async () => {
    const { logbook } = await open();
    await logbook.keep(head, body);
    await logbook.keep(headNamed('two'), body);
    const { blob } = await logbook.exportJson('all');
    await logbook.writeNotes('two', 'written since');
    await logbook.remove(['two']);
    const outcome = await logbook.importFile(await fileOf(blob));
    expect(outcome).toMatchObject({ ok: true, already: 1, says: '1 attempt added; 1 there already.' });
    expect((await logbook.list()).map((row) => row.notes).sort()).toEqual(['a & b < c', 'written since']);
  });

  it('has a file name of letters, digits and hyphens whatever the exercise is called', async () => {
    const { logbook } = await open();
    const scenario = { ...body.recording.scenario, exercise: '../../<x> Glide' };
    await logbook.keep(head, { ...body, recording: { ...body.recording, scenario } });
    expect((await logbook.exportCsv('one')).name).toBe('lapwing-2026-01-31-0930-x-glide.csv');
  });
});

type Json = Record<string, unknown>;
const attemptOf = (file: Json): Json => (file.attempts as Json[])[0]!;
const changed = (file: Json, change: (attempt: Json, file: Json) => void): Json => {
  const copy = structuredClone(file);
  change(attemptOf(copy), copy);
  return copy;
};
const deep = (levels: number) => `${'['.repeat(levels)}${']'.repeat(levels)}`;

/** What is offered, made from a good file, and what must be said. */
const HOSTILE: readonly (readonly [string, (one: Json, both: Json) => unknown, RegExp])[] = [
  ['a truncated file', (one) => JSON.stringify(one).slice(0, 5000), /^x\.json: must be JSON, was not/],
  ['an empty file', () => '', /^x\.json: must be JSON, was not/],
  ['a picture', () => '\u0089PNG\r\n', /^x\.json: must be JSON, was not/],
  ['a list', () => [1, 2], /^x\.json: format is missing/],
  ['a number', () => '7', /^x\.json: the whole must be an object, was 7/],
  [
    'the JSON of something else',
    () => ({ type: 'FeatureCollection', features: [] }),
    /^x\.json: format is missing/,
  ],
  [
    'another format',
    (one) => ({ ...one, format: 'bird-list' }),
    /^x\.json: format must be "lapwing-logbook", was "bird-list"/,
  ],
  [
    'a version from the future',
    (one) => ({ ...one, version: 3 }),
    /^x\.json: version must be at most 2, was 3/,
  ],
  [
    'no attempts',
    (one) => ({ ...one, attempts: [] }),
    /^x\.json: attempts must be at least 1 long, was a list of 0/,
  ],
  [
    'the same attempt twice',
    (one) => ({ ...one, attempts: [attemptOf(one), attemptOf(one)] }),
    /^x\.json: attempts\[1\]\.id must be another than before/,
  ],
  [
    'a prototype key',
    (one) => JSON.stringify(one).replace('"marks":', '"__proto__":{"pilot":"x"},"marks":'),
    /^x\.json: "__proto__" is not a key that is known here/,
  ],
  [
    'a constructor key deep inside',
    (one) => JSON.stringify(one).replace('"weather":{', '"weather":{"constructor":{"prototype":{}},'),
    /^x\.json: "(constructor|prototype)" is not a key/,
  ],
  [
    'a nest without end',
    (one) => JSON.stringify(one).replace('"marks":', `"more":${deep(50000)},"marks":`),
    /^x\.json: must be at most 40 levels deep/,
  ],
  [
    'a name that is no text',
    (one) =>
      changed(one, (a) => {
        a.pilot = { toString: 'x' };
      }),
    /^x\.json: attempts\[0\]: pilot must be text, was an object/,
  ],
  [
    'an endless name',
    (one) =>
      changed(one, (a) => {
        a.pilot = 'x'.repeat(100000);
      }),
    /^x\.json: attempts\[0\]: pilot must be at most 80 long/,
  ],
  [
    'an id with a path in it',
    (one) =>
      changed(one, (a) => {
        a.id = '../../etc';
      }),
    /^x\.json: attempts\[0\]: id must be text like/,
  ],
  [
    'a date that is none',
    (one) =>
      changed(one, (a) => {
        a.when = '2026-13-45T99:00:00.000Z';
      }),
    /^x\.json: attempts\[0\]: when must be text like/,
  ],
  [
    'help that is unheard of',
    (one) =>
      changed(one, (a) => {
        (a.help as Json).coach = 'shouting';
      }),
    /^x\.json: attempts\[0\]: help\.coach must be one of/,
  ],
  [
    'an unknown band',
    (one) =>
      changed(one, (a) => {
        ((a.result as Json).items as Json[])[0]!.band = 'purple';
      }),
    /^x\.json: attempts\[0\]: result\.items\[0\]\.band must be one of/,
  ],
  [
    'a result without an outcome',
    (one) =>
      changed(one, (a) => {
        delete (a.result as Json).outcome;
      }),
    /^x\.json: attempts\[0\]: result\.outcome is missing/,
  ],
  [
    'no flight',
    (one) =>
      changed(one, (a) => {
        delete a.recording;
      }),
    /^x\.json: attempts\[0\]: recording is missing/,
  ],
  [
    'a wing of negative area',
    (one) =>
      changed(one, (a) => {
        const s = (a.recording as Json).scenario as { aeroplane: { wing: Json } };
        s.aeroplane.wing.areaM2 = -14;
      }),
    /scenario: aeroplane\.wing\.areaM2 must be above 0, was -14/,
  ],
  [
    'a flight of years',
    (one) =>
      changed(one, (a) => {
        (a.recording as Json).steps = 1e12;
      }),
    /^x\.json: attempts\[0\]\.recording: steps must be at most 5184000/,
  ],
  [
    'a state that is not a number',
    (one) =>
      changed(one, (a) => {
        const k = ((a.recording as Json).keyframes as Json[])[0]!;
        k.state = `AAAAAAAA+H8${(k.state as string).slice(11)}`;
      }),
    /keyframes\[0\]\.state: eastM must be from -1000000 to 1000000, was NaN/,
  ],
  [
    'a state that is cut off',
    (one) =>
      changed(one, (a) => {
        const k = ((a.recording as Json).keyframes as Json[])[0]!;
        k.state = (k.state as string).slice(0, 32);
      }),
    /keyframes\[0\]\.state must hold \d+ numbers, found 3/,
  ],
  [
    'controls beyond their range',
    (one) =>
      changed(one, (a) => {
        const c = (a.recording as Json).controls as { throttle: Json };
        c.throttle = { steps: '#', values: seriesText([90000], 1) };
      }),
    /controls\.throttle\.values\[0\] must stay from 0 to 1, was 9/,
  ],
  [
    'a packed flight that is no gzip',
    (_, both) =>
      changed(both, (a) => {
        a.packed = btoa('not gzip at all');
      }),
    /^x\.json: attempts\[0\]\.packed must be a whole gzipped text/,
  ],
  [
    'a packed flight that is cut off',
    (_, both) =>
      changed(both, (a) => {
        a.packed = (a.packed as string).slice(0, 400);
      }),
    /^x\.json: attempts\[0\]\.packed must be a whole gzipped text/,
  ],
  [
    'a packed flight that is no base64',
    (_, both) =>
      changed(both, (a) => {
        a.packed = '%%%%';
      }),
    /^x\.json: attempts\[0\]\.packed must be base64/,
  ],
  [
    'a packed flight of something else',
    (_, both) =>
      changed(both, (a) => {
        a.packed = gzipSync('{"a":1}').toString('base64');
      }),
    /^x\.json: attempts\[0\]\.packed: marks is missing/,
  ],
  [
    'a packed prototype key',
    (_, both) =>
      changed(both, (a) => {
        a.packed = gzipSync('{"__proto__":{}}').toString('base64');
      }),
    /^x\.json: attempts\[0\]\.packed: "__proto__" is not a key/,
  ],
  [
    'a flight that unpacks without end',
    (_, both) =>
      changed(both, (a) => {
        a.packed = gzipSync(Buffer.alloc(80 * 1048576, 32), { level: 1 }).toString('base64');
      }),
    /^x\.json: attempts\[0\]\.packed must unpack to at most 64 MB, was more/,
  ],
];

describe('a hostile file', () => {
  it.each(HOSTILE)('is refused with one sentence and changes nothing: %s', async (_, make, sentence) => {
    const { one, both } = await written();
    const { logbook } = await open();
    await logbook.keep(headNamed('mine'), body);
    const before = await logbook.list();
    const offered = make(one, both);
    const outcome = await logbook.importFile(fileFrom(offered));
    expect(outcome).toMatchObject({ ok: false, why: expect.stringMatching(sentence) });
    expect(outcome.ok || outcome.why).not.toMatch(/\n/);
    expect(await logbook.list()).toEqual(before);
    expect(await logbook.pilots()).toEqual(['Wren']);
    expect(({} as Json).pilot).toBeUndefined();
  });

  it('is not even read when it is huge', async () => {
    const { logbook } = await open();
    const huge = { name: 'x.json', size: 257 * 1048576, text: () => Promise.reject(new Error('was read')) };
    expect(await logbook.importFile(huge as unknown as File)).toEqual({
      ok: false,
      why: 'x.json: must be at most 256 MB, was 257 MB',
    });
  });

  it('is refused when its flights unpack to more than the limit together, though each is small', async () => {
    const { both } = await written();
    const [first] = await checkFile()(fileFrom(both));
    const unpacked = (await unpackText(first!.packed, 'x')).length;
    const limits = { fileBytes: 1048576, unpackedBytes: 1.5 * unpacked };
    const { logbook } = await open({ checkFile: checkFile(limits) });
    expect(await logbook.importFile(fileFrom(both))).toMatchObject({
      ok: false,
      why: expect.stringMatching(
        /^x\.json: its flights must unpack to at most [\d.]+ MB together, were more$/,
      ),
    });
    expect(await logbook.list()).toEqual([]);
  });

  it('says how far it is, and changes nothing when it is cancelled', async () => {
    const { both } = await written();
    const { logbook } = await open();
    const stop = new AbortController();
    const heard: unknown[] = [];
    const outcome = await logbook.importFile(fileFrom(both), {
      cancelled: stop.signal,
      onProgress: (progress) => {
        heard.push(progress);
        stop.abort();
      },
    });
    expect(outcome).toEqual({ ok: false, why: 'The import was cancelled; nothing was changed.' });
    expect(heard).toEqual([{ done: 0, of: 2 }]);
    expect(await logbook.list()).toEqual([]);
  });

  it('leaves nothing behind when only its last attempt is bad', async () => {
    const { both } = await written();
    (both.attempts as Json[])[1]!.pilot = '';
    const { logbook } = await open();
    expect(await logbook.importFile(fileFrom(both))).toMatchObject({ ok: false });
    expect(await logbook.list()).toEqual([]);
    expect(await logbook.pilots()).toEqual([]);
  });

  it('leaves nothing behind when the storage fills up half way', async () => {
    const { both } = await written();
    const { logbook } = await open();
    const put = IDBObjectStore.prototype.put;
    let count = 0;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...args) {
      count += 1;
      if (count < 4) return put.apply(this, args);
      this.transaction.abort();
      throw new DOMException('no room', 'QuotaExceededError');
    });
    expect(await logbook.importFile(fileFrom(both))).toMatchObject({
      ok: false,
      why: expect.stringMatching(/must fit into the browser's storage, did not; nothing was changed/),
    });
    vi.restoreAllMocks();
    expect(await logbook.list()).toEqual([]);
  });
});

describe('an attempt of another model version', () => {
  it('opens from its keyframes and says so', async () => {
    const { one } = await written();
    const old = changed(one, (a) => {
      const recording = a.recording as Json;
      recording.model_version = 0;
      (recording.scenario as Json).modelVersion = 0;
    });
    const { logbook } = await open();
    expect(await logbook.importFile(fileFrom(old))).toMatchObject({
      ok: true,
      says: '1 attempt added; 1 of another model version, shown from keyframes.',
    });
    const { exact, says, attempt } = await logbook.open('one');
    expect(exact).toBe(false);
    expect(says).toMatch(
      /^Recorded with model version 0, which this page no longer flies: it is shown from its keyframes/,
    );
    expect(attempt.result).toEqual(body.result);
    const csv = (await (await logbook.exportCsv('one')).blob.text()).trim().split('\r\n');
    // A keyframe at 0 s and at 10 s.
    expect(csv.slice(1).map((line) => line.split(',')[0])).toEqual(['0.0000', '10.0000']);
  });

  it('opens although its state was kept in other slots', async () => {
    const { one } = await written();
    const old = changed(one, (a) => {
      const recording = a.recording as {
        slots: string[];
        keyframes: { state: string }[];
        model_version: number;
      };
      recording.model_version = 0;
      recording.slots = [...recording.slots.slice(1), 'forgotten', recording.slots[0]!];
      for (const k of recording.keyframes) {
        const bytes = Buffer.from(k.state, 'base64');
        const moved = Buffer.concat([bytes.subarray(8), Buffer.alloc(8), bytes.subarray(0, 8)]);
        k.state = moved.toString('base64');
      }
    });
    const { logbook } = await open();
    expect(await logbook.importFile(fileFrom(old))).toMatchObject({ ok: true });
    const { attempt } = await logbook.open('one');
    expect([...attempt.recording.keyframes[0]!.state]).toEqual([...body.recording.keyframes[0]!.state]);
  });
});
