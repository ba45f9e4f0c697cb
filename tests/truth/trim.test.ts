// Trim: flight-figures 6.9, 6.10 (closed forms, RECOMPUTED) and the signs of 6.14 (FAA Level 5 FTD table, VERIFIED).
import { describe, expect, it } from 'vitest';
import type { Aeroplane } from '../../src/aeroplane/schema.ts';
import type { SteadyRequest } from '../../src/simulation/performance/steady.ts';
import { radFromDeg } from '../../src/units/conversions.ts';
import { aeroplaneNamed, everyAeroplane, variantOf } from '../support/aeroplanes.ts';
import { steadyAt } from '../support/airborne.ts';
import { about, expectWithin, near } from '../support/expect-within.ts';
import { trust } from '../support/trust-table.ts';

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

  // 6.9 RECOMPUTED: V2/V1 = sqrt(cos g2 / cos g1); 5 degrees down .9981
  it('hardly changes when power changes the path', () => {
    const down = speedKtAt(constantAlpha, level.elevatorRad, { flightPathRad: radFromDeg(-5) });
    trust('Trim speed, 5 degrees down', '6.9 RECOMPUTED', down / 75, 0.9981, '%');
    expectWithin(down / 75, about(0.9981, 0.004, 'flight-figures 6.9'));
  });

  // 6.10: with the square root of the weight
  it.each([0.8, 0.9, 1.1])('at %d of the weight goes with its root', (weight) => {
    const kt = speedKtAt(constantAlpha, level.elevatorRad, { flightPathRad: 0 }, 1050 * weight);
    trust('Trim speed by weight', '6.10 RECOMPUTED', kt / 75, Math.sqrt(weight), '%');
    expectWithin(kt / 75, near(Math.sqrt(weight), 0.5, 'flight-figures 6.10'));
  });

  // 6.10: n = 1/cos(bank), V goes with its root; 60 degrees: 1.4142
  it.each([30, 45, 60])('in a level turn at %d degrees goes with the root of the load', (bankDeg) => {
    const kt = speedKtAt(constantAlpha, level.elevatorRad, {
      flightPathRad: 0,
      bankRad: radFromDeg(bankDeg),
    });
    const root = 1 / Math.sqrt(Math.cos((bankDeg * Math.PI) / 180));
    trust('Trim speed in a level turn', '6.10 RECOMPUTED', kt / 75, root, '%');
    expectWithin(kt / 75, near(root, 0.7, 'flight-figures 6.10'));
  });

  // 6.10: V2/V1 = sqrt(CL1/CL2). CL2 by hand: the flap's moment and the tail's balance at another alpha
  it.each([1, 2, 3])('with flap stage %d goes with the inverse root of the lift coefficient', (stage) => {
    const { deg, liftCoefficient, pitchingMoment } = constantAlpha.flap.stages[stage]!;
    const qS = 0.5 * 1.225 * (75 * 0.514444) ** 2 * 16;
    const cl1 = (1050 * 9.80665) / qS;
    const cl2 = cl1 + liftCoefficient + 4.8 * (pitchingMoment / 0.75);
    const kt = speedKtAt(constantAlpha, level.elevatorRad, { flightPathRad: 0, flapDeg: deg });
    trust('Trim speed with flap', '6.10 RECOMPUTED', kt / 75, Math.sqrt(cl1 / cl2), '%');
    expectWithin(kt / 75, near(Math.sqrt(cl1 / cl2), 1, 'flight-figures 6.10'));
  });
});

describe.each(AEROPLANES)('%s asks the hand for', (_id, aeroplane) => {
  const { downwindKt, baseKt } = aeroplane.speeds;
  const cruise = steadyAt(aeroplane, downwindKt, { flightPathRad: 0 });

  // 6.14 VERIFIED. Trailing edge up, negative, is a pull.
  it('a pull when power goes to idle at a held speed', () => {
    expect(steadyAt(aeroplane, downwindKt, { throttle: 0 }).elevatorRad).toBeLessThan(cruise.elevatorRad);
  });

  it('a push when power goes to full at a held speed', () => {
    expect(steadyAt(aeroplane, downwindKt, { throttle: 1 }).elevatorRad).toBeGreaterThan(cruise.elevatorRad);
  });

  it('a push with the next flap stage under a high wing, a pull over a low one', () => {
    // 6.14 VERIFIED for the low wing; the high wing's push is common practice (note to 6.14)
    const stages = aeroplane.flap.stages;
    for (let i = 1; i < stages.length; i += 1) {
      const kt = Math.min(baseKt, stages[i]!.limitKt);
      const before = steadyAt(aeroplane, kt, { flightPathRad: 0, flapDeg: stages[i - 1]!.deg });
      const after = steadyAt(aeroplane, kt, { flightPathRad: 0, flapDeg: stages[i]!.deg });
      const push = after.elevatorRad - before.elevatorRad;
      expect(Math.sign(push)).toBe(aeroplane.wing.position === 'high' ? 1 : -1);
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
