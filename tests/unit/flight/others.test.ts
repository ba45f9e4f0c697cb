// Others in the circuit: seeded, flown by model pilots at the same tick, told to the flight and into its recording.
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { alongM } from '../../../src/aerodrome/runway.ts';
import { startOfLeg } from '../../../src/circuit/start-of-leg.ts';
import { beginFlight, type FlightAsked, setBack } from '../../../src/flight/begin.ts';
import { type Flight, lessonMemory } from '../../../src/flight/flight.ts';
import { otherPilot } from '../../../src/flight/other-pilot.ts';
import { othersInSight } from '../../../src/flight/others.ts';
import { flyStep } from '../../../src/flight/run.ts';
import { scenarioOf } from '../../../src/pages/fly/sheets/scenario-of-settings.ts';
import { type Settings, settingsSchema } from '../../../src/pages/settings.ts';
import { createPilot, type PilotMemory } from '../../../src/pilot/pilot.ts';
import { type Aircraft, advance, createSession, decide } from '../../../src/session/session.ts';
import { prepare } from '../../../src/simulation/model.ts';
import { newSnapshot, type Snapshot } from '../../../src/simulation/snapshot.ts';

const readyFrom = (
  { scenario, model }: ReturnType<typeof scenarioOf>,
  source: FlightAsked['source'] = (own, plan) => createPilot(own, plan) as never,
): Flight => beginFlight({ scenario, model, source, otherPilot, judgedBy: null });

const standing = (changes: Partial<Settings> = {}): Flight =>
  readyFrom(scenarioOf(v.parse(settingsSchema, { start: 'downwind', others: 1, ...changes })));

const fly = (flight: Flight, seconds: number): void => {
  for (let i = 0; i < seconds * 60; i += 1) flyStep(flight);
};

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
    fly(flight, 12);
    const at = flight.session.step;
    const before = flight.session.aircraft[1]?.snapshot.eastM;
    fly(flight, 10);
    setBack(flight, at, createPilot(flight.model, flight.plan) as never);
    expect(flight.session.aircraft).toHaveLength(2);
    expect(flight.session.aircraft[1]?.snapshot.eastM).toBe(before);
  });

  it('go around while the student stands on the runway, and never come near', () => {
    const settings = v.parse(settingsSchema, { start: 'line-up', others: 2 });
    const standsStill = { name: 'hands', live: true, begin: () => ({}), next: () => {} } as const;
    const flight = readyFrom(scenarioOf(settings), () => standsStill as never);
    let nearestM = Number.POSITIVE_INFINITY;
    for (let t = 0; t < 330; t += 2) {
      fly(flight, 2);
      const [own, ...others] = flight.session.aircraft.map(({ snapshot }) => snapshot);
      for (const other of others)
        nearestM = Math.min(
          nearestM,
          Math.hypot(other.eastM - own!.eastM, other.northM - own!.northM, other.heightM),
        );
    }
    const around = flight.session.aircraft.slice(1).map(({ sourceMemory }) => sourceMemory as PilotMemory);
    // Both have come round by then: each has gone around, neither has landed
    for (const { goArounds, landings, goAroundWhy } of around) {
      expect(goArounds).toBeGreaterThan(0);
      expect(landings).toBe(0);
      expect(goAroundWhy).toBe('runway occupied');
    }
    // Decided by 250 ft: not lower over the student than half of that
    expect(nearestM).toBeGreaterThan(38);
  });

  it('stay on downwind behind a student who has turned base in front of them', () => {
    // From the start of base, the other set on downwind: the student lands first
    const settings = v.parse(settingsSchema, { start: 'base', others: 1 });
    const { scenario, model } = scenarioOf(settings);
    const behind = {
      ...scenario,
      procedures: { ...scenario.procedures!, traffic: [{ from: 'downwind' as const, vacatesS: 20 }] },
    };
    const flight = readyFrom({ scenario: behind, model });
    const other = () => flight.session.aircraft[1]!;
    let furthestM = 0;
    for (let t = 0; t < 300; t += 2) {
      fly(flight, 2);
      furthestM = Math.min(furthestM, alongM(model.runway, other().snapshot.eastM, other().snapshot.northM));
    }
    const planned = alongM(model.runway, flight.plan.turns.base.to.eastM, flight.plan.turns.base.to.northM);
    // The student is on final while the other comes along downwind: it has gone by, nobody extends
    expect(furthestM).toBeGreaterThan(planned - 250);
    expect(lessonMemory(flight).touchdowns).toHaveLength(1);
    // A student on a long final, 1.4 NM out, has not gone by
    const start = { at: startOfLeg(flight.plan, 'downwind'), trimmed: true, leg: 'downwind' } as const;
    const reaches = (own: Snapshot | null): number => {
      const source = otherPilot(prepare({ ...scenario, start }), flight.plan);
      const session = createSession([{ scenario: { ...scenario, start }, source, folds: [] }]);
      let outM = 0;
      for (let i = 0; i < 110 * 60; i += 1) {
        decide(session, own === null ? [] : [{ snapshot: own }]);
        advance(session);
        const { snapshot } = session.aircraft[0] as Aircraft;
        outM = Math.min(outM, alongM(model.runway, snapshot.eastM, snapshot.northM));
      }
      return outM;
    };
    const slow = newSnapshot();
    const { sinHeading, cosHeading } = model.runway;
    Object.assign(slow, {
      eastM: -2600 * sinHeading,
      northM: -2600 * cosHeading,
      heightM: 130,
      onGround: false,
    });
    expect(reaches(slow)).toBeLessThan(reaches(null) - 500);
  });

  it('are drawn only while they could be seen', () => {
    const flight = standing();
    fly(flight, 2);
    // From the start of downwind to that of base it is 2.3 NM, too far to be picked up; 25 s later 1.8 NM
    expect(othersInSight(flight)).toEqual([]);
    fly(flight, 23);
    expect(othersInSight(flight)).toHaveLength(1);
    const alone = standing({ others: 0 });
    fly(alone, 2);
    expect(othersInSight(alone)).toEqual([]);
  });
});
