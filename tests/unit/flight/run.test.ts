// When a flight is over: at rest for a moment, longer while its pilot still works the check after landing.
import { describe, expect, it } from 'vitest';
import { doneOf } from '../../../src/flight/done.ts';
import { type Flight, lessonMemory } from '../../../src/flight/flight.ts';
import { finish, flyStep, isLookStep, isOver, noteEnd, tellFlight } from '../../../src/flight/run.ts';
import { changeSource } from '../../../src/session/session.ts';
import { flightFrom, procedures } from '../../support/flights.ts';

/** Hands that do nothing more. */
const NOBODY = { name: 'hands', live: true, begin: () => ({}), next: () => {} } as const;

/** Seconds from the stop to the end; at the stop the controls may go to somebody by hand. */
const waitS = (flight: Flight, byHand: boolean, atStop: (flight: Flight) => void = () => {}): number => {
  let stoppedAt: number | null = null;
  while (!isOver(flight) && flight.session.step < 60 * 600) {
    flyStep(flight);
    if (stoppedAt === null && lessonMemory(flight).stop !== null) {
      stoppedAt = flight.session.step;
      if (byHand) changeSource(flight.session, 0, NOBODY);
    }
    if (isLookStep(flight)) {
      noteEnd(flight, false);
      if (stoppedAt !== null) atStop(flight);
    }
  }
  expect(stoppedAt).not.toBeNull();
  return (flight.session.step - (stoppedAt ?? 0)) / 60;
};

describe('the end of a flight', () => {
  it('is a moment after the stop, and longer by hand with a check still to be done', () => {
    expect(waitS(flightFrom('final'), true)).toBeCloseTo(1.5, 0);
    expect(waitS(flightFrom('final', procedures()), true)).toBeCloseTo(25, 0);
  });

  it('waits for the check that the model pilot shows', () => {
    const flight = flightFrom('final', procedures());
    const seconds = waitS(flight, false);
    expect(seconds).toBeGreaterThan(5);
    expect(seconds).toBeLessThan(15);
    const check = lessonMemory(flight).procedures?.lists.find(({ list }) => list === 'after-landing');
    expect(check?.items.every(({ doneS }) => doneS !== null)).toBe(true);
  });

  it('is now when nothing more is to be done', () => {
    expect(waitS(flightFrom('final', procedures()), true, finish)).toBeLessThan(1);
  });

  it('does not come while the flight goes on, unless its exercise is over', () => {
    const flight = flightFrom('downwind');
    flyStep(flight);
    noteEnd(flight, false);
    finish(flight);
    expect(isOver(flight)).toBe(false);
    noteEnd(flight, true);
    expect(flight.endsAtStep).toBe(flight.session.step + 90);
  });
});

describe('what was done', () => {
  it('is told to the flight, and stands in order with its time and who did it', () => {
    const flight = flightFrom('downwind', procedures());
    changeSource(flight.session, 0, NOBODY);
    const tell = (kind: 'tick' | 'say' | 'look', value: string) => {
      tellFlight(flight, kind, value);
      for (let i = 0; i < 60; i += 1) flyStep(flight);
    };
    for (let i = 0; i < 60; i += 1) flyStep(flight);
    tell('say', 'downwind/0');
    tell('look', '-90');
    tell('tick', '');
    const done = doneOf(flight, 'pilot');
    expect(done.map(({ what }) => what)).toEqual(['call', 'look', 'check']);
    expect(done[0]).toEqual({ at_s: 1.017, what: 'call', id: 'downwind', by: 'pilot' });
    expect(done[1]).toMatchObject({ at_s: 2.017, id: '-90' });
    expect(done[2]?.id).toMatch(/^downwind\/[a-z-]+$/);
  });
});
