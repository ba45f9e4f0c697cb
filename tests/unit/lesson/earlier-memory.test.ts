// A flight kept under way by an earlier version is taken up again from a memory that lacks what was added since.
import { expect, it } from 'vitest';
import { assess } from '../../../src/lesson/judge/assess.ts';
import { firstThing } from '../../../src/lesson/judge/first/first-thing.ts';
import type { LessonMemory } from '../../../src/lesson/memory.ts';
import { createLessonFold } from '../../../src/lesson/watch/lesson-fold.ts';
import { newSnapshot } from '../../../src/simulation/snapshot.ts';
import { flyMistake, MISTAKES } from '../../support/mistakes.ts';

const without = (value: object, ...keys: readonly string[]): void => {
  for (const key of keys) delete (value as Record<string, unknown>)[key];
};

it('goes on and is judged from there', () => {
  const mistake = MISTAKES.find(({ name }) => name === 'stood on the brakes');
  if (mistake === undefined) throw new Error('earlier-memory.test: no such mistake');
  const { memory, lesson } = flyMistake(mistake, 0, true);
  const m = structuredClone(memory);
  without(m, 'landings', 'ranOffAt');
  without(m.legs, 'climbingFromM');
  m.gates.forEach((gate) => {
    without(gate, 'faults');
  });
  m.dues.forEach((due) => {
    without(due, 'id');
  });
  m.safety.push({ atS: 50, what: 'all lights red and sinking at 300 ft' } as LessonMemory['safety'][number]);
  createLessonFold(lesson).step(m, { ...newSnapshot(), step: 60_000, timeS: 1000, onGround: true });
  const report = assess(m, lesson);
  expect(report.items.map(({ id }) => id)).toEqual(assess(memory, lesson).items.map(({ id }) => id));
  expect(firstThing({ ...report, outcome: 'stopped' })?.sentence).toMatch(/^All lights red/);
});
