// What is said on the way, when, and for how long; the places are those of the scenario's task.
import { describe, expect, it } from 'vitest';
import { wordsNow } from '../../../src/lesson/exercises/instructions.ts';
import type { LessonMemory } from '../../../src/lesson/memory.ts';
import { ktFromMps } from '../../../src/units/conversions.ts';
import { seeFlight } from '../../support/seen-flight.ts';

/** Every change of the words, with the second and what the lesson knew then. */
const heard = (exercise: string, seed: number) => {
  const words: { words: string; atS: number; leg: string; iasKt: number; alongM: number }[] = [];
  let last: string | null = null;
  let memory: LessonMemory | null = null;
  seeFlight(
    (s, m, lesson) => {
      memory = m;
      const now = wordsNow(m, s.timeS);
      if (now !== null && now !== last)
        words.push({
          words: now,
          atS: s.timeS,
          leg: m.legs.leg,
          iasKt: ktFromMps(s.iasMps),
          alongM: lesson.where.alongM,
        });
      last = now;
    },
    { exercise, seed },
  );
  return { words, memory: memory as LessonMemory | null };
};

describe('what is said on the way', () => {
  it('is "stop" on the roll, at the speed drawn, once', () => {
    const { words } = heard('abandoned-take-off', 1);
    expect(words.map((said) => said.words)).toEqual(['Stop, stop: abandon the take-off.']);
    expect(words[0]?.leg).toBe('take-off-roll');
    expect(words[0]?.iasKt).toBeGreaterThan(24);
    expect(words[0]?.iasKt).toBeLessThan(48);
  });

  it('is to extend, abeam the threshold, and then base where the extension ends', () => {
    const { words, memory } = heard('extend-orbit-number-two', 1);
    expect(words.map((said) => said.words)).toEqual([
      'Extend downwind; base will be called.',
      'Turn base now.',
    ]);
    expect(words[0]?.alongM).toBeLessThan(0);
    expect(words[0]?.alongM).toBeGreaterThan(-30);
    // 1,453 m with this seed, beyond the planned base turn
    expect((words[0]?.alongM ?? 0) - (words[1]?.alongM ?? 0)).toBeGreaterThan(1453);
    expect(memory?.said[0]?.obeyedS).not.toBeNull();
  });

  it('is nothing in a normal circuit', () => {
    expect(heard('normal-circuit', 1).words).toEqual([]);
  });
});
