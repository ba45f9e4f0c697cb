import { describe, expect, it } from 'vitest';
import { EXERCISES, exerciseNamed } from '../../../src/catalogue.ts';
import { allowsOwnDay } from '../../../src/lesson/exercises/own-day.ts';
import { isPractised } from '../../../src/lesson/exercises/practised.ts';
import type { LessonMemory } from '../../../src/lesson/memory.ts';
import type { LegName } from '../../../src/lesson/names.ts';

const flown = (...legs: LegName[]): LessonMemory =>
  ({ stretches: legs.map((leg) => ({ leg })) }) as unknown as LessonMemory;

describe('what is to be practised', () => {
  it('is over once the leg that the exercise names has been left (file of the exercise: doneAfter)', () => {
    const climb = exerciseNamed('take-off-and-climb');
    expect(isPractised(flown('take-off-roll', 'upwind', 'crosswind'), climb)).toBe(false);
    expect(isPractised(flown('upwind', 'crosswind', 'turn-to-downwind'), climb)).toBe(true);
  });

  it('is never over before the end where the exercise is a whole flight', () => {
    expect(isPractised(flown('downwind', 'base', 'final'), exerciseNamed('normal-circuit'))).toBe(false);
  });
});

it('keeps the weather of exercises that are about it: gusts, heat, a wind that goes round', () => {
  const fixed = EXERCISES.filter((exercise) => !allowsOwnDay(exercise)).map(({ id }) => id);
  expect(fixed.sort()).toEqual(['gusty-day', 'high-and-hot', 'touch-and-go-session']);
});
