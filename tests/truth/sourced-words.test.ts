// What exercises, coach and brief say about one thing is one thing, and the one that has a source (tests/reference).
import { describe, expect, it } from 'vitest';
import { EXERCISES } from '../../src/catalogue.ts';
import { POWER_IN_ROUND_OUT } from '../reference/circuit.ts';

const sentencesOf = (id: string): string[] =>
  EXERCISES.filter((exercise) => exercise.id === id).flatMap(({ aim, sayFirst, cautions }) => [
    aim,
    ...sayFirst,
    ...cautions,
  ]);

describe('power in the round-out', () => {
  const [[during, done]] = POWER_IN_ROUND_OUT.rows;

  it(`comes to idle ${during}, and is not closed before ${done}, wherever an exercise speaks of both`, () => {
    const both = EXERCISES.flatMap(({ id }) => sentencesOf(id)).filter(
      (text) => /\bround-out\b/.test(text) && /\b(?:throttle|idle)\b/.test(text),
    );
    expect(both.length).toBeGreaterThan(1);
    for (const text of both) expect(text).toMatch(/to idle in (?:the round-out|it)\b/);
    expect(sentencesOf('final-and-landing').join(' ')).toContain('closed when it is done');
  });
});
