// Flights drawn by hand along the planned path, and off it: the names must be found from what is seen.
import { describe, expect, it } from 'vitest';
import { eastOf, northOf } from '../../../src/aerodrome/runway.ts';
import type { Lesson } from '../../../src/lesson/lesson.ts';
import type { LegName } from '../../../src/lesson/names.ts';
import { mFromFt, mpsFromKt, radFromDeg } from '../../../src/units/conversions.ts';
import { lessonOf, type Moment, plannedMoments, watchMoments } from '../../support/synthetic-flight.ts';

const WHOLE: readonly LegName[] = [
  'line-up',
  'take-off-roll',
  'upwind',
  'turn-to-crosswind',
  'crosswind',
  'turn-to-downwind',
  'downwind',
  'turn-to-base',
  'base',
  'turn-to-final',
  'final',
  'hold-off',
  'landing-roll',
  'stopped',
];

/** A point in the runway's axes: along, out to the circuit side. */
const at = (
  lesson: Lesson,
  along: number,
  out: number,
  heightFt: number,
  more: Partial<Moment> = {},
): Moment => ({
  eastM: eastOf(lesson.runway, along, lesson.plan.side * out),
  northM: northOf(lesson.runway, along, lesson.plan.side * out),
  heightM: mFromFt(heightFt),
  speedMps: mpsFromKt(75),
  ...more,
});

/** A quarter turn (or more) around a centre, as moments. */
const arc = (
  lesson: Lesson,
  centre: [number, number],
  radiusM: number,
  fromDeg: number,
  toDeg: number,
  heightFt: number,
) =>
  Array.from({ length: 40 }, (_, i) => {
    const angle = radFromDeg(fromDeg + ((toDeg - fromDeg) * i) / 39);
    return at(
      lesson,
      centre[0] + radiusM * Math.sin(angle),
      centre[1] - radiusM * Math.cos(angle),
      heightFt,
      {
        turning: true,
      },
    );
  });

const RUNWAYS = [
  { aerodrome: 'curlew-sands' },
  { aerodrome: 'curlew-sands', runway: '22', wind: '250/12' },
  { aerodrome: 'dunlin-ridge' },
  { aerodrome: 'plover-meadow' },
  { aerodrome: 'ptarmigan-flat' },
] as const;

describe('the legs of a circuit', () => {
  it.each(RUNWAYS)('are found in their order at %o', (options) => {
    const { lesson, plan } = lessonOf(options);
    const seen = watchMoments(lesson, plannedMoments(plan));
    expect(seen.legs).toEqual(WHOLE);
    expect(new Set(seen.circuits)).toEqual(new Set([1]));
  });

  it('do not flicker when rough air rocks the wings by nine degrees', () => {
    const { lesson, plan } = lessonOf();
    for (const period of [0.7, 1.3, 2.9, 5]) {
      const rock = (timeS: number) => radFromDeg(9) * Math.sin((2 * Math.PI * timeS) / period);
      const seen = watchMoments(lesson, plannedMoments(plan), rock);
      expect(seen.legs).toEqual(WHOLE);
      expect(seen.shortestS).toBeGreaterThan(1);
    }
  });

  it('begin where the wings left level, and end where they came back', () => {
    const { lesson, plan } = lessonOf();
    const { memory } = watchMoments(lesson, plannedMoments(plan));
    const turn = memory.turns.find((t) => t.onto === 'base');
    const out = Math.hypot(plan.turns.base.from.eastM, plan.turns.base.from.northM);
    // Within two seconds of flight of where the plan turns
    expect(Math.abs(Math.hypot(turn?.fromAlongM ?? 0, turn?.fromOutM ?? 0) - out)).toBeLessThan(
      2 * mpsFromKt(75),
    );
    expect(memory.turns.map((t) => t.onto)).toEqual(['crosswind', 'downwind', 'base', 'final']);
    for (const t of memory.turns) expect(t.toS).not.toBeNull();
  });

  it.each([
    ['upwind', 2500, 0, 400, [10, 0]],
    ['crosswind', 2800, 600, 900, [0, 10]],
    ['downwind', 800, 1852, 1000, [-10, 0]],
    ['base', -1700, 1200, 600, [0, -10]],
    ['final', -2000, 20, 400, [10, 0]],
  ] as const)('are known at once when a flight begins on %s', (leg, along, out, heightFt, [da, dout]) => {
    const { lesson } = lessonOf();
    const from = at(lesson, along, out, heightFt);
    const up = leg === 'upwind' ? 3 : 0;
    const seen = watchMoments(lesson, [
      from,
      at(lesson, along + 30 * da, out + 30 * dout, heightFt + up * 30),
    ]);
    expect(seen.legs[0] === leg || (leg === 'upwind' && seen.legs.at(-1) === 'upwind')).toBe(true);
    expect(seen.legs).toHaveLength(1);
  });

  it('count the circuits of touch-and-goes', () => {
    const { lesson, plan } = lessonOf();
    const once = plannedMoments(plan);
    const touch = once.slice(0, -1);
    const again = once.slice(1).map((m) => (m.throttle === 1 && m.onGround ? { ...m, speedMps: 25 } : m));
    // Along the runway under power, back to the start of the roll's line
    const rolling = touch.at(-1) as Moment;
    const go = [0, 1, 2, 3].map((i) => ({
      ...at(lesson, 420 + 60 * i, 0, 0),
      heightM: 0,
      onGround: true,
      throttle: 1,
      speedMps: 25,
    }));
    const second = again.filter((m) => !(m.onGround && m.throttle === 1));
    const seen = watchMoments(lesson, [...touch, { ...rolling, throttle: 1 }, ...go, ...second]);
    expect(seen.legs.filter((leg) => leg === 'take-off-roll')).toHaveLength(2);
    expect(seen.circuits.at(-1)).toBe(2);
    expect(seen.memory.touchdowns.map((t) => t.circuit)).toEqual([1, 2]);
  });

  it('tell a go-around from a landing, and count the next circuit from its turn', () => {
    const { lesson } = lessonOf();
    const moments = [
      at(lesson, -2500, 0, 450),
      at(lesson, -1000, 0, 210, { throttle: 1 }),
      at(lesson, 2200, 0, 700, { throttle: 1 }),
      ...arc(lesson, [2200, 400], 400, 0, 90, 750),
      at(lesson, 2600, 700, 800, { throttle: 1 }),
      at(lesson, 2600, 1200, 900, { throttle: 1 }),
    ];
    const seen = watchMoments(lesson, moments);
    expect(seen.legs).toEqual(['final', 'go-around', 'turn-to-crosswind', 'crosswind']);
    expect(seen.circuits).toEqual([1, 1, 2, 2]);
    expect(seen.memory.goArounds).toHaveLength(1);
  });

  it('see a go-around that begins on base, before it turns along the runway', () => {
    const { lesson } = lessonOf();
    const moments = [
      at(lesson, -1800, 1800, 600),
      at(lesson, -1800, 1300, 500),
      at(lesson, -1800, 700, 620, { throttle: 1 }),
      ...arc(lesson, [-1400, 400], 400, -90, 0, 650).map((m, i) => ({
        ...m,
        throttle: 1,
        heightM: m.heightM + 0.6 * i,
      })),
      at(lesson, 0, 0, 800, { throttle: 1 }),
      at(lesson, 1500, 0, 950, { throttle: 1 }),
    ];
    const seen = watchMoments(lesson, moments);
    expect(seen.legs).toEqual(['base', 'go-around']);
    expect(seen.memory.goArounds).toHaveLength(1);
  });

  it('describe one long turn from upwind to downwind', () => {
    const { lesson } = lessonOf();
    const moments = [
      at(lesson, 1500, 0, 400, { throttle: 1 }),
      at(lesson, 2500, 0, 700, { throttle: 1 }),
      ...arc(lesson, [2500, 800], 800, 0, 180, 900),
      at(lesson, 2400, 1600, 1000),
      at(lesson, 0, 1600, 1000),
    ];
    expect(watchMoments(lesson, moments).legs).toEqual([
      'upwind',
      'turn-to-crosswind',
      'turn-to-downwind',
      'downwind',
    ]);
  });

  it('describe a circuit to the wrong side by where it is', () => {
    const { lesson, plan } = lessonOf();
    const { runway } = lesson;
    const mirrored = plannedMoments(plan).map((m) => {
      const along = m.eastM * runway.sinHeading + m.northM * runway.cosHeading;
      const across = m.eastM * runway.cosHeading - m.northM * runway.sinHeading;
      return { ...m, eastM: eastOf(runway, along, -across), northM: northOf(runway, along, -across) };
    });
    const seen = watchMoments(lesson, mirrored, undefined, (s) => {
      s.bankRad = -s.bankRad;
    });
    expect(seen.legs).toEqual(WHOLE);
  });

  it('say when the flight goes away, and when it comes back', () => {
    const { lesson } = lessonOf();
    const seen = watchMoments(lesson, [
      at(lesson, 1500, 0, 700),
      at(lesson, 9000, 0, 1000),
      at(lesson, 9500, 400, 1000),
      at(lesson, 2000, 400, 1000),
    ]);
    expect(seen.legs[1]).toBe('left-the-circuit');
    expect(seen.legs.at(-1)).toBe('downwind');
  });

  it('call a given-up take-off stopped without a landing', () => {
    const { lesson } = lessonOf();
    const ground = { onGround: true, throttle: 1, speedMps: 15 } as const;
    const seen = watchMoments(lesson, [
      at(lesson, 10, 0, 0, { ...ground, standS: 2 }),
      at(lesson, 150, 0, 0, { ...ground, throttle: 0 }),
      at(lesson, 250, 0, 0, { ...ground, throttle: 0, standS: 3 }),
    ]);
    expect(seen.legs).toEqual(['line-up', 'take-off-roll', 'stopped']);
    expect(seen.memory.touchdowns).toHaveLength(0);
  });
});
