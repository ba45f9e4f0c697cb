// The brief's winds, headings and speeds against published worked examples; flight-figures 1a, 3a, 3b, 3c, 8.8.
import { describe, expect, it } from 'vitest';
import type { Aerodrome } from '../../src/aerodrome/schema.ts';
import { briefOf } from '../../src/circuit/brief/brief.ts';
import type { Brief } from '../../src/circuit/brief/types.ts';
import type { Weather } from '../../src/simulation/scenario.ts';
import { degFromRad, ktFromMps } from '../../src/units/conversions.ts';
import { aeroplaneNamed, variantOf } from '../support/aeroplanes.ts';
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
  // 3.1 FAA-H-8083-25 sample 10, 3.2 FAA test question, 3.3: published and exact. Crosswind + from the right.
  it.each([
    [170, 140, 25, 21.65, -12.5],
    [180, 220, 30, 22.98, 19.28],
    [250, 210, 25, 19.15, -16.07],
  ])('%d with %d/%d has the published components', (runway, from, kt, head, cross) => {
    const { wind } = briefAt(runway, { windFromDegM: from, windKt: kt }).runway.inUse;
    expect(Math.abs(ktFromMps(wind.headwindMps) - head)).toBeLessThan(0.006);
    expect(Math.abs(ktFromMps(wind.crosswindMps) - cross)).toBeLessThan(0.006);
  });

  it('counts the gust against the limit of the aeroplane', () => {
    // 3.2 again: 30 kt is the gust, 19.28 kt across; a mean of 20 kt is 12.86 kt across, inside 14 kt.
    const mean = briefAt(180, { windFromDegM: 220, windKt: 20 }).runway.inUse;
    const gusty = briefAt(180, { windFromDegM: 220, windKt: 20, gustKt: 30 }).runway.inUse;
    expect(mean.overLimits).toEqual([]);
    expect(gusty.overLimits.join()).toMatch(/crosswind on runway 18 is 19 kt in the gusts, above the 14 kt/);
  });
});

describe('the legs in the brief', () => {
  /**
   * 3.6 to 3.9, exact sums, airspeeds and winds scaled alike to 80 kt so that a light aeroplane flies them (the
   * triangle keeps its angles). The wind at circuit height over open ground is 1.5855 of that at 10 m (3c); at
   * 1,000 ft the true airspeed is 1.01479 of the indicated (1a). Track, from, wind, TAS, heading, groundspeed.
   */
  it.each([
    [90, 45, 40, 120, 76.37, 88.34],
    [270, 180, 30, 120, 255.52, 116.19],
    [45, 90, 25, 110, 54.25, 90.89],
    [360, 180, 15, 80, 360, 95],
  ])(
    'track %d, wind %d/%d, airspeed %d: heading and groundspeed of the example',
    (track, from, wind, tas, heading, groundspeed) => {
      const scale = 80 / tas;
      const aeroplane = variantOf(aeroplaneNamed('sandpiper'), { speeds: { downwindKt: 80 / 1.01479 } });
      const runway = track > 180 ? track - 180 : track + 180;
      const brief = briefAt(runway, { windFromDegM: from, windKt: (wind * scale) / 1.5855 }, aeroplane);
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
    // FAA-H-8083-3, approaches and landings: one half the gust factor. 15 gusting 25: 5 kt.
    const steady = briefAt(180, { windFromDegM: 180, windKt: 15 }).approach;
    const gusty = briefAt(180, { windFromDegM: 180, windKt: 15, gustKt: 25 }).approach;
    expect(ktFromMps(gusty.iasMps - steady.iasMps)).toBeCloseTo(5, 9);
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

  it('take the factors of one published table, 8.8', () => {
    const [plainTakeOff, plainLanding] = ratios(runwayHeading(180));
    expect(plainTakeOff).toBeCloseTo(1, 9);
    expect(plainLanding).toBeCloseTo(1, 9);
    expect(ratios(grassAt(0))[0]).toBeCloseTo(1.2, 9);
    expect(ratios(grassAt(0))[1]).toBeCloseTo(1.2, 9);
    // Grass and 2 % up: +20 % and +10 %, +20 % and -10 %; factors multiply.
    expect(ratios(grassAt(2))[0]).toBeCloseTo(1.2 * 1.1, 9);
    expect(ratios(grassAt(2))[1]).toBeCloseTo(1.2 * 0.9, 9);
    // 10 degrees warmer: +10 % and +5 %.
    expect(ratios(runwayHeading(180), { temperatureC: 25 })[0]).toBeCloseTo(1.1, 9);
    expect(ratios(runwayHeading(180), { temperatureC: 25 })[1]).toBeCloseTo(1.05, 9);
    // 1,000 ft up on a standard day: +10 % and +5 %.
    const high = { ...runwayHeading(180), elevationFt: 1000 };
    expect(ratios(high, { temperatureC: 13.0188 })[0]).toBeCloseTo(1.1, 3);
    expect(ratios(high, { temperatureC: 13.0188 })[1]).toBeCloseTo(1.05, 3);
    // A tailwind of 10 % of the lift-off speed of 52 kt: +20 % both ways.
    expect(ratios(runwayHeading(180), { windFromDegM: 360, windKt: 5.2 })[0]).toBeCloseTo(1.2, 6);
  });

  it('carry the margins 1.33 and 1.43, and say when the runway is too short for them', () => {
    const short = runwayHeading(180);
    const fits = (lengthM: number): boolean =>
      briefAt(180, {}, aeroplaneNamed('sandpiper'), {
        ...short,
        runway: { ...short.runway, lengthM },
      }).runs.takeOff.fits;
    const { takeOff, landing } = briefAt(180, {}).runs;
    expect(takeOff.margin).toBe(1.33);
    expect(landing.margin).toBe(1.43);
    const neededM = 1.33 * Math.max(takeOff.modelM, takeOff.byFactorsM);
    expect(fits(neededM + 1)).toBe(true);
    expect(fits(neededM - 1)).toBe(false);
  });
});
