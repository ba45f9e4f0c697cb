// A go-around is never wrong (design/lesson.md): from any point of an approach it raises no safety stop and makes
// nothing red, asked for or not; what was not stabilised and is answered by it is not held against anybody.
import { describe, expect, it } from 'vitest';
import { assess } from '../../src/lesson/judge/assess.ts';
import type { Report } from '../../src/lesson/judge/report.ts';
import { createPilot } from '../../src/pilot/pilot.ts';
import { PLAIN_TASK } from '../../src/simulation/task.ts';
import { aeroplaneFiles, aeroplaneNamed } from '../support/aeroplanes.ts';
import { flyExercise } from '../support/fly-exercise.ts';
import { seeFlight } from '../support/seen-flight.ts';
import { lessonOf, type Moment, plannedMoments, watchMoments } from '../support/synthetic-flight.ts';

const FT = 0.3048;
const KT = 1852 / 3600;
const { lesson, plan } = lessonOf();
const moments = plannedMoments(plan);

const redOf = ({ items }: Report): string[] => items.filter(({ band }) => band === 'red').map(({ id }) => id);
const rowOf = ({ items }: Report, id: string) => items.find((item) => item.id === id);

/** Drawn by hand: the planned circuit up to a moment, then straight ahead and up with full power. */
const awayFrom = (from: number): Report => {
  const { runway } = lesson;
  const last = moments[from] as Moment;
  const climb = (metres: number): Moment => ({
    eastM: last.eastM + metres * runway.sinHeading,
    northM: last.northM + metres * runway.cosHeading,
    heightM: Math.max(last.heightM, 1) + 0.1 * metres,
    throttle: 1,
    speedMps: 70 * KT,
  });
  const path = [...moments.slice(0, from + 1), climb(40), climb(1200), climb(2500)];
  return assess(watchMoments(lesson, path).memory, lesson);
};

describe('drawn by hand, going around', () => {
  const landing = moments.findIndex((m, i) => i > 100 && m.onGround === true);
  const heights = [400, 350, 300, 290, 250, 210, 190, 150, 100, 60, 30, 15, 5];
  const points = heights.map((ft) => {
    const at = moments.findIndex(
      (m, i) => i > 100 && i < landing && m.turning !== true && m.heightM < ft * FT,
    );
    return [ft, at] as const;
  });

  it.each(points)('below %d ft is safe, not needed, and nothing else is said against it', (_, from) => {
    const report = awayFrom(from);
    expect(report.go_arounds).toMatchObject([{ due_at_s: null, why: 'safe, not needed' }]);
    expect(rowOf(report, 'go-around')?.band).toBe('green');
    expect(report.safety).toEqual([]);
    const whole = assess(watchMoments(lesson, moments).memory, lesson);
    // Whatever the drawn flight has red by being drawn (one speed all the way round) it has without it too
    expect(redOf(report).filter((id) => !redOf(whole).includes(id))).toEqual([]);
  });
});

describe.each(aeroplaneFiles().map((file) => file.replace('.json', '')))('flown in the %s', (id) => {
  it.each([280, 220, 120, 60, 25, 8])(
    'at %d ft, with nobody asking for it, it is green and no safety stop',
    (atHeightFt) => {
      const report = seeFlight(() => {}, {
        exercise: 'final-and-landing',
        aeroplane: aeroplaneNamed(id),
        lesson: { task: PLAIN_TASK },
        task: { ...PLAIN_TASK, instructions: [{ what: 'go-around', circuit: 1, atHeightFt }] },
      });
      expect(report.go_arounds.map(({ why }) => why)).toEqual(['safe, not needed']);
      expect(rowOf(report, 'go-around')?.band).toBe('green');
      expect(report.safety).toEqual([]);
      expect(report.touchdowns.filter(({ circuit }) => circuit === 2)).toHaveLength(1);
      const first = report.items.filter(({ circuit }) => circuit === 1);
      expect(redOf({ ...report, items: first })).toEqual([]);
    },
  );
});

describe('a touch on the way', () => {
  it('with full power on already is part of the go-around and no landing; the same touch at idle is one', () => {
    const { runway } = lesson;
    const at = (alongM: number, clearM: number, throttle: number, onGround = false): Moment => ({
      eastM: alongM * runway.sinHeading,
      northM: alongM * runway.cosHeading,
      heightM: clearM,
      speedMps: 30,
      throttle,
      onGround,
    });
    // Down at 600 ft/min 600 m past the threshold, rolling for 200 m, and away
    const touching = (throttle: number): Report => {
      const path = [
        at(-1000, 60, 0.4),
        at(350, 4, 0.1),
        at(560, 4, throttle),
        at(600, 0, throttle),
        at(600.1, 0, throttle, true),
        at(800, 0, 1, true),
        at(800.1, 0.02, 1),
        at(2500, 170, 1),
      ];
      return assess(watchMoments(lesson, path).memory, lesson);
    };
    const away = touching(1);
    expect(away.go_arounds.map(({ why }) => why)).not.toEqual([]);
    expect(away.items.filter(({ id }) => /^touchdown|^float|^round-out|^brakes/.test(id))).toEqual([]);
    const landed = touching(0);
    expect(rowOf(landed, 'touchdown-sink')?.band).toBe('red');
  });
});

describe('the answer to an approach that is not stabilised', () => {
  it('is the go-around: the gate it answers is not held against anybody, and flown on it is', () => {
    const fast = (stopsAt: number) =>
      seeFlight(
        (s, m) => {
          if (
            m.legs.leg === 'final' &&
            m.legs.circuit === 1 &&
            s.heightM < 345 * FT &&
            s.heightM > stopsAt * FT
          )
            s.iasMps += 14 * KT;
        },
        {
          exercise: 'normal-circuit',
          lesson: { task: PLAIN_TASK },
          task: { ...PLAIN_TASK, instructions: [{ what: 'go-around', circuit: 1, atHeightFt: 285 }] },
        },
      );
    const answered = fast(270);
    expect(answered.go_arounds[0]?.why).toMatch(/^not stabilised at 300 ft/);
    expect(answered.gates[0]?.stabilised).toBe(false);
    expect(rowOf(answered, 'gate-300')).toMatchObject({ value: 1, band: 'not-judged' });
    expect(answered.safety).toEqual([]);

    const flownOn = seeFlight((s, m) => {
      if (m.legs.leg === 'final' && s.heightM < 345 * FT && s.heightM > 270 * FT) s.iasMps += 14 * KT;
    });
    expect(rowOf(flownOn, 'gate-300')?.band).toBe('red');
    expect(flownOn.safety.map(({ what }) => what).join()).toMatch(/went on without going around/);
  });

  it.each(['too-high-on-final', 'too-low-on-final', 'late-base-turn'])(
    'passes %s as a landing does',
    (exercise) => {
      const { result, verdict } = flyExercise(exercise, 3, {
        source: (model, its) =>
          createPilot(
            {
              ...model,
              scenario: {
                ...model.scenario,
                task: { ...PLAIN_TASK, instructions: [{ what: 'go-around', circuit: 1, atHeightFt: 260 }] },
              },
            },
            its,
          ),
      });
      expect(result.go_arounds.length).toBe(1);
      expect(verdict.against).toEqual([]);
      expect(verdict.passed).toBe(true);
    },
  );
});
