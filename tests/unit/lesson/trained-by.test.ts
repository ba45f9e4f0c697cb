import { describe, expect, it } from 'vitest';
import { exerciseNamed } from '../../../src/exercises.ts';
import { ALL_RULES } from '../../../src/lesson/judge/rules.ts';
import { selects } from '../../../src/lesson/judge/selection.ts';
import { trainedBy } from '../../../src/lesson/judge/trained-by.ts';
import { GOING_AROUND, nextTimeFor } from '../../../src/study/root/next-time.ts';

describe('what trains a row', () => {
  it.each(ALL_RULES.map(({ id }) => id))('is an exercise that looks at it: %s', (row) => {
    const { assessed } = exerciseNamed(trainedBy(row));
    expect(selects(assessed, row)).toBe(true);
  });
});

describe('what the debrief sends to', () => {
  it('is what trains it, and the late turn has its own', () => {
    const turn = { kind: 'turn', leg: 'turn-to-base' } as Parameters<typeof nextTimeFor>[0];
    expect(nextTimeFor(turn, false).exercise).toBe('base-and-final');
    expect(nextTimeFor(turn, true).exercise).toBe('late-base-turn');
    expect(GOING_AROUND.exercise).toBe('go-around');
  });
});
