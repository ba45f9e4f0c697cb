import { describe, expect, it } from 'vitest';
import type { Band } from '../../../src/lesson/judge/report.ts';
import { bestAndLast } from '../../../src/pages/exercises/results.ts';
import { attemptRow } from '../../support/attempt-rows.ts';

const EXERCISE = { id: 'downwind-and-checks', success: ['stopped'] as ['stopped'] };

const attempt = (outcome: 'stopped' | 'practised' | 'time-up' | 'ran-off', ...bands: readonly Band[]) =>
  attemptRow(
    bands.map((band, i) => ({
      id: `row-${i}`,
      circuit: 1,
      leg: 'downwind' as const,
      value: 0,
      unit: 'ft',
      target: 0,
      low: -1,
      high: 1,
      band,
    })),
    { outcome, exercise: EXERCISE.id },
  );

describe('the best attempt at an exercise', () => {
  it('is one that was flown to its end, before one that was left with nothing to be judged', () => {
    const left = attempt('time-up');
    const practised = attempt('practised', 'green', 'amber');
    expect(bestAndLast([left, practised], EXERCISE)).toEqual({ best: practised, last: left });
  });

  it('is, of those, the one with least outside; an end of another kind comes after all of them', () => {
    const rough = attempt('practised', 'red', 'red');
    const neat = attempt('stopped', 'green', 'amber');
    const ranOff = attempt('ran-off', 'green', 'green');
    expect(bestAndLast([ranOff, rough, neat], EXERCISE).best).toBe(neat);
    expect(bestAndLast([ranOff, rough], EXERCISE).best).toBe(rough);
  });
});
