// The brief against the model pilot, who flies the whole circuit closed loop: over the middle half of every
// stretch worth telling, when the aeroplane has settled. Bounds: issue "The lesson", 8: heading 1 degree,
// seconds 5 %, rpm 40.
import { expect, test } from 'vitest';
import { briefOf } from '../../src/circuit/brief/brief.ts';
import type { Brief } from '../../src/circuit/brief/types.ts';
import { runwayByWind } from '../../src/circuit/runway-choice.ts';
import { createPilot } from '../../src/pilot/pilot.ts';
import { leanedMixture } from '../../src/simulation/mixture.ts';
import { MODEL_VERSION, type Weather } from '../../src/simulation/scenario.ts';
import type { Snapshot } from '../../src/simulation/snapshot.ts';
import { wrapPi } from '../../src/units/angles.ts';
import { degFromRad, rpmFromRevps } from '../../src/units/conversions.ts';
import { aerodromeFiles, aerodromeNamed } from '../support/aerodromes.ts';
import { aeroplaneFiles, aeroplaneNamed } from '../support/aeroplanes.ts';
import { standardWeather } from '../support/circuits.ts';
import { expectWithin } from '../support/expect-within.ts';
import { beginFlight, flyStep } from '../support/flight.ts';

const DAYS: readonly Partial<Weather>[] = [
  {},
  { windFromDegM: 120, windKt: 10, temperatureC: 25 },
  { windFromDegM: 280, windKt: 14 },
];

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
    let begunS = 0;
    return leg.stretches.flatMap((stretch) => {
      const last = stretch.way === 'landing flap';
      const fromS = last ? 0 : begunS;
      begunS = fromS + stretch.seconds;
      const shareAt = (seconds: number): number => (seconds * leg.groundspeedMps) / legM;
      // On final what is flown is the last way: with the flap to land with.
      const landing = leg.leg === 'final' && !last && leg.stretches.some((s) => s.way === 'landing flap');
      // Levelled late on downwind, the speed is still building: nothing steady to compare.
      const building = stretch.way === 'level' && fromS > 0;
      if (stretch.seconds < WORTH_S || landing || building) return [];
      return [
        {
          name: `${leg.leg}, ${stretch.way}`,
          from: placeAt(shareAt(fromS)),
          to: placeAt(shareAt(begunS)),
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

/** The other aeroplanes build their speed too slowly for a steady stretch where the legs are short or the air thin. */
const FLIGHTS = [
  ...PLACES.map((id) => ['sandpiper', id] as const),
  ...AEROPLANES.filter((aeroplane) => aeroplane !== 'sandpiper').flatMap((aeroplane) =>
    ['curlew-sands', 'dunlin-ridge'].map((id) => [aeroplane, id] as const),
  ),
];

test.each(FLIGHTS)('the model pilot in the %s at %s flies what was briefed', (aeroplaneId, id) => {
  const aeroplane = aeroplaneNamed(aeroplaneId);
  const aerodrome = aerodromeNamed(id);
  let told = 0;
  for (const day of DAYS) {
    const weather = standardWeather(aerodrome, day);
    const runway = runwayByWind(aerodrome, weather);
    const brief = briefOf({ aeroplane, aerodrome, weather, runway });
    if (brief.runway.inUse.overLimits.length > 0) continue;
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
      expectWithin(degFromRad(each.crabSum / each.steps), {
        low: -1,
        high: 1,
        source: `${place}: heading, deg`,
      });
      expectWithin(each.steps / 60 / (each.seconds / 2), {
        low: 0.95,
        high: 1.05,
        source: `${place}: seconds`,
      });
      expectWithin(each.rpmSum / each.steps - each.rpm, { low: -40, high: 40, source: `${place}: rpm` });
      told += 1;
    }
  }
  expect(told).toBeGreaterThan(5);
});
