// The model pilot knows what a pilot can know, thinks at 20 Hz, takes time to answer and has hands of finite speed.
import { describe, expect, it } from 'vitest';
import { createPilot } from '../../../src/pilot/pilot.ts';
import { newPilotView, pilotView } from '../../../src/pilot/view.ts';
import { clonePlain } from '../../../src/session/plain.ts';
import { CONTROLS, neutralControls } from '../../../src/simulation/controls.ts';
import { newSnapshot, type Snapshot } from '../../../src/simulation/snapshot.ts';
import { dayScenario } from '../../support/circuit-flight.ts';
import { beginFlight, flyStep } from '../../support/flight.ts';

const day = { runway: '22', windDeg: 50, windKt: 12, turbulence: 'light' } as const;
const { scenario, model, plan } = dayScenario(day);

/** What no instrument and no window shows. */
const HIDDEN: readonly (keyof Snapshot)[] = [
  'windEastMps',
  'windNorthMps',
  'windUpMps',
  'alphaRad',
  'slipRad',
  'tasMps',
  'dynamicPressurePa',
  'densityKgpm3',
  'stallAlphaRad',
  'thrustN',
  'loadFactor',
];

const flyFor = (seconds: number, blind: boolean): number[] => {
  const pilot = createPilot(model, plan);
  const flight = beginFlight(scenario);
  const eyes = (seen: Snapshot): Snapshot => {
    if (!blind) return seen;
    const bent = { ...seen } as unknown as Record<string, unknown>;
    for (const name of HIDDEN) bent[name] = 1e3;
    return bent as unknown as Snapshot;
  };
  const memory = pilot.begin(eyes(flight.seen), flight.controls);
  const hands: number[] = [];
  for (let i = 0; i < seconds * 60; i += 1) {
    flyStep(flight, (seen, controls) => pilot.next(eyes(seen), memory, controls));
    if (i % 60 === 0) hands.push(...CONTROLS.map((c) => flight.controls[c.name]));
  }
  return hands;
};

describe('the pilot', () => {
  it('does not look at the wind, the gust, the angle of attack or the slip', () => {
    expect(flyFor(120, true)).toEqual(flyFor(120, false));
  });

  it('keeps nothing but plain, finite data that JSON carries whole', () => {
    const pilot = createPilot(model, plan);
    const flight = beginFlight(scenario);
    const memory = pilot.begin(flight.seen, flight.controls);
    for (let i = 0; i < 90 * 60; i += 1)
      flyStep(flight, (seen, controls) => pilot.next(seen, memory, controls));
    const written = JSON.stringify(memory);
    expect(written).not.toContain('null');
    expect(JSON.parse(written)).toEqual(memory);
    expect(written.length).toBeLessThan(4000);
  });

  it('goes on to the bit from a copy of its memory', () => {
    const pilot = createPilot(model, plan);
    const flight = beginFlight(scenario);
    const memory = pilot.begin(flight.seen, flight.controls);
    for (let i = 0; i < 100 * 60 + 7; i += 1)
      flyStep(flight, (seen, controls) => pilot.next(seen, memory, controls));
    const other = createPilot(model, plan);
    const copied = JSON.parse(JSON.stringify(clonePlain(memory)));
    const controls = { ...flight.controls };
    for (let i = 0; i < 600; i += 1) {
      flyStep(flight, (seen, own) => {
        pilot.next(seen, memory, own);
        other.next(seen, copied, controls);
        expect({ ...controls }).toEqual({ ...own });
      });
      Object.assign(controls, flight.controls);
    }
  });

  it('does not answer what it has not had time to see', () => {
    // Human reaction to a visual change: 0.15 to 0.25 s (textbook figure, from memory), and the next look at 20 Hz
    const pilot = createPilot(model, plan);
    const level = { ...newSnapshot(), heightM: 300, wheelClearanceM: 300, iasMps: 40, shownIasMps: 40 };
    level.groundspeedMps = 40;
    level.trackRadT = model.runway.headingRadT;
    level.headingRadT = model.runway.headingRadT;
    const answer = (upset: boolean): number => {
      const controls = neutralControls();
      const memory = pilot.begin(level, controls);
      const calm: number[] = [];
      for (let i = 0; i < 60; i += 1) {
        const bankRad = upset && i >= 12 ? 0.5 : 0;
        pilot.next({ ...level, step: i, timeS: i / 60, bankRad }, memory, controls);
        calm.push(controls.aileron);
      }
      const first = calm.findIndex((aileron) => Math.abs(aileron) > 0.02);
      return first < 0 ? Number.POSITIVE_INFINITY : (first - 12) / 60;
    };
    expect(answer(false)).toBe(Number.POSITIVE_INFINITY);
    expect(answer(true)).toBeGreaterThanOrEqual(0.15);
    expect(answer(true)).toBeLessThan(0.35);
  });

  it('never moves stick, pedals, wheel or throttle faster than hands do', () => {
    const pilot = createPilot(model, plan);
    const flight = beginFlight(scenario);
    const memory = pilot.begin(flight.seen, flight.controls);
    const most = { elevator: 0, aileron: 0, rudder: 0, trim: 0, throttle: 0, brake: 0 };
    const names = Object.keys(most) as (keyof typeof most)[];
    for (let i = 0; i < 300 * 60; i += 1) {
      const before = { ...flight.controls };
      flyStep(flight, (seen, controls) => pilot.next(seen, memory, controls));
      for (const name of names)
        most[name] = Math.max(most[name], Math.abs(flight.controls[name] - before[name]) * 60);
    }
    // A whole stick in no less than 0.3 s, a throttle in a second, the wheel in several (common practice)
    expect(most.elevator).toBeLessThan(1 / 0.3);
    expect(most.aileron).toBeLessThan(1 / 0.3);
    expect(most.rudder).toBeLessThan(1 / 0.3);
    expect(most.throttle).toBeLessThan(1);
    expect(most.trim).toBeLessThan(0.25);
  });
});

describe('the view', () => {
  it('is the mirror image for a circuit to the other side', () => {
    const s = newSnapshot();
    const { runway } = model;
    const across = 120;
    s.eastM = -500 * runway.sinHeading + across * runway.cosHeading;
    s.northM = -500 * runway.cosHeading - across * runway.sinHeading;
    s.trackRadT = runway.headingRadT + 0.3;
    s.headingRadT = runway.headingRadT + 0.2;
    s.bankRad = 0.1;
    s.ball = 0.05;
    const right = pilotView(s, runway, 1, newPilotView());
    const left = pilotView(s, runway, -1, newPilotView());
    expect(right.xM).toBeCloseTo(-500, 6);
    expect(right.yM).toBeCloseTo(across, 6);
    expect(left.xM).toBeCloseTo(-500, 6);
    expect(left.yM).toBeCloseTo(-across, 6);
    expect(right.trackRad).toBeCloseTo(0.3, 9);
    expect(left.trackRad).toBeCloseTo(-0.3, 9);
    expect([right.bankRad, left.bankRad, right.ball, left.ball]).toEqual([0.1, -0.1, 0.05, -0.05]);
  });

  it('sees the ground of a sloping runway come nearer', () => {
    const uphill = dayScenario({ aerodrome: 'plover-meadow', runway: '31' }).model.runway;
    const s = newSnapshot();
    s.eastM = 100 * uphill.sinHeading;
    s.northM = 100 * uphill.cosHeading;
    s.velocityEastMps = 30 * uphill.sinHeading;
    s.velocityNorthMps = 30 * uphill.cosHeading;
    // 2 percent of 30 m/s
    expect(pilotView(s, uphill, -1, newPilotView()).partingMps).toBeCloseTo(-0.6, 6);
  });
});
