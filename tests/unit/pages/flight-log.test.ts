// A flight that ends while what judges it does not come: its recording is kept first, and it is judged later.
import * as v from 'valibot';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { modelPilot } from '../../../src/flight/model-pilot.ts';
import { flyStep } from '../../../src/flight/run.ts';
import { practiseNext } from '../../../src/lesson/attempts/practise.ts';
import { isSound, ownAttempts } from '../../../src/lesson/attempts/trends.ts';
import { createFlightLog } from '../../../src/pages/fly/run/flight-log.ts';
import { readyFlight } from '../../../src/pages/fly/run/ready.ts';
import { scenarioOf } from '../../../src/pages/fly/sheets/scenario-of-settings.ts';
import { settingsSchema } from '../../../src/pages/settings.ts';
import { useStore } from '../../../src/pages/store.ts';
import { changeSource, tick } from '../../../src/session/session.ts';
import type { Logbook } from '../../../src/storage/logbook.ts';
import { busyHands } from '../../support/attempts.ts';
import { freshName, openTestLogbook } from '../../support/logbook.ts';

const here = vi.hoisted(() => ({ book: null as unknown, comes: true, bookComes: true }));
vi.mock('../../../src/pages/logbook-here.ts', () => ({
  theLogbook: async () => {
    const { PartMissing } = await import('../../../src/pages/parts/fetch-part.ts');
    if (!here.bookComes) throw new PartMissing('The logbook did not come.', false);
    return here.book;
  },
  pilotNow: async () => 'Wren',
}));
vi.mock('../../../src/pages/fly/run/results.ts', () => ({
  loadResults: async () => {
    const { PartMissing } = await import('../../../src/pages/parts/fetch-part.ts');
    if (!here.comes) throw new PartMissing('It did not come.', false);
    return import('../../../src/pages/fly/run/result-card.ts');
  },
  resultsNow: () => null,
}));

let book: Logbook;
let databaseName = '';
beforeEach(async () => {
  vi.stubGlobal('addEventListener', () => {});
  vi.stubGlobal('removeEventListener', () => {});
  databaseName = freshName();
  book = (await openTestLogbook({ databaseName })).logbook;
  here.book = book;
  here.comes = false;
  here.bookComes = true;
  useStore.setState({ missing: null, attempt: '' });
});

const flown = () => {
  const { scenario, model } = scenarioOf(v.parse(settingsSchema, {}));
  const flight = readyFlight(scenario, () => busyHands as never, model);
  const log = createFlightLog(flight);
  for (let i = 0; i < 600; i += 1) tick(flight.session);
  log.note();
  return { flight, log };
};

it('stands written to its end, is told, and becomes an attempt once it can be judged', async () => {
  const { flight, log } = flown();
  const kept = log.ended();
  await vi.waitFor(() =>
    expect(useStore.getState().missing?.says).toMatch(/stands written.*It did not come/),
  );
  expect(await book.list()).toEqual([]);
  here.comes = true;
  useStore.getState().missing?.again?.();
  await kept;
  const [row] = await book.list();
  expect((await book.open(row?.id ?? '')).attempt.recording.steps).toBe(flight.session.step);
  expect(useStore.getState().attempt).toBe(row?.id);
});

it('is offered again, whole, when the tab was closed meanwhile', async () => {
  const { flight, log } = flown();
  void log.ended();
  await vi.waitFor(() => expect(useStore.getState().missing?.says).toMatch(/stands written/));
  // The next visit: the claim of the closed tab is gone.
  const next = (await openTestLogbook({ databaseName })).logbook;
  const [unfinished] = await next.unfinished();
  const taken = await next.takeUp(unfinished?.id ?? '', (before) => before);
  expect(taken?.recording.steps).toBe(flight.session.step);
});

it('is kept though it was flown on from before the logbook came', async () => {
  here.comes = true;
  here.bookComes = false;
  const { flight, log } = flown();
  const kept = log.ended();
  await vi.waitFor(() => expect(useStore.getState().missing?.says).toMatch(/leave this page open/));
  log.branches(5);
  const steps = flight.session.step;
  for (let i = 0; i < 120; i += 1) tick(flight.session);
  here.bookComes = true;
  useStore.getState().missing?.again?.();
  await kept;
  const [row] = await book.list();
  expect(row?.flightS).toBe(steps / 60);
});

describe('a demonstration', () => {
  const shown = () => {
    const { scenario, model } = scenarioOf(v.parse(settingsSchema, {}));
    const flight = readyFlight(scenario, modelPilot, model);
    const log = createFlightLog(flight);
    useStore.setState({ pilot: 'model' });
    for (let i = 0; i < 600; i += 1) flyStep(flight);
    log.note();
    return { flight, log };
  };
  beforeEach(() => {
    here.comes = true;
  });

  it('is neither an attempt nor an unfinished flight', async () => {
    const { log } = shown();
    await log.ended();
    expect(await book.list()).toEqual([]);
    const next = (await openTestLogbook({ databaseName })).logbook;
    expect(await next.unfinished()).toEqual([]);
  });

  it('is kept when asked for, as what it is', async () => {
    const { log } = shown();
    await log.ended();
    await log.keepShown();
    const [row] = await book.list();
    expect(row?.demonstration).toBe(true);
    expect(useStore.getState().attempt).toBe(row?.id);
    expect(practiseNext(row === undefined ? [] : [row])).toBeNull();
    expect(ownAttempts(row === undefined ? [] : [row])).toEqual([]);
    expect(isSound({ ...(row as NonNullable<typeof row>), outcome: 'stopped' })).toBe(false);
  });

  it('that somebody took over is an attempt, theirs from there on', async () => {
    const { flight, log } = shown();
    useStore.setState({ pilot: 'hands' });
    changeSource(flight.session, 0, busyHands as never);
    for (let i = 0; i < 300; i += 1) flyStep(flight);
    log.note();
    await log.ended();
    const [row] = await book.list();
    expect(row).toMatchObject({ demonstration: false, theirsFromS: 10 });
  });
});
