// The coach: one thing at a time, the words of the rules, silence while it goes well (design/lesson.md, "How much
// help"). Flown by the model pilot, whose flying is green, or with the throttle held open beside it.
import { describe, expect, it } from 'vitest';
import { beginCoach, type CoachLevel, coach } from '../../../src/lesson/coach/coach.ts';
import type { Teaching } from '../../../src/lesson/coach/context.ts';
import { RULES } from '../../../src/lesson/rules.ts';
import { DEFAULT_TOLERANCES } from '../../../src/lesson/tolerances.ts';
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
      const text = coach(memory, { m, lesson, s, limits: DEFAULT_TOLERANCES, teaching }, level);
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
    const turn = /^Turn to base now/;
    expect(talked.some((text) => turn.test(text))).toBe(true);
    expect(reminded.some((text) => turn.test(text))).toBe(false);
  });

  it('calls for a go-around that is due before anything else', () => {
    const said = saidIn('reminded', { start: 'final', procedures: { radio: 'towered' } });
    expect(said.map(({ text }) => text)).toContain('Go around: no clearance to land.');
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
