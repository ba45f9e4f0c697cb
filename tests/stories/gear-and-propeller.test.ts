// The four-seater round the circuit by the model pilot: gear, propeller lever and pump worked when the trade works them
// (common practice: gear up with a positive climb, down before base; propeller forward for landing).
import { beforeAll, describe, expect, it } from 'vitest';
import { createPilot } from '../../src/pilot/pilot.ts';
import type { Snapshot } from '../../src/simulation/snapshot.ts';
import { ftFromM, rpmFromRevps } from '../../src/units/conversions.ts';
import { dayScenario } from '../support/circuit-flight.ts';
import { about, expectWithin } from '../support/expect-within.ts';
import { beginFlight, flyStep } from '../support/flight.ts';

interface Seen {
  readonly timeS: number;
  readonly clearFt: number;
  readonly climbing: boolean;
  readonly gear: number;
  readonly gearLever: number;
  readonly propeller: number;
  readonly pump: number;
  readonly rpm: number;
  readonly along: number;
}

const LONGEST_S = 900;
const looks: Seen[] = [];
const warned: number[] = [];
const tooFast: number[] = [];
let last: Snapshot;

beforeAll(() => {
  const { scenario, model, plan } = dayScenario({ aeroplane: 'whimbrel' });
  const pilot = createPilot(model, plan);
  const flight = beginFlight(scenario);
  const memory = pilot.begin(flight.seen, flight.controls);
  for (let i = 0; i < LONGEST_S * 60 && flight.seen.ended === null; i += 1) {
    flyStep(flight, (seen, controls) => pilot.next(seen, memory, controls));
    const { seen } = flight;
    if (seen.gearWarning) warned.push(seen.timeS);
    if (seen.gearTooFast) tooFast.push(seen.timeS);
    if (i % 6 === 0)
      looks.push({
        timeS: seen.timeS,
        clearFt: ftFromM(seen.wheelClearanceM),
        climbing: seen.verticalSpeedMps > 0,
        gear: seen.gear,
        gearLever: seen.gearLever,
        propeller: seen.propeller,
        pump: seen.pump,
        rpm: rpmFromRevps(seen.engineRevps),
        along: seen.eastM * model.runway.sinHeading + seen.northM * model.runway.cosHeading,
      });
    if (seen.parked && seen.timeS > 60) break;
  }
  last = flight.seen;
});

const raised = () => looks.findIndex((look) => look.gearLever === 0);
const lowered = () => looks.findIndex((look, i) => i > raised() && look.gearLever === 1);

describe('the four-seater round the circuit', () => {
  it('stops on the runway, wheels down, without a flat spot', () => {
    expect(last.ended).toBeNull();
    expect(last.parked).toBe(true);
    expect(last.gear).toBe(1);
    expect(last.flatSpot).toBe(false);
  });

  it('raises its gear once, climbing and clear of the ground, and lowers it once at circuit height', () => {
    const up = looks[raised()]!;
    expect(up.climbing).toBe(true);
    expectWithin(up.clearFt, { low: 20, high: 400, source: 'common practice' });
    const down = looks[lowered()]!;
    expectWithin(down.clearFt, about(1000, 100, 'before the descent'));
    expect(looks.slice(lowered()).every((look) => look.gearLever === 1)).toBe(true);
  });

  it('has it down and locked before it turns base, far above the 300 ft gate', () => {
    const first = looks.findIndex((look, i) => i > lowered() && look.gear === 1);
    expect(looks[first]!.clearFt).toBeGreaterThan(500);
  });

  it('never moves it too fast, and never hears the horn', () => {
    expect(tooFast).toEqual([]);
    expect(warned).toEqual([]);
  });

  it('takes off with the propeller fully forward, flies downwind at 2,500 rpm, lands with it forward', () => {
    const off = looks.find((look) => look.clearFt > 3)!;
    expect(off.propeller).toBe(1);
    expectWithin(off.rpm, about(2700, 40, 'rated'));
    expectWithin(looks[lowered() - 5]!.rpm, about(2500, 15, 'plan.circuitRpm'));
    const final = looks.filter(
      (look) => look.timeS > looks[lowered()]!.timeS && look.clearFt < 300 && look.clearFt > 50,
    );
    expect(final.length).toBeGreaterThan(20);
    expect(final.every((look) => look.propeller > 0.999)).toBe(true);
  });

  it('has the electric pump on for take-off and landing', () => {
    expect(looks.find((look) => look.clearFt > 3)!.pump).toBe(1);
    const after = looks.filter((look) => look.timeS > looks[lowered()]!.timeS + 60);
    expect(after.length).toBeGreaterThan(20);
    expect(after.every((look) => look.pump === 1)).toBe(true);
  });
});
