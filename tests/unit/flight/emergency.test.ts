// The card follows an emergency at once, and never speaks of one that there is not.
import { describe, expect, it } from 'vitest';
import { aerodromeNamed, aeroplaneNamed, exerciseNamed } from '../../../src/catalogue.ts';
import { beginFlight } from '../../../src/flight/begin.ts';
import { type Emergency, emergencyNow } from '../../../src/flight/emergency.ts';
import { ownAircraft } from '../../../src/flight/flight.ts';
import { otherPilot } from '../../../src/flight/model-pilot.ts';
import { flyStep, isOver } from '../../../src/flight/run.ts';
import { exerciseScenario, scenarioPlan } from '../../../src/lesson/exercises/exercise-scenario.ts';
import { createPilot } from '../../../src/pilot/pilot.ts';
import type { ControlSource } from '../../../src/session/source.ts';
import { prepare } from '../../../src/simulation/model.ts';
import { AT } from '../../../src/simulation/state.ts';

/** Every emergency told in a flight, with seconds from what happened (by the state itself) to the first word of it. */
const told = (id: string, aeroplane = 'sandpiper', seed = 3) => {
  const scenario = exerciseScenario(
    exerciseNamed(id),
    aeroplaneNamed(aeroplane),
    aerodromeNamed('curlew-sands'),
    seed,
  );
  const model = prepare(scenario);
  const plan = scenarioPlan(scenario);
  const source = () => createPilot(model, plan) as ControlSource<unknown>;
  const flight = beginFlight({ scenario, model, plan, source, otherPilot, judgedBy: null });
  const aircraft = ownAircraft(flight);
  const found = new Map<Emergency, number>();
  let happenedS: number | null = null;
  for (let i = 0; i < 60 * 900 && !isOver(flight) && aircraft.snapshot.ended === null; i += 1) {
    flyStep(flight);
    const { snapshot, state } = aircraft;
    const wrong = state[AT.engineDead] === 1 || (state[AT.powerShare] as number) < 1;
    if (wrong) happenedS ??= snapshot.timeS;
    const now = emergencyNow(flight, snapshot);
    if (now !== '' && !found.has(now)) found.set(now, snapshot.timeS - (happenedS ?? snapshot.timeS));
  }
  return found;
};

describe('the emergency that the card shows', () => {
  it('is the stopped engine, within half a second', () => {
    const found = told('engine-failure-after-take-off');
    expect([...found.keys()]).toEqual(['engine-out']);
    expect(found.get('engine-out')).toBeLessThan(0.5);
  });

  it('is the weak one as soon as it is weak', () => {
    const found = told('partial-power');
    expect(found.get('partial-power')).toBeLessThan(0.5);
    expect(found.has('engine-out')).toBe(false);
  });

  it('is the take-off that was called off', () => {
    expect([...told('abandoned-take-off').keys()]).toEqual(['abandoned']);
  });

  const MORE = [
    ['normal-circuit', 'sandpiper'],
    ['touch-and-go-session', 'whimbrel'],
    ['glide-approach', 'sandpiper'],
    ['high-and-hot', 'dotterel'],
    ['gusty-day', 'sandpiper'],
  ] as const;
  it('is the go-around that was called, and nothing else', () => {
    expect([...told('go-around', 'dotterel').keys()]).toEqual(['go-around']);
  });

  it.each(process.env.LAPWING_LONG ? MORE : MORE.slice(0, 1))('is none in %s by the %s', (id, aeroplane) => {
    expect([...told(id, aeroplane).keys()]).toEqual([]);
  });
});
