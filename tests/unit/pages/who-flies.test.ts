// Who flies sets what is said, shown and allowed, and nothing else; nobody named changes nothing.
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { TOLERANCE_SETS } from '../../../src/lesson/judge/tolerances.ts';
import { suiting, WHO } from '../../../src/pages/fly/sheets/who-flies.ts';
import { settingsSchema } from '../../../src/pages/settings.ts';

describe('who flies', () => {
  it('is one of four, and each brings settings that there are', () => {
    expect(WHO.map(({ id }) => id)).toEqual(['first-lessons', 'before-solo', 'rusty', 'teaching']);
    for (const { id } of WHO) {
      const brought = suiting(id);
      expect(v.parse(settingsSchema, brought)).toMatchObject(brought);
      expect(TOLERANCE_SETS.map((set) => set.id)).toContain(brought.tolerances);
    }
  });

  it('gives the beginner the beginner’s', () => {
    expect(suiting('first-lessons')).toMatchObject({
      coach: 'talked-through',
      tolerances: 'first-lessons',
      lead: 'window',
    });
    expect(suiting('teaching').coach).toBe('silent');
  });

  it('changes nothing where nobody is named', () => {
    expect(suiting('')).toEqual({});
    expect(v.parse(settingsSchema, {})).toMatchObject({ who: '', coach: 'reminded', lead: 'plan' });
  });
});
