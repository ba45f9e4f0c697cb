// The brief's winds, headings and speeds against published worked examples.
import { describe, expect, it } from 'vitest';
import type { Aerodrome } from '../../src/aerodrome/schema.ts';
import { briefOf } from '../../src/circuit/brief/brief.ts';
import type { Brief } from '../../src/circuit/brief/types.ts';
import type { Weather } from '../../src/simulation/scenario.ts';
import { degFromRad, ktFromMps } from '../../src/units/conversions.ts';
import { ISA_BY_HEIGHT } from '../reference/atmosphere.ts';
import { GUST_ADDED } from '../reference/circuit.ts';
import { CLASS_B_LANDING, RUN_FACTORS, RUN_MARGINS_FROM_MEMORY } from '../reference/ground.ts';
import { LOG_LAW, PROFILE_HEIGHTS_M, RUNWAY_WINDS_EXACT, WIND_TRIANGLES_EXACT } from '../reference/wind.ts';
import { aeroplaneNamed, variantOf } from '../support/aeroplanes.ts';
import { expectWithin } from '../support/expect-within.ts';
import { northRunway, STILL } from '../support/flight.ts';

/** A level runway at sea level, no variation, open ground. */
const runwayHeading = (deg: number): Aerodrome => {
  const base = northRunway();
  const other = ((deg + 179) % 360) + 1;
  const name = (heading: number): string => String(Math.round(heading / 10) || 36).padStart(2, '0');
  const [first, second] = base.runway.ends;
  return {
    ...base,
    runway: {
      ...base.runway,
      ends: [
        { ...first, designator: name(deg), headingDegM: deg },
        { ...second, designator: name(other), headingDegM: other },
      ],
    },
  };
};

const briefAt = (
  headingDegM: number,
  weather: Partial<Weather>,
  aeroplane = aeroplaneNamed('sandpiper'),
  aerodrome = runwayHeading(headingDegM),
): Brief =>
  briefOf({
    aeroplane,
    aerodrome,
    weather: { ...STILL, ...weather },
    runway: aerodrome.runway.ends[0].designator,
  });

const angleApart = (a: number, b: number): number => Math.abs(((((a - b) % 360) + 540) % 360) - 180);

describe('the runway in the brief', () => {
  // Crosswind + from the right
  it.each(RUNWAY_WINDS_EXACT.rows)(
    '%d with %d/%d has the published components',
    (runway, from, kt, head, cross) => {
      const { wind } = briefAt(runway, { windFromDegM: from, windKt: kt }).runway.inUse;
      expect(Math.abs(ktFromMps(wind.headwindMps) - head)).toBeLessThan(0.006);
      expect(Math.abs(ktFromMps(wind.crosswindMps) - cross)).toBeLessThan(0.006);
    },
  );

  it('counts the gust against the limit of the aeroplane', () => {
    // The second of them again: 30 kt is the gust, 19.28 kt across; a mean of 20 kt is 12.86 kt across, inside 14 kt.
    const mean = briefAt(180, { windFromDegM: 220, windKt: 20 }).runway.inUse;
    const gusty = briefAt(180, { windFromDegM: 220, windKt: 20, gustKt: 30 }).runway.inUse;
    expect(mean.overLimits).toEqual([]);
    expect(gusty.overLimits.join()).toMatch(/crosswind on runway 18 is 19 kt in the gusts, above the 14 kt/);
  });
});

describe('the legs in the brief', () => {
  /**
   * Airspeeds and winds scaled alike to 80 kt so that a light aeroplane flies them (the triangle keeps its angles).
   * The wind at circuit height over open ground is 1.5855 of that at 10 m; at 1,000 ft the true airspeed is 1.01479
   * of the indicated.
   */
  const aloft = LOG_LAW.rows[0][1 + PROFILE_HEIGHTS_M.indexOf(300)] as number;
  const trueOfIndicated = 1 / Math.sqrt(ISA_BY_HEIGHT.rows[1][5]);
  it.each(WIND_TRIANGLES_EXACT.rows)(
    'track %d, wind %d/%d, airspeed %d: heading and groundspeed of the example',
    (track, from, wind, tas, _correction, heading, groundspeed) => {
      const scale = 80 / tas;
      const aeroplane = variantOf(aeroplaneNamed('sandpiper'), {
        speeds: { downwindKt: 80 / trueOfIndicated },
      });
      const runway = track > 180 ? track - 180 : track + 180;
      const brief = briefAt(runway, { windFromDegM: from, windKt: (wind * scale) / aloft }, aeroplane);
      const downwind = brief.legs.find((leg) => leg.leg === 'downwind')!;
      expect(angleApart(degFromRad(downwind.trackRadM), track)).toBeLessThan(1e-6);
      expect(angleApart(degFromRad(downwind.headingRadM), heading)).toBeLessThan(0.05);
      expect(Math.abs(ktFromMps(downwind.groundspeedMps) - groundspeed * scale)).toBeLessThan(0.1);
    },
  );

  it('are told in magnetic directions', () => {
    // "Variation east, magnetic least" (common practice): all painted and spoken directions are magnetic.
    const aerodrome = { ...runwayHeading(180), variationDegE: 12 };
    const brief = briefAt(180, { windFromDegM: 270, windKt: 10 }, aeroplaneNamed('sandpiper'), aerodrome);
    const tracks = brief.legs.map((leg) => Math.round(degFromRad(leg.trackRadM)));
    expect(tracks).toEqual([180, 90, 360, 270, 180].map((deg) => deg % 360));
    // The west wind is ahead on base for a left-hand circuit of runway 18, and takes no drift there.
    const base = brief.legs.find((leg) => leg.leg === 'base')!;
    expect(Math.abs(degFromRad(base.driftRad))).toBeLessThan(0.01);
    expect(base.tailwindMps).toBeLessThan(0);
  });
});

describe('the approach speed in the brief', () => {
  it('has half the gust on top', () => {
    // One half the gust factor. 15 gusting 25: 5 kt.
    const steady = briefAt(180, { windFromDegM: 180, windKt: 15 }).approach;
    const gusty = briefAt(180, { windFromDegM: 180, windKt: 15, gustKt: 25 }).approach;
    expect(ktFromMps(gusty.iasMps - steady.iasMps)).toBeCloseTo(GUST_ADDED.rows[0][0] * (25 - 15), 9);
    expect(gusty.sentence).toContain('half of the 10 kt');
  });
});

describe('the runs in the brief', () => {
  const grassAt = (slopePercent: number): Aerodrome => {
    const base = runwayHeading(180);
    return { ...base, runway: { ...base.runway, surface: 'grass', slopePercent } };
  };
  const ratios = (aerodrome: Aerodrome, weather: Partial<Weather> = {}): [number, number] => {
    const { takeOff, landing } = briefAt(180, weather, aeroplaneNamed('sandpiper'), aerodrome).runs;
    return [takeOff.byFactorsM / takeOff.standardM, landing.byFactorsM / landing.standardM];
  };

  it('take the factors of one published table', () => {
    const [grass, up, warm, high, tail] = RUN_FACTORS.rows;
    const [[grassLanding]] = CLASS_B_LANDING.rows;
    // The product is that of the figures shown, to a whole metre
    const expectRatios = (found: [number, number], takeOff: number, landing: number): void => {
      expect(found[0]).toBeCloseTo(takeOff, 2);
      expect(found[1]).toBeCloseTo(landing, 2);
    };
    expectRatios(ratios(runwayHeading(180)), 1, 1);
    expectRatios(ratios(grassAt(0)), grass[1], grassLanding);
    // Grass and 2 % up; factors multiply.
    expectRatios(ratios(grassAt(2)), grass[1] * up[1], grassLanding * up[2]);
    expectRatios(ratios(runwayHeading(180), { temperatureC: 25 }), warm[1], warm[2]);
    // 1,000 ft up on a standard day
    const upland = { ...runwayHeading(180), elevationFt: 1000 };
    expectRatios(ratios(upland, { temperatureC: 13.0188 }), high[1], high[2]);
    // A tailwind of 10 % of the lift-off speed of 52 kt
    expectRatios(ratios(runwayHeading(180), { windFromDegM: 360, windKt: 5.2 }), tail[1], tail[2]);
  });

  it('show their sum: each product is that of the figures beside it', () => {
    const { takeOff, landing } = briefAt(
      180,
      { temperatureC: 27 },
      aeroplaneNamed('dotterel'),
      grassAt(2),
    ).runs;
    for (const { factors, standardM, byFactorsM, modelM, margin, withMarginM } of [takeOff, landing]) {
      expect(factors.length).toBeGreaterThan(1);
      expect(byFactorsM).toBe(Math.round(factors.reduce((m, { factor }) => m * factor, standardM)));
      expect(withMarginM).toBe(Math.round(margin * Math.max(byFactorsM, modelM)));
      for (const { factor } of factors) expect(Math.round(100 * factor) / 100).toBe(factor);
    }
  });

  it('carry the margins 1.33 and 1.43 (from memory), and say when the runway is too short for them', () => {
    const short = runwayHeading(180);
    const fits = (lengthM: number): boolean =>
      briefAt(180, {}, aeroplaneNamed('sandpiper'), {
        ...short,
        runway: { ...short.runway, lengthM },
      }).runs.takeOff.fits;
    const { takeOff, landing } = briefAt(180, {}).runs;
    const [outward, inward] = RUN_MARGINS_FROM_MEMORY.rows;
    expectWithin(takeOff.margin, { low: outward[2], high: outward[3], source: 'from memory' });
    expectWithin(landing.margin, { low: inward[2], high: inward[3], source: 'from memory' });
    // Ours, whether the memory is right or not: what the brief says it multiplies by
    expect([takeOff.margin, landing.margin]).toEqual([1.33, 1.43]);
    expect(landing.margin).toBe(CLASS_B_LANDING.rows[0][1]);
    const neededM = takeOff.withMarginM;
    expect(fits(neededM + 1)).toBe(true);
    expect(fits(neededM - 1)).toBe(false);
  });
});
