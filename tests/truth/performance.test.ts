// Drag, glide and climb against the closed forms of a parabolic polar (textbook formulae, worked out by hand) of the
// made-up aeroplane M: 1,000 kg, 16 m2, aspect ratio 7.5, e .75, CD0 .034. Its figures are ours, so they stand here.
import { describe, expect, it } from 'vitest';
import type { Aeroplane } from '../../src/aeroplane/schema.ts';
import { derivative } from '../../src/simulation/motion/forces.ts';
import { INTEGRATED, SEEN, SEEN_LENGTH } from '../../src/simulation/places.ts';
import { shapeOf } from '../../src/simulation/shape.ts';
import { degFromRad, fpmFromMps, mpsFromKt } from '../../src/units/conversions.ts';
import { STALL_BY_WEIGHT } from '../reference/turns.ts';
import { aeroplaneM, variantOf } from '../support/aeroplanes.ts';
import { integratedAt, nowAt, steadyAt } from '../support/airborne.ts';
import { expectWithin, near } from '../support/expect-within.ts';
import { meant } from '../support/trust-table.ts';

const POLAR = 'closed forms of a parabolic polar, aeroplane M';

/** M with a propeller that turns and does nothing: a glider with the polar of the table. */
const glider = variantOf(aeroplaneM(), {
  flap: { stages: aeroplaneM().flap.stages.map((stage) => ({ ...stage, maximumLiftCoefficient: 2.2 })) },
  propeller: {
    thrustCoefficient: [0, 0, 0],
    powerCoefficient: [0.05, 0, 0],
    lowestThrustCoefficient: -1e-9,
  },
});

/** kt, CL, CD, L/D, D (N), glide (deg), sink (ft/min). */
const TABLE = [
  [60, 1.0503, 0.09642, 10.892, 900.3, 5.245, 555],
  [65, 0.8949, 0.07932, 11.282, 869.2, 5.065, 581],
  [70, 0.7717, 0.0677, 11.399, 860.3, 5.014, 620],
  [80, 0.5908, 0.05375, 10.991, 892.2, 5.199, 734],
  [90, 0.4668, 0.04633, 10.075, 973.3, 5.668, 900],
  [100, 0.3781, 0.04209, 8.983, 1091.7, 6.352, 1120],
] as const;

const glideAt = (kt: number) => steadyAt(glider, kt, { throttle: 0 });

/** Aerodynamic forces of the model at a steady state. */
const forcesOf = (aeroplane: Aeroplane, kt: number): { lift: number; drag: number; q: number } => {
  const shape = shapeOf(aeroplane);
  const steady = steadyAt(aeroplane, kt, { throttle: 0 });
  const seen = new Float64Array(SEEN_LENGTH);
  derivative(shape, nowAt(shape, steady, 0), integratedAt(steady, 500), new Float64Array(INTEGRATED), seen);
  return {
    lift: seen[SEEN.lift]!,
    drag: seen[SEEN.drag]!,
    q: seen[SEEN.dynamicPressure]!,
  };
};

describe("made-up aeroplane M in the model's hands", () => {
  it.each(TABLE)(
    'at %d kt has the drag coefficient, drag and lift-to-drag ratio of its polar',
    (kt, cl, cd, ld, dragN) => {
      const { lift, drag, q } = forcesOf(glider, kt);
      // In the glide the wing carries W cos(path), 0.4 to 0.6 % less than the table's level W: compare at its own CL
      const found = drag / (q * 16);
      const own = lift / (q * 16);
      expectWithin(own, near(cl, 0.7, POLAR));
      const polar = 0.034 + 0.0565884 * own * own;
      expectWithin(found, near(polar, 0.001, POLAR));
      expectWithin(found, near(cd, 0.8, POLAR));
      expectWithin(lift / drag, near(ld, 0.5, POLAR));
      expectWithin(drag, near(dragN, 0.8, POLAR));
    },
  );

  it.each(TABLE)('glides at %d kt at the angle and sink of the table', (kt, _cl, _cd, _ld, _d, deg, fpm) => {
    const steady = glideAt(kt);
    const angle = -degFromRad(steady.flightPathRad);
    meant('Glide angle', POLAR, angle, deg, '%');
    // Level CL in the table; the glide's own, cos(path) smaller, leaves a few tenths of a per cent
    expectWithin(angle, near(deg, 0.5, POLAR));
    expectWithin(-fpmFromMps(steady.verticalSpeedMps), near(fpm, 0.6, POLAR));
  });

  it('glides furthest at 69.84 kt, 11.40 to 1, and sinks least at 0.7598 of that speed', () => {
    const speeds = Array.from({ length: 401 }, (_, i) => 45 + i * 0.1);
    const at = speeds.map((kt) => ({ kt, ...glideAt(kt) }));
    const flattest = at.reduce((a, b) => (b.flightPathRad > a.flightPathRad ? b : a));
    const slowest = at.reduce((a, b) => (b.verticalSpeedMps > a.verticalSpeedMps ? b : a));
    // The table's speeds are small-angle: cos(path) lowers the first by 1/4 and the second by 3/4 of a per cent
    expectWithin(flattest.kt, near(69.843, 0.5, POLAR));
    expectWithin(-1 / Math.tan(flattest.flightPathRad), near(11.399, 0.1, POLAR));
    expectWithin(slowest.kt, near(53.069, 1, POLAR));
    expectWithin(-fpmFromMps(slowest.verticalSpeedMps), near(544.4, 1, POLAR));
    meant('Speed of best glide', POLAR, flattest.kt, 69.843, 'kt');
  });

  it('climbs 884 ft/min at 70 kt with 75 kW of thrust power', () => {
    // Constant thrust: CT and CP without J. T = CT / CP * 2 pi Q / D, Q rated. Lift at no angle of attack, so that
    // the thrust lies along the path.
    const wantedN = 75000 / mpsFromKt(70);
    const cp = 0.05;
    const torqueNm = 103500 / (2 * Math.PI * 45);
    const ct = (wantedN * cp * 1.9) / (2 * Math.PI * torqueNm);
    const climber = variantOf(aeroplaneM(), {
      lift: { zeroAlpha: 0.7717 },
      propeller: { thrustCoefficient: [ct, 0, 0], powerCoefficient: [cp, 0, 0] },
    });
    const steady = steadyAt(climber, 70, { throttle: 1 });
    meant('Rate of climb', POLAR, fpmFromMps(steady.verticalSpeedMps), 883.6, '%');
    expectWithin(fpmFromMps(steady.verticalSpeedMps), near(883.6, 0.7, POLAR));
    expectWithin(degFromRad(steady.flightPathRad), near(7.16, 0.7, POLAR));
  });
});

describe('stalling speed', () => {
  // Vs = sqrt(2 W / (rho0 S CLmax)) goes with the square root of the weight
  it.each(STALL_BY_WEIGHT.rows)('at %d of the weight is %d of the speed', (weight, speed) => {
    const slowest = (massKg: number): number => {
      let kt = 70;
      while (kt > 30) {
        try {
          steadyAt(glider, kt - 0.02, { throttle: 0 }, massKg);
        } catch {
          break;
        }
        kt -= 0.02;
      }
      return kt;
    };
    const full = slowest(1000);
    meant('Stalling speed by weight', STALL_BY_WEIGHT.source, slowest(1000 * weight) / full, speed, '%');
    expectWithin(slowest(1000 * weight) / full, near(speed, 0.2, STALL_BY_WEIGHT.source));
    expect(full).toBeGreaterThan(40);
  });
});
