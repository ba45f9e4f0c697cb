// Others in the circuit: seeded, flown by model pilots at the same tick, told to the flight and into its recording.
import * as v from 'valibot';
import { beforeAll, describe, expect, it } from 'vitest';
import { startOfLeg } from '../../../src/circuit/start-of-leg.ts';
import type { Keyboard } from '../../../src/input/keyboard.ts';
import { createDriver } from '../../../src/pages/fly/driver.ts';
import { loadPilots } from '../../../src/pages/fly/pilots.ts';
import { lessonMemory, type ReadyFlight, readyFlight } from '../../../src/pages/fly/ready.ts';
import { scenarioOf } from '../../../src/pages/fly/scenario-of-settings.ts';
import { type Settings, settingsSchema } from '../../../src/pages/settings.ts';
import { createPilot } from '../../../src/pilot/pilot.ts';

const QUIET: Keyboard = {
  advance: () => {},
  read: () => {},
  strike: () => {},
  release: () => {},
  anyDown: () => false,
  destroy: () => {},
};

const standing = (changes: Partial<Settings> = {}): ReadyFlight => {
  const settings = v.parse(settingsSchema, { start: 'downwind', others: 1, ...changes });
  const { scenario, model } = scenarioOf(settings);
  return readyFlight(scenario, (own, plan) => createPilot(own, plan) as never, model);
};

const fly = (flight: ReadyFlight, seconds: number) => {
  const driver = createDriver(flight, QUIET, { onDropped: () => {}, onEnded: () => {} });
  driver.start(0);
  let ms = 0;
  const until = flight.session.step + seconds * 60;
  while (flight.session.step < until && !driver.ended) {
    ms += 200;
    driver.frame(ms);
  }
  return driver;
};

beforeAll(async () => {
  await loadPilots();
});

describe('others in the circuit', () => {
  it('begin ahead and are flown at the same tick', () => {
    const flight = standing();
    expect(flight.session.aircraft).toHaveLength(2);
    const base = startOfLeg(flight.plan, 'base');
    const other = flight.session.aircraft[1]?.snapshot;
    expect(other?.eastM).toBeCloseTo(base.east_m, 0);
    fly(flight, 20);
    expect(flight.session.aircraft[1]?.snapshot.step).toBe(flight.session.step);
  });

  it('are told to the flight once a second and stand in its recording', () => {
    const flight = standing();
    fly(flight, 20);
    const told = flight.session.aircraft[0]?.recorder.recording.events.filter((e) => e.kind === 'traffic');
    expect(told?.length).toBeGreaterThanOrEqual(19);
    expect(told?.length).toBeLessThanOrEqual(21);
    expect(lessonMemory(flight).procedures?.others).toHaveLength(1);
  });

  it('land, stand, leave the runway, and let the one behind land', () => {
    const flight = standing();
    fly(flight, 330);
    const { dues, touchdowns, procedures } = lessonMemory(flight);
    expect(touchdowns).toHaveLength(1);
    expect(dues.map(({ why }) => why)).not.toContain('the runway is occupied');
    // Half a circuit ahead: well beyond four tenths of a nautical mile
    expect(procedures?.nearest[0]?.metres).toBeGreaterThan(700);
  });

  it('stand where they stood when the flight is set back', () => {
    const flight = standing();
    const driver = fly(flight, 12);
    const at = flight.session.step;
    const before = flight.session.aircraft[1]?.snapshot.eastM;
    fly(flight, 10);
    driver.goTo(at, createPilot(flight.model, flight.plan) as never);
    expect(flight.session.aircraft).toHaveLength(2);
    expect(flight.session.aircraft[1]?.snapshot.eastM).toBe(before);
  });

  it('are drawn only while they could be seen', () => {
    const flight = standing();
    fly(flight, 2);
    // From the start of downwind to that of base it is 2.3 NM, too far to be picked up; 25 s later 1.8 NM
    expect(flight.frame.traffic).toEqual([]);
    fly(flight, 23);
    expect(flight.frame.traffic).toHaveLength(1);
    const alone = standing({ others: 0 });
    fly(alone, 2);
    expect(alone.frame.traffic).toEqual([]);
  });
});
