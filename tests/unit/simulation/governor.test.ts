// The constant-speed propeller: the governor holds the lever's rpm between its stops (common practice), and the blades
// obey the closed form of one blade element in the flow of momentum theory.
import { describe, expect, it } from 'vitest';
import { columnDensityKgpm3 } from '../../../src/atmosphere/air.ts';
import { bladeAfter, governedRevps, leverFor, turningAt } from '../../../src/simulation/engine/blades.ts';
import { propellerAt } from '../../../src/simulation/engine/propeller.ts';
import { solveSteady } from '../../../src/simulation/performance/steady.ts';
import { shapeOf } from '../../../src/simulation/shape.ts';
import { AT } from '../../../src/simulation/state.ts';
import { degFromRad, mpsFromKt, revpsFromRpm, rpmFromRevps } from '../../../src/units/conversions.ts';
import { aeroplaneNamed } from '../../support/aeroplanes.ts';
import { ISA, steadyAt } from '../../support/airborne.ts';
import { about, expectWithin, near } from '../../support/expect-within.ts';
import { beginFlight, fly, type Hands, scenarioOf } from '../../support/flight.ts';
import { bankHold, speedByPitch, together, verticalSpeedHold } from '../../support/holds.ts';

const whimbrel = aeroplaneNamed('whimbrel');
const shape = shapeOf(whimbrel);
const rpm = (flight: { seen: { engineRevps: number } }): number => rpmFromRevps(flight.seen.engineRevps);
const level = { ias_kt: 95, height_ft: 3000, gear: 'up' } as const;

describe('the governor', () => {
  it.each([2700, 2500, 2300])(
    'holds %d rpm by the lever, faster and slower, with more and less power',
    (wanted) => {
      const flight = beginFlight(scenarioOf({ aeroplane: whimbrel, start: level }));
      const lever = leverFor(shape, revpsFromRpm(wanted));
      const at = (throttle: number, kt: number): void => {
        const hands: Hands = (_, c) => {
          c.throttle = throttle;
          c.propeller = lever;
        };
        fly(flight, 30, together(bankHold(0), speedByPitch(mpsFromKt(kt)), hands));
        expectWithin(rpm(flight), about(wanted, 3, 'the lever'));
      };
      at(0.8, 95);
      const slow = flight.seen.bladeRad;
      at(0.8, 130);
      // Faster: coarser
      expect(flight.seen.bladeRad).toBeGreaterThan(slow);
      const strong = flight.seen.bladeRad;
      at(0.55, 130);
      // Less power: finer
      expect(flight.seen.bladeRad).toBeLessThan(strong);
    },
  );

  it('lets a slammed throttle overshoot by less than 5 per cent, and has it back within five seconds', () => {
    const flight = beginFlight(scenarioOf({ aeroplane: whimbrel, start: level }));
    let highest = 0;
    const slam = together(bankHold(0), verticalSpeedHold(0), (_, c) => {
      c.throttle = 1;
    });
    fly(flight, 5, slam, (seen) => {
      highest = Math.max(highest, rpmFromRevps(seen.engineRevps));
      return false;
    });
    expectWithin(highest, { low: 2700, high: 2835, source: 'common practice: a surge of some hundred rpm' });
    expectWithin(rpm(flight), about(2700, 15, 'the lever'));
  });

  it('on the fine stop turns as slowly as the power asks, standing and on the approach', () => {
    const flight = beginFlight(
      scenarioOf({ aeroplane: whimbrel, start: { ias_kt: 72, flap_deg: 35, flight_path_deg: -4 } }),
    );
    expect(degFromRad(flight.seen.bladeRad)).toBeCloseTo(15, 9);
    expect(rpm(flight)).toBeLessThan(2650);
    const slower = beginFlight(
      scenarioOf({ aeroplane: whimbrel, start: { ias_kt: 72, flap_deg: 35, flight_path_deg: -5 } }),
    );
    expect(rpm(slower)).toBeLessThan(rpm(flight));
  });

  it('on the coarse stop lets a fast dive drive the engine beyond the lever', () => {
    const coarse = { ...shape, coarseRad: shape.fineRad + 0.02 };
    const found = solveSteady(coarse, ISA, {
      iasMps: mpsFromKt(160),
      altitudeM: 300,
      flapDeg: 0,
      gear: 0,
      bankRad: 0,
      carbHeat: 0,
      throttle: 1,
    });
    if (!found.ok) throw new Error(found.why);
    expect(found.steady.bladeRad).toBe(coarse.coarseRad);
    expect(rpmFromRevps(found.steady.revps)).toBeGreaterThan(2720);
  });

  it('turns the blades no faster than its oil, and never past a stop', () => {
    const dt = 1 / 60;
    const start = 0.4;
    const most = bladeAfter(shape, start, 1, 90, 10, dt) - start;
    expectWithin(degFromRad(most / dt), { low: 1, high: 20, source: 'common practice, degrees a second' });
    expect(bladeAfter(shape, start, 1, 60, 10, dt)).toBeCloseTo(start + most, 12);
    expect(bladeAfter(shape, shape.coarseRad, 1, 90, 10, dt)).toBe(shape.coarseRad);
    expect(bladeAfter(shape, shape.fineRad, 1, 10, -10, dt)).toBe(shape.fineRad);
  });

  it('is asked by the lever for rated rpm fully forward and for the lowest fully back', () => {
    expect(rpmFromRevps(governedRevps(shape, 1))).toBeCloseTo(2700, 9);
    expect(rpmFromRevps(governedRevps(shape, 0))).toBeCloseTo(1500, 9);
    expect(leverFor(shape, governedRevps(shape, 0.3))).toBeCloseTo(0.3, 12);
  });
});

describe('the blades', () => {
  it('pull nothing where momentum and blade element say so: the zero-lift line in the flow', () => {
    // x tan(beta) = V: lift nought; drag leaves a little drag behind. 7.6's bound for the same section
    const blade = 0.35;
    const revps = 40;
    const v = 2 * Math.PI * revps * shape.bladeRadiusM * Math.tan(blade);
    const { thrustN, torqueNm } = propellerAt(shape, 1.225, revps, v, blade);
    const meets = v / Math.sin(blade);
    const drag = 0.5 * 1.225 * shape.bladeAreaM2 * meets * meets * shape.bladeDrag;
    expectWithin(thrustN, near(-drag * Math.sin(blade), 0.01, 'blade element'));
    expectWithin(torqueNm, near(drag * Math.cos(blade) * shape.bladeRadiusM, 0.01, 'blade element'));
  });

  it('leave the disk with the flow that momentum theory gives its lift', () => {
    // Solve for v by halving, apart from the program's closed form
    const [density, revps, v0, blade] = [1.1, 42, 45, 0.34] as const;
    const x = 2 * Math.PI * revps * shape.bladeRadiusM;
    const axial = (v: number): number =>
      0.5 *
      density *
      shape.bladeAreaM2 *
      shape.bladeLift *
      x *
      (Math.sin(blade) * x - Math.cos(blade) * (v0 + v));
    let [low, high] = [0, 60];
    for (let i = 0; i < 80; i += 1) {
      const v = (low + high) / 2;
      if (2 * density * shape.diskAreaM2 * (v0 + v) * v > axial(v)) high = v;
      else low = v;
    }
    const flow = v0 + low;
    const meets = Math.hypot(flow, x);
    const cl = (shape.bladeLift * (Math.sin(blade) * x - Math.cos(blade) * flow)) / meets;
    const cd = shape.bladeDrag + shape.bladeDragPerLift2 * cl * cl;
    const thrust = 0.5 * density * shape.bladeAreaM2 * meets * (cl * x - cd * flow);
    expectWithin(propellerAt(shape, density, revps, v0, blade).thrustN, near(thrust, 0.001, '7.3'));
  });

  it('take just the torque that a planner asks for, in each of the three ways of turning', () => {
    const density = 1.2;
    const at = (torqueNm: number, v: number, lever: number) => {
      const found = turningAt(
        shape,
        lever,
        torqueNm,
        (n, b) => propellerAt(shape, density, n, v, b).torqueNm,
      );
      expectWithin(
        propellerAt(shape, density, found.revps, v, found.bladeRad).torqueNm,
        about(torqueNm, 0.1, 'as asked'),
      );
      return found;
    };
    expect(at(200, 0, 1).bladeRad).toBe(shape.fineRad);
    expect(at(500, 50, 1).revps).toBeCloseTo(45, 6);
    expect(at(500, 50, 0.5).bladeRad).toBeGreaterThan(at(500, 50, 1).bladeRad);
  });

  it('give away less when the lever is pulled back in a glide', () => {
    const forward = steadyAt(whimbrel, 80, { throttle: 0, gear: 0 });
    const back = steadyAt(whimbrel, 80, { throttle: 0, gear: 0, propeller: 0 });
    expect(back.bladeRad).toBeGreaterThan(forward.bladeRad);
    expect(back.verticalSpeedMps).toBeGreaterThan(forward.verticalSpeedMps + 0.2);
  });
});

describe('a start with a governed propeller', () => {
  it('stands on the blade angle of its steady state and flies on unchanged', () => {
    const flight = beginFlight(
      scenarioOf({
        aeroplane: whimbrel,
        start: { ...level, propeller: leverFor(shape, revpsFromRpm(2500)) },
      }),
    );
    const { throttle } = flight.controls;
    expect(flight.state[AT.blade]).toBeGreaterThan(shape.fineRad);
    fly(flight, 20);
    expectWithin(rpm(flight), about(2500, 2, 'as begun'));
    expect(flight.controls.throttle).toBe(throttle);
    expectWithin(flight.seen.iasMps, about(mpsFromKt(95), 0.3, 'as begun'));
  });

  it('cannot be asked for by the rpm that the governor holds', () => {
    const density = columnDensityKgpm3(ISA, 300);
    expect(density).toBeGreaterThan(1);
    const asked = { ias_kt: 95, gear: 'up' as const, rpm: 2700 };
    expect(() => beginFlight(scenarioOf({ aeroplane: whimbrel, start: asked }))).toThrow(
      'start: the propeller is governed to 2700 rpm, which says nothing of the power; ask for a flight path or less than that',
    );
  });
});
