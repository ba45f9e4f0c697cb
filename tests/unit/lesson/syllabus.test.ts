import { expect, it } from 'vitest';
import { EXERCISES } from '../../../src/exercises.ts';
import { inParts } from '../../../src/lesson/exercises/syllabus.ts';

it('the syllabus has every exercise once, and what it does not know last', () => {
  const parts = inParts(EXERCISES);
  expect(parts.map(({ title }) => title)).not.toContain('Others');
  const ids = parts.flatMap(({ exercises }) => exercises.map(({ id }) => id));
  expect([...ids].sort()).toEqual(EXERCISES.map(({ id }) => id).sort());
  expect(inParts([{ id: 'new-one' }, { id: 'normal-circuit' }]).at(-1)).toEqual({
    title: 'Others',
    exercises: [{ id: 'new-one' }],
  });
});
