// For each row of the rules a scripted fault: laid over what the lesson sees of a good circuit flown by the model
// pilot, it is found by that row, and by no row that it has nothing to do with (issue "The lesson", 8).
import { describe, expect, it } from 'vitest';
import type { Aeroplane } from '../../src/aeroplane/schema.ts';
import { aerodromeNamed, aeroplaneNamed } from '../../src/catalogue.ts';
import { briefOf } from '../../src/circuit/brief/brief.ts';
import type { StretchBrief } from '../../src/circuit/brief/types.ts';
import { ALL_RULES } from '../../src/lesson/judge/rules.ts';
import type { LegName } from '../../src/lesson/names.ts';
import type { Snapshot } from '../../src/simulation/snapshot.ts';
import { PLAIN_TASK, type Task } from '../../src/simulation/task.ts';
import { mFromFt, mpsFromKt, radFromDeg } from '../../src/units/conversions.ts';
import { standardWeather } from '../support/circuits.ts';
import { type Fault, type SeenOptions, seeFlight } from '../support/seen-flight.ts';

interface Story extends SeenOptions {
  readonly fault: Fault;
  /** Rows that the same fault touches too, and why it must. */
  readonly also?: Readonly<Record<string, string>>;
  /** A safety stop belongs to it. */
  readonly safety?: RegExp;
}

const on =
  (leg: LegName, change: (s: Snapshot) => void): Fault =>
  (s, m) => {
    if (m.legs.leg === leg) change(s);
  };
/** Moves what is seen along and across the runway, metres. */
const shift = (s: Snapshot, { runway }: Parameters<Fault>[2], along: number, across: number): void => {
  s.eastM += along * runway.sinHeading + across * runway.cosHeading;
  s.northM += along * runway.cosHeading - across * runway.sinHeading;
};
const shiftOn =
  (leg: LegName, along: number, across: number, when: (s: Snapshot) => boolean = () => true): Fault =>
  (s, m, lesson) => {
    if (m.legs.leg === leg && when(s)) shift(s, lesson, along, across);
  };
const fast = (kt: number) => (s: Snapshot) => {
  s.iasMps += mpsFromKt(kt);
};
const astray = (s: Snapshot) => {
  s.trackRadT += radFromDeg(20);
};
const banked = (deg: number) => (s: Snapshot) => {
  s.bankRad = Math.sign(s.bankRad) * radFromDeg(deg);
};
const ballOut = (s: Snapshot) => {
  s.ball = 0.2;
};
const heldHard = (s: Snapshot) => {
  s.heldPressureDegKpa = 5;
};
const higher = (ft: number) => (s: Snapshot) => {
  s.heightM += mFromFt(ft);
};
const between = (s: Snapshot, lowFt: number, highFt: number): boolean =>
  s.heightM > mFromFt(lowFt) && s.heightM < mFromFt(highFt);
/** In the last moment before the wheels touch, and until the landing roll is recognised. */
const touching =
  (change: Fault): Fault =>
  (s, m, lesson) => {
    const flaring =
      m.legs.leg === 'hold-off' || (m.legs.leg === 'landing-roll' && s.timeS - m.legs.fromS < 0.1);
    if (flaring && s.wheelClearanceM < 0.03) change(s, m, lesson);
  };
const told = (task: Partial<Task>): SeenOptions => ({ lesson: { task: { ...PLAIN_TASK, ...task } } });
/** A card that asks for the power which the brief has: the good circuit is flown by it, on final with landing flap. */
const byCard: Aeroplane = (() => {
  const own = aeroplaneNamed('sandpiper');
  const aerodrome = aerodromeNamed('curlew-sands');
  const { legs } = briefOf({ aeroplane: own, aerodrome, weather: standardWeather(aerodrome), runway: '04' });
  const stretches = (leg: string) => legs.find((each) => each.leg === leg)?.stretches ?? [];
  const rpm = (stretch: StretchBrief | undefined) => Math.round(60 * (stretch?.revps ?? 0));
  const cardRpm = {
    downwind: rpm(stretches('downwind')[0]),
    base: rpm(stretches('base')[0]),
    final: rpm(stretches('final').at(-1)),
  };
  return { ...own, plan: { ...own.plan, cardRpm } };
})();
const revvedBy = (rpm: number) => (s: Snapshot) => {
  s.engineRevps += rpm / 60;
};
const IT_WAS_DUE = { 'go-around': 'not stabilised at the gate, and flown on' };
const FLOATED = 'from the round-out to the touch it is further';
const WITH_POWER = 'the good circuit underneath is flown with power, to the point of a powered approach';
const WENT_ON = /went on without going around/;

const STORIES: Readonly<Record<string, Story>> = {
  'take-off-roll-centreline': { fault: shiftOn('take-off-roll', 0, 9) },
  'upwind-height': { fault: on('upwind', (s) => s.heightM > 90 && higher(-260)(s)) },
  'upwind-speed': { fault: on('upwind', fast(25)) },
  'upwind-track': { fault: on('upwind', astray) },
  'upwind-balance': {
    fault: on('upwind', ballOut),
    also: { 'turn-to-crosswind-balance': 'the turn begins with the ball still out' },
  },
  'upwind-trim': { fault: on('upwind', heldHard) },
  'turn-to-crosswind-bank': { fault: on('turn-to-crosswind', banked(45)) },
  'turn-to-crosswind-balance': { fault: on('turn-to-crosswind', ballOut) },
  'crosswind-height': { fault: on('crosswind', higher(260)) },
  'crosswind-speed': {
    fault: on('crosswind', (s) => {
      s.indicatedVerticalSpeedMps = 2;
      fast(40)(s);
    }),
  },
  'crosswind-track': { fault: on('crosswind', astray) },
  'turn-to-downwind-bank': { fault: on('turn-to-downwind', banked(48)) },
  'turn-to-downwind-balance': { fault: on('turn-to-downwind', ballOut) },
  'downwind-height': { fault: on('downwind', higher(220)) },
  'downwind-speed': { fault: on('downwind', fast(-22)) },
  'downwind-track': { fault: on('downwind', astray) },
  'downwind-spacing': {
    fault: (s, m, lesson) => {
      const ahead = s.eastM * lesson.runway.sinHeading + s.northM * lesson.runway.cosHeading;
      if (m.legs.leg === 'downwind' && ahead > 0) shift(s, lesson, 0, lesson.plan.side * 1600);
    },
  },
  'downwind-trim': { fault: on('downwind', heldHard) },
  'flap-limit': { fault: on('turn-to-base', (s) => s.flapDeg > 5 && fast(28)(s)) },
  'base-turn-angle': {
    fault: (s, m, lesson) => {
      const ahead = s.eastM * lesson.runway.sinHeading + s.northM * lesson.runway.cosHeading;
      if (m.legs.leg === 'downwind' && ahead < -900) shift(s, lesson, -1400, 0);
    },
  },
  'turn-to-base-bank': { fault: on('turn-to-base', banked(48)) },
  'turn-to-base-balance': { fault: on('turn-to-base', ballOut) },
  'base-height': { fault: on('base', higher(250)) },
  'base-speed': {
    fault: on('base', (s) => {
      s.flapDeg = 0;
      fast(22)(s);
    }),
  },
  'base-flap': {
    fault: on('base', (s) => {
      s.flapStage = 0;
    }),
  },
  'base-track': { fault: on('base', astray) },
  'extended-by': {
    fault: () => {},
    ...told({ instructions: [{ what: 'extend', circuit: 1, byM: 1200 }] }),
  },
  'orbit-turned': {
    fault: () => {},
    ...told({ instructions: [{ what: 'orbit', circuit: 1, atAlongM: 0 }] }),
  },
  'turn-to-final-bank': {
    fault: on('turn-to-final', banked(38)),
    safety: /38 deg of bank in the turn to final/,
  },
  'turn-to-final-balance': { fault: on('turn-to-final', ballOut) },
  'final-overshoot': {
    fault: (s, m, lesson) => {
      if (m.legs.leg === 'turn-to-final' && lesson.where.outM < 60)
        shift(s, lesson, 0, lesson.plan.side * -140);
    },
  },
  'final-height': {
    fault: (s, m) => {
      if (m.legs.leg === 'turn-to-final') higher(240)(s);
    },
  },
  'final-speed': {
    fault: on('final', (s) => {
      if (!between(s, 240, 285)) return;
      s.flapDeg = 0;
      fast(30)(s);
    }),
  },
  'final-track': { fault: on('final', astray) },
  'final-trim': { fault: on('final', heldHard) },
  'final-flap': {
    fault: on('final', (s) => {
      if (s.heightM < mFromFt(150)) s.flapStage = 0;
    }),
  },
  'final-lights': {
    fault: on('final', (s) => {
      s.eyeHeightM += 45;
    }),
  },
  'glide-power': { fault: () => {}, ...told({ technique: 'glide' }) },
  'slip-used': { fault: () => {}, ...told({ technique: 'slip' }) },
  'gate-500': {
    // A final longer than 1.5 NM, after an extended downwind
    exercise: 'extend-orbit-number-two',
    fault: (s, m, lesson) => {
      if (m.legs.leg === 'final' && between(s, 494, 506)) shift(s, lesson, 0, lesson.plan.side * 200);
    },
    also: IT_WAS_DUE,
    safety: WENT_ON,
  },
  'gate-300': {
    fault: (s, m, lesson) => {
      if (m.legs.leg === 'final' && between(s, 294, 306)) shift(s, lesson, 0, lesson.plan.side * 150);
    },
    also: IT_WAS_DUE,
    safety: WENT_ON,
  },
  'gate-200': {
    fault: (s, m, lesson) => {
      if (m.legs.leg === 'final' && between(s, 194, 206)) shift(s, lesson, 0, 150);
    },
    also: IT_WAS_DUE,
    safety: WENT_ON,
  },
  'go-around': {
    fault: (s, m, lesson) => {
      if (m.legs.leg === 'hold-off' && s.wheelClearanceM > 0.3) shift(s, lesson, 400, 0);
    },
  },
  'go-around-answer': {
    fault: () => {},
    ...told({ instructions: [{ what: 'go-around', circuit: 1, atHeightFt: 150 }] }),
    also: IT_WAS_DUE,
    safety: WENT_ON,
  },
  'stop-answer': { fault: () => {}, ...told({ instructions: [{ what: 'stop', circuit: 1, atIasKt: 30 }] }) },
  'abandoned-remaining': {
    exercise: 'abandoned-take-off',
    fault: (s, m, lesson) => {
      if (m.legs.leg === 'take-off-roll' && s.groundspeedMps < 3 && s.timeS > 10) shift(s, lesson, 900, 0);
    },
  },
  'engine-failure-speed': {
    exercise: 'engine-failure-after-take-off',
    fault: (s) => {
      if (!s.engineDead || s.wheelClearanceM < 15) return;
      s.flapDeg = 0;
      fast(24)(s);
    },
  },
  'engine-failure-turn': {
    exercise: 'engine-failure-after-take-off',
    fault: (s) => {
      if (s.engineDead && between(s, 100, 200)) s.headingRadT += radFromDeg(80);
    },
  },
  'round-out-height': {
    fault: (s) => {
      if (s.wheelClearanceM > mFromFt(58) || s.timeS < 200) return;
      s.pitchRad += radFromDeg(4);
      if (s.wheelClearanceM > mFromFt(12)) s.verticalSpeedMps = -0.2;
    },
    also: { float: FLOATED },
  },
  float: {
    fault: (s, m, lesson) => {
      const flaring = m.legs.leg === 'final' || m.legs.leg === 'hold-off';
      if (flaring && s.wheelClearanceM < 16 && s.wheelClearanceM > 0.5) shift(s, lesson, -400, 0);
    },
  },
  'touchdown-point': { fault: touching((s, _, lesson) => shift(s, lesson, -190, 0)) },
  'touchdown-in-first-half': {
    fault: touching((s, _, lesson) => shift(s, lesson, -750, 0)),
    ...told({ technique: 'glide' }),
    also: { 'glide-power': WITH_POWER },
  },
  'touchdown-sink': {
    fault: (s, m) => {
      if (m.legs.leg === 'hold-off' && s.wheelClearanceM > 0 && s.wheelClearanceM < 0.2)
        s.wheelClearanceM += 0.08;
    },
  },
  'touchdown-centreline': {
    fault: touching((s, _, lesson) => shift(s, lesson, 0, 10)),
    also: { 'landing-roll-centreline': 'the roll begins where the wheels touched' },
  },
  'touchdown-drift': {
    fault: touching((s, _, { runway }) => {
      s.velocityEastMps += 3 * runway.cosHeading;
      s.velocityNorthMps -= 3 * runway.sinHeading;
    }),
  },
  'touchdown-crab': {
    fault: touching((s) => {
      s.headingRadT += radFromDeg(11);
    }),
  },
  'touchdown-nose-first': {
    fault: touching((s) => {
      s.noseWheelOnGround = true;
    }),
  },
  'nose-held-off': {
    fault: on('landing-roll', (s) => {
      s.noseWheelOnGround = true;
    }),
    ...told({ technique: 'soft-field' }),
  },
  'touchdown-bounces': {
    fault: (s, m) => {
      const last = m.touchdowns.at(-1);
      if (last === undefined || s.timeS < last.atS + 0.5 || s.timeS > last.atS + 0.9) return;
      s.onGround = false;
      s.wheelClearanceM = 0.6;
    },
  },
  'landing-roll-centreline': { fault: shiftOn('landing-roll', 0, 10, (s) => s.groundspeedMps < 10) },
  brakes: {
    fault: on('landing-roll', (s) => {
      s.brake = s.groundspeedMps > 8 ? 1 : 0;
    }),
  },
  'stop-remaining': { fault: shiftOn('landing-roll', 500, 0, (s) => s.groundspeedMps < 3) },
  'downwind-rpm': { aeroplane: byCard, fault: on('downwind', revvedBy(300)) },
  'base-rpm': { aeroplane: byCard, fault: on('base', revvedBy(300)) },
  'final-rpm': { aeroplane: byCard, fault: on('final', revvedBy(-300)) },
  'three-in-a-row': {
    exercise: 'touch-and-go-session',
    overrides: { circuits: 3 },
    fault: touching((s, m, lesson) => {
      if (m.legs.circuit === 2) shift(s, lesson, -190, 0);
    }),
    also: { 'touchdown-point, circuit 2': 'the landing that breaks the row' },
  },
};

/** Rows of checks, calls, lookout and traffic have their faults in procedure-faults.test.ts. */
const mine = ALL_RULES.filter(({ besideFlying }) => besideFlying !== true).map(({ id }) => id);

const redOf = (report: ReturnType<typeof seeFlight>): string[] =>
  report.items
    .filter(({ band }) => band === 'red')
    .map(({ id, circuit }) => (circuit === 1 ? id : `${id}, circuit ${circuit}`));

describe('a good circuit', () => {
  it('has nothing red and no safety stop, seen as it is', () => {
    const report = seeFlight();
    expect(redOf(report)).toEqual([]);
    expect(report.safety).toEqual([]);
  });

  it('has nothing red by a card that asks for the power of the plan either', () => {
    const report = seeFlight(() => {}, { aeroplane: byCard });
    expect(redOf(report)).toEqual([]);
    for (const row of ['downwind-rpm', 'base-rpm', 'final-rpm'])
      expect(report.items.find(({ id }) => id === row)?.band, row).toBe('green');
  });
});

describe('a scripted fault is found by its own row and by no unrelated one', () => {
  it('for every row of the rules there is one', () => {
    expect(Object.keys(STORIES).sort()).toEqual([...mine].sort());
  });

  it.each(Object.entries(STORIES))('%s', (row, { fault, also = {}, safety, ...options }) => {
    const report = seeFlight(fault, options);
    const red = redOf(report);
    expect(red).toContain(row);
    expect(red.filter((id) => id !== row).sort()).toEqual(Object.keys(also).sort());
    const stops = report.safety.map(({ what }) => what);
    if (safety === undefined) expect(stops).toEqual([]);
    else {
      expect(stops.length).toBeGreaterThan(0);
      for (const stop of stops) expect(stop).toMatch(safety);
    }
  });
});
