// The logbook against a database that runs in memory (fake-indexeddb); what it must do stands in issue 4, part 2.
import { afterEach, describe, expect, it, vi } from 'vitest';
import { recordingText } from '../../../src/formats/recording-json.ts';
import { endedAsAsked } from '../../../src/lesson/attempts/trends.ts';
import { firstDifference } from '../../../src/session/replay.ts';
import { MIGRATIONS } from '../../../src/storage/database.ts';
import type { Logbook } from '../../../src/storage/logbook.ts';
import { bodyOf, headNamed } from '../../support/attempts.ts';
import { freshName, openTestLogbook } from '../../support/logbook.ts';

const opened: Logbook[] = [];
const open = async (...args: Parameters<typeof openTestLogbook>) => {
  const all = await openTestLogbook(...args);
  opened.push(all.logbook);
  return all;
};
afterEach(() => {
  for (const logbook of opened.splice(0)) logbook.close();
});

const body = bodyOf(15);

describe('attempts', () => {
  it('come back whole and fly again to the bit', async () => {
    const { logbook, told } = await open();
    const row = await logbook.keep(headNamed('one', { notes: 'calm hands' }), body);
    const { attempt, exact, says, row: found } = await logbook.open('one');
    expect(recordingText(attempt.recording)).toBe(recordingText(body.recording));
    expect(firstDifference(attempt.recording)).toBeNull();
    expect(attempt.result).toEqual(body.result);
    expect(attempt.marks).toEqual(body.marks);
    expect([exact, says]).toEqual([true, '']);
    expect(found).toEqual(row);
    expect(row).toMatchObject({
      pilot: 'Wren',
      runway: '22',
      wind: '250/12g20',
      notes: 'calm hands',
      flightS: 15,
    });
    expect(told).toEqual([]);
  });

  it('of a leg that was practised and then left say so, and still do when opened', async () => {
    const { logbook } = await open();
    const result = {
      ...body.result,
      outcome: 'practised' as const,
      why: 'What was to be practised was flown.',
    };
    const row = await logbook.keep(headNamed('leg'), { ...body, result });
    expect(row.outcome).toBe('practised');
    expect(endedAsAsked(row)).toBe(true);
    expect((await logbook.open('leg')).attempt.result.outcome).toBe('practised');
  });

  it('outlast the tab', async () => {
    const databaseName = freshName();
    const first = await open({ databaseName });
    await first.logbook.keep(headNamed('one'), body);
    first.logbook.close();
    const { logbook } = await open({ databaseName });
    expect((await logbook.list()).map((row) => row.id)).toEqual(['one']);
  });

  it('are listed by pilot, newest first', async () => {
    const { logbook } = await open();
    await logbook.keep(headNamed('a', { when: '2026-01-01T10:00:00.000Z' }), body);
    await logbook.keep(headNamed('b', { when: '2026-03-01T10:00:00.000Z' }), body);
    await logbook.keep(headNamed('c', { when: '2026-02-01T10:00:00.000Z', pilot: 'Robin' }), body);
    expect((await logbook.list()).map((row) => row.id)).toEqual(['b', 'c', 'a']);
    expect((await logbook.list({ pilot: 'Wren' })).map((row) => row.id)).toEqual(['b', 'a']);
    expect(await logbook.pilots()).toEqual(['Robin', 'Wren']);
  });

  it('are deleted, had back, and purged for good', async () => {
    const { logbook } = await open();
    await logbook.keep(headNamed('a'), body);
    await logbook.keep(headNamed('b'), body);
    await logbook.remove(['a']);
    expect((await logbook.list()).map((row) => row.id)).toEqual(['b']);
    expect((await logbook.list({ deleted: true })).map((row) => row.id)).toEqual(['a']);
    await logbook.restore(['a']);
    expect(await logbook.list({ deleted: true })).toEqual([]);
    await logbook.purge(['b']);
    expect(await logbook.list()).toHaveLength(2);
    await logbook.remove(['b']);
    await logbook.purge(['b']);
    await expect(logbook.open('b')).rejects.toThrow('attempt b must be in the logbook, was not');
    expect(await logbook.list({ deleted: true })).toEqual([]);
  });

  it('take notes and the own view, within bounds', async () => {
    const { logbook } = await open();
    await logbook.keep(headNamed('a'), body);
    await logbook.writeNotes('a', '<b>Look</b> out & trim');
    await logbook.writeOwnView('a', ['high on final']);
    const [row] = await logbook.list();
    expect(row?.notes).toBe('<b>Look</b> out & trim');
    expect((await logbook.open('a')).attempt.ownView).toEqual(['high on final']);
    await expect(logbook.writeNotes('a', 'x'.repeat(20001))).rejects.toThrow('at most 20000 characters');
  });

  it('tell who listens', async () => {
    const { logbook } = await open();
    let heard = 0;
    const stop = logbook.onChange(() => {
      heard += 1;
    });
    await logbook.keep(headNamed('a'), body);
    expect(heard).toBe(1);
    stop();
    await logbook.remove(['a']);
    expect(heard).toBe(1);
  });
});

describe('pilots', () => {
  it('are remembered, and the current one too', async () => {
    const databaseName = freshName();
    const first = await open({ databaseName });
    expect(await first.logbook.currentPilot()).toBe('');
    await first.logbook.choosePilot('  Jenny   Wren ');
    first.logbook.close();
    const { logbook } = await open({ databaseName });
    expect(await logbook.currentPilot()).toBe('Jenny Wren');
    expect(await logbook.pilots()).toEqual(['Jenny Wren']);
  });

  it('are renamed in every attempt', async () => {
    const { logbook } = await open();
    await logbook.choosePilot('Wren');
    await logbook.keep(headNamed('a'), body);
    await logbook.renamePilot('Wren', 'Troglodytes');
    expect(await logbook.currentPilot()).toBe('Troglodytes');
    expect((await logbook.list({ pilot: 'Troglodytes' })).map((row) => row.id)).toEqual(['a']);
    expect(await logbook.pilots()).toEqual(['Troglodytes']);
  });

  it('have names that can be seen', async () => {
    const { logbook } = await open();
    await expect(logbook.choosePilot(' \u0007 ')).rejects.toThrow('the name must not be empty');
    await expect(logbook.choosePilot('x'.repeat(81))).rejects.toThrow('at most 80 characters long, was 81');
  });
});

describe('a browser that keeps nothing', () => {
  afterEach(() => vi.unstubAllGlobals());

  it('says so once, and everything stays for the visit', async () => {
    vi.stubGlobal('indexedDB', {
      open: () => {
        throw new DOMException('The user denied permission', 'SecurityError');
      },
    });
    const { logbook, told } = await open();
    expect(logbook.kept).toBe(false);
    await logbook.choosePilot('Wren');
    await logbook.keep(headNamed('a'), body);
    await logbook.keep(headNamed('b'), body);
    await logbook.writeNotes('a', 'seen');
    await logbook.remove(['b']);
    expect(await logbook.currentPilot()).toBe('Wren');
    expect((await logbook.list()).map((row) => row.notes)).toEqual(['seen']);
    expect((await logbook.list({ deleted: true })).map((row) => row.id)).toEqual(['b']);
    expect(firstDifference((await logbook.open('a')).attempt.recording)).toBeNull();
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/keeps nothing for this page.*save it as a file\.$/);
  });
});

describe('a full storage', () => {
  afterEach(() => vi.restoreAllMocks());

  it('is said once, the flight stays for the visit, and is kept as soon as there is room', async () => {
    const databaseName = freshName();
    const { logbook, told } = await open({ databaseName });
    await logbook.keep(headNamed('old'), body);
    const full = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('no room', 'QuotaExceededError');
    });
    await logbook.keep(headNamed('new'), body);
    await logbook.keep(headNamed('newer'), body);
    expect(told).toEqual([expect.stringMatching(/storage is full; .*save it as a file\.$/)]);
    expect(await logbook.list()).toHaveLength(3);
    full.mockRestore();
    await logbook.remove(['old']);
    await logbook.purge(['old']);
    logbook.close();
    const again = await open({ databaseName });
    expect((await again.logbook.list()).map((row) => row.id)).toEqual(['newer', 'new']);
  });
});

describe('a storage without room for a word', () => {
  it('lets attempts be deleted, had back and purged all the same', async () => {
    const { logbook } = await open();
    await logbook.keep(headNamed('a'), body);
    await logbook.keep(headNamed('b'), body);
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('no room', 'QuotaExceededError');
    });
    await logbook.remove(['a', 'b']);
    expect(await logbook.list()).toEqual([]);
    await logbook.restore(['b']);
    await logbook.purge(['a', 'b']);
    vi.restoreAllMocks();
    expect((await logbook.list()).map((row) => row.id)).toEqual(['b']);
    expect(await logbook.list({ deleted: true })).toEqual([]);
  });
});

describe('two tabs', () => {
  it('see each other’s changes', async () => {
    const databaseName = freshName();
    const one = await open({ databaseName });
    const two = await open({ databaseName });
    const heard = new Promise<void>((resolve) => two.logbook.onChange(resolve));
    await one.logbook.keep(headNamed('a'), body);
    await heard;
    expect((await two.logbook.list()).map((row) => row.id)).toEqual(['a']);
  });

  it('make way for a newer version, and say so', async () => {
    const databaseName = freshName();
    const old = await open({ databaseName });
    await old.logbook.keep(headNamed('a'), body);
    const migrated: number[] = [];
    const next = await open({
      databaseName,
      migrations: [...MIGRATIONS, () => void migrated.push(2), () => void migrated.push(3)],
    });
    expect(old.told).toEqual([expect.stringMatching(/newer version .* reload this one/)]);
    expect(migrated).toEqual([2, 3]);
    expect((await next.logbook.list()).map((row) => row.id)).toEqual(['a']);
    next.logbook.close();
    const stale = await open({ databaseName });
    expect(stale.told).toEqual([expect.stringMatching(/written by a newer version of this page, reload it/)]);
    expect(stale.logbook.kept).toBe(false);
  });

  it('lose nothing when a newer version fails to come in', async () => {
    const databaseName = freshName();
    const old = await open({ databaseName });
    await old.logbook.keep(headNamed('a'), body);
    old.logbook.close();
    const broken = async () => {
      throw new Error('a slip');
    };
    const next = await open({ databaseName, migrations: [...MIGRATIONS, broken] });
    expect(next.logbook.kept).toBe(false);
    const back = await open({ databaseName });
    expect((await back.logbook.list()).map((row) => row.id)).toEqual(['a']);
  });
});
