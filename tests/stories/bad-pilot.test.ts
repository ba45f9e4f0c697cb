// A pilot with one fault is told apart from a good one: too fast, no drift correction, base turned late.
import { describe, expect, it } from 'vitest';
import type { CircuitPlan, PathPoint } from '../../src/circuit/types.ts';
import { createPilot } from '../../src/pilot/pilot.ts';
import { prepare } from '../../src/simulation/model.ts';
import type { Snapshot } from '../../src/simulation/snapshot.ts';
import { degFromRad, mpsFromKt } from '../../src/units/conversions.ts';
import { type Bend, flyDay } from '../support/circuit-flight.ts';

/** The good pilot looking through somebody's wrong eyes. */
const seeing =
  (bent: (seen: Readonly<Snapshot>) => Partial<Snapshot>): Bend =>
  (model, plan) => {
    const pilot = createPilot(model, plan);
    return {
      ...pilot,
      begin: (seen, controls) => pilot.begin({ ...seen, ...bent(seen) }, controls),
      next: (seen, memory, controls) => pilot.next({ ...seen, ...bent(seen) }, memory, controls),
    };
  };

/** Flies by speeds that are too high by so many knots, and knows no better. */
const faster =
  (kt: number): Bend =>
  (model, plan) => {
    const { scenario } = model;
    const speeds = Object.fromEntries(
      Object.entries(scenario.aeroplane.speeds).map(([name, speedKt]) => [name, speedKt + kt]),
    ) as typeof scenario.aeroplane.speeds;
    const believed = prepare({ ...scenario, aeroplane: { ...scenario.aeroplane, speeds } });
    return createPilot(believed, { ...plan, approachIasMps: plan.approachIasMps + mpsFromKt(kt) });
  };

const windy = { runway: '22', windDeg: 60, windKt: 12 } as const;
const good = flyDay(windy);

it('the good one is good', () => {
  expect(good.stopped).toBe(true);
  expect(good.goArounds).toBe(0);
  expect(good.downwind.offM).toBeLessThan(30);
  expect(Math.abs(good.baseTurnDeg - degFromRad(good.plan.baseTurnAngleRad))).toBeLessThan(5);
});

describe('12 kt too fast', () => {
  const fast = flyDay(windy, faster(12));

  // FAA-S-ACS-6 III.B and IV.B: ±10 kt on downwind, +10/-5 kt on the approach
  it('shows in the speeds on downwind and at the gate', () => {
    expect(fast.downwind.fastKt).toBeGreaterThan(good.downwind.fastKt + 8);
    expect(fast.downwind.fastKt).toBeGreaterThan(90);
    const at = (flown: typeof good) => flown.gates.find((g) => g.heightFt === 300)!.iasKt;
    expect(at(fast)).toBeGreaterThan(75);
    expect(at(good)).toBeLessThan(75);
  });
});

describe('no drift correction', () => {
  // Points the nose along the leg and believes that is where it goes
  const drifting = flyDay(
    windy,
    seeing((s) => ({ trackRadT: s.headingRadT })),
    300,
  );

  it('closes with or leaves the runway on downwind', () => {
    expect(drifting.downwind.offM).toBeGreaterThan(3 * good.downwind.offM + 60);
  });
});

describe('base turned ten seconds late', () => {
  const late: Bend = (model, plan) => {
    const { baseTurnAngleRad } = plan;
    const metres = 10 * plan.legs.downwind.groundspeedMps;
    const { from, to } = plan.turns.base;
    const along = (p: PathPoint): PathPoint => ({
      ...p,
      eastM: p.eastM - metres * model.runway.sinHeading,
      northM: p.northM - metres * model.runway.cosHeading,
    });
    const bent: CircuitPlan = {
      ...plan,
      baseTurnAngleRad,
      turns: { ...plan.turns, base: { ...plan.turns.base, from: along(from), to: along(to) } },
    };
    return createPilot(model, bent);
  };
  const flown = flyDay(windy, late);

  // The design: the base turn within 5 degrees of the wind-corrected point
  it('shows in the angle behind the wing', () => {
    const planned = degFromRad(flown.plan.baseTurnAngleRad);
    expect(flown.baseTurnDeg - planned).toBeGreaterThan(5);
    expect(flown.baseTurnDeg - good.baseTurnDeg).toBeGreaterThan(5);
  });

  it('makes a longer circuit of it', () => {
    expect(flown.seconds).toBeGreaterThan(good.seconds + 10);
  });
});
