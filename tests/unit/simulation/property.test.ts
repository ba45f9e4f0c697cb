// Any control sequence, for any length, in any weather, with any failure: finite, in-range state, the same bytes each time.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CONTROLS, type Controls } from '../../../src/simulation/controls.ts';
import type { Scenario } from '../../../src/simulation/scenario.ts';
import { AT, STATE_SLOTS, type State } from '../../../src/simulation/state.ts';
import { aerodromeFiles, aerodromeNamed } from '../../support/aerodromes.ts';
import { aeroplaneFiles, aeroplaneNamed } from '../../support/aeroplanes.ts';
import { beginFlight, type Flight, flyStep, type ScenarioChanges, scenarioOf } from '../../support/flight.ts';

const aeroplanes = aeroplaneFiles().map((name) => aeroplaneNamed(name.replace('.json', '')));
const aerodromes = aerodromeFiles().map((name) => aerodromeNamed(name.replace('.json', '')));

/** A stretch of constant controls: far beyond their ranges too, and not numbers. */
interface Stretch {
  readonly steps: number;
  readonly hands: Partial<Controls>;
}

const position = fc.oneof(
  { weight: 6, arbitrary: fc.double({ min: -1, max: 1, noNaN: true }) },
  { weight: 2, arbitrary: fc.constantFrom(-1, 0, 1) },
  { weight: 1, arbitrary: fc.constantFrom(-1e9, 1e9, Number.NaN, Infinity, -Infinity, 7) },
);
const hands = fc.record(
  Object.fromEntries(CONTROLS.map(({ name }) => [name, position])) as Record<keyof Controls, typeof position>,
  { requiredKeys: [] },
);
const stretches: fc.Arbitrary<Stretch[]> = fc.array(
  fc.record({ steps: fc.integer({ min: 1, max: 600 }), hands }),
  { minLength: 1, maxLength: 12 },
);

const failures: fc.Arbitrary<Scenario['failures']> = fc.array(
  fc.record({
    atS: fc.integer({ min: 0, max: 40 }),
    what: fc.constantFrom(
      'engine-stop',
      'partial-power',
      'flap-stuck',
      'trim-stuck',
      'fuel-pump',
      'airspeed-blocked',
      'radio',
    ),
    amount: fc.double({ min: 0.3, max: 0.7, noNaN: true }),
  }),
  { maxLength: 3 },
);

const scenario: fc.Arbitrary<ScenarioChanges> = fc
  .record({
    aeroplane: fc.constantFrom(...aeroplanes),
    aerodrome: fc.constantFrom(...aerodromes),
    end: fc.constantFrom(0, 1),
    seed: fc.integer({ min: 0, max: 4294967295 }),
    rudderAssist: fc.boolean(),
    failures,
    windFromDegM: fc.integer({ min: 0, max: 360 }),
    windKt: fc.integer({ min: 0, max: 60 }),
    gust: fc.option(fc.integer({ min: 1, max: 40 })),
    turbulence: fc.constantFrom('none', 'light', 'moderate'),
    temperatureC: fc.integer({ min: -25, max: 45 }),
    dewPointC: fc.option(fc.integer({ min: -30, max: 25 })),
    aloft: fc.boolean(),
    heightFt: fc.integer({ min: 60, max: 4000 }),
    throttleUp: fc.boolean(),
  })
  .map((x) => ({
    aeroplane: x.aeroplane,
    aerodrome: x.aerodrome,
    runway: x.aerodrome.runway.ends[x.end]!.designator,
    seed: x.seed,
    rudderAssist: x.rudderAssist,
    failures: x.failures,
    trimmed: false,
    weather: {
      windFromDegM: x.windFromDegM,
      windKt: x.windKt,
      gustKt: x.gust === null ? null : x.windKt + x.gust,
      turbulence: x.turbulence as 'none' | 'light' | 'moderate',
      temperatureC: x.temperatureC,
      dewPointC: x.dewPointC,
    },
    ...(x.aloft && {
      start: { height_ft: x.heightFt, ias_kt: 70, flight_path_deg: x.throttleUp ? 0 : -4 },
    }),
  }));

const flyAll = (flight: Flight, all: readonly Stretch[], look: () => void): void => {
  for (const { steps, hands: wanted } of all)
    for (let i = 0; i < steps; i += 1) {
      flyStep(flight, (_, controls) => Object.assign(controls, wanted));
      look();
    }
};

/** The first slot outside its declared range or not finite, or null. */
const slotOutOfRange = (state: State): { readonly name: string; readonly value: number } | null => {
  for (const [i, s] of STATE_SLOTS.entries()) {
    const value = state[i] as number;
    if (!(value >= s.low && value <= s.high)) return { name: s.name, value };
  }
  return null;
};

describe('any hands in any weather', () => {
  it('leave every number of the state finite and in its range', () => {
    fc.assert(
      fc.property(scenario, stretches, (changes, all) => {
        const flight = beginFlight(scenarioOf(changes));
        expect(slotOutOfRange(flight.state)).toBeNull();
        let n = 0;
        flyAll(flight, all, () => {
          n += 1;
          if (n % 5 === 0) {
            const wrong = slotOutOfRange(flight.state);
            if (wrong) expect.fail(`step ${n}: ${wrong.name} was ${wrong.value}`);
          }
        });
        for (const [name, value] of Object.entries(flight.seen))
          if (typeof value === 'number' && !Number.isFinite(value)) expect.fail(`${name} was ${value}`);
      }),
      { numRuns: 250, seed: 20260101 },
    );
  });

  it('give the same bytes twice, and after a copy at any step', () => {
    fc.assert(
      fc.property(scenario, stretches, fc.integer({ min: 0, max: 900 }), (changes, all, cutAt) => {
        const one = beginFlight(scenarioOf(changes));
        const two = beginFlight(scenarioOf(changes));
        const stretched = all.slice(0, 4);
        let copied: Float64Array | null = null;
        let n = 0;
        flyAll(one, stretched, () => {
          if (n === cutAt) copied = one.state.slice();
          n += 1;
        });
        n = 0;
        flyAll(two, stretched, () => {
          // The second flight goes on from the first one's copy
          if (n === cutAt && copied) two.state.set(copied);
          n += 1;
        });
        expect(Buffer.from(two.state.buffer).equals(Buffer.from(one.state.buffer))).toBe(true);
      }),
      { numRuns: 60, seed: 20260102 },
    );
  });

  it('with another seed meet other gusts', () => {
    const rough = { weather: { windKt: 20, gustKt: 30, turbulence: 'moderate' as const }, start: {} };
    const one = beginFlight(scenarioOf({ ...rough, seed: 1 }));
    const two = beginFlight(scenarioOf({ ...rough, seed: 2 }));
    flyAll(one, [{ steps: 120, hands: {} }], () => {});
    flyAll(two, [{ steps: 120, hands: {} }], () => {});
    expect(one.seen.iasMps).not.toBe(two.seen.iasMps);
  });
});

describe('the number of draws from the stream', () => {
  it('is the same a step whatever is flown, so that a fork keeps its gusts', () => {
    const calm = beginFlight(scenarioOf({ seed: 9 }));
    const rough = beginFlight(
      scenarioOf({ seed: 9, weather: { windKt: 20, gustKt: 30, turbulence: 'moderate' }, start: {} }),
    );
    flyAll(calm, [{ steps: 600, hands: {} }], () => {});
    flyAll(rough, [{ steps: 600, hands: { throttle: 1 } }], () => {});
    const stream = (flight: Flight): number[] => [...flight.state.slice(AT.air, AT.air + 4)];
    expect(stream(rough)).toEqual(stream(calm));
  });
});
