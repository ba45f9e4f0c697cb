// Trim: closed forms at constant angle of attack (textbook), and the signs of a table for training devices.
import { describe, expect, it } from 'vitest';
import type { Aeroplane } from '../../src/aeroplane/schema.ts';
import type { SteadyRequest } from '../../src/simulation/performance/steady.ts';
import { radFromDeg } from '../../src/units/conversions.ts';
import { DEVICE_SIGNS, TRIM_SPEED_DOWN } from '../reference/longitudinal.ts';
import { aeroplaneNamed, everyAeroplane, variantOf } from '../support/aeroplanes.ts';
import { steadyAt } from '../support/airborne.ts';
import { about, expectWithin, near } from '../support/expect-within.ts';
import { meant } from '../support/trust-table.ts';

const CLOSED = 'trim at constant angle of attack, closed form';
const AEROPLANES = everyAeroplane().map((a) => [a.id, a] as const);
type Asked = Omit<Partial<SteadyRequest>, 'iasMps'>;

/** Speed that a given elevator holds, found by halving: further up (negative) is slower. */
const speedKtAt = (aeroplane: Aeroplane, elevatorRad: number, asked: Asked, massKg?: number): number => {
  let [low, high] = [52, 140];
  for (let i = 0; i < 40; i += 1) {
    const kt = (low + high) / 2;
    if (steadyAt(aeroplane, kt, asked, massKg).elevatorRad < elevatorRad) low = kt;
    else high = kt;
  }
  return (low + high) / 2;
};

/** Constant alpha for a given elevator: no pitch damping, no thrust moment. Lift at little pitch: thrust along the path. */
const sandpiper = aeroplaneNamed('sandpiper');
const constantAlpha = variantOf(sandpiper, {
  lift: { zeroAlpha: 0.6 },
  pitch: { cmQ: -1e-9 },
  engine: { powerKw: 200 },
  flap: { stages: sandpiper.flap.stages.map((stage) => ({ ...stage, thrustMoment: 0 })) },
});

describe('a speed held by trim alone', () => {
  const level = steadyAt(constantAlpha, 75, { flightPathRad: 0 });

  const [[pathDeg, slower]] = TRIM_SPEED_DOWN.rows;
  it('hardly changes when power changes the path', () => {
    const down = speedKtAt(constantAlpha, level.elevatorRad, { flightPathRad: radFromDeg(pathDeg) });
    meant('Trim speed, 5 degrees down', TRIM_SPEED_DOWN.source, down / 75, slower, '%');
    expectWithin(down / 75, about(slower, 0.004, TRIM_SPEED_DOWN.source));
  });

  // With the square root of the weight
  it.each([0.8, 0.9, 1.1])('at %d of the weight goes with its root', (weight) => {
    const kt = speedKtAt(constantAlpha, level.elevatorRad, { flightPathRad: 0 }, 1050 * weight);
    meant('Trim speed by weight', CLOSED, kt / 75, Math.sqrt(weight), '%');
    expectWithin(kt / 75, near(Math.sqrt(weight), 0.5, CLOSED));
  });

  // n = 1/cos(bank), V goes with its root; 60 degrees: 1.4142
  it.each([30, 45, 60])('in a level turn at %d degrees goes with the root of the load', (bankDeg) => {
    const kt = speedKtAt(constantAlpha, level.elevatorRad, {
      flightPathRad: 0,
      bankRad: radFromDeg(bankDeg),
    });
    const root = 1 / Math.sqrt(Math.cos((bankDeg * Math.PI) / 180));
    meant('Trim speed in a level turn', CLOSED, kt / 75, root, '%');
    expectWithin(kt / 75, near(root, 0.7, CLOSED));
  });

  // V2/V1 = sqrt(CL1/CL2). CL2 by hand: the flap's moment and the tail's balance at another alpha
  it.each([1, 2, 3])('with flap stage %d goes with the inverse root of the lift coefficient', (stage) => {
    const { deg, liftCoefficient, pitchingMoment } = constantAlpha.flap.stages[stage]!;
    const qS = 0.5 * 1.225 * (75 * 0.514444) ** 2 * 16;
    const cl1 = (1050 * 9.80665) / qS;
    const cl2 = cl1 + liftCoefficient + 4.8 * (pitchingMoment / 0.75);
    const kt = speedKtAt(constantAlpha, level.elevatorRad, { flightPathRad: 0, flapDeg: deg });
    meant('Trim speed with flap', CLOSED, kt / 75, Math.sqrt(cl1 / cl2), '%');
    expectWithin(kt / 75, near(Math.sqrt(cl1 / cl2), 1, CLOSED));
  });
});

describe.each(AEROPLANES)('%s asks the hand for', (_id, aeroplane) => {
  const { downwindKt, baseKt } = aeroplane.speeds;
  const cruise = steadyAt(aeroplane, downwindKt, { flightPathRad: 0 });

  // Trailing edge up, negative, is a pull
  const signOf = (change: (typeof DEVICE_SIGNS.rows)[number][0]): number =>
    DEVICE_SIGNS.rows.find(([what]) => what === change)![1] === 'pull' ? -1 : 1;

  it('a pull when power goes to idle at a held speed', () => {
    const idle = steadyAt(aeroplane, downwindKt, { throttle: 0 });
    expect(Math.sign(idle.elevatorRad - cruise.elevatorRad)).toBe(signOf('power to idle'));
  });

  it('a push when power goes to full at a held speed', () => {
    const full = steadyAt(aeroplane, downwindKt, { throttle: 1 });
    expect(Math.sign(full.elevatorRad - cruise.elevatorRad)).toBe(signOf('power to full'));
  });

  it('a push with the next flap stage under a high wing, a pull over a low one', () => {
    // Published for an aeroplane whose flap pitches down, our low wings; the high wing's push is common practice
    const stages = aeroplane.flap.stages;
    expect(stages.length).toBeGreaterThan(1);
    for (let i = 1; i < stages.length; i += 1) {
      const kt = Math.min(baseKt, stages[i]!.limitKt);
      const before = steadyAt(aeroplane, kt, { flightPathRad: 0, flapDeg: stages[i - 1]!.deg });
      const after = steadyAt(aeroplane, kt, { flightPathRad: 0, flapDeg: stages[i]!.deg });
      const push = after.elevatorRad - before.elevatorRad;
      expect(Math.sign(push)).toBe(aeroplane.wing.position === 'high' ? 1 : signOf('flap out, low wing'));
    }
  });

  it('more pull the slower it flies: speed is held by the stick', () => {
    let before = -Infinity;
    for (let kt = aeroplane.speeds.bestAngleKt; kt <= aeroplane.limits.vnoKt; kt += 5) {
      // A governed propeller turns as it is told, so its power is told by the path
      const power = aeroplane.equipment.propellerLever ? { flightPathRad: radFromDeg(-3) } : { revps: 35 };
      const { elevatorRad } = steadyAt(aeroplane, kt, power);
      expect(elevatorRad).toBeGreaterThan(before);
      before = elevatorRad;
    }
  });

  it('no more than the trim wheel carries on each leg of the circuit', () => {
    const { speeds, plan, flap } = aeroplane;
    const deg = (stage: number): number => flap.stages[stage]!.deg;
    const legs: [number, Asked][] = [
      [speeds.climbKt, { throttle: 1 }],
      [speeds.downwindKt, { flightPathRad: 0, flapDeg: deg(plan.downwindStage) }],
      [speeds.baseKt, { revps: plan.baseRpm / 60, flapDeg: deg(plan.baseStage) }],
      [speeds.finalKt, { flightPathRad: radFromDeg(-3), flapDeg: deg(plan.finalStage) }],
      [speeds.finalFullFlapKt, { flightPathRad: radFromDeg(-3), flapDeg: deg(plan.landingStage) }],
      [speeds.glideKt, { throttle: 0 }],
    ];
    for (const [kt, asked] of legs) {
      const { trim } = steadyAt(aeroplane, kt, asked);
      expectWithin(trim, { low: -1, high: 1, source: 'common practice' });
    }
  });
});
