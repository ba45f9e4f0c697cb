// Never a mark for what circuit, lights, picture or orders make impossible (design/lesson.md; issue "The lesson", 7):
// a good pilot flies what was chosen, with the lights it has, and nothing of it is held against anybody.
import { describe, expect, it } from 'vitest';
import type { Aerodrome } from '../../src/aerodrome/schema.ts';
import { aerodromeNamed, aeroplaneNamed } from '../../src/catalogue.ts';
import { withCircuit } from '../../src/circuit/brief/custom.ts';
import { planCircuit } from '../../src/circuit/plan.ts';
import { flyOrder } from '../../src/headless/flight.ts';
import { createPilot } from '../../src/pilot/pilot.ts';
import { prepare } from '../../src/simulation/model.ts';
import { standardDay } from '../../src/simulation/performance/standard-day.ts';
import { MODEL_VERSION, type Scenario } from '../../src/simulation/scenario.ts';
import { flyEverything } from '../support/everything-done.ts';
import { flyWithProcedures } from '../support/procedures.ts';

const DEG = Math.PI / 180;
const NM = 1852;

const flown = (aerodrome: Aerodrome, changes: Partial<Scenario> = {}) => {
  const aeroplane = aeroplaneNamed('sandpiper');
  const scenario: Scenario = {
    modelVersion: MODEL_VERSION,
    exercise: 'normal-circuit',
    aeroplane,
    aerodrome,
    runway: aerodrome.runway.ends[0].designator,
    weather: standardDay(aerodrome.elevationFt),
    start: { at: 'line-up', trimmed: false, leg: 'line-up' },
    seed: 1,
    assists: { rudder: true },
    failures: [],
    circuits: 1,
    ...changes,
  };
  const model = prepare(scenario);
  const plan = planCircuit(model.shape, aeroplane, aerodrome, model.runway, scenario.weather);
  const source = createPilot(model, plan);
  const order = { durationS: null, openLoop: false, trackHz: null, gpx: false } as const;
  return { plan, ...flyOrder({ scenario, plan, model, source, ...order }) };
};
const CURLEW = aerodromeNamed('curlew-sands');

describe('a circuit that cannot be on the lights', () => {
  // 1,000 ft lost from the base turn at 1.0 NM is a mean of 4.4 degrees (MEAN_DESCENT of tests/reference/circuit.ts): four whites
  it.each([
    ['level to the base turn, 4.5 degrees', { descentFrom: 'base-turn', approachRad: 4.5 * DEG }],
    ['level to the base turn, 5 degrees', { descentFrom: 'base-turn', approachRad: 5 * DEG }],
    ['tight, 0.75 NM', { descentFrom: 'base-turn', spacingM: 0.75 * NM, approachRad: 5.5 * DEG }],
  ] as const)('%s, is flown with four whites and nothing red for it', (_, options) => {
    const { plan, result } = flown(withCircuit(CURLEW, options));
    expect(plan.conflict?.sentence).toMatch(/four whites/);
    expect(result.gates.some(({ lights }) => lights === 'WWWW')).toBe(true);
    const lights = result.items.find(({ id }) => id === 'final-lights');
    expect(lights === undefined || lights.band === 'not-judged').toBe(true);
    expect(result.items.filter(({ band }) => band === 'red').map(({ id }) => id)).toEqual([]);
    expect(result.safety).toEqual([]);
  });

  it('flatter than the lights, with reds by plan, has no safety stop for four reds', () => {
    const { result } = flown(withCircuit(CURLEW, { approachRad: 2.4 * DEG }));
    expect(result.gates.some(({ lights }) => lights?.includes('RRR'))).toBe(true);
    expect(result.safety.map(({ what }) => what).join()).not.toMatch(/lights red/);
  });
});

describe('what is not there', () => {
  it('is not looked at: no lights, no row of them', () => {
    const { result } = flown(aerodromeNamed('plover-meadow'));
    expect(result.items.some(({ id }) => id === 'final-lights')).toBe(false);
    for (const { lights } of result.gates) expect(lights).toBeNull();
  });

  it('is not looked at: no checks, calls, lookout or traffic where none are worked', () => {
    const beside =
      /^(checks|lookout|heads-in|calls|read-back|clearance|spacing|subscale|brakes-found)|-order$/;
    expect(flown(CURLEW).result.items.filter(({ id }) => beside.test(id))).toEqual([]);
  });

  it('is not looked at: calls with the radio gone, and no clearance without a tower', () => {
    const silent = flyWithProcedures({
      start: 'downwind',
      procedures: { radio: 'towered' },
      failures: [{ atS: 0, what: 'radio', amount: 0.5 }],
    });
    expect(silent.item('calls')).toBeUndefined();
    expect(silent.item('read-back')).toBeUndefined();
    expect(flyEverything({}, { start: 'downwind' }).item('clearance')).toBeUndefined();
  });

  it('is not looked at: the feet, while the assist keeps the balance', () => {
    const { result } = flown(CURLEW);
    const balance = result.items.filter(({ id }) => id.endsWith('-balance'));
    expect(balance.length).toBeGreaterThan(3);
    expect(balance.every(({ band }) => band === 'not-judged')).toBe(true);
  });

  it('is not looked at: a start on final has no leg before it', () => {
    const flight = flyWithProcedures({ start: 'final' });
    for (const row of [
      'upwind-height',
      'downwind-height',
      'base-turn-angle',
      'checks-downwind',
      'lookout-base',
    ])
      expect(flight.item(row), row).toBeUndefined();
  });
});
