// The phugoid: flown by the step against the model's own linearisation (eigenvalues by ml-matrix), and against
// Lanchester's closed form in its limit (flight-figures 6.1 to 6.6, RECOMPUTED).
import { describe, expect, it } from 'vitest';
import { columnDensityKgpm3 } from '../../src/atmosphere/air.ts';
import { RHO0_KGPM3 } from '../../src/atmosphere/isa.ts';
import { mpsFromKt } from '../../src/units/conversions.ts';
import { aeroplaneNamed, type Changes, variantOf } from '../support/aeroplanes.ts';
import { ISA, steadyAt } from '../support/airborne.ts';
import { about, expectWithin, near } from '../support/expect-within.ts';
import { beginFlight, flyStep, handsOff, northRunway, scenarioOf } from '../support/flight.ts';
import { measuredMode, modesOf } from '../support/modes.ts';
import { trust } from '../support/trust-table.ts';

const sandpiper = aeroplaneNamed('sandpiper');
const ALTITUDE_M = 609.6; // 2,000 ft
const levelAt = (kt: number, aeroplane = sandpiper) =>
  steadyAt(aeroplane, kt, { altitudeM: ALTITUDE_M, flightPathRad: 0 });

/** Airspeed after a push of half a knot, less what the undisturbed flight does: the motion by itself. */
const flown = (kt: number, seconds: number): number[] => {
  const scenario = scenarioOf({
    aerodrome: northRunway({ elevationFt: 1000 }),
    weather: { temperatureC: 15 - 1.9812, qnhHpa: 1013.25 },
    start: { ias_kt: kt, height_ft: 1000 },
  });
  const pushed = beginFlight(scenario);
  const left = beginFlight(scenario);
  pushed.state[4] = pushed.state[4]! + mpsFromKt(0.5);
  const samples: number[] = [];
  for (let i = 0; i < seconds * 60; i += 1) {
    flyStep(pushed, handsOff);
    flyStep(left, handsOff);
    // The fast mode dies within two seconds
    if (i > 120) samples.push(pushed.seen.tasMps - left.seen.tasMps);
  }
  return samples;
};

describe('the phugoid as flown', () => {
  it.each([65, 70, 80, 100])("at %d kt is that of the model's own linearisation within 2 %", (kt) => {
    const [slow] = modesOf(sandpiper, levelAt(kt), ALTITUDE_M);
    const mode = measuredMode(flown(kt, 75), 1 / 60);
    trust('Phugoid period', 'own linearisation, ml-matrix', mode.periodS, slow!.periodS, '%');
    trust('Phugoid damping', 'own linearisation, ml-matrix', mode.damping, slow!.damping, '%');
    expectWithin(mode.periodS, near(slow!.periodS, 2, 'model.md'));
    expectWithin(mode.damping, near(slow!.damping, 2, 'model.md'));
  });

  it.each([65, 70, 75, 80])('at %d kt takes 18 to 30 s with a damping of .07 to .16', (kt) => {
    const [slow] = modesOf(sandpiper, levelAt(kt), ALTITUDE_M);
    expectWithin(slow!.periodS, { low: 18, high: 30, source: 'model.md, what must hold' });
    expectWithin(slow!.damping, { low: 0.07, high: 0.16, source: 'model.md, what must hold' });
  });

  it("at 100 kt is inside the training-device table's 30 to 60 s", () => {
    // 9b VERIFIED, 2.c.9.b: authorised range for a small single without flight data, in cruise; "not to half
    // amplitude in less than two cycles" the model does not keep (damping .15 halves in less than one): 6.3 and 6.4 say why
    const [slow] = modesOf(sandpiper, levelAt(100), ALTITUDE_M);
    expectWithin(slow!.periodS, { low: 30, high: 60, source: 'flight-figures 9b VERIFIED' });
  });

  it('stands apart from a well-damped short period', () => {
    const modes = modesOf(sandpiper, levelAt(80), ALTITUDE_M);
    const fast = modes.at(-1)!;
    expectWithin(fast.naturalRadps, { low: 2.5, high: 5, source: 'model.md: 3.3 to 4.0 rad/s' });
    expectWithin(fast.damping, about(0.61, 0.1, 'model.md'));
  });
});

/** Constant thrust (CT and CP without J), no thrust moment, no pitch damping, alpha held hard. */
const stiff: Changes = {
  pitch: { cmAlpha: -30, cmQ: -1e-6, cm0: 3, cmElevator: -30 },
  propeller: { thrustCoefficient: [0.0515, 0, 0], powerCoefficient: [0.05, 0, 0] },
  flap: { stages: sandpiper.flap.stages.map((stage) => ({ ...stage, thrustMoment: 0 })) },
};
const lanchester = variantOf(sandpiper, stiff);

/** Level at a true airspeed. */
const levelTrue = (tasKt: number) => {
  const sigma = columnDensityKgpm3(ISA, ALTITUDE_M) / RHO0_KGPM3;
  return levelAt(tasKt * Math.sqrt(sigma), lanchester);
};

const glider = variantOf(lanchester, {
  propeller: {
    thrustCoefficient: [0, 0, 0],
    powerCoefficient: [0.05, 0, 0],
    lowestThrustCoefficient: -1e-9,
  },
});
/** Weight over drag of the wing's own polar at a true airspeed: the angle of its glide without propeller. */
const liftToDragAt = (tasKt: number): number => {
  const sigma = columnDensityKgpm3(ISA, ALTITUDE_M) / RHO0_KGPM3;
  const glide = steadyAt(glider, tasKt * Math.sqrt(sigma), { altitudeM: ALTITUDE_M, throttle: 0 });
  return -1 / Math.tan(glide.flightPathRad);
};

describe('the phugoid in the limit of the closed form', () => {
  // 6.2 RECOMPUTED: T = sqrt(2) pi V / g, at these true airspeeds in kt
  it.each([
    [60, 13.98],
    [65, 15.15],
    [80, 18.64],
    [100, 23.31],
  ])('at %d kt takes %d s within 5 %', (kt, seconds) => {
    const steady = levelTrue(kt);
    const [slow] = modesOf(lanchester, steady, ALTITUDE_M, 0, false);
    const undamped = (2 * Math.PI) / slow!.naturalRadps;
    trust('Phugoid period, limit', 'Lanchester, 6.2 RECOMPUTED', undamped, seconds, '%');
    expectWithin(undamped, near(seconds, 5, 'Lanchester, flight-figures 6.2 RECOMPUTED'));
  });

  it.each([65, 80])('at %d kt is damped by the inverse of its lift over drag', (kt) => {
    // 6.3: zeta = 1 / (sqrt2 L/D), constant thrust and alpha
    const steady = levelTrue(kt);
    const liftToDrag = liftToDragAt(kt);
    const [slow] = modesOf(lanchester, steady, ALTITUDE_M, 0, false);
    trust('Phugoid damping, limit', '6.3 RECOMPUTED', slow!.damping, 1 / (Math.SQRT2 * liftToDrag), '%');
    expectWithin(slow!.damping, near(1 / (Math.SQRT2 * liftToDrag), 5, 'flight-figures 6.3'));
  });

  it('is a little quicker where the air thins upward', () => {
    // 6.6 RECOMPUTED: T / sqrt(1 + V^2 beta / 2g), 100 kt: 23.307 to 23.157 s, ratio .99356
    const steady = levelTrue(100);
    const [even] = modesOf(lanchester, steady, ALTITUDE_M, 0, false);
    const [thinning] = modesOf(lanchester, steady, ALTITUDE_M, 0, true);
    expectWithin(even!.naturalRadps / thinning!.naturalRadps, about(23.157 / 23.307, 0.0015, '6.6'));
    expect(thinning!.periodS).toBeLessThan(even!.periodS);
  });
});
