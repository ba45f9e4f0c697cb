import { describe, expect, it } from 'vitest';
import { ENDINGS, endingOf } from '../../../src/simulation/endings.ts';
import { AT } from '../../../src/simulation/state.ts';
import { beginFlight, fly, scenarioOf } from '../../support/flight.ts';
import { bankHold } from '../../support/holds.ts';

const low = { east_m: 0, north_m: 500, height_ft: 30, ias_kt: 65, flap_deg: 30, flight_path_deg: -3 };

describe('the flight ends', () => {
  it('with a wing tip on the ground', () => {
    const flight = beginFlight(scenarioOf({ start: { ...low, height_ft: 12 } }));
    fly(flight, 6, (_, c) => {
      c.aileron = 1;
      c.elevator = 0.3;
    });
    expect(flight.seen.ended).toBe('crashed');
    expect(flight.seen.endedWhy).toMatch(/^a wing tip met the ground at \d\d degrees of bank$/);
  });

  it('flown into the ground', () => {
    const flight = beginFlight(scenarioOf({ start: { height_ft: 300, ias_kt: 80, throttle: 0 } }));
    fly(flight, 60, bankHold(0));
    expect(flight.seen.ended).toBe('crashed');
  });

  it('far beyond the never-exceed speed', () => {
    const flight = beginFlight(scenarioOf({ start: { height_ft: 9000, ias_kt: 90, throttle: 0 } }));
    fly(flight, 60, (seen, c) => {
      c.throttle = 1;
      c.elevator = seen.pitchRad > -0.9 ? -0.5 : 0.05;
      bankHold(0)(seen, c);
    });
    expect(flight.seen.endedWhy).toMatch(
      /^the airframe failed at 16\d kt, far beyond its never-exceed speed$/,
    );
  });

  it('and stays ended: only the clock runs on', () => {
    const flight = beginFlight(scenarioOf({ start: { height_ft: 200, ias_kt: 80, throttle: 0 } }));
    fly(flight, 60, bankHold(0));
    const before = [...flight.state];
    const { seen } = flight;
    expect(seen.ended).not.toBeNull();
    const steps = flight.state[AT.step]!;
    fly(flight, 1);
    expect(flight.state[AT.step]).toBe(steps);
    expect([...flight.state]).toEqual(before);
  });
});

describe('the table of endings', () => {
  it('gives each its own code, found again by it', () => {
    const endings = Object.values(ENDINGS);
    expect(new Set(endings.map(({ code }) => code)).size).toBe(endings.length);
    for (const ending of endings) expect(endingOf(ending.code)).toBe(ending);
    expect(endingOf(0)).toBeNull();
  });

  it('says each as one sentence without a full stop', () => {
    for (const { sentence } of Object.values(ENDINGS)) expect(sentence(42)).toMatch(/^[a-z].*[^.]$/);
  });
});

describe('a nose wheel put down first and hard', () => {
  it('breaks its leg', () => {
    const flight = beginFlight(scenarioOf({ start: { ...low, height_ft: 6, ias_kt: 75 } }));
    flight.state[AT.pitch] = -0.25;
    flight.state[AT.velocityUp] = -4.3;
    fly(flight, 3);
    expect(flight.seen.ended).toBe('crashed');
    expect(flight.seen.endedWhy).toMatch(/nose leg|undercarriage/);
  });
});
