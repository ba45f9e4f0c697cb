// A flight under way survives its tab: at most the last second is lost (budgets.md, reliability), and what is found
// goes on to the same bytes as the flight that was never cut.
import { afterEach, describe, expect, it, vi } from 'vitest';
import { recordingText } from '../../../src/formats/recording-json.ts';
import { forkSession } from '../../../src/session/fork.ts';
import { type Session, tick } from '../../../src/session/session.ts';
import type { FlightJournal, Logbook } from '../../../src/storage/logbook.ts';
import { type Begun, beginAttempt, busyHands, headNamed, WHOLE_HELP } from '../../support/attempts.ts';
import { freshName, openTestLogbook, sharedClaims } from '../../support/logbook.ts';

const opened: Logbook[] = [];
const open = async (...args: Parameters<typeof openTestLogbook>) => {
  const all = await openTestLogbook(...args);
  opened.push(all.logbook);
  return all;
};
afterEach(() => {
  vi.restoreAllMocks();
  for (const logbook of opened.splice(0)) logbook.close();
});

const aside = () => ({ help: WHOLE_HELP, marks: [{ atS: 3, kind: 'call' as const, text: 'downwind' }] });
const settled = () => new Promise((resolve) => setTimeout(resolve, 0));
const recordingOf = (session: Session) => session.aircraft[0]!.recorder.recording;

/** Flies so many steps as the page does: the journal is called each frame, and given time to write. */
const flyNoting = async (flight: { session: Session }, journal: FlightJournal, steps: number) => {
  for (let i = 0; i < steps; i += 1) {
    tick(flight.session);
    journal.note(recordingOf(flight.session));
    if (i % 10 === 9) await settled();
  }
};
const bytes = (session: Session) => ({
  state: [...session.aircraft[0]!.state],
  text: recordingText(recordingOf(session)),
});
const goOn = (flight: Begun, recording: ReturnType<typeof recordingOf>, steps: number): Session => {
  const session = forkSession([{ recording, source: busyHands, folds: flight.folds }], recording.steps);
  while (session.step < steps) tick(session);
  return session;
};

describe('a flight whose tab was closed', () => {
  it('is offered again with at most a second lost, and goes on to the same bytes', async () => {
    const databaseName = freshName();
    const first = await open({ databaseName });
    const flight = beginAttempt();
    await flyNoting(flight, await first.logbook.beginJournal('Wren', null, aside), 1290);
    first.logbook.close();

    const { logbook } = await open({ databaseName });
    const [found] = await logbook.unfinished();
    expect(found).toMatchObject({ pilot: 'Wren', exercise: 'test', runway: '22', goesOn: true });
    expect(found!.flightS).toBeGreaterThanOrEqual(1290 / 60 - 1.2);
    const taken = await logbook.takeUp(found!.id, () => aside());
    expect(taken?.aside).toEqual(aside());
    while (flight.session.step < 2000) tick(flight.session);
    expect(bytes(goOn(flight, taken!.recording, 2000))).toEqual(bytes(flight.session));
  });

  it('is offered as it was after a step back, the undone part gone', async () => {
    const databaseName = freshName();
    const first = await open({ databaseName });
    const flight = beginAttempt();
    const journal = await first.logbook.beginJournal('Wren', null, aside);
    await flyNoting(flight, journal, 900);
    const back = forkSession(
      [{ recording: recordingOf(flight.session), source: busyHands, folds: flight.folds }],
      400,
    );
    await flyNoting({ session: back }, journal, 330);
    await journal.flush(recordingOf(back));
    first.logbook.close();

    const { logbook } = await open({ databaseName });
    const [found] = await logbook.unfinished();
    expect(found?.flightS).toBeCloseTo(730 / 60, 9);
    const taken = await logbook.takeUp(found!.id, () => aside());
    expect(recordingText(taken!.recording)).toBe(recordingText(recordingOf(back)));
  });

  it('goes on being written when it was taken up', async () => {
    const databaseName = freshName();
    const first = await open({ databaseName });
    const flight = beginAttempt();
    await flyNoting(flight, await first.logbook.beginJournal('Wren', { id: 'x', atS: 4 }, aside), 200);
    first.logbook.close();
    const second = await open({ databaseName });
    const id = (await second.logbook.unfinished())[0]!.id;
    const taken = await second.logbook.takeUp(id, () => aside());
    const session = goOn(flight, taken!.recording, 180);
    await flyNoting({ session }, taken!.journal, 300);
    await taken!.journal.flush(recordingOf(session));
    second.logbook.close();
    const third = await open({ databaseName });
    const again = await third.logbook.takeUp(id, () => aside());
    expect(again?.journal).toMatchObject({ id, pilot: 'Wren', parent: { id: 'x', atS: 4 } });
    expect(recordingText(again!.recording)).toBe(recordingText(recordingOf(session)));
  });
});

describe('a flight that has ended', () => {
  it('is offered no more once it is kept', async () => {
    const { logbook } = await open();
    const flight = beginAttempt();
    const journal = await logbook.beginJournal('Wren', null, aside);
    await flyNoting(flight, journal, 200);
    await logbook.keep(headNamed(journal.id), flight.body());
    await journal.end();
    expect(await logbook.unfinished()).toEqual([]);
    expect((await logbook.list()).map((row) => row.id)).toEqual([journal.id]);
  });

  it('is offered no more once it is given up or discarded', async () => {
    const claims = sharedClaims();
    const databaseName = freshName();
    const { logbook } = await open({ databaseName, claims });
    const one = await logbook.beginJournal('Wren', null, aside);
    await flyNoting(beginAttempt(), one, 100);
    await one.end();
    expect(await logbook.unfinished()).toEqual([]);
    await flyNoting(beginAttempt(), await logbook.beginJournal('Wren', null, aside), 100);
    const next = await open({ databaseName });
    const [left] = await next.logbook.unfinished();
    await next.logbook.discard(left!.id);
    expect(await next.logbook.unfinished()).toEqual([]);
  });
});

describe('another tab', () => {
  it('is not offered, and cannot take, what this one flies', async () => {
    const claims = sharedClaims();
    const databaseName = freshName();
    const here = await open({ databaseName, claims });
    const journal = await here.logbook.beginJournal('Wren', null, aside);
    await flyNoting(beginAttempt(), journal, 100);
    const there = await open({ databaseName, claims });
    expect(await there.logbook.unfinished()).toEqual([]);
    expect(await there.logbook.takeUp(journal.id, () => aside())).toBeNull();
    await there.logbook.discard(journal.id);
    const later = await open({ databaseName });
    expect(await later.logbook.unfinished()).toHaveLength(1);
  });
});

describe('a storage that fills up in flight', () => {
  it('is said once, the flight goes on, and later all of it is written', async () => {
    const databaseName = freshName();
    const { logbook, told } = await open({ databaseName });
    const flight = beginAttempt();
    const journal = await logbook.beginJournal('Wren', null, aside);
    await flyNoting(flight, journal, 100);
    const full = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('no room', 'QuotaExceededError');
    });
    await flyNoting(flight, journal, 600);
    expect(full.mock.calls.length).toBeLessThan(4);
    full.mockRestore();
    await flyNoting(flight, journal, 1000);
    expect(told).toEqual([expect.stringMatching(/storage is full/)]);
    await journal.flush(recordingOf(flight.session));
    logbook.close();
    const next = await open({ databaseName });
    const id = (await next.logbook.unfinished())[0]!.id;
    const taken = await next.logbook.takeUp(id, () => aside());
    expect(recordingText(taken!.recording)).toBe(recordingText(recordingOf(flight.session)));
  });
});
