// The brief against what the aeroplane then flies: every leg begun trimmed where the brief begins it, on the
// briefed heading, wings held level, nothing else touched. Bounds: issue "The lesson", 8: heading 1 degree,
// seconds 5 %, rpm 40.
import { expect, test } from 'vitest';
import { endNames } from '../../src/aerodrome/runway.ts';
import { briefOf } from '../../src/circuit/brief/brief.ts';
import type { StretchBrief } from '../../src/circuit/brief/types.ts';
import { startOfLeg } from '../../src/circuit/start-of-leg.ts';
import type { CircuitLeg } from '../../src/circuit/types.ts';
import { MODEL_VERSION, type Weather } from '../../src/simulation/scenario.ts';
import { headingDeg, wrapPi } from '../../src/units/angles.ts';
import { degFromRad, ftFromM, rpmFromRevps } from '../../src/units/conversions.ts';
import { aerodromeFiles, aerodromeNamed } from '../support/aerodromes.ts';
import { aeroplaneFiles, aeroplaneNamed } from '../support/aeroplanes.ts';
import { standardWeather } from '../support/circuits.ts';
import { expectWithin } from '../support/expect-within.ts';
import { beginFlight, flyStep, type Hands } from '../support/flight.ts';

const everyEnd = aerodromeFiles().flatMap((name) => {
  const id = name.replace('.json', '');
  return endNames(aerodromeNamed(id)).map((designator) => [id, designator] as const);
});
const everyAeroplane = aeroplaneFiles().map((name) => name.replace('.json', ''));

const DAYS: readonly Partial<Weather>[] = [
  {},
  { windFromDegM: 90, windKt: 14, temperatureC: 27 },
  { windFromDegM: 250, windKt: 18, qnhHpa: 990 },
];

/** Level wings and the heading of the start. */
const holding =
  (headingRad: number): Hands =>
  (seen, controls) => {
    const wantedRad = 2 * wrapPi(headingRad - seen.headingRadT);
    const bankRad = Math.max(-0.1, Math.min(0.1, wantedRad));
    controls.aileron = Math.max(-1, Math.min(1, 2 * (bankRad - seen.bankRad) - seen.rollRateRadps));
  };

let all = 0;
const leftOut: string[] = [];

test.each(everyEnd.flatMap(([id, end]) => everyAeroplane.map((aeroplane) => [aeroplane, id, end] as const)))(
  'the %s at %s, runway %s, flies what was briefed',
  (aeroplaneId, id, designator) => {
    const aeroplane = aeroplaneNamed(aeroplaneId);
    const aerodrome = aerodromeNamed(id);
    let told = 0;
    const short: string[] = [];
    for (const day of DAYS) {
      const weather = standardWeather(aerodrome, day);
      const brief = briefOf({ aeroplane, aerodrome, weather, runway: designator });
      for (const leg of brief.legs) {
        // A prepared start on downwind is level, also where the climb would not be over yet.
        const climbs = leg.leg === 'downwind' && leg.stretches[0]!.way === 'climbing';
        const stretch = leg.stretches[climbs ? 1 : 0];
        // A leg that climbs all the way has none, and one of a few seconds ends before it is flown
        if (stretch === undefined || stretch.seconds < 6) {
          short.push(leg.leg);
          continue;
        }
        flyStretch(leg.leg, stretch);
        told += 1;

        function flyStretch(name: CircuitLeg, stretch: StretchBrief): void {
          const { from, to } = brief.plan.legs[name];
          // The climb is flown from just above the ground; the other legs from where they begin.
          const flown = name === 'upwind' ? 0.95 : 1;
          const mixed = (a: number, b: number): number => b + (a - b) * flown;
          const at = {
            ...startOfLeg(brief.plan, name),
            east_m: mixed(from.eastM, to.eastM),
            north_m: mixed(from.northM, to.northM),
            height_ft: ftFromM(mixed(from.heightM, to.heightM)),
          };
          const flight = beginFlight({
            modelVersion: MODEL_VERSION,
            exercise: 'normal-circuit',
            aeroplane,
            aerodrome,
            runway: designator,
            weather,
            start: { at: { ...at, heading_deg: headingDeg(leg.headingRadM) }, trimmed: true, leg: name },
            seed: 1,
            assists: { rudder: true },
            failures: [],
            circuits: 1,
          });
          const { seen } = flight;
          const fromEastM = seen.eastM;
          const fromNorthM = seen.northM;
          const headingRad = seen.headingRadT;
          const hands = holding(headingRad);
          const seconds = flown * stretch.seconds;
          // Hands off, the last of the final belongs to the ground.
          const lengthM = (name === 'final' ? 0.9 : 1) * seconds * leg.groundspeedMps;
          let rpm = 0;
          let steps = 0;
          let gone = 0;
          while (gone < lengthM && steps < 60 * 600) {
            flyStep(flight, hands);
            rpm += rpmFromRevps(seen.engineRevps);
            steps += 1;
            gone = Math.hypot(seen.eastM - fromEastM, seen.northM - fromNorthM);
          }
          const place = `${aeroplaneId}, ${id} ${designator}, ${JSON.stringify(day)}, ${name}`;
          const trackRad = Math.atan2(seen.eastM - fromEastM, seen.northM - fromNorthM);
          const offDeg = degFromRad(wrapPi(trackRad - brief.plan.legs[name].trackRadT));
          expectWithin(offDeg, {
            low: -1,
            high: 1,
            source: `${place}: track held by the briefed heading, deg`,
          });
          expectWithin((steps / 60) * (leg.groundspeedMps / lengthM), {
            low: 0.95,
            high: 1.05,
            source: `${place}: seconds, share`,
          });
          // On final the briefed power also pays for the wind gradient, and levelled on crosswind it is that of
          // the speed which then builds; a start in the air knows of neither.
          if (name === 'final' || (name === 'crosswind' && stretch.way === 'level')) return;
          expectWithin(rpm / steps - rpmFromRevps(stretch.revps), {
            low: -40,
            high: 40,
            source: `${place}: rpm`,
          });
        }
      }
    }
    leftOut.push(...short.map((leg) => `${aeroplaneId}, ${id} ${designator}, ${leg}`));
    all += told + short.length;
    expect(told).toBeGreaterThanOrEqual(11);
  },
);

test('only crosswind and base are ever too short to be flown, one leg in ten', () => {
  process.stdout.write(`legs of the brief: ${leftOut.length} of ${all} left out as too short\n`);
  expect(all).toBe(everyEnd.length * everyAeroplane.length * DAYS.length * 5);
  expect(leftOut.length).toBeLessThanOrEqual(0.1 * all);
  for (const name of leftOut) expect(name).toMatch(/, (crosswind|base)$/);
});
