// Engine and propeller: power with height, the bound of momentum theory, response, and what must hold of any propeller.
import { describe, expect, it } from 'vitest';
import { isaDensityKgpm3, RHO0_KGPM3 } from '../../src/atmosphere/isa.ts';
import { engineShare } from '../../src/simulation/engine/engine.ts';
import { propellerAt } from '../../src/simulation/engine/propeller.ts';
import { shapeOf } from '../../src/simulation/shape.ts';
import { AT } from '../../src/simulation/state.ts';
import { mFromFt, mpsFromKt, rpmFromRevps } from '../../src/units/conversions.ts';
import { ACTUATOR_DISK, POWER_BY_HEIGHT } from '../reference/engine.ts';
import { DEVICE_POWER } from '../reference/longitudinal.ts';
import { everyAeroplane } from '../support/aeroplanes.ts';
import { steadyAt } from '../support/airborne.ts';
import { about, expectWithin, near } from '../support/expect-within.ts';
import { beginFlight, fly, scenarioOf } from '../support/flight.ts';
import { meant, trust } from '../support/trust-table.ts';

/** Rankine and Froude: most thrust that a disk can draw from a power, T(V + v) = P with T = 2 rho A (V + v) v. */
const idealThrustN = (density: number, areaM2: number, speedMps: number, powerW: number): number => {
  let low = 0;
  let high = 1e5;
  for (let i = 0; i < 200; i += 1) {
    const t = (low + high) / 2;
    const v = (-speedMps + Math.sqrt(speedMps * speedMps + (2 * t) / (density * areaM2))) / 2;
    if (t * (speedMps + v) > powerW) high = t;
    else low = t;
  }
  return (low + high) / 2;
};

const DISK_M2 = (Math.PI * 1.9 * 1.9) / 4;

describe('the actuator disk used here', () => {
  it.each(ACTUATOR_DISK.rows)('at %d kt gives %d N from 100 kW', (kt, thrustN) => {
    expectWithin(
      idealThrustN(1.225, DISK_M2, mpsFromKt(kt), 100000),
      about(thrustN, 0.06, ACTUATOR_DISK.source),
    );
  });
});

describe.each(everyAeroplane().map((a) => [a.id, a] as const))('the propeller of %s', (_id, aeroplane) => {
  const shape = shapeOf(aeroplane);
  const areaM2 = (Math.PI * shape.diameterM * shape.diameterM) / 4;
  // A fixed propeller does not ask for its blade angle
  const steps = shape.governed ? [0, 0.25, 0.5, 0.75, 1] : [0];
  const blades = steps.map((t) => shape.fineRad + t * (shape.coarseRad - shape.fineRad));
  const powerW = (density: number, revps: number, v: number, blade: number): number =>
    2 * Math.PI * revps * propellerAt(shape, density, revps, v, blade).torqueNm;
  const thrustN = (density: number, revps: number, v: number, blade: number): number =>
    propellerAt(shape, density, revps, v, blade).thrustN;

  it('never pulls harder than an actuator disk on the same power', () => {
    let closest = 0;
    let pulling = 0;
    const look = (density: number, rpm: number, kt: number, blade: number): void => {
      const v = mpsFromKt(kt);
      const thrust = thrustN(density, rpm / 60, v, blade);
      if (thrust <= 0) return;
      pulling += 1;
      const ideal = idealThrustN(density, areaM2, v, powerW(density, rpm / 60, v, blade));
      closest = Math.max(closest, thrust / ideal);
      if (thrust > ideal) expect.fail(`${rpm} rpm, ${kt} kt: ${thrust} N above the disk's ${ideal} N`);
    };
    for (const blade of blades)
      for (const density of [1.225, 1.056, 0.9])
        for (let rpm = 300; rpm <= 3000; rpm += 75)
          for (let kt = 0; kt <= 160; kt += 2.5) look(density, rpm, kt, blade);
    meant('Most thrust, of the actuator disk (never above)', ACTUATOR_DISK.source, closest, 1, '%');
    // At the rest it windmills; the next test is theirs
    expect(pulling).toBeGreaterThan(3000);
    expect(closest).toBeGreaterThan(0.5);
    expect(closest).toBeLessThan(1);
  });

  it('never takes more power out of the air, windmilling, than its drag gives away', () => {
    const look = (rpm: number, kt: number, blade: number): void => {
      const v = mpsFromKt(kt);
      const power = powerW(1.225, rpm / 60, v, blade);
      const spent = thrustN(1.225, rpm / 60, v, blade) * v;
      // P >= T V, the first law; a negative P is power taken out of the air
      if (power < spent - 1e-9) expect.fail(`${rpm} rpm, ${kt} kt: ${power} W from ${spent} W`);
    };
    for (const blade of blades)
      for (let rpm = 30; rpm <= 3000; rpm += 30) for (let kt = 0; kt <= 170; kt += 2.5) look(rpm, kt, blade);
    expect(powerW(1.225, 10, 40, shape.fineRad)).toBeLessThan(0);
  });

  it('drags no less windmilling slowly than stopped', () => {
    for (const blade of blades)
      for (let kt = 30; kt <= 140; kt += 10)
        expect(-thrustN(1.225, 0.5, mpsFromKt(kt), blade)).toBeGreaterThanOrEqual(
          -thrustN(1.225, 0, mpsFromKt(kt), blade) * (1 - 1e-12),
        );
  });

  const { propeller } = aeroplane;
  const atFullThrottle = (kt: number) => steadyAt(aeroplane, kt, { throttle: 1 });
  if (propeller.kind === 'constant-speed')
    it('turns as fast as it is governed, however fast it flies, on coarser and coarser blades', () => {
      for (const kt of [70, 80, 90, 100]) {
        expect(atFullThrottle(kt).revps).toBeCloseTo(shape.ratedRevps, 9);
        expect(atFullThrottle(kt).bladeRad).toBeGreaterThan(atFullThrottle(kt - 10).bladeRad);
      }
    });
  else
    it('turns faster the faster it flies at fixed throttle, as its power coefficient says', () => {
      // n2/n1 = sqrt(CP1/CP2) at equal torque
      const cp = (j: number): number => {
        const [c0, c1, c2] = propeller.powerCoefficient;
        return c0 + c1 * j + c2 * j * j;
      };
      const at = [60, 70, 80, 90, 100].map((kt) => {
        const { revps, tasMps, alphaRad } = atFullThrottle(kt);
        return { revps, j: (tasMps * Math.cos(alphaRad)) / (revps * aeroplane.propeller.diameterM) };
      });
      for (let i = 1; i < at.length; i += 1) {
        const [slow, fast] = [at[i - 1]!, at[i]!];
        expect(fast.revps).toBeGreaterThan(slow.revps);
        expectWithin(
          fast.revps / slow.revps,
          near(Math.sqrt(cp(slow.j) / cp(fast.j)), 0.001, 'equal torque'),
        );
      }
    });

  it('goes from idle to full power in two to four seconds', () => {
    const flight = beginFlight(scenarioOf({ aeroplane }));
    fly(flight, 10, (_, c) => {
      c.brake = 1;
    });
    const idle = rpmFromRevps(flight.seen.engineRevps);
    fly(flight, 15, (_, c) => {
      c.throttle = 1;
      c.brake = 1;
    });
    const full = rpmFromRevps(flight.seen.engineRevps);
    const powerAt = (rpm: number): number => (rpm / full) ** 3;
    fly(flight, 20, (_, c) => {
      c.throttle = 0;
    });
    expectWithin(rpmFromRevps(flight.seen.engineRevps), about(idle, 30, 'it came from there'));
    const start = flight.seen.timeS;
    fly(
      flight,
      20,
      (_, c) => {
        c.throttle = 1;
      },
      (seen) => powerAt(rpmFromRevps(seen.engineRevps)) > 0.95,
    );
    const [[low, high]] = DEVICE_POWER.rows;
    const tookS = flight.seen.timeS - start;
    const nearest = Math.min(high, Math.max(low, tookS));
    // Until 95 % of take-off power
    trust('Idle to take-off power, outside 2 to 4 s', DEVICE_POWER, tookS, nearest, 's');
    expectWithin(tookS, { low, high, source: DEVICE_POWER.source });
  });

  it('stands still once stopped, however fast it is flown', () => {
    const flight = beginFlight(
      scenarioOf({
        aeroplane,
        start: { ias_kt: 70, height_ft: 3000 },
        failures: [{ atS: 0, what: 'engine-stop', amount: 0.5 }],
      }),
    );
    flight.state[AT.revps] = 0;
    fly(flight, 8, (_, c) => {
      c.elevator = -0.5;
    });
    expect(flight.seen.iasMps).toBeGreaterThan(mpsFromKt(90));
    expect(flight.seen.engineRevps).toBe(0);
  });
});

describe('the engine', () => {
  it.each(POWER_BY_HEIGHT.rows)('at %d ft has %d of its sea-level power', (ft, share) => {
    const found = engineShare(isaDensityKgpm3(mFromFt(ft)));
    trust('Power with altitude', POWER_BY_HEIGHT, found, share, '%');
    // The three published forms agree to 1.2e-4
    expectWithin(found, about(share, 0.00012, POWER_BY_HEIGHT.source));
  });

  it('has all of it at sea level', () => {
    expect(engineShare(RHO0_KGPM3)).toBe(1);
  });
});
