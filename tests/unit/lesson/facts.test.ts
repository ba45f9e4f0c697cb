// Good and bad flights drawn by hand: a rule must praise the one and catch the other.
import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/lesson/judge/assess.ts';
import { endingOf } from '../../../src/lesson/judge/outcome.ts';
import type { Snapshot } from '../../../src/simulation/snapshot.ts';
import { mpsFromKt, radFromDeg } from '../../../src/units/conversions.ts';
import { lessonOf, type Moment, plannedMoments, watchMoments } from '../../support/synthetic-flight.ts';

const { lesson, plan } = lessonOf();
const moments = plannedMoments(plan);
const fly = (change: (s: Snapshot) => void = () => {}, path: readonly Moment[] = moments) =>
  watchMoments(lesson, path, undefined, change);
const reportOf = (change?: (s: Snapshot) => void, path?: readonly Moment[]) =>
  assess(fly(change, path).memory, lesson);
/** Late on final, whatever the detection says. */
const onFinal = (s: Snapshot) => s.heightM < 100 && s.heightM > 20 && s.timeS > 200;

describe('the gates', () => {
  it('find the planned approach stabilised, two and two on the lights', () => {
    const { gates } = reportOf();
    expect(gates.map((g) => g.height_ft)).toEqual([300, 200]);
    for (const gate of gates) {
      expect(gate.why).toEqual([]);
      expect(gate.stabilised).toBe(true);
      expect(gate.lights).toBe('WWRR');
      // Inside the on-slope sector of the lights: 10 minutes of arc either side (ICAO Annex 14)
      expect(Math.abs(gate.slope_deg - 3)).toBeLessThan(10 / 60);
      // 3 degrees at a groundspeed: v tan 3
      expect(Math.abs(gate.sink_fpm - 70 * 1.68781 * 60 * Math.tan(radFromDeg(3)))).toBeLessThan(8);
    }
  });

  it.each([
    [
      'fast',
      (s: Snapshot) => {
        s.iasMps += mpsFromKt(15);
      },
      /15 kt fast/,
    ],
    [
      'slow',
      (s: Snapshot) => {
        s.iasMps -= mpsFromKt(8);
      },
      /8 kt slow/,
    ],
    [
      'banked',
      (s: Snapshot) => {
        s.bankRad = radFromDeg(14);
      },
      /banked 14 deg, allowed 10 deg/,
    ],
    [
      'without flap',
      (s: Snapshot) => {
        s.flapStage = 0;
      },
      /flap stage 0, wanted/,
    ],
    [
      'at idle',
      (s: Snapshot) => {
        s.throttle = 0;
      },
      /power at idle/,
    ],
    [
      'sinking',
      (s: Snapshot) => {
        s.indicatedVerticalSpeedMps = -6;
      },
      /sinking 1181 ft\/min/,
    ],
    [
      'wide',
      (s: Snapshot) => {
        s.eastM += 80;
      },
      /m right of the centreline/,
    ],
    [
      'high',
      (s: Snapshot) => {
        s.heightM += 25;
      },
      /high: \d\.\d deg to the aim point/,
    ],
    [
      'low',
      (s: Snapshot) => {
        s.heightM -= 15;
      },
      /low: \d\.\d deg to the aim point/,
    ],
  ] as const)('catch an approach that is %s', (_, change, sentence) => {
    const { gates, safety } = reportOf((s) => {
      if (onFinal(s)) change(s);
    });
    expect(gates.some((g) => g.why.some((why) => sentence.test(why)))).toBe(true);
    expect(safety.some((s) => /went on without going around: not stabilised/.test(s.what))).toBe(true);
  });
});

describe('the touchdown', () => {
  it('is timed and measured by the straight line through the ground', () => {
    // Down the last metre at 1.2 m/s (236 ft/min), 30 m/s along the centreline
    const { runway } = lesson;
    const at = (along: number, clear: number, more: Partial<Moment> = {}): Moment => ({
      eastM: along * runway.sinHeading,
      northM: along * runway.cosHeading,
      heightM: clear,
      speedMps: 30,
      throttle: 0,
      ...more,
    });
    const { touchdowns } = reportOf(undefined, [
      at(-1000, 60),
      at(300, 6),
      at(450, 0),
      at(450.1, 0, { onGround: true }),
      at(700, 0, { onGround: true, standS: 3 }),
    ]);
    expect(touchdowns).toHaveLength(1);
    const [t] = touchdowns;
    expect(t?.past_threshold_m).toBeCloseTo(450, -0.5);
    expect(t?.past_specified_m).toBeCloseTo((t?.past_threshold_m ?? 0) - runway.specifiedM, 1);
    expect(t?.past_aim_m).toBeCloseTo((t?.past_threshold_m ?? 0) - runway.aimM, 1);
    expect(t?.drift_kt).toBeCloseTo(0, 1);
    expect(t?.crab_deg).toBeCloseTo(0, 1);
    expect(t?.bounces).toBe(0);
  });

  it('tells drift, crab and the side of the centreline with their signs', () => {
    const right = (s: Snapshot) => {
      if (s.timeS < 60) return;
      const { headingRadT } = lesson.runway;
      s.headingRadT = headingRadT - radFromDeg(6);
      s.velocityEastMps += 2 * Math.cos(headingRadT);
      s.velocityNorthMps -= 2 * Math.sin(headingRadT);
      s.eastM += 3 * Math.cos(headingRadT);
      s.northM -= 3 * Math.sin(headingRadT);
    };
    const { touchdowns, items } = reportOf(right);
    expect(touchdowns[0]?.crab_deg).toBeCloseTo(-6, 1);
    expect(touchdowns[0]?.drift_kt).toBeCloseTo(2 / 0.51444, 1);
    expect(touchdowns[0]?.centreline_m).toBeCloseTo(3, 1);
    expect(items.find((i) => i.id === 'touchdown-drift')?.band).toBe('red');
    expect(items.find((i) => i.id === 'touchdown-crab')?.band).toBe('amber');
    expect(items.find((i) => i.id === 'touchdown-centreline')?.band).toBe('green');
  });
});

describe('the items', () => {
  const report = reportOf();
  const item = (id: string, from = report) => from.items.find((i) => i.id === id);

  it('find a flight along the plan green in height, track and spacing', () => {
    for (const id of [
      'upwind-height',
      'crosswind-height',
      'downwind-height',
      'base-height',
      'final-height',
    ]) {
      expect(item(id)?.band).toBe('green');
    }
    for (const id of [
      'upwind-track',
      'downwind-track',
      'base-track',
      'final-track',
      'downwind-spacing',
      'base-turn-angle',
    ]) {
      expect(item(id)?.band).toBe('green');
    }
    expect(report.safety).toEqual([]);
  });

  it('find the same flight 250 ft high red in height', () => {
    const high = reportOf((s) => {
      if (s.heightM > 250) s.heightM += 76;
    });
    expect(item('downwind-height', high)?.band).toBe('red');
  });

  it('find a downwind half a mile too wide red in spacing', () => {
    const wide = reportOf((s) => {
      if (s.heightM < 200) return;
      s.eastM -= 926 * Math.cos(lesson.runway.headingRadT);
      s.northM += 926 * Math.sin(lesson.runway.headingRadT);
    });
    expect(item('downwind-spacing', wide)?.band).toBe('red');
  });

  it('carry a unit, a source and a known band each, and no id twice', () => {
    for (const i of report.items) {
      expect(i.source.length).toBeGreaterThan(5);
      expect(['green', 'amber', 'red', 'not-judged']).toContain(i.band);
      if (i.low !== null && i.high !== null) expect(i.low).toBeLessThanOrEqual(i.high);
    }
    expect(new Set(report.items.map((i) => i.id)).size).toBe(report.items.length);
  });
});

describe('safety stops', () => {
  it.each([
    [
      'slow',
      (s: Snapshot) => {
        s.iasMps = 1.15 * s.stallIasMps;
      },
      /below 1.2 times the stalling speed/,
    ],
    [
      'with the warner on',
      (s: Snapshot) => {
        s.warner = true;
      },
      /the stall warner sounded/,
    ],
    [
      'steeply banked',
      (s: Snapshot) => {
        s.bankRad = radFromDeg(45);
      },
      /45 deg of bank at \d+ ft, allowed 40 deg/,
    ],
    [
      'under four reds',
      (s: Snapshot) => {
        s.eyeHeightM -= 40;
      },
      /all lights red and sinking/,
    ],
  ] as const)('catch a final flown %s', (_, change, sentence) => {
    const low = (s: Snapshot) => {
      if (s.heightM < 110 && s.heightM > 30 && s.timeS > 200) change(s);
    };
    expect(
      reportOf(low)
        .safety.map((s) => s.what)
        .join('\n'),
    ).toMatch(sentence);
  });

  it('leave the hold-off alone', () => {
    const { safety } = reportOf((s) => {
      if (s.timeS > 200 && s.heightM < 4) s.iasMps = 0.9 * s.stallIasMps;
    });
    expect(safety).toEqual([]);
  });

  it('allow no gust of half a second to be a fault', () => {
    const { safety } = reportOf((s) => {
      if (onFinal(s) && s.timeS % 10 < 0.5) s.iasMps = 1.1 * s.stallIasMps;
    });
    expect(safety).toEqual([]);
  });
});

describe('a go-around', () => {
  const path = (): Moment[] => {
    const low = moments.findIndex((m, i) => i > 200 && m.heightM < 50);
    const { runway } = lesson;
    const up = { throttle: 1, speedMps: mpsFromKt(70) };
    const at = (along: number, heightM: number): Moment => ({
      eastM: along * runway.sinHeading,
      northM: along * runway.cosHeading,
      heightM,
      ...up,
    });
    return [...moments.slice(0, low), at(0, 45), at(2500, 180)];
  };

  it('from a good approach is safe, not needed, and never red', () => {
    const { go_arounds, items, safety } = reportOf(undefined, path());
    expect(go_arounds).toHaveLength(1);
    expect(go_arounds[0]).toMatchObject({ due_at_s: null, why: 'safe, not needed' });
    expect(items.find((i) => i.id === 'go-around')?.band).toBe('green');
    expect(safety).toEqual([]);
  });

  it('after an unstabilised gate says when it was due and why', () => {
    const { go_arounds } = reportOf((s) => {
      if (s.heightM < 75 && s.heightM > 40 && s.timeS > 200 && s.throttle < 1) s.iasMps += 10;
    }, path());
    expect(go_arounds).toHaveLength(1);
    expect(go_arounds[0]?.due_at_s).not.toBeNull();
    expect(go_arounds[0]?.why).toMatch(/not stabilised at 200 ft: \d+ kt fast/);
  });
});

describe('the outcome', () => {
  it('of the planned flight is a stop, with the runway that is left', () => {
    const { memory } = fly();
    expect(endingOf(memory, lesson)).toMatchObject({
      outcome: 'stopped',
      why: /^Stopped \d+ m past the threshold/,
    });
    const { stop } = assess(memory, lesson);
    expect(stop?.remaining_m).toBeCloseTo(lesson.runway.surfaceEndM - (stop?.past_threshold_m ?? 0), 1);
  });

  it('is open while the flight goes on', () => {
    expect(endingOf(fly(undefined, moments.slice(0, 100)).memory, lesson)).toBeNull();
  });

  it('off the side of the runway is ran-off, beside it from the air landed-out', () => {
    const off = fly((s) => {
      if (s.timeS > 200 && s.onGround && s.groundspeedMps < 15) s.onRunway = false;
    });
    expect(endingOf(off.memory, lesson)?.outcome).toBe('ran-off');
    const out = fly((s) => {
      if (s.timeS > 200) s.onRunway = false;
    });
    expect(endingOf(out.memory, lesson)?.outcome).toBe('landed-out');
  });

  it('of a roll that never stops is told once the runway is far behind', () => {
    const rolling = fly((s) => {
      if (s.timeS < 200 || !s.onGround || s.groundspeedMps > 15) return;
      s.onRunway = false;
      s.parked = false;
      s.groundspeedMps = 15;
      s.eastM += 150 * lesson.runway.cosHeading;
      s.northM -= 150 * lesson.runway.sinHeading;
    });
    expect(endingOf(rolling.memory, lesson)).toMatchObject({
      outcome: 'ran-off',
      why: /^Left the runway while rolling and was \d+ m off it, still moving/,
    });
  });

  it('is what the physics says when it ended the flight', () => {
    const { memory, legs } = fly((s) => {
      if (s.timeS < 100) return;
      s.ended = 'crashed';
      s.endedWhy = 'a wing tip met the ground';
    });
    expect(legs.at(-1)).toBe('crashed');
    expect(endingOf(memory, lesson)).toEqual({ outcome: 'crashed', why: 'a wing tip met the ground' });
  });
});

describe('the memory', () => {
  it('is plain data: a copy through JSON gives the same report', () => {
    const { memory } = fly();
    expect(assess(JSON.parse(JSON.stringify(memory)), lesson)).toEqual(assess(memory, lesson));
  });
});
