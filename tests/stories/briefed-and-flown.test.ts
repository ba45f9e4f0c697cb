// The brief against the model pilot, who flies the whole circuit closed loop: over the middle half of every
// stretch worth telling, when the aeroplane has settled. Bounds: issue "The lesson", 8: heading 1 degree,
// seconds 5 %, rpm 40.
import { expect, test } from 'vitest';
import { briefOf } from '../../src/circuit/brief/brief.ts';
import type { Brief } from '../../src/circuit/brief/types.ts';
import { runwayByWind } from '../../src/circuit/runway-choice.ts';
import { createPilot } from '../../src/pilot/pilot.ts';
import { leanedMixture } from '../../src/simulation/engine/mixture.ts';
import { MODEL_VERSION, type Weather } from '../../src/simulation/scenario.ts';
import type { Snapshot } from '../../src/simulation/snapshot.ts';
import { wrapPi } from '../../src/units/angles.ts';
import { degFromRad, rpmFromRevps } from '../../src/units/conversions.ts';
import { aerodromeFiles, aerodromeNamed } from '../support/aerodromes.ts';
import { aeroplaneFiles, aeroplaneNamed } from '../support/aeroplanes.ts';
import { standardWeather } from '../support/circuits.ts';
import { beginFlight, flyStep } from '../support/flight.ts';
import { expectLeftOut } from '../support/left-out.ts';

const DAYS: readonly Partial<Weather>[] = [
  {},
  { windFromDegM: 120, windKt: 10, temperatureC: 25 },
  { windFromDegM: 280, windKt: 14 },
  { windFromDegM: 20, windKt: 8, temperatureC: 2, qnhHpa: 990 },
  { windFromDegM: 200, windKt: 11, qnhHpa: 1032 },
  { windFromDegM: 340, windKt: 6, temperatureC: 30 },
];

const LONG = process.env.LAPWING_LONG === '1';
/** The short run flies every other day of a pair, by turns. */
const daysOf = (pair: number): readonly Partial<Weather>[] =>
  LONG ? DAYS : DAYS.filter((_, i) => i % 2 === pair % 2);

interface Place {
  readonly eastM: number;
  readonly northM: number;
}

/** A stretch of the plan, and what was seen over its middle half. */
interface Seen {
  readonly name: string;
  readonly from: Place;
  readonly to: Place;
  readonly headingRad: number;
  readonly trackRad: number;
  readonly rpm: number;
  readonly seconds: number;
  steps: number;
  rpmSum: number;
  crabSum: number;
}

/** Shorter stretches end before the aeroplane has settled on them. */
const WORTH_S = 28;

const stretchesOf = (brief: Brief): Seen[] =>
  brief.legs.flatMap((leg) => {
    const plan = brief.plan.legs[leg.leg];
    const legM = plan.to.distanceM - plan.from.distanceM;
    const placeAt = (share: number): Place => ({
      eastM: plan.from.eastM + (plan.to.eastM - plan.from.eastM) * share,
      northM: plan.from.northM + (plan.to.northM - plan.from.northM) * share,
    });
    let begunM = 0;
    return leg.stretches.flatMap((stretch) => {
      const last = stretch.way === 'landing flap';
      const fromM = last ? 0 : begunM;
      begunM = fromM + stretch.seconds * stretch.groundspeedMps;
      // On final what is flown is the last way: with the flap to land with.
      const landing = leg.leg === 'final' && !last && leg.stretches.some((s) => s.way === 'landing flap');
      // Levelled late on downwind, the speed is still building: nothing steady to compare.
      const building = stretch.way === 'level' && fromM > 0;
      if (stretch.seconds < WORTH_S || landing || building) return [];
      return [
        {
          name: `${leg.leg}, ${stretch.way}`,
          from: placeAt(fromM / legM),
          to: placeAt(begunM / legM),
          headingRad: plan.headingRadT,
          trackRad: plan.trackRadT,
          rpm: rpmFromRevps(stretch.revps),
          seconds: stretch.seconds,
          steps: 0,
          rpmSum: 0,
          crabSum: 0,
        },
      ];
    });
  });

/** Share of a stretch flown, where the aeroplane is near it and on its way along it; else null. */
const shareOf = (seen: Seen, s: Snapshot): number | null => {
  const east = seen.to.eastM - seen.from.eastM;
  const north = seen.to.northM - seen.from.northM;
  const length = Math.hypot(east, north);
  const dx = s.eastM - seen.from.eastM;
  const dy = s.northM - seen.from.northM;
  const aside = Math.abs(dx * north - dy * east) / length;
  if (aside > 500 || Math.abs(wrapPi(s.trackRadT - seen.trackRad)) > 0.35) return null;
  return (dx * east + dy * north) / (length * length);
};

const PLACES = aerodromeFiles().map((name) => name.replace('.json', ''));
const AEROPLANES = aeroplaneFiles().map((name) => name.replace('.json', ''));

const FLIGHTS = AEROPLANES.flatMap((aeroplane) => PLACES.map((id) => [aeroplane, id] as const));

/**
 * Where the brief is not flown as closely as that, and why; all else must be. A line that is flown well enough by now
 * has to go.
 */
const NOT_YET: readonly (readonly [RegExp, string])[] = [
  [/^dotterel, ptarmigan-flat .*crosswind, climbing/, 'the climb up here ends only after the turn'],
  [/^dotterel, ptarmigan-flat .*downwind, climbing/, 'the climb up here ends only after the turn'],
  [
    /^dotterel, ptarmigan-flat .*downwind, level/,
    'in thin air the speed is still building: more power than briefed',
  ],
  [
    /^dotterel, dunlin-ridge .*downwind, descending/,
    'half a minute: the power of the descent is still being found',
  ],
  [/^dotterel, dunlin-ridge 27, .*200.*final, descending/, 'ten knots across: some 50 rpm more than briefed'],
  [
    /^dotterel, plover-meadow 31, .*280.*downwind, level/,
    'in 14 kt it is still closing on the track: 1.4 degrees',
  ],
  [
    /^whimbrel, plover-meadow 31, .*upwind, climbing/,
    'half a minute, begun while the speed is still building: 6 %',
  ],
];
const missed = new Set<RegExp>();
const overLimits: (readonly [string, string])[] = [];
/** Aeroplane, runway and day (by its place above) that the aeroplane's limits forbid. */
const FORBIDDEN: readonly (readonly [string, RegExp])[] = [];

test.each(FLIGHTS)('the model pilot in the %s at %s flies what was briefed', (aeroplaneId, id) => {
  const aeroplane = aeroplaneNamed(aeroplaneId);
  const aerodrome = aerodromeNamed(id);
  let told = 0;
  const misses: string[] = [];
  const days = daysOf(FLIGHTS.findIndex(([a, b]) => a === aeroplaneId && b === id));
  for (const day of days) {
    const weather = standardWeather(aerodrome, day);
    const runway = runwayByWind(aerodrome, weather);
    const brief = briefOf({ aeroplane, aerodrome, weather, runway });
    if (brief.runway.inUse.overLimits.length > 0) {
      overLimits.push([
        `${aeroplaneId}, ${id} ${runway}, ${DAYS.indexOf(day)}`,
        brief.runway.inUse.overLimits.join(),
      ]);
      continue;
    }
    const flight = beginFlight({
      modelVersion: MODEL_VERSION,
      exercise: 'normal-circuit',
      aeroplane,
      aerodrome,
      runway,
      weather,
      start: { at: 'line-up', trimmed: false, leg: 'line-up' },
      seed: 1,
      assists: { rudder: true },
      failures: [],
      circuits: 1,
    });
    const mixture = leanedMixture(flight.seen.densityKgpm3);
    const pilot = createPilot(flight.model, brief.plan);
    const memory = pilot.begin(flight.seen, flight.controls);
    const stretches = stretchesOf(brief);
    for (let step = 0; step < 60 * 600 && flight.seen.ended === null; step += 1) {
      flyStep(flight, (seen, controls) => {
        pilot.next(seen, memory, controls);
        // The brief's powers are those of a mixture leaned for the air.
        controls.mixture = mixture;
      });
      const s = flight.seen;
      for (const each of stretches) {
        const share = shareOf(each, s);
        if (share === null || share < 0.25 || share > 0.75 || s.heightM < 5) continue;
        each.steps += 1;
        each.rpmSum += rpmFromRevps(s.engineRevps);
        // What holds the track: the heading as far off the track flown as briefed off the track planned.
        each.crabSum += wrapPi(s.headingRadT - s.trackRadT - (each.headingRad - each.trackRad));
      }
      if (step > 60 * 60 && s.heightM < 1 && s.groundspeedMps < 5) break;
    }
    for (const each of stretches) {
      const place = `${aeroplaneId}, ${id} ${runway}, ${JSON.stringify(day)}, ${each.name}`;
      const off = {
        deg: degFromRad(each.crabSum / each.steps),
        percent: 100 * (each.steps / 60 / (each.seconds / 2) - 1),
        rpm: each.rpmSum / each.steps - each.rpm,
      };
      const within = Math.abs(off.deg) <= 1 && Math.abs(off.percent) <= 5 && Math.abs(off.rpm) <= 40;
      const known = NOT_YET.find(([which]) => which.test(place));
      if (!within && known !== undefined) missed.add(known[0]);
      else if (!within) misses.push(`${place}: ${JSON.stringify(off)} of ${Math.round(each.seconds)} s`);
      told += 1;
    }
  }
  expect(misses).toEqual([]);
  // Some three to five stretches of a day are worth telling
  expect(told).toBeGreaterThanOrEqual(3 * days.length);
});

test.runIf(LONG)('what is said not to be flown so closely yet is not', () => {
  expect(NOT_YET.filter(([which]) => !missed.has(which)).map(([which]) => String(which))).toEqual([]);
});

test('no day is left out but those that the limits of the aeroplane forbid', () => {
  expectLeftOut(
    'flights of the brief',
    (FLIGHTS.length * DAYS.length) / (LONG ? 1 : 2),
    overLimits,
    FORBIDDEN,
  );
});
