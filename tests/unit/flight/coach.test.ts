// The coach of a flight: plain data that goes with it, told to its recording, begun anew where the flight is set back.
import { describe, expect, it } from 'vitest';
import { setBack } from '../../../src/flight/begin.ts';
import { COACH_STEPS, followCoach } from '../../../src/flight/coach.ts';
import { saidOf } from '../../../src/flight/done.ts';
import { type Flight, ownAircraft } from '../../../src/flight/flight.ts';
import { flyStep } from '../../../src/flight/run.ts';
import type { CoachLevel } from '../../../src/lesson/coach/coach.ts';
import { flightFrom } from '../../support/flights.ts';

const follow = (flight: Flight, untilS: number, level: CoachLevel, counts = true): string[] => {
  const said: string[] = [];
  while (flight.session.step < untilS * 60) {
    flyStep(flight);
    if (flight.session.step % COACH_STEPS !== 0) continue;
    const text = followCoach(flight, ownAircraft(flight).snapshot, level, counts);
    if (text !== null) said.push(text);
  }
  return said;
};

const eventsOf = (flight: Flight, kind: string): string[] =>
  ownAircraft(flight)
    .recorder.recording.events.filter((event) => event.kind === kind)
    .map(({ value }) => value);

describe('the coach of a flight', () => {
  it('keeps what it says with the flight, and how loud it is once', () => {
    const flight = flightFrom('downwind');
    const said = follow(flight, 60, 'talked-through');
    expect(said.length).toBeGreaterThan(1);
    expect(saidOf(flight).map(({ text }) => text)).toEqual(said);
    expect(eventsOf(flight, 'coach')).toEqual(['talked-through']);
    expect(structuredClone(flight.coach)).toEqual(flight.coach);
  });

  it('is not counted as help where nobody flies by hand', () => {
    const flight = flightFrom('downwind');
    expect(follow(flight, 40, 'talked-through', false).length).toBeGreaterThan(0);
    expect(eventsOf(flight, 'coach')).toEqual([]);
  });

  it('says again what it said when the flight is set back before it', () => {
    const flight = flightFrom('downwind');
    const first = follow(flight, 40, 'talked-through');
    setBack(flight, 0, ownAircraft(flight).source);
    expect(follow(flight, 40, 'talked-through')).toEqual(first);
    expect(eventsOf(flight, 'coach')).toEqual(['talked-through']);
  });

  it('of one flight knows nothing of another', () => {
    const [one, other] = [flightFrom('downwind'), flightFrom('downwind')];
    const alone = follow(flightFrom('downwind'), 40, 'talked-through');
    const said: Record<'one' | 'other', string[]> = { one: [], other: [] };
    for (let t = 1; t <= 40; t += 1) {
      said.one.push(...follow(one, t, 'talked-through'));
      said.other.push(...follow(other, t, 'talked-through'));
    }
    expect(said).toEqual({ one: alone, other: alone });
  });
});
