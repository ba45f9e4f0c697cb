// The safety stops at their edges. Limits are the lesson's own (common practice): 1.2 Vs sqrt(n) or the warner with the
// wheels between 20 and 500 ft and never in the hold-off, 40 deg of bank below 500 ft, 30 deg in the turn to final
// (the 30 deg is published), four reds and sinking above
// 200 ft and more than 0.5 NM out. Units: 1 kt = 1852 m/h, 1 ft = 0.3048 m, 1 NM = 1852 m.
import { describe, expect, it } from 'vitest';
import { assess } from '../../src/lesson/judge/assess.ts';
import type { Lesson } from '../../src/lesson/lesson.ts';
import type { Snapshot } from '../../src/simulation/snapshot.ts';
import { PLAIN_TASK } from '../../src/simulation/task.ts';
import { BANK_LIMITS, STALL_BY_BANK_TIMES } from '../reference/circuit.ts';
import { lessonOf, plannedMoments, watchMoments } from '../support/synthetic-flight.ts';

const KT = 1852 / 3600;
const FT = 0.3048;
const DEG = Math.PI / 180;
/** The drawn flight stalls at 45 kt in every configuration. */
const STALL_KT = 45;

const { lesson, plan } = lessonOf();
const moments = plannedMoments(plan);

type Change = (s: Snapshot) => void;
const stopsOf = (change: Change, over: Partial<Lesson> = {}): string[] => {
  const mine = { ...lesson, ...over };
  return assess(watchMoments(mine, moments, undefined, change).memory, mine).safety.map(({ what }) => what);
};

/** After the top of the circuit, with the wheels between two heights. */
const coming =
  (lowFt: number, highFt: number, change: Change): Change =>
  (s) => {
    const ft = s.wheelClearanceM / FT;
    if (s.timeS > 150 && ft > lowFt && ft < highFt) change(s);
  };
const going =
  (lowFt: number, highFt: number, change: Change): Change =>
  (s) => {
    const ft = s.wheelClearanceM / FT;
    if (s.timeS < 120 && ft > lowFt && ft < highFt) change(s);
  };
const at =
  (kt: number): Change =>
  (s) => {
    s.iasMps = kt * KT;
  };
const SLOW = /below 1\.2 times the stalling speed/;

it('the drawn flight itself has none', () => {
  expect(stopsOf(() => {})).toEqual([]);
});

describe('below 1.2 Vs sqrt(n)', () => {
  const slow = (s: Change): boolean => stopsOf(s).some((what) => SLOW.test(what));

  it('is 54 kt where the aeroplane stalls at 45 kt', () => {
    expect(slow(coming(60, 300, at(1.2 * STALL_KT - 0.3)))).toBe(true);
    expect(slow(coming(60, 300, at(1.2 * STALL_KT + 0.3)))).toBe(false);
  });

  it.each(STALL_BY_BANK_TIMES.rows)(
    'is higher in a turn: at %d degrees, held level, %d times',
    (bankDeg, times) => {
      const turning =
        (kt: number): Change =>
        (s) => {
          s.loadFactor = 1 / Math.cos(bankDeg * DEG);
          at(kt)(s);
        };
      // The table rounds to 0.005: 0.3 kt of 54
      expect(slow(coming(60, 300, turning(1.2 * STALL_KT * times - 0.6)))).toBe(true);
      expect(slow(coming(60, 300, turning(1.2 * STALL_KT * times + 0.6)))).toBe(false);
    },
  );

  it('counts with the wheels between 20 and 500 ft only', () => {
    expect(slow(coming(505, 1200, at(40)))).toBe(false);
    expect(slow(coming(420, 495, at(40)))).toBe(true);
    expect(slow(coming(0, 19, at(40)))).toBe(false);
    expect(slow(coming(21, 60, at(40)))).toBe(true);
  });

  it('waits after the lift-off for the speed that is still being gained, up to the screen height of 50 ft', () => {
    expect(slow(going(0, 48, at(50)))).toBe(false);
    expect(slow(going(52, 200, at(50)))).toBe(true);
  });

  it('has to last a second: a gust is not the pilot', () => {
    const forS =
      (seconds: number): Change =>
      (s) => {
        if (s.timeS % 30 < seconds) at(50)(s);
      };
    expect(slow(coming(60, 1200, forS(0.7)))).toBe(false);
    expect(slow(coming(60, 500, forS(1.6)))).toBe(true);
  });
});

describe('the stall warner', () => {
  const warned = (change: Change): boolean =>
    stopsOf(change).some((what) => /stall warner sounded/.test(what));
  // The drawn flight keeps what it is given: put out again, it is on only there
  const sounding =
    (lowFt: number, highFt: number): Change =>
    (s) => {
      s.warner = false;
      coming(lowFt, highFt, (seen) => {
        seen.warner = true;
      })(s);
    };

  it('counts between 20 and 500 ft, not above and not in the hold-off', () => {
    expect(warned(sounding(60, 300))).toBe(true);
    expect(warned(sounding(505, 1200))).toBe(false);
    expect(warned(sounding(0, 14))).toBe(false);
  });
});

describe('bank', () => {
  const banked =
    (deg: number): Change =>
    (s) => {
      s.bankRad = deg * DEG;
    };
  const steep = (change: Change): boolean => stopsOf(change).some((what) => /allowed 40 deg/.test(what));

  it('counts above 40 degrees, below 500 ft', () => {
    expect(steep(going(250, 480, banked(41)))).toBe(true);
    expect(steep(going(250, 480, banked(39)))).toBe(false);
    expect(steep(going(250, 480, banked(-41)))).toBe(true);
    expect(steep(going(505, 1200, banked(55)))).toBe(false);
  });

  it('counts above 30 degrees in the turn to final', () => {
    // Only while the drawn aeroplane turns, so that it is still the turn to final
    const turning =
      (deg: number): Change =>
      (s) => {
        if (Math.abs(s.bankRad) > 15 * DEG) s.bankRad = plan.side * deg * DEG;
      };
    const stops = (deg: number) =>
      stopsOf(coming(250, 480, turning(deg))).filter((what) => /turn to final, allowed 30 deg/.test(what));
    const [, [, allowedDeg]] = BANK_LIMITS.rows;
    expect(stops(allowedDeg - 1)).toEqual([]);
    expect(stops(allowedDeg + 1).length).toBeGreaterThan(0);
  });
});

describe('four reds', () => {
  const low: Change = (s) => {
    s.eyeHeightM -= 40;
  };
  const red = (change: Change, over: Partial<Lesson> = {}): boolean =>
    stopsOf(change, over).some((what) => /all lights red and sinking/.test(what));
  const { runway } = lesson;
  const lights = runway.lights as NonNullable<typeof runway.lights>;

  it('while sinking, above 200 ft and more than half a mile out', () => {
    expect(red(coming(205, 330, low))).toBe(true);
    expect(red(coming(20, 195, low))).toBe(false);
  });

  it('do not count in level flight, on the way to meeting the slope', () => {
    expect(
      red(
        coming(205, 330, (s) => {
          low(s);
          s.verticalSpeedMps = 0;
        }),
      ),
    ).toBe(false);
  });

  it('do not count less than half a mile from the threshold', () => {
    // The whole flight seen 700 m further along: 200 ft and more only inside half a mile
    const along = coming(205, 330, (s) => {
      low(s);
      s.eastM += 700 * runway.sinHeading;
      s.northM += 700 * runway.cosHeading;
    });
    expect(red(along)).toBe(false);
  });

  it('do not count where the aim point is not at the lights, nor where the chosen approach is flatter than they are', () => {
    expect(red(coming(205, 330, low), { runway: { ...runway, aimM: lights.alongM - 120 } })).toBe(false);
    expect(red(coming(205, 330, low), { plan: { ...plan, approachRad: 2.4 * DEG } })).toBe(false);
    expect(red(coming(205, 330, low), { plan: { ...plan, approachRad: 3 * DEG } })).toBe(true);
  });

  it('do not count without lights, nor outside their beam', () => {
    expect(red(coming(205, 330, low), { runway: { ...runway, lights: null } })).toBe(false);
    const aside = coming(205, 330, (s) => {
      low(s);
      s.eyeEastM += 900 * runway.cosHeading;
      s.eyeNorthM -= 900 * runway.sinHeading;
    });
    expect(red(aside)).toBe(false);
  });
});

describe('on below a gate without being stabilised', () => {
  it('is one, for each trigger that was not answered, also when someone called', () => {
    const fast = coming(150, 295, (s) => {
      s.iasMps += 15 * KT;
    });
    expect(stopsOf(fast).join()).toMatch(
      /went on without going around: not stabilised at 200 ft: 1\d kt fast/,
    );
    const called = {
      task: { ...PLAIN_TASK, instructions: [{ what: 'go-around', circuit: 1, atHeightFt: 150 } as const] },
    };
    expect(stopsOf(() => {}, called).join()).toMatch(/went on without going around: a go-around was called/);
  });
});
