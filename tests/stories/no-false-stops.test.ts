// What looks alarming and is not: a good hold-off near the stall, a short final, a long float. None of them is a
// safety stop (design/lesson.md: never in the hold-off), and a go-around from a good approach is never wrong.
import { describe, expect, it } from 'vitest';
import type { Aeroplane } from '../../src/aeroplane/schema.ts';
import { AERODROMES, AEROPLANES, aeroplaneNamed } from '../../src/catalogue.ts';
import type { AirStart, Start, Weather } from '../../src/simulation/scenario.ts';
import { ktFromMps, mpsFromKt } from '../../src/units/conversions.ts';
import { plannedCircuit } from '../support/circuits.ts';
import { type Fault, seeFlight } from '../support/seen-flight.ts';

/** Half a mile out on the 3-degree slope of runway 04, landing flap, 62 kt. */
const shortFinal = (changes: Partial<AirStart> = {}): Start => {
  const alongM = -500;
  const heading = (39 * Math.PI) / 180;
  return {
    at: {
      east_m: alongM * Math.sin(heading),
      north_m: alongM * Math.cos(heading),
      height_ft: 132,
      heading_deg: 40,
      ias_kt: 64,
      flap_deg: 30,
      gear: 'down',
      bank_deg: 0,
      flight_path_deg: -3,
      ...changes,
    },
    trimmed: true,
    leg: 'final',
  };
};

const WINDS = [
  { windFromDegM: 0, windKt: 0, gustKt: null },
  { windFromDegM: 60, windKt: 9, gustKt: null },
  { windFromDegM: 110, windKt: 8, gustKt: null },
];

describe('no safety stop', () => {
  it.each(WINDS)('is raised by a good hold-off: %o', (wind) => {
    let slowest = 999;
    const watch: Fault = (s, m) => {
      if (m.legs.leg === 'hold-off' && !s.onGround)
        slowest = Math.min(slowest, ktFromMps(s.iasMps - 1.2 * s.stallIasMps));
    };
    const report = seeFlight(watch, { exercise: 'final-and-landing', overrides: { weather: wind } });
    expect(report.safety).toEqual([]);
    // The hold-off did get slower than would be safe higher up
    expect(slowest).toBeLessThan(-1);
  });

  it.each(WINDS)('is raised by a short final that begins half a mile out: %o', (wind) => {
    const overrides = { start: shortFinal(), weather: wind };
    const report = seeFlight(() => {}, { exercise: 'final-and-landing', overrides });
    expect(report.safety).toEqual([]);
    expect(report.touchdowns.length + report.go_arounds.length).toBeGreaterThan(0);
  });

  it('is raised by a long float, of an aeroplane that is briefed to come in eight knots faster', () => {
    const own = aeroplaneNamed('sandpiper');
    const { finalKt, finalFullFlapKt } = own.speeds;
    const speeds = { ...own.speeds, finalKt: finalKt + 8, finalFullFlapKt: finalFullFlapKt + 8 };
    const exercise = 'final-and-landing';
    const fast = seeFlight(() => {}, { exercise, aeroplane: { ...own, speeds } });
    const plain = seeFlight(() => {}, { exercise });
    const floated = (r: typeof plain) => r.items.find(({ id }) => id === 'float')?.value ?? 0;
    expect(fast.safety).toEqual([]);
    expect(plain.safety).toEqual([]);
    expect(floated(fast)).toBeGreaterThan(floated(plain) + 20);
  });

  it('is raised by the warner in the hold-off, and one is by the warner above it', () => {
    const inHoldOff: Fault = (s, m) => {
      if (m.legs.leg === 'hold-off') s.warner = true;
    };
    const onFinal: Fault = (s, m) => {
      if (m.legs.leg === 'final' && s.wheelClearanceM < 60) s.warner = true;
    };
    const options = { exercise: 'final-and-landing' };
    expect(seeFlight(inHoldOff, options).safety).toEqual([]);
    expect(seeFlight(onFinal, options).safety.map(({ what }) => what)).toEqual([
      expect.stringMatching(/^the stall warner sounded at \d+ ft$/),
    ]);
  });

  it('is raised by one gust of half a second that takes ten knots away', () => {
    const gust: Fault = (s, m) => {
      if (m.legs.leg === 'final' && s.timeS % 12 < 0.5) s.iasMps -= mpsFromKt(12);
    };
    expect(seeFlight(gust, { exercise: 'final-and-landing' }).safety).toEqual([]);
  });
});

/** Ahead, across and in gusts, off the landing direction of a runway. */
const spread = (headingDegM: number): Readonly<Record<string, Partial<Weather>>> => {
  const from = (offDeg: number): number => ((headingDegM + offDeg + 359) % 360) + 1;
  return {
    calm: { windFromDegM: 0, windKt: 0, gustKt: null },
    'a head wind': { windFromDegM: from(0), windKt: 9, gustKt: null },
    'a crosswind': { windFromDegM: from(80), windKt: 7, gustKt: null },
    'gusts from the left': { windFromDegM: from(-20), windKt: 12, gustKt: 19, turbulence: 'light' },
    'gusts from the right': { windFromDegM: from(30), windKt: 9, gustKt: 15, turbulence: 'light' },
  };
};

const LONG = process.env.LAPWING_LONG === '1';

const PLACES = AERODROMES.flatMap((place) =>
  AEROPLANES.map((aeroplane) => [aeroplane.id, place.id, aeroplane, place] as const),
);

describe.each(PLACES)('the %s at %s', (_, __, aeroplane, { id: aerodrome, runway }) => {
  const [end] = runway.ends;
  const faster = (kt: number): Aeroplane => {
    const { speeds } = aeroplane;
    const finals = { finalKt: speeds.finalKt + kt, finalFullFlapKt: speeds.finalFullFlapKt + kt };
    return { ...aeroplane, speeds: { ...speeds, ...finals } };
  };
  const landing = (flown: Aeroplane, weather: Partial<Weather>, start?: Start) =>
    seeFlight(() => {}, {
      exercise: 'final-and-landing',
      aeroplane: flown,
      aerodrome,
      overrides: { runway: end.designator, weather, ...(start && { start }) },
    });

  // The short run lands in two of the five, by turns, so that each is met at several places
  const at = PLACES.findIndex(([a, b]) => a === aeroplane.id && b === aerodrome);
  const winds = Object.entries(spread(end.headingDegM)).filter(
    (_each, i) => LONG || i === at % 5 || i === (at + 2) % 5,
  );

  it.each(winds)('raises none by landing, holding off or floating, %s', (__day, weather) => {
    // Eight knots more than its plan: it floats, and may be past the first third of a short strip
    for (const flown of [aeroplane, faster(8)]) {
      const { safety, go_arounds, touchdowns } = landing(flown, weather);
      // How a go-around is flown after it is another matter
      const overS = [go_arounds[0]?.at_s, touchdowns[0]?.at_s].map((atS) => atS ?? Number.POSITIVE_INFINITY);
      expect(Math.min(...overS)).toBeLessThan(Number.POSITIVE_INFINITY);
      expect(safety.filter(({ at_s }) => at_s < Math.min(...overS))).toEqual([]);
    }
  });

  it('raises none by a final that begins half a mile out', () => {
    const plan = plannedCircuit(aerodrome, end.designator, {}, {}, aeroplane);
    const { aimM, sinHeading, cosHeading } = plan.runway;
    const alongM = -500;
    const heightFt = ((aimM - alongM) * Math.tan(plan.approachRad)) / 0.3048 - 6;
    const { finalStage } = aeroplane.plan;
    const start: Start = {
      at: {
        east_m: alongM * sinHeading,
        north_m: alongM * cosHeading,
        height_ft: heightFt,
        heading_deg: end.headingDegM,
        ias_kt: aeroplane.speeds.finalKt,
        flap_deg: aeroplane.flap.stages[finalStage]?.deg ?? 0,
        gear: 'down',
        bank_deg: 0,
        flight_path_deg: (-plan.approachRad * 180) / Math.PI,
      },
      trimmed: true,
      leg: 'final',
    };
    const report = landing(aeroplane, {}, start);
    expect(report.safety).toEqual([]);
    expect(report.touchdowns.length).toBeGreaterThan(0);
  });
});

describe('a go-around', () => {
  it('that was called is answered and green, one that nothing asked for is safe, not needed', () => {
    const called = seeFlight(() => {}, { exercise: 'go-around' });
    expect(called.go_arounds).toMatchObject([{ why: 'a go-around was called' }]);
    expect(called.items.find(({ id }) => id === 'go-around')?.band).toBe('green');
    // The same flight, the lesson not knowing that anyone called
    const own = seeFlight(() => {}, {
      exercise: 'go-around',
      lesson: { task: { technique: 'normal', instructions: [] } },
    });
    expect(own.go_arounds).toMatchObject([{ why: 'safe, not needed', due_at_s: null }]);
    expect(own.items.find(({ id }) => id === 'go-around')?.band).toBe('green');
    expect(own.safety).toEqual([]);
  });
});
