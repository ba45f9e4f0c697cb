import { describe, expect, test } from 'vitest';
import { acrossM, alongM, endNames, groundHeightM, runwayInUse } from '../../../src/aerodrome/runway.ts';
import { planCircuit } from '../../../src/circuit/plan.ts';
import type { CircuitPlan } from '../../../src/circuit/types.ts';
import { CIRCUIT_LEGS } from '../../../src/circuit/types.ts';
import { shapeOf } from '../../../src/simulation/shape.ts';
import { wrapPi } from '../../../src/units/angles.ts';
import {
  degFromRad,
  ftFromM,
  ktFromMps,
  mFromNmi,
  radFromDeg,
  rpmFromRevps,
} from '../../../src/units/conversions.ts';
import { aerodromeFiles, aerodromeNamed } from '../../support/aerodromes.ts';
import { aeroplaneNamed, plannedCircuit, standardWeather } from '../../support/circuits.ts';

const everyEnd = aerodromeFiles().flatMap((name) => {
  const id = name.replace('.json', '');
  return endNames(aerodromeNamed(id)).map((designator) => [id, designator] as const);
});

const WINDS = [
  { windFromDegM: 0, windKt: 0 },
  { windFromDegM: 70, windKt: 14 },
  { windFromDegM: 220, windKt: 20, gustKt: 30 },
  { windFromDegM: 310, windKt: 25 },
];

const along = (plan: CircuitPlan, p: { eastM: number; northM: number }) =>
  alongM(plan.runway, p.eastM, p.northM);
/** + towards the circuit. */
const out = (plan: CircuitPlan, p: { eastM: number; northM: number }) =>
  plan.side * acrossM(plan.runway, p.eastM, p.northM);

describe.each(everyEnd)('the circuit at %s runway %s', (id, designator) => {
  const plans = WINDS.map((wind) => plannedCircuit(id, designator, wind));

  test('is one line from standstill to standstill on the surface, without gaps, above the ground', () => {
    for (const plan of plans) {
      const { path, runway } = plan;
      expect(path[0]!.distanceM).toBe(0);
      expect(path[0]!.leg).toBe('take-off-roll');
      expect(path.at(-1)!.leg).toBe('landing-roll');
      expect(along(plan, path.at(-1)!)).toBeLessThanOrEqual(runway.surfaceEndM + 1e-6);
      for (let i = 1; i < path.length; i += 1) {
        const stepM = path[i]!.distanceM - path[i - 1]!.distanceM;
        expect(stepM).toBeGreaterThan(0);
        // A second of flight with 25 kt behind it is under 75 m.
        expect(stepM).toBeLessThan(75);
        const ground = groundHeightM(runway, along(plan, path[i]!));
        expect(path[i]!.heightM).toBeGreaterThan(ground - 0.5);
      }
    }
  });

  test('joins every leg to the turns before and after it', () => {
    for (const { legs, turns } of plans) {
      const joints = [
        [legs.upwind.to, turns.crosswind.from],
        [turns.crosswind.to, legs.crosswind.from],
        [legs.crosswind.to, turns.downwind.from],
        [turns.downwind.to, legs.downwind.from],
        [legs.downwind.to, turns.base.from],
        [turns.base.to, legs.base.from],
        [legs.base.to, turns.final.from],
        [turns.final.to, legs.final.from],
      ] as const;
      for (const [a, b] of joints) {
        expect(Math.hypot(a.eastM - b.eastM, a.northM - b.northM)).toBeLessThan(0.5);
        expect(Math.abs(a.heightM - b.heightM)).toBeLessThan(1);
      }
    }
  });

  test('flies its legs square to the runway over the ground, on the side of the circuit', () => {
    let straight = 0;
    for (const plan of plans) {
      CIRCUIT_LEGS.forEach((leg, quarter) => {
        const { trackRadT, from, to } = plan.legs[leg];
        const square = plan.runway.headingRadT + plan.side * quarter * (Math.PI / 2);
        expect(Math.abs(wrapPi(trackRadT - square))).toBeLessThan(1e-9);
        // Turns that meet without a straight between them leave no bearing to take.
        if (plan.legs[leg].lengthM < 5) return;
        straight += 1;
        const bearing = Math.atan2(to.eastM - from.eastM, to.northM - from.northM);
        expect(Math.abs(wrapPi(bearing - square))).toBeLessThan(0.02);
      });
      expect(out(plan, plan.legs.downwind.from)).toBeCloseTo(plan.spacingM, 0);
      expect(out(plan, plan.legs.downwind.to)).toBeCloseTo(plan.spacingM, 6);
    }
    expect(straight).toBeGreaterThanOrEqual(plans.length * CIRCUIT_LEGS.length - 1);
  });

  test('rolls out of the final turn on the centreline, at least a quarter mile before the runway (AIM fig. 4-3-2)', () => {
    for (const plan of plans) {
      expect(Math.abs(out(plan, plan.turns.final.to))).toBeLessThan(1);
      // A quarter of a statute mile is 402 m.
      expect(along(plan, plan.turns.final.to)).toBeLessThan(-402);
      expect(plan.turns.final.bankRad).toBeLessThanOrEqual(radFromDeg(30));
    }
  });

  test('keeps heading, drift, groundspeed and wind of a leg in agreement', () => {
    for (const plan of plans)
      for (const leg of CIRCUIT_LEGS) {
        const l = plan.legs[leg];
        expect(l.driftRad).toBeCloseTo(wrapPi(l.trackRadT - l.headingRadT), 9);
        // The air's velocity plus the wind is the velocity over the ground.
        expect(l.tasMps * Math.cos(l.driftRad) + l.tailwindMps).toBeCloseTo(l.groundspeedMps, 6);
        expect(l.tasMps * Math.sin(l.driftRad)).toBeCloseTo(l.crosswindMps, 6);
        expect(l.seconds).toBeCloseTo(l.lengthM / l.groundspeedMps, 9);
      }
  });

  test('does not turn crosswind below the height laid down, nor before the end of the surface', () => {
    const aerodrome = aerodromeNamed(id);
    for (const plan of plans) {
      const { from } = plan.turns.crosswind;
      expect(ftFromM(from.heightM)).toBeGreaterThan(aerodrome.circuit.crosswindTurnFt - 1);
      expect(along(plan, from)).toBeGreaterThanOrEqual(plan.runway.surfaceEndM - 1e-6);
    }
  });
});

describe('a circuit plan', () => {
  test('of the first-run demonstration comes down on the lights: two and two all the way', () => {
    const plan = plannedCircuit('curlew-sands', '22');
    expect(plan.lightsOnFinal?.map((stretch) => stretch.letters)).toEqual(['WWRR']);
    expect(plan.conflict).toBeNull();
    expect(plan.notes).toEqual([]);
  });

  test.each(everyEnd)(
    'as the aerodrome %s, runway %s, has it comes down as it asks, without conflict',
    (id, end) => {
      const plan = plannedCircuit(id, end);
      expect(plan.conflict).toBeNull();
      expect(plan.approachRad).toBeCloseTo(plan.askedApproachRad, 9);
      // The day is standard at the file's first threshold: at the other it is off by its few feet of slope.
      expect(Math.abs(ftFromM(plan.heightM) - 1000)).toBeLessThan(0.5);
    },
  );

  test('of a warm day lies higher than the altimeter reads', () => {
    // About 4 % for 10 degrees (common practice; the altimeter of air.test.ts is exact).
    const warm = ftFromM(plannedCircuit('curlew-sands', '22', { temperatureC: 25 }).heightM);
    expect(warm).toBeGreaterThan(1030);
    expect(warm).toBeLessThan(1045);
  });

  test('of a left-hand and a right-hand circuit in mirrored winds are mirror images', () => {
    const aerodrome = aerodromeNamed('curlew-sands');
    const aeroplane = aeroplaneNamed('sandpiper');
    const runway = runwayInUse(aerodrome, '22');
    const on = (circuitSide: 1 | -1, windFromDegM: number) => {
      const weather = standardWeather(aerodrome, { windFromDegM, windKt: 15 });
      return planCircuit(shapeOf(aeroplane), aeroplane, aerodrome, { ...runway, circuitSide }, weather);
    };
    const left = on(-1, 250);
    const mirrored = on(1, 190);
    for (const leg of CIRCUIT_LEGS) {
      expect(mirrored.legs[leg].groundspeedMps).toBeCloseTo(left.legs[leg].groundspeedMps, 9);
      expect(mirrored.legs[leg].driftRad).toBeCloseTo(-left.legs[leg].driftRad, 9);
      // A turn may take one integration step more on one side, by rounding: a tenth of a millimetre.
      expect(mirrored.legs[leg].lengthM).toBeCloseTo(left.legs[leg].lengthM, 3);
      expect(acrossM(runway, mirrored.legs[leg].to.eastM, mirrored.legs[leg].to.northM)).toBeCloseTo(
        -acrossM(runway, left.legs[leg].to.eastM, left.legs[leg].to.northM),
        3,
      );
    }
  });

  test('has the powers of the trade: base near 1,800 rpm, final on 3 degrees 1,500 to 1,950, full on the climb', () => {
    // Bands of the model's table "what must hold" (common practice).
    const plan = plannedCircuit('curlew-sands', '22');
    const rpm = (leg: keyof CircuitPlan['legs']) => rpmFromRevps(plan.legs[leg].steady.revps);
    expect(rpm('downwind')).toBeGreaterThan(2050);
    expect(rpm('downwind')).toBeLessThan(2450);
    expect(rpm('final')).toBeGreaterThan(1500);
    expect(rpm('final')).toBeLessThan(1950);
    expect(plan.legs.upwind.steady.throttle).toBe(1);
    // Level to the base turn at 1.0 NM, 4.5 degrees: base sinks 400 to 650 ft/min near 1,800 rpm.
    const level = plannedCircuit(
      'curlew-sands',
      '22',
      {},
      { descentFrom: 'base-turn', approachRad: radFromDeg(4.5) },
    );
    const sinkFpm = (-level.legs.base.verticalSpeedMps / 0.3048) * 60;
    expect(sinkFpm).toBeGreaterThan(400);
    expect(sinkFpm).toBeLessThan(650);
    expect(Math.abs(rpmFromRevps(level.legs.base.steady.revps) - 1800)).toBeLessThan(100);
  });

  test('level to the base turn at 1.0 to 1.2 NM completes the final turn at 450 to 600 ft (common practice)', () => {
    for (const spacingNmi of [1.0, 1.1, 1.2]) {
      const options = {
        spacingM: mFromNmi(spacingNmi),
        descentFrom: 'base-turn',
        approachRad: radFromDeg(4),
      } as const;
      const ft = ftFromM(plannedCircuit('curlew-sands', '22', {}, options).rollOutOnFinalHeightM);
      expect(ft).toBeGreaterThan(450);
      expect(ft).toBeLessThan(600);
    }
  });

  test('adds half the gust to the approach speed (FAA-H-8083-3C p. 9-20)', () => {
    const plan = plannedCircuit('curlew-sands', '22', { windFromDegM: 220, windKt: 20, gustKt: 30 });
    expect(ktFromMps(plan.gustAdditionMps)).toBeCloseTo(5, 9);
    expect(ktFromMps(plan.approachIasMps)).toBeCloseTo(70, 9);
    expect(plan.legs.final.iasMps).toBe(plan.approachIasMps);
  });

  test('climbs less steeply at the high aerodrome, in faster and wider turns', () => {
    const low = plannedCircuit('curlew-sands', '22');
    const high = plannedCircuit('ptarmigan-flat', '16');
    expect(high.legs.upwind.verticalSpeedMps).toBeLessThan(0.75 * low.legs.upwind.verticalSpeedMps);
    expect(high.legs.downwind.tasMps).toBeGreaterThan(1.06 * low.legs.downwind.tasMps);
    expect(high.takeOffRunM).toBeGreaterThan(1.3 * low.takeOffRunM);
  });

  test('of a long final keeps the slope and moves the base turn out', () => {
    const plan = plannedCircuit('curlew-sands', '22', {}, { finalFromAimM: mFromNmi(2.5) });
    expect(degFromRad(plan.approachRad)).toBeCloseTo(3, 6);
    expect(plan.runway.aimM - along(plan, plan.legs.final.from)).toBeCloseTo(mFromNmi(2.5), 0);
  });

  test('of a final that begins below the slope stays level until it meets it', () => {
    const plan = plannedCircuit('curlew-sands', '22', {}, { finalFromAimM: mFromNmi(3.6) });
    const { change } = plan.legs.final;
    expect(ftFromM(plan.legs.final.from.heightM)).toBeCloseTo(1000, 3);
    expect(change).not.toBeNull();
    expect(plan.legs.final.verticalSpeedMps).toBe(0);
    // 1,000 ft and the eye 1.9 m above the wheels are 3.16 NM from the aim point on 3 degrees.
    const fromAimM = plan.runway.aimM - along(plan, change!.at);
    expect(fromAimM / 1852).toBeCloseTo((304.8 + 1.9) / Math.tan(radFromDeg(3)) / 1852, 2);
  });

  test('too tight for the wind takes more bank, then more room, and says so', () => {
    const tight = plannedCircuit('curlew-sands', '22', {}, { spacingM: mFromNmi(0.5) });
    expect(tight.notes.join()).toMatch(/30 degrees of bank, 25 onto final, for 0\.50 NM/);
    const blown = plannedCircuit(
      'curlew-sands',
      '22',
      { windFromDegM: 130, windKt: 25 },
      { spacingM: mFromNmi(0.5) },
    );
    expect(blown.spacingM).toBeGreaterThan(mFromNmi(0.5));
    expect(blown.notes.join()).toMatch(
      /do not fit into 0\.50 NM in this wind: the circuit is planned 0\.\d\d NM wide/,
    );
  });
});
