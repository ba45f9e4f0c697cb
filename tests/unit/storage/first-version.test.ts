// The first version of the file and of the database, as they were written when they were new (model version 0,
// before the first release). They are never written again: whoever changes a shape makes these open all the same.
import { readFileSync } from 'node:fs';
import { afterEach, expect, it } from 'vitest';
import { recordedCsv } from '../../../src/formats/flown-again.ts';
import type { Logbook } from '../../../src/storage/logbook.ts';
import { freshName, openTestLogbook } from '../../support/logbook.ts';

const fixture = (name: string): string =>
  readFileSync(new URL(`../../fixtures/${name}`, import.meta.url), 'utf8');
const opened: Logbook[] = [];
const open = async (databaseName: string) => {
  const { logbook, told } = await openTestLogbook({ databaseName });
  opened.push(logbook);
  return { logbook, told };
};
afterEach(() => {
  for (const logbook of opened.splice(0)) logbook.close();
});

/** What is known of the two attempts from the day they were written: 25 s, a keyframe each 10 s. */
const expectFirstAttempt = async (logbook: Logbook) => {
  const { row, attempt, exact, says } = await logbook.open('first-attempt');
  expect(row).toMatchObject({
    pilot: 'Wren',
    when: '2026-01-31T09:30:00.000Z',
    runway: '22',
    wind: '250/12g20',
    flightS: 25,
    notes: 'Trim before you turn. <b>',
    ownView: ['high on final'],
  });
  expect(attempt.help).toMatchObject({ coach: 'talked-through', picture: 'whiteboard', planLooks: 3 });
  expect(attempt.marks).toEqual([{ atS: 1, kind: 'call', text: 'downwind' }]);
  expect(attempt.recording.steps).toBe(1500);
  expect(exact).toBe(false);
  expect(says).toMatch(/^Recorded with model version 0/);
  expect(recordedCsv(attempt.recording).split('\r\n')).toHaveLength(1 + 3 + 1);
};

it.each(['logbook-1.json', 'logbook-1-written-out.json'])('%s is read', async (name) => {
  const { logbook } = await open(freshName());
  expect(await logbook.importFile(new File([fixture(name)], name))).toMatchObject({ ok: true });
  await expectFirstAttempt(logbook);
});

interface Database1 {
  readonly version: number;
  readonly attempts: readonly object[];
  readonly flights: readonly { readonly id: string; readonly packed: string }[];
  readonly pilots: readonly object[];
  readonly kept: Readonly<Record<string, string>>;
}

/** The shelves as version 1 built them, said here once more and for good. */
const buildVersion1 = (name: string, content: Database1): Promise<void> =>
  new Promise((resolve, reject) => {
    const request = indexedDB.open(name, 1);
    request.onerror = reject;
    request.onupgradeneeded = () => {
      const db = request.result;
      const attempts = db.createObjectStore('attempts', { keyPath: 'id' });
      attempts.createIndex('pilotWhen', ['pilot', 'when']);
      attempts.createIndex('deletedAt', 'deletedAt');
      const flights = db.createObjectStore('flights', { keyPath: 'id' });
      const pilots = db.createObjectStore('pilots', { keyPath: 'name' });
      const kept = db.createObjectStore('kept');
      db.createObjectStore('underWay', { keyPath: 'id' });
      db.createObjectStore('asides', { keyPath: 'id' });
      db.createObjectStore('journal', { keyPath: ['flight', 'part'] });
      for (const row of content.attempts) attempts.put(row);
      for (const { id, packed } of content.flights)
        flights.put({ id, packed: new Uint8Array(Buffer.from(packed, 'base64')) });
      for (const pilot of content.pilots) pilots.put(pilot);
      for (const [key, value] of Object.entries(content.kept)) kept.put(value, key);
    };
    request.onsuccess = () => {
      request.result.close();
      resolve();
    };
  });

it('a database of version 1 is opened, brought to the newest version, with all that was in it', async () => {
  const content = JSON.parse(fixture('database-1.json')) as Database1;
  expect(content.version).toBe(1);
  const name = freshName();
  await buildVersion1(name, content);
  const { logbook, told } = await open(name);
  expect(told).toEqual([]);
  expect((await logbook.list()).map((row) => row.id)).toEqual(['second-attempt', 'first-attempt']);
  expect(await logbook.pilots()).toEqual(['Robin', 'Wren']);
  expect(await logbook.currentPilot()).toBe('Robin');
  expect((await logbook.open('second-attempt')).attempt.parent).toEqual({ id: 'first-attempt', atS: 12.5 });
  await expectFirstAttempt(logbook);
});

/** As an item stood then: from the second circuit on with its number in the id. */
const earlier = (id: string) => ({
  id,
  leg: 'final',
  value: 1,
  unit: 'ft',
  target: 0,
  low: -1,
  high: 1,
  band: 'green',
  source: 'made up for this test',
});
const EARLIER = ['final-height', 'final-height-2', 'gate-300', 'gate-300-3'].map(earlier);
const NOW = [
  { id: 'final-height', circuit: 1 },
  { id: 'final-height', circuit: 2 },
  { id: 'gate-300', circuit: 1 },
  { id: 'gate-300', circuit: 3 },
];
const named = (items: readonly { readonly id: string; readonly circuit: number }[]) =>
  items.map(({ id, circuit }) => ({ id, circuit }));

it('an item of then, its circuit in its id, has it beside its id: in a file, and in the file made of it', async () => {
  const file = JSON.parse(fixture('logbook-1-written-out.json'));
  file.attempts[0].result.items = EARLIER;
  const { logbook } = await open(freshName());
  await logbook.importFile(new File([JSON.stringify(file)], 'x.json'));
  const { id } = file.attempts[0];
  const here = await logbook.open(id);
  expect(named(here.attempt.result.items)).toEqual(NOW);
  expect(named(here.row.items)).toEqual(NOW);
  const out = await (await logbook.exportJson([id])).blob.text();
  expect(JSON.parse(out).version).toBe(2);
  const there = await open(freshName());
  await there.logbook.importFile(new File([out], 'y.json'));
  expect((await there.logbook.open(id)).attempt.result).toEqual(here.attempt.result);
});

it('and in a row of a database of then', async () => {
  const content = JSON.parse(fixture('database-1.json')) as Database1;
  const name = freshName();
  const attempts = content.attempts.map((row) => ({ ...row, items: EARLIER }));
  await buildVersion1(name, { ...content, attempts });
  const { logbook } = await open(name);
  const rows = await logbook.list();
  expect(rows).toHaveLength(2);
  for (const row of rows) expect(named(row.items)).toEqual(NOW);
});
