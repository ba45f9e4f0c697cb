// Whose flight it was: told to the recording where the controls change hands, and only what was flown by its pilot
// is looked at.
import { describe, expect, it } from 'vitest';
import { setBack } from '../../../src/flight/begin.ts';
import { type Flight, lessonMemory, ownAircraft } from '../../../src/flight/flight.ts';
import { modelPilot } from '../../../src/flight/model-pilot.ts';
import { LEFT, resultOfFlight } from '../../../src/flight/result.ts';
import { flyStep } from '../../../src/flight/run.ts';
import { shownWords } from '../../../src/flight/shown-words.ts';
import { createPilot } from '../../../src/pilot/pilot.ts';
import { flownBy, isDemonstration } from '../../../src/session/flown-by.ts';
import { changeSource } from '../../../src/session/session.ts';
import type { ControlSource } from '../../../src/session/source.ts';
import { flightFrom, procedures } from '../../support/flights.ts';

const flyWhile = (flight: Flight, goesOn: () => boolean): void => {
  while (goesOn() && flight.session.step < 60 * 600) flyStep(flight);
};
const toStop = (flight: Flight): void => flyWhile(flight, () => lessonMemory(flight).stop === null);
const toLeg = (flight: Flight, leg: string): void =>
  flyWhile(flight, () => lessonMemory(flight).legs.leg !== leg);
const byOf = (flight: Flight) => flownBy(ownAircraft(flight).recorder.recording);

/** A good student: flies like the model pilot, under another name. */
const student = ({ model, plan }: Flight): ControlSource<unknown> => ({
  ...(createPilot(model, plan) as ControlSource<unknown>),
  name: 'hands',
});

describe('a flight by the model pilot', () => {
  const flight = flightFrom('base', procedures());
  toStop(flight);

  it('is a demonstration from its first step, and says what it showed', () => {
    expect(byOf(flight)).toEqual({ last: 'model', theirsFromS: null, modelS: flight.session.step / 60 });
    expect(shownWords(flight)).toEqual([
      'Flown: 1 turn, 1 landing.',
      'Check final: all 4 items.',
      'Radio: 1 call, in the words of the card.',
      'Lookout: before every turn.',
    ]);
  });
});

describe('a flight that somebody took over on final', () => {
  const flight = flightFrom('base');
  toLeg(flight, 'final');
  const fromS = flight.session.step / 60;
  changeSource(flight.session, 0, student(flight));
  toStop(flight);
  const result = resultOfFlight(flight, null, fromS, LEFT);

  it('is theirs from there on', () => {
    expect(byOf(flight)).toEqual({ last: 'pilot', theirsFromS: fromS, modelS: fromS });
    const legs = new Set(result.items.map(({ leg }) => leg));
    expect([...legs]).toContain('final');
    expect([...legs].filter((leg) => leg === 'base' || leg === 'turn-to-final')).toEqual([]);
    expect(result.touchdowns).toHaveLength(1);
  });

  it('is a demonstration again, set back to before', () => {
    setBack(flight, 60, modelPilot(flight.model, flight.plan));
    flyStep(flight);
    expect(byOf(flight).last).toBe('model');
  });
});

describe('a flight that was handed to the model pilot', () => {
  it('is no attempt', () => {
    const flight = flightFrom('base');
    const own = student(flight);
    changeSource(flight.session, 0, own);
    flyWhile(flight, () => flight.session.step < 300);
    expect(isDemonstration(ownAircraft(flight).recorder.recording)).toBe(false);
    changeSource(flight.session, 0, modelPilot(flight.model, flight.plan));
    flyWhile(flight, () => flight.session.step < 600);
    expect(byOf(flight)).toEqual({ last: 'model', theirsFromS: null, modelS: 5 });
  });
});
