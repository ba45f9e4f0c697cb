// The coach: one thing at a time, the words of the rules, silence while it goes well (design/lesson.md, "How much
// help"). Flown by the model pilot, whose flying is green, or with the throttle held open beside it.
import { describe, expect, it } from 'vitest';
import { beginCoach, type CoachLevel, coach } from '../../../src/lesson/coach/coach.ts';
import { talkNow } from '../../../src/lesson/coach/talk.ts';
import type { Teaching } from '../../../src/lesson/judge/rule.ts';
import { RULES } from '../../../src/lesson/judge/rules.ts';
import { DEFAULT_TOLERANCES } from '../../../src/lesson/judge/tolerances.ts';
import { currentList } from '../../../src/lesson/procedures/watch-checks.ts';
import { askGoAround } from '../../../src/lesson/watch/dues.ts';
import { degFromRad } from '../../../src/units/conversions.ts';
import { type FlightAsked, flyWithProcedures } from '../../support/procedures.ts';

interface Said {
  readonly atS: number;
  readonly text: string;
  readonly leg: string;
}

/** Everything the coach said in a flight. */
const saidIn = (
  level: CoachLevel,
  asked: FlightAsked,
  teaching: Teaching = 'power-for-sink',
): readonly Said[] => {
  const memory = beginCoach();
  const said: Said[] = [];
  flyWithProcedures({
    ...asked,
    beside: (b) => {
      asked.beside?.(b);
      const { m, lesson, s } = b;
      const text = coach(memory, { m, lesson, s, limits: DEFAULT_TOLERANCES, teaching }, level, talkNow);
      if (text !== null) said.push({ atS: s.timeS, text, leg: m.legs.leg });
    },
  });
  return said;
};

const ruleWords = RULES.flatMap(({ say }) => [say.low, say.high]).filter((words) => words !== undefined);
const fast: FlightAsked = {
  start: 'downwind',
  seconds: 45,
  hands: (s, controls) => {
    if (s.timeS > 3) controls.throttle = 1;
  },
};

describe('the coach', () => {
  it('says nothing about flying that goes well', () => {
    const said = saidIn('reminded', { start: 'downwind', seconds: 260 });
    expect(said.filter(({ text }) => ruleWords.includes(text)).map(({ text }) => text)).toEqual([]);
  });

  it('uses the words of the rule that the assessment would use', () => {
    const said = saidIn('reminded', fast).map(({ text }) => text);
    const downwind = RULES.filter(({ id }) => id.startsWith('downwind-')).flatMap(({ say }) => [
      say.low,
      say.high,
    ]);
    expect(said.some((text) => downwind.includes(text))).toBe(true);
  });

  it('speaks of nothing but going around to somebody who was told to and does', () => {
    const memory = beginCoach();
    const said: string[] = [];
    flyWithProcedures({
      start: 'final',
      seconds: 18,
      beside: ({ m, lesson, s }) => {
        if (s.timeS > 0.8 && m.dues.length === 0)
          askGoAround(m, { dueS: s.timeS, heightM: s.heightM, why: 'not stabilised at 300 ft', id: 'asked' });
        // Obeyed, though it takes its time until it is recognised as one
        const seen = { ...s, throttle: s.timeS > 5 ? 1 : 0.4 };
        const c = { m, lesson, s: seen, limits: DEFAULT_TOLERANCES, teaching: 'power-for-sink' } as const;
        const text = coach(memory, c, 'talked-through', talkNow);
        if (text !== null) said.push(text);
      },
    });
    expect(said[0]).toMatch(/^Go around, full power/);
    const after = said.filter((text) => !/^Go around/.test(text));
    expect(after).toHaveLength(1);
    expect(after[0]).toMatch(/^Going around: full power, wings level, climbing attitude, \d+ knots/);
  });

  it('says nothing about what the exercise does not look at', () => {
    const memory = beginCoach();
    const said: string[] = [];
    flyWithProcedures({
      ...fast,
      beside: ({ m, lesson, s }) => {
        const unjudged = { ...lesson, assessed: ['calls'] };
        const context = {
          m,
          lesson: unjudged,
          s,
          limits: DEFAULT_TOLERANCES,
          teaching: 'power-for-sink',
        } as const;
        const text = coach(memory, context, 'reminded', talkNow);
        if (text !== null) said.push(text);
      },
    });
    expect(said.filter((text) => ruleWords.includes(text))).toEqual([]);
    expect(said).toContain('Call downwind.');
  });

  it('does not talk over the tower', () => {
    const heardS: number[] = [];
    const asked: FlightAsked = {
      start: 'downwind',
      procedures: { radio: 'towered' },
      seconds: 60,
      beside: ({ s, m, tell }) => {
        if (s.timeS > 5 && s.timeS < 5.3) tell('say', 'downwind/0');
        const last = m.procedures?.answers.at(-1)?.heardS;
        if (last !== undefined && !heardS.includes(last)) heardS.push(last);
      },
    };
    const said = saidIn('talked-through', asked);
    expect(heardS).toHaveLength(1);
    const [at = 0] = heardS;
    // A clearance takes some five seconds to say
    expect(said.filter(({ atS }) => atS > at && atS < at + 4.9)).toEqual([]);
    expect(said.some(({ atS }) => atS > at)).toBe(true);
  });

  it('says one thing at a time, and not the same again at once', () => {
    for (const level of ['reminded', 'talked-through'] as const) {
      const said = saidIn(level, { start: 'downwind', seconds: 150 });
      expect(said.length).toBeGreaterThan(1);
      said.forEach(({ atS, text }, i) => {
        const before = said[i - 1];
        if (before === undefined) return;
        // Long enough to hear one sentence out, where the next is not urgent (common practice)
        expect(atS - before.atS).toBeGreaterThanOrEqual(2.5);
        const same = said.slice(0, i).filter((earlier) => earlier.text === text);
        for (const earlier of same) expect(atS - earlier.atS).toBeGreaterThanOrEqual(18);
      });
    }
  });

  it('silent, says nothing at all', () => {
    expect(saidIn('silent', fast)).toEqual([]);
  });

  it('reminds of checks, calls and lookout that are due, and is quiet when they are done', () => {
    const said = saidIn('reminded', { start: 'downwind', seconds: 100 }).map(({ text }) => text);
    expect(said.some((text) => text.startsWith('Downwind check:'))).toBe(true);
    expect(said).toContain('Call downwind.');
    expect(said.some((text) => text.startsWith('Look out: right, ahead, left, along long final'))).toBe(true);
    const called = saidIn('reminded', {
      start: 'downwind',
      seconds: 60,
      beside: ({ s, tell }) => {
        if (s.timeS < 1) tell('say', 'downwind/0');
      },
    });
    expect(called.map(({ text }) => text)).not.toContain('Call downwind.');
  });

  it('talks somebody through what a reminder leaves to him', () => {
    const talked = saidIn('talked-through', { start: 'downwind', seconds: 260 }).map(({ text }) => text);
    const reminded = saidIn('reminded', { start: 'downwind', seconds: 260 }).map(({ text }) => text);
    const turn = /^Turn left to base now/;
    expect(talked.some((text) => turn.test(text))).toBe(true);
    expect(reminded.some((text) => turn.test(text))).toBe(false);
  });

  it('leads somebody who is talked through round the whole circuit, in the figures of the plan', () => {
    const asked: FlightAsked = {
      start: 'line-up',
      beside: ({ m, tell }) => {
        if (m.procedures && currentList(m.procedures)) tell('tick', '');
      },
    };
    const said = saidIn('talked-through', asked).map(({ text }) => text);
    const { lesson } = flyWithProcedures({ start: 'line-up', seconds: 1 });
    // Runway 22 left-hand in a wind along it: tracks 130, 040, 310, each less its drift, square by the compass rose
    const heading = (leg: 'crosswind' | 'downwind' | 'base' | 'final'): string => {
      const { headingRadT } = lesson.plan.legs[leg];
      return `heading ${String(Math.round(degFromRad(headingRadT - lesson.runway.variationRad))).padStart(3, '0')}`;
    };
    // Order of a circuit: UK/EASA exercises 12 and 13; attitude, power, trim when levelling (the same)
    const order = [
      /^Airspeed alive\. At 5\d knots/,
      /^Climb at 70 knots/,
      new RegExp(`^Turn left to crosswind now: .*${heading('crosswind')}`),
      /^Coming up to 1,0\d0 feet: nose to level, let 80 knots come, then 2,\d\d0 rpm, and trim/,
      new RegExp(`^Turn left to downwind now: .*${heading('downwind')}`),
      new RegExp(`^Downwind: 1,0\\d0 feet, 80 knots, 2,\\d\\d0 rpm, ${heading('downwind')}`),
      // Descent from abeam is this aerodrome's custom (FAA-H-8083-3C p. 8-3)
      /^Abeam the threshold: .*power back to 1,\d\d0 rpm/,
      new RegExp(`^Turn left to base now: .*${heading('base')}`),
      /^Flap 20, 70 knots/,
      // Never beyond 30 degrees in the turn to final (South African instructor procedures)
      new RegExp(`^Turn left to final now: .*never beyond 30 degrees; roll out ${heading('final')}`),
      // The flap that is out, which the model pilot has full by then
      /^Flap 30, 65 knots/,
      /^Round out: .*nose slowly up to level, and with it power to idle/,
      /^Hold it off/,
      /^Straight with the feet/,
    ];
    const places = order.map((words) => said.findIndex((text) => words.test(text)));
    expect(places).not.toContain(-1);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it('does not turn somebody to base who was asked to extend, nor speak of the circuit to one without an engine', () => {
    const task = { technique: 'normal', instructions: [{ what: 'extend', circuit: 1, byM: 900 }] } as const;
    const extended = saidIn('talked-through', {
      start: 'downwind',
      procedures: { radio: 'towered' },
      task: { ...task, instructions: [...task.instructions] },
    });
    expect(extended.filter(({ text }) => /to base now/.test(text))).toEqual([]);
    const stopped = saidIn('talked-through', {
      start: 'upwind',
      failures: [{ atS: 3, what: 'engine-stop', amount: 1 }],
      seconds: 60,
    });
    const after = stopped.filter(({ atS }) => atS > 3).map(({ text }) => text);
    // Nose down first, a field ahead (New Zealand Flight Instructor Guide)
    expect(after[0]).toMatch(/^Engine: gliding attitude, 70 knots; a field ahead/);
    expect(after.filter((text) => /^(Turn|Climb|Coming up|Past)/.test(text))).toEqual([]);
  });

  it('names an item that is not done twice, and then the next', () => {
    const said = saidIn('reminded', { start: 'downwind', seconds: 110 }).map(({ text }) => text);
    expect(said.filter((text) => text.startsWith('Downwind check: brakes'))).toHaveLength(2);
    expect(said.some((text) => /^Downwind check: (?!brakes)/.test(text))).toBe(true);
    expect(said.filter((text) => text === 'Call downwind.').length).toBeLessThanOrEqual(2);
  });

  it('keeps somebody on downwind while the one ahead has yet to go by on final', () => {
    const following = (eastM: number, northM: number) =>
      saidIn('talked-through', {
        start: 'downwind',
        seconds: 100,
        beside: ({ s, m, tell }) => {
          if (m.legs.leg === 'downwind' && Math.floor(s.timeS * 4) % 4 === 0)
            tell('traffic', `0:${eastM},${northM},150,0`);
        },
      }).map(({ text }) => text);
    // 2 km out on the final of runway 22: to the north-east of its threshold; then short of the threshold
    const out = following(1290, 1530);
    expect(out).toContain('Number two: extend downwind until the one ahead has gone by on final.');
    expect(out.some((text) => /to base now/.test(text))).toBe(false);
    const near = following(130, 150);
    expect(near.some((text) => /^Number two/.test(text))).toBe(false);
    expect(near.some((text) => /to base now/.test(text))).toBe(true);
  });

  it('calls for a go-around that is due before anything else', () => {
    const said = saidIn('reminded', { start: 'final', procedures: { radio: 'towered' } });
    expect(said.map(({ text }) => text)).toContain('Go around, full power: no clearance to land.');
  });

  it('teaches speed and slope on final as the aerodrome has it', () => {
    const slow: FlightAsked = {
      start: 'final',
      seconds: 40,
      hands: (s, controls) => {
        if (s.timeS > 6) controls.throttle = Math.max(controls.throttle, 0.85);
      },
    };
    const power = saidIn('reminded', slow, 'power-for-sink').map(({ text }) => text);
    const point = saidIn('reminded', slow, 'point-with-pitch').map(({ text }) => text);
    expect(power.some((text) => /power for|less power for more sink|then less power/.test(text))).toBe(true);
    expect(point.some((text) => /aim point/.test(text))).toBe(true);
    expect(power.some((text) => /stays on the aim point|nose down to the aim point/.test(text))).toBe(false);
  });
});
