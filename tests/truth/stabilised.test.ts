// The gates and the go-around triggers at their edges. Where each figure is from:
// gate 500 ft: Flight Safety Foundation, visual conditions; that it decides on a final longer than 1.5 NM, 300 ft in a
// circuit, 200 ft last call: common practice; bank within 10 deg, half a degree of slope: common practice; the rest
// stands in tests/reference/circuit.ts.
import { describe, expect, it } from 'vitest';
import { centrelineAllowedM, GATES_FT, mostSinkMps } from '../../src/circuit/stabilised.ts';
import type { CircuitPlan } from '../../src/circuit/types.ts';
import { assess } from '../../src/lesson/judge/assess.ts';
import type { GateReport } from '../../src/lesson/judge/report.ts';
import { RULES } from '../../src/lesson/judge/rules.ts';
import { COMMERCIAL, EASA_LICENCE_TEST, FAA_LICENCE_TEST } from '../../src/lesson/judge/tolerances.ts';
import type { Lesson } from '../../src/lesson/lesson.ts';
import type { CircuitFacts } from '../../src/lesson/watch/facts.ts';
import type { Snapshot } from '../../src/simulation/snapshot.ts';
import { PLAIN_TASK } from '../../src/simulation/task.ts';
import {
  EASA_LIMITS,
  FAA_LIMITS,
  LANDING_POINT,
  MOST_SINK,
  SINK_ON_A_SLOPE,
  STABILISED_BY,
} from '../reference/circuit.ts';
import { plannedCircuit } from '../support/circuits.ts';
import { lessonOf, type Moment, plannedMoments, watchMoments } from '../support/synthetic-flight.ts';

const KT = 1852 / 3600;
const FT = 0.3048;
const NM = 1852;
const DEG = Math.PI / 180;
const FPM = FT / 60;

const { lesson, plan } = lessonOf();
const moments = plannedMoments(plan);
type Change = (s: Snapshot) => void;

const low =
  (change: Change): Change =>
  (s) => {
    if (s.timeS > 150 && s.wheelClearanceM > 20 && s.wheelClearanceM < 100) change(s);
  };
const watched = (
  change: Change,
  mine: Lesson,
  limits = FAA_LICENCE_TEST,
  path: readonly Moment[] = moments,
) => assess(watchMoments(mine, path, undefined, change, limits).memory, mine, limits);
const lastGate = (change: Change, over: Partial<Lesson> = {}, limits = FAA_LICENCE_TEST): GateReport => {
  const { gates } = watched(low(change), { ...lesson, ...over }, limits);
  return gates.at(-1) as GateReport;
};
const faster =
  (kt: number): Change =>
  (s) => {
    s.iasMps += kt * KT;
  };
const sinking =
  (fpm: number): Change =>
  (s) => {
    s.indicatedVerticalSpeedMps = -fpm * FPM;
  };
const banked =
  (deg: number): Change =>
  (s) => {
    s.bankRad = deg * DEG;
  };

describe('the sources of the gates', () => {
  it('have the published one first, and say that the others are practice', () => {
    const [[, publishedFt]] = STABILISED_BY.rows;
    const sources = GATES_FT.map((ft) => {
      const rule = RULES.find(({ id }) => id === `gate-${ft}`);
      return [ft, rule?.against({} as CircuitFacts, FAA_LICENCE_TEST.allowed).source ?? ''] as const;
    });
    expect(
      sources.filter(([, source]) => /visual conditions, ALAR 7\.1/.test(source)).map(([ft]) => ft),
    ).toEqual([publishedFt]);
    expect(sources.filter(([, source]) => /: common practice$/.test(source)).map(([ft]) => ft)).toEqual([
      300, 200,
    ]);
  });
});

describe('the gates', () => {
  it('of a circuit are at 300 and 200 ft; the one at 500 ft only on a final longer than 1.5 NM', () => {
    expect(watched(() => {}, lesson).gates.map((g) => g.height_ft)).toEqual([300, 200]);
    const onto = (nmi: number): number[] => {
      const { sinHeading, cosHeading, aimM } = lesson.runway;
      const at = (alongM: number, heightM: number): Moment => ({
        eastM: alongM * sinHeading,
        northM: alongM * cosHeading,
        heightM,
        speedMps: 65 * KT,
      });
      const outM = nmi * NM;
      const slope = Math.tan(3 * DEG);
      const height = (alongM: number): number => (aimM - alongM) * slope;
      // Off the slope all the way: only a gate that decides makes a go-around due
      const path = [at(-outM, height(-outM) + 60), at(-300, height(-300) + 60), at(400, 30)];
      const { safety } = watched(() => {}, lesson, FAA_LICENCE_TEST, path);
      return safety.flatMap(({ what }) =>
        [...what.matchAll(/not stabilised at (\d+) ft/g)].map((m) => Number(m[1])),
      );
    };
    expect(onto(1.7)).toContain(500);
    expect(onto(1.4)).not.toContain(500);
    expect(onto(1.4)).toContain(300);
  });

  const faa = FAA_LIMITS.rows[3];
  const easa = EASA_LIMITS.rows[4];
  it.each([
    ['FAA licence test', FAA_LICENCE_TEST, faa[2], faa[1]],
    ['EASA licence test', EASA_LICENCE_TEST, easa[2], easa[1]],
    // From memory: tolerances.test.ts checks that the set says so
    ['commercial', COMMERCIAL, 5, 5],
  ] as const)('hold the approach speed to the %s', (_, limits, above, below) => {
    expect(lastGate(faster(above - 0.3), {}, limits).stabilised).toBe(true);
    expect(lastGate(faster(above + 0.6), {}, limits).why.join()).toMatch(/kt fast/);
    expect(lastGate(faster(-below + 0.3), {}, limits).stabilised).toBe(true);
    expect(lastGate(faster(-below - 0.6), {}, limits).why.join()).toMatch(/kt slow/);
  });

  it('allow 10 degrees of bank, either way', () => {
    for (const side of [1, -1]) {
      expect(lastGate(banked(9.5 * side)).stabilised).toBe(true);
      expect(lastGate(banked(10.6 * side)).why.join()).toMatch(/banked 1[01] deg, allowed 10 deg/);
    }
  });

  it('allow half a degree either side of the planned slope', () => {
    const off =
      (deg: number): Change =>
      (s) => {
        const along = s.eastM * lesson.runway.sinHeading + s.northM * lesson.runway.cosHeading;
        s.heightM = (lesson.runway.aimM - along) * Math.tan((3 + deg) * DEG);
      };
    expect(lastGate(off(0.4)).stabilised).toBe(true);
    expect(lastGate(off(0.6)).why.join()).toMatch(/high: 3\.6 deg/);
    expect(lastGate(off(-0.4)).stabilised).toBe(true);
    expect(lastGate(off(-0.6)).why.join()).toMatch(/low: 2\.4 deg/);
  });

  it('want the flap of the plan and some power, but a glide neither, and a slip no power', () => {
    const idle: Change = (s) => {
      s.throttle = 0;
    };
    const clean: Change = (s) => {
      s.flapStage = 0;
    };
    const by = (technique: 'glide' | 'slip') => ({ task: { ...PLAIN_TASK, technique } });
    expect(lastGate(idle).why).toEqual(['power at idle']);
    expect(lastGate(clean).why).toEqual(['flap stage 0, wanted 2']);
    expect(lastGate(idle, by('glide')).why).toEqual([]);
    expect(lastGate(idle, by('slip')).why).toEqual([]);
    expect(lastGate(clean, by('glide')).why).toEqual([]);
    // How fast, how straight and how banked is looked at in a glide too
    expect(lastGate(faster(14), by('glide')).why.join()).toMatch(/kt fast/);
  });

  it('want the wheels down where they come up', () => {
    const retractable = {
      ...lesson.aeroplane,
      undercarriage: { ...lesson.aeroplane.undercarriage, retractable: true },
    };
    const gear =
      (position: number): Change =>
      (s) => {
        s.gear = position;
      };
    expect(lastGate(gear(0.5), { aeroplane: retractable }).why).toEqual(['wheels not down']);
    expect(lastGate(gear(1), { aeroplane: retractable }).why).toEqual([]);
    expect(lastGate(gear(0)).why).toEqual([]);
  });
});

describe('the sink', () => {
  const finalAt = (verticalFpm: number): CircuitPlan => ({
    ...plan,
    legs: { ...plan.legs, final: { ...plan.legs.final, verticalSpeedMps: -verticalFpm * FPM } },
  });

  it('is never allowed above 1,000 ft/min, always up to 700, else 300 above the plan', () => {
    expect(mostSinkMps(finalAt(340)) / FPM).toBeCloseTo(700, 6);
    expect(mostSinkMps(finalAt(500)) / FPM).toBeCloseTo(800, 6);
    expect(mostSinkMps(finalAt(900)) / FPM).toBeCloseTo(MOST_SINK.rows[0][0], 6);
  });

  it('of a normal final is within it by far, and beyond it is told', () => {
    expect(lastGate(sinking(690)).stabilised).toBe(true);
    expect(lastGate(sinking(715)).why.join()).toMatch(/sinking 71\d ft\/min, allowed 700 ft\/min/);
  });

  it.each(SINK_ON_A_SLOPE.rows)(
    'of a planned final at %d degrees is that of the table for %d kt over the ground',
    (deg, kt, fpm) => {
      // A wind down the runway brings the groundspeed of the plan to the one of the table
      const still = plannedCircuit(
        'curlew-sands',
        '22',
        {},
        { approachRad: deg * DEG, descentFrom: 'base-turn' },
      );
      const { final } = still.legs;
      expect(still.approachRad / DEG).toBeCloseTo(deg, 1);
      const ratio = (-final.verticalSpeedMps / FPM) * ((kt * KT) / final.groundspeedMps);
      expect(Math.abs(ratio - fpm)).toBeLessThan(0.03 * fpm);
    },
  );
});

describe('the centreline', () => {
  it('is 2 degrees either side seen from the aim point, never narrower than the runway', () => {
    // tan 2 degrees = 0.0349: at 1,000 m 34.9 m; common practice
    expect(centrelineAllowedM(plan, 1000)).toBeCloseTo(1000 * Math.tan(2 * DEG), 0);
    expect(centrelineAllowedM(plan, 10)).toBe(plan.runway.widthM / 2);
  });
});

describe('a go-around is due', () => {
  const float = (alongOfTouchM: number): readonly string[] => {
    const { runway } = lesson;
    const at = (alongM: number, clearM: number, more: Partial<Moment> = {}): Moment => ({
      eastM: alongM * runway.sinHeading,
      northM: alongM * runway.cosHeading,
      heightM: clearM,
      speedMps: 30,
      throttle: 0,
      ...more,
    });
    const ground = { onGround: true };
    const path = [
      at(-1000, 60),
      at(250, 2),
      at(alongOfTouchM - 4, 0.6),
      at(alongOfTouchM, 0),
      at(alongOfTouchM + 0.1, 0, ground),
      at(alongOfTouchM + 150, 0, { ...ground, standS: 3 }),
    ];
    const mine = lesson;
    const { memory } = watchMoments(mine, path);
    return memory.dues.map(({ why }) => why).filter((why) => why.startsWith('not down'));
  };

  it('when not down in the first third, where the point stands so that this is beyond 400 ft past it', () => {
    const { landingLengthM, specifiedM } = lesson.runway;
    // Here the point lies at 420 m of 920: 400 ft beyond it, 542 m, is the later of the two
    const [[share, beyondFt]] = LANDING_POINT.rows;
    const latestM = Math.max(landingLengthM * share, specifiedM + beyondFt * FT);
    expect(latestM).toBeCloseTo(542, 0);
    expect(float(latestM - 30)).toEqual([]);
    expect(float(latestM + 90)).toEqual(['not down 542 m past the threshold']);
  });
});
