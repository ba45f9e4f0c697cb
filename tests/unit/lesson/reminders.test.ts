// What is due is asked for at its moment and dropped past it: no call below the last call's height, no check below the
// gate, no flap or gear before the climb, nothing in a turn or with little speed; and what is said about speed is true
// of the needle at that instant.
import { describe, expect, it } from 'vitest';
import { deviationsNow } from '../../../src/lesson/coach/deviations.ts';
import { remindersNow } from '../../../src/lesson/coach/reminders.ts';
import { stallMargin } from '../../../src/lesson/coach/safety.ts';
import { DEFAULT_TOLERANCES } from '../../../src/lesson/judge/tolerances.ts';
import { degFromRad, ftFromM, ktFromMps } from '../../../src/units/conversions.ts';
import { type FlightAsked, flyWithProcedures } from '../../support/procedures.ts';

interface Reminder {
  readonly text: string;
  readonly leg: string;
  readonly heightFt: number;
  readonly alongM: number;
  readonly bankDeg: number;
  readonly margin: number;
  readonly climbFpm: number;
}

/** Everything that could be asked for, at every look of a flight in which nothing is done. */
const remindersIn = (asked: FlightAsked): readonly Reminder[] => {
  const all: Reminder[] = [];
  flyWithProcedures({
    ...asked,
    beside: (b) => {
      asked.beside?.(b);
      const { m, lesson, s } = b;
      const context = { m, lesson, s, limits: DEFAULT_TOLERANCES, teaching: 'power-for-sink' } as const;
      for (const { text } of remindersNow(context, 'talked-through'))
        all.push({
          text,
          leg: m.legs.leg,
          heightFt: ftFromM(lesson.where.heightM),
          alongM: lesson.where.alongM,
          bankDeg: Math.abs(degFromRad(s.bankRad)),
          margin: s.onGround ? 9 : stallMargin(s),
          climbFpm: ftFromM(s.verticalSpeedMps) * 60,
        });
    },
  });
  return all;
};

const GO_AROUND: Partial<FlightAsked> = {
  task: { technique: 'normal', instructions: [{ what: 'go-around', circuit: 1, atHeightFt: 150 }] },
};

describe('reminders', () => {
  const circuit = remindersIn({ start: 'downwind', seconds: 400, afterStopS: 5 });

  it('ask for calls where they belong, and leave them past it', () => {
    const calls = circuit.filter(({ text }) => text.startsWith('Call'));
    expect(new Set(calls.map(({ text }) => text))).toEqual(
      new Set(['Call downwind.', 'Call final.', 'Call vacated.']),
    );
    for (const { text, heightFt, alongM } of calls) {
      if (text === 'Call downwind.') expect(alongM).toBeGreaterThanOrEqual(0);
      if (text === 'Call final.') expect(heightFt).toBeGreaterThan(215);
    }
  });

  it('ask for the check on final above the gate only', () => {
    const finals = circuit.filter(({ text }) => text.startsWith('Final check'));
    expect(finals.length).toBeGreaterThan(10);
    for (const { heightFt } of finals) expect(heightFt).toBeGreaterThan(300);
  });

  it('ask for nothing in a turn, and nothing with little speed in hand', () => {
    expect(circuit.length).toBeGreaterThan(100);
    expect(circuit.filter(({ bankDeg }) => bankDeg > 15.01)).toEqual([]);
    expect(circuit.filter(({ margin }) => margin < 1.25)).toEqual([]);
  });

  it('ask for flap, gear and the call in a go-around once it climbs', () => {
    let awayS = Number.POSITIVE_INFINITY;
    const around = remindersIn({
      ...GO_AROUND,
      start: 'final',
      seconds: 110,
      beside: ({ m, s, tell }) => {
        if (m.legs.leg !== 'go-around') return;
        awayS = Math.min(awayS, s.timeS);
        tell('tick', 'heat');
      },
      // Power comes off again with the flap out, and for a while it does not climb
      hands: (s, controls) => {
        const since = s.timeS - awayS;
        if (since > 0) controls.flapStage = 2;
        if (since > 2 && since < 14) controls.throttle = 0.55;
      },
    }).filter(({ leg }) => leg === 'go-around');
    const levers = around.filter(({ text }) => /check: (?:configuration|flap|gear)|^Call/.test(text));
    expect(new Set(levers.map(({ text }) => text)).size).toBe(2);
    for (const { climbFpm } of levers) expect(climbFpm).toBeGreaterThan(199);
  });
});

describe('what is said about speed', () => {
  it('is true of the needle at that instant', () => {
    const said: { text: string; off: number; below: number; above: number }[] = [];
    for (const seconds of [12, 17, 25]) {
      flyWithProcedures({
        start: 'downwind',
        seconds: 240,
        // Pumped up and down, so that what is smoothed lags behind
        hands: (s, controls) => {
          const up = s.timeS % (2 * seconds) < seconds;
          controls.throttle = up ? 1 : 0.25;
        },
        beside: ({ m, lesson, s }) => {
          const context = { m, lesson, s, limits: DEFAULT_TOLERANCES, teaching: 'power-for-sink' } as const;
          const { leg } = m.legs;
          if (leg !== 'downwind' && leg !== 'base' && leg !== 'final') return;
          const mps = leg === 'final' ? lesson.plan.approachIasMps : lesson.plan.legs[leg].iasMps;
          const limit = DEFAULT_TOLERANCES.allowed[leg === 'final' ? 'approachSpeedKt' : 'circuitSpeedKt'];
          const words = deviationsNow(context).filter((word) => /^(?:Slow|Fast)\b/.test(word.text));
          for (const { text } of words)
            said.push({ text, off: ktFromMps(s.shownIasMps - mps), below: limit.below, above: limit.above });
        },
      });
    }
    expect(said.length).toBeGreaterThan(3);
    for (const { text, off, below, above } of said) {
      if (text.startsWith('Slow')) expect(off, text).toBeLessThan(-below);
      else expect(off, text).toBeGreaterThan(above);
    }
  });
});
